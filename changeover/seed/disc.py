"""Disc choice: the discs to hand, scored, with a reason for each point gained or lost."""

from collections.abc import Sequence
from dataclasses import dataclass

from changeover.planter.parts import Part
from changeover.quantities import Quantity, show
from changeover.seed import rate
from changeover.seed.case import Case
from changeover.seed.reasons import Input, Trust
from changeover.seed.shelf_counts import mounted_rows, shortage, to_hand, to_inspect
from changeover.seed.trust_order import Answer, no_ground, proof_of, reasoned

RULE = "disc by score"
# The hole over the seed's width; from memory, design books give about two thirds of the
# seed's width. A hole as large as the seed lets it through (LSU AgCenter 2005).
HOLE_FROM, HOLE_TO, LETS_THROUGH = 0.4, 0.7, 1.0


@dataclass(frozen=True)
class Point:
    """Points gained or lost, why, and what stands behind them."""

    gives: float
    why: str
    source: str = ""

    def __str__(self) -> str:
        return f"{self.gives:+.2g} {self.why} ({self.source})"


@dataclass(frozen=True)
class Candidate:
    """One disc to hand: how many, how fast it would turn, and its points.

    ``waiting`` more lie on the shelf and may serve once they are inspected.
    """

    disc: Part
    count: int
    waiting: int
    speed: Quantity | None
    points: tuple[Point, ...]

    @property
    def score(self) -> float:
        """The sum of its points."""
        return sum(point.gives for point in self.points)

    @property
    def text(self) -> str:
        parts = "; ".join(map(str, self.points)) or "none"
        count = f"{self.count} to hand" + (f", {self.waiting} to inspect" if self.waiting else "")
        return f"{self.disc.code}: {self.score:.2g} points, {count} ({parts})"

    def shortage(self, rows: int) -> str | None:
        """Say what is missing for so many rows and what to do, None when there are enough."""
        return shortage(f"disc {self.disc.code}", rows, self.count, self.waiting)


def rank_discs(case: Case, seed_rate: Quantity | None) -> tuple[Candidate, ...]:
    """Return the discs to hand, the best first; a disc of which there is none is left out.

    Those that wait to be inspected count too, for fewer points: they are what came off last.

    ``seed_rate`` is seeds per area, None when not known: then disc speed gives no points. On a
    tie the disc of which more are to hand comes first, then by code.
    """
    discs = [part for part in case.parts if part.sort == "disc"]
    counted = [
        (disc, to_hand(case, "disc", disc.code), to_inspect(case.shelf, disc.code))
        for disc in discs
    ]
    there = [one for one in counted if one[1] + one[2] > 0]
    speeds = {disc.code: _speed(case, disc, seed_rate) for disc, _, _ in there}
    known = [float(speed.magnitude) for speed in speeds.values() if speed is not None]
    slowest = min(known, default=0.0)
    ranked = [
        Candidate(
            disc,
            count,
            waiting,
            speeds[disc.code],
            _points(case, disc, (count, waiting), speeds, slowest),
        )
        for disc, count, waiting in there
    ]
    return tuple(sorted(ranked, key=lambda one: (-one.score, -one.count, one.disc.code)))


def answer_disc(case: Case, candidates: Sequence[Candidate], proved: str | None = None) -> Answer:
    """Return the best disc for a case by score alone; without one that suits, no proposal.

    A disc that others are marked for, or whose hole lets the seed through, is not proposed.
    """
    fit = [one for one in candidates if _can_serve(one, case)]
    told = "\n".join(one.text for one in candidates)
    if not fit:
        why = f"No disc to hand suits {case.name}."
        return no_ground(RULE, why, {Trust.RECORD: told.replace("\n", "; ")})
    best, wanted = fit[0], len(case.rows)
    short = best.shortage(wanted)
    cautions = () if short is None else (short,)
    good = [point.why for point in best.points if point.gives > 0]
    why = f"{best.disc.name} scores best of {len(candidates)} to hand: {'; '.join(good[:2])}."
    source = "your shelf, scored; the points name what stands behind them"
    reason = reasoned(
        RULE,
        why,
        source,
        Trust.RECORD,
        how=told,
        inputs=_inputs(case, best),
        cautions=cautions,
        says={
            Trust.RECORD: f"{best.disc.code}, {best.score:.2g} points"
            + (f"; proved in “{proved}”" if proved else ""),
            Trust.PUBLISHED: _printed(case),
        },
    )
    return Answer(best.disc.code, reason, warnings=cautions)


def _can_serve(one: Candidate, case: Case) -> bool:
    marked = not one.disc.suits or bool(one.disc.suits & case.crop.keys)
    share = hole_share(case, one.disc)
    known = bool(one.disc.suits) or one.disc.seed_from is not None or share is not None
    return marked and known and (share is None or share < LETS_THROUGH)


def hole_share(case: Case, disc: Part) -> float | None:
    """Return the disc's hole over the width of the seed, None when either is unknown."""
    if disc.hole is None or case.size is None or case.size.width is None:
        return None
    return float((disc.hole / case.size.width).to("count").magnitude)


def _speed(case: Case, disc: Part, seed_rate: Quantity | None) -> Quantity | None:
    if disc.cells is None or seed_rate is None:
        return None
    speed = rate.disc_speed_at(seed_rate, case.row_spacing, case.job.speed, disc.cells)
    return speed.to("rpm")


def _points(
    case: Case,
    disc: Part,
    counts: tuple[int, int],
    speeds: dict[str, Quantity | None],
    slowest: float,
) -> tuple[Point, ...]:
    found = {**_proved(case, disc), **_suits(case, disc), **_seed_range(case, disc)}
    found |= {"hole": _hole(case, disc)} if hole_share(case, disc) is not None else {}
    found["count"] = _enough(*counts, len(case.rows))
    points = [_point(case, matter, finding) for matter, finding in found.items()]
    speed = speeds[disc.code]
    if speed is not None and slowest > 0:
        turns = float(speed.magnitude)
        slow = _point(case, "disc speed", "slowest", slowest / turns)
        told = f"turns {show(speed, 'disc_speed', case.units)} with {disc.cells} cells: {slow.why}"
        points.append(Point(slow.gives, told, slow.source))
    mounted = mounted_rows(case, "disc", disc.code) / case.planter.rows
    if mounted:
        points.append(_point(case, "mounted", "all", mounted))
    return tuple(point for point in points if point.gives)


def _enough(count: int, waiting: int, rows: int) -> str:
    if count >= rows:
        return "enough"
    return "enough once inspected" if count + waiting >= rows else "short"


def _point(case: Case, matter: str, finding: str, share: float = 1.0) -> Point:
    rule = case.crop.rules.first("disc", {"matter": matter, "finding": finding})
    if rule is None:
        return Point(0.0, "")
    return Point(rule.gives * share, rule.why, rule.source)


def _proved(case: Case, disc: Part) -> dict[str, str]:
    proved = proof_of(case, "disc")
    if proved is not None and proved.values.get("disc") == disc.code:
        return {"record": "proved"}
    return {}


def _suits(case: Case, disc: Part) -> dict[str, str]:
    if not disc.suits:
        return {}
    return {"suits": "this crop" if disc.suits & case.crop.keys else "another crop"}


def _seed_range(case: Case, disc: Part) -> dict[str, str]:
    if case.size is None or (disc.seed_from is None and disc.seed_to is None):
        return {}
    seed = case.size.diameter
    inside = (disc.seed_from is None or seed >= disc.seed_from) and (
        disc.seed_to is None or seed <= disc.seed_to
    )
    return {"seed range": "inside" if inside else "outside"}


def _hole(case: Case, disc: Part) -> str:
    share = hole_share(case, disc) or 0.0
    if share >= LETS_THROUGH:
        return "lets through"
    if share > HOLE_TO:
        return "large"
    return "small" if share < HOLE_FROM else "fits"


def _inputs(case: Case, best: Candidate) -> tuple[Input, ...]:
    size, units = case.size, case.units
    seed = f"{show(size.diameter, 'seed_size', units)}, {size.says}" if size else "not known"
    turns = show(best.speed, "disc_speed", units) if best.speed is not None else "not known"
    return (
        Input("crop", case.crop.name),
        Input("seed size", seed),
        Input("rows", str(len(case.rows))),
        Input("disc speed", turns),
    )


def _printed(case: Case) -> str:
    figure = case.crop.best("hole")
    if figure is None:
        return "no disc; a hole must be smaller than the seed (LSU AgCenter 2005)"
    return f"hole of {show(figure.middle, 'seed_size', case.units)} ({figure.source})"
