"""A whole bench run and the advice that follows from it."""

from changeover.proof.advice import Symptom
from changeover.proof.bench import BenchCount, BenchLimits, Standing
from changeover.proof.bench_report import BenchPlan, report_bench
from changeover.proof.findings import Weight
from changeover.proof.verdict_findings import bench_findings

LIMITS = BenchLimits(0.9, 0.02, 0.02)


def run(*skips: int, doubles: int = 1, cells: int = 600) -> list[BenchCount]:
    return [BenchCount(i + 1, cells, n, doubles) for i, n in enumerate(skips)]


def test_one_bad_row_is_a_fault_of_that_row() -> None:
    report = report_bench(run(3, 4, 40, 2, 3, 4), LIMITS)
    assert report.symptoms[3] == (Symptom.SKIPS_ODD,)
    assert report.symptoms[1] == ()
    assert [one.row for one in bench_findings(report)] == [3]


def test_skips_everywhere_are_a_fault_of_all() -> None:
    report = report_bench(run(40, 41, 39, 42, 40, 38), LIMITS)
    assert all(report.symptoms[row] == (Symptom.SKIPS_ALL,) for row in range(1, 7))
    assert "vacuum" in bench_findings(report)[0].advice[0].text


def test_skips_and_doubles_together_are_said_first() -> None:
    counts = [*run(3, 4, 2, 3), BenchCount(5, 600, 40, 40)]
    assert report_bench(counts, LIMITS).symptoms[5][0] is Symptom.SKIPS_AND_DOUBLES


def test_a_short_run_is_only_to_watch() -> None:
    report = report_bench(run(0, 0, 0, cells=100), LIMITS)
    assert report.too_short == (1, 2, 3)
    assert {one.weight for one in bench_findings(report)} == {Weight.WATCH}


def test_the_plan_follows_what_is_to_be_told_apart() -> None:
    wide = report_bench(run(0, 0), LIMITS, plan=BenchPlan(0.02, 0.10)).plan
    assert wide.cells < report_bench(run(0, 0), LIMITS).plan.cells


def test_all_cells_together_are_judged_too() -> None:
    overall = report_bench(run(3, 5, 4), LIMITS).overall
    assert (overall.count.cells, overall.count.skips) == (1800, 12)
    assert overall.skip.standing is Standing.WITHIN


def test_every_advice_names_its_source() -> None:
    report = report_bench(run(3, 4, 40, 2), LIMITS)
    assert all(one.source.text for found in bench_findings(report) for one in found.advice)
