"""The sequence of a season against published asymmetric travelling-salesman instances."""

from changeover.switch.season.solve import (
    YARD,
    Limits,
    Season,
    SeasonJob,
    SeasonPlanter,
    SeasonStatus,
    season_plan,
)

SOURCE = "TSPLIB, br17 (17 city problem, Repetto); known shortest tour 39"
FAR = 9999
BR17 = """
9999 3 5 48 48 8 8 5 5 3 3 0 3 5 8 8 5
3 9999 3 48 48 8 8 5 5 0 0 3 0 3 8 8 5
5 3 9999 72 72 48 48 24 24 3 3 5 3 0 48 48 24
48 48 74 9999 0 6 6 12 12 48 48 48 48 74 6 6 12
48 48 74 0 9999 6 6 12 12 48 48 48 48 74 6 6 12
8 8 50 6 6 9999 0 8 8 8 8 8 8 50 0 0 8
8 8 50 6 6 0 9999 8 8 8 8 8 8 50 0 0 8
5 5 26 12 12 8 8 9999 0 5 5 5 5 26 8 8 0
5 5 26 12 12 8 8 0 9999 5 5 5 5 26 8 8 0
3 0 3 48 48 8 8 5 5 9999 0 3 0 3 8 8 5
3 0 3 48 48 8 8 5 5 0 9999 3 0 3 8 8 5
0 3 5 48 48 8 8 5 5 3 3 9999 3 5 8 8 5
3 0 3 48 48 8 8 5 5 0 0 3 9999 3 8 8 5
5 3 0 72 72 48 48 24 24 3 3 5 3 9999 48 48 24
8 8 50 6 6 0 0 8 8 8 8 8 8 50 9999 0 8
8 8 50 6 6 0 0 8 8 8 8 8 8 50 0 9999 8
5 5 26 12 12 8 8 0 0 5 5 5 5 26 8 8 9999
"""


def tour(text: str) -> Season:
    """Return a season of one planter whose changes are the distances; city 0 is the yard."""
    table = [[int(figure) for figure in line.split()] for line in text.split("\n") if line]
    names = [YARD, *(f"city {number}" for number in range(1, len(table)))]
    change = {
        (come, go): minutes
        for come, row in zip(names, table, strict=True)
        for go, minutes in zip(names, row, strict=True)
        if come != go
    }
    jobs = tuple(SeasonJob(name, {"one": 1}) for name in names[1:])
    return Season(jobs, (SeasonPlanter("one", switch=change),))


def test_seventeen_cities(outside_check) -> None:
    plan = season_plan(tour(BR17), Limits(seconds=60))
    assert plan.status is SeasonStatus.OPTIMAL
    assert plan.between_bound == 39
    assert sorted(slot.job for slot in plan.best.slots) == sorted(
        f"city {number}" for number in range(1, 17)
    )
    outside_check(
        calculation="least minutes between jobs", source=SOURCE, trust="published",
        printed=39, ours=plan.best.between, unit="distance", tolerance=0,
    )  # fmt: skip
