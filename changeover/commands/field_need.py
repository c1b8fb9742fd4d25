"""``changeover field-need``: seed, packages and fills of a planter, lot and field in a store."""

import argparse

from changeover.commands.arguments import Parsers, add_job
from changeover.commands.figures import add_why, write_figures
from changeover.commands.job_arguments import add_job_arguments, opened, read_job

# The figures on need begin so; those of a lot that shares the planter end in its number.
KEYS = (
    *("seeds_needed", "mass_needed", "packages_needed", "dry_lubricant", "tank_seeds"),
    *("tank_packages", "fill_seeds", "fills", "run_out_area", "run_out_time", "stops_for_seed"),
)


def add(parsers: Parsers) -> None:
    """Add the command and its arguments."""
    summary = "Reckon seed, packages and fills for each tank of a planter in a store."
    parser = add_job(parsers, "field-need", summary, run)
    add_job_arguments(parser)
    add_why(parser)


def run(args: argparse.Namespace) -> int:
    """Write the answer; raises Refusal for a name that the store does not have."""
    from changeover.desk.look_up import propose_for
    from changeover.quantities import Units

    units = Units(args.units)
    with opened(args) as store:
        job = read_job(args, store, units)
        proposal = propose_for(store, args.planter, job, units)
    wanted = [one for one in proposal.figures if one.key.startswith(KEYS)]
    notes = [one.reason.why for one in wanted if one.key.startswith("stops_for_seed")]
    write_figures(wanted, units, as_json=args.json, why=args.why, notes=notes)
    return 0
