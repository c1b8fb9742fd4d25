"""What goes with a worklist as JSON: clean-out, bags of parts, supply by date, who does what."""

from collections.abc import Iterable
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from changeover.desk.plan_switch import WorkView
    from changeover.desk.who_does_what import CrewPlan
    from changeover.switch.supply import Supply


def more_json(view: "WorkView", met: Iterable["Supply"], plan: "CrewPlan | None") -> dict[str, Any]:
    """Return the keys ``clean_out``, ``bags``, ``back``, ``supply`` and ``timetable``."""
    from changeover.commands.timetable import timetable_json

    return {
        "clean_out": _clean_out(view),
        "bags": _bags(view, plan),
        "back": [
            {"part": one.part, "count": one.count, "condition": "inspect"} for one in view.kit.back
        ],
        "supply": [_supply(one) for one in met],
        "timetable": None if plan is None else timetable_json(plan),
    }


def _clean_out(view: "WorkView") -> list[dict[str, Any]]:
    from changeover.desk.clean_outs import clean_outs

    return [
        {
            "tanks": [tank.label for tank in one.tanks],
            "from": one.old or None,
            "to": one.new or None,
            "level": str(one.clean.level),
            "name": one.clean.name,
            "why": one.clean.why,
            "source": one.clean.source,
            "trust": str(one.clean.trust),
            "places": {
                str(place): {
                    "how": [str(how) for how in hows],
                    "steps": list(one.clean.steps.get(place, ())),
                }
                for place, hows in one.clean.places.items()
            },
            "into": one.clean.into,
            "cautions": list(one.clean.cautions),
            "logged": one.clean.logged,
        }
        for one in clean_outs(view)
    ]


def _bags(view: "WorkView", plan: "CrewPlan | None") -> list[dict[str, Any]]:
    from changeover.switch.bags import bags, nobody

    whose = plan.whose() if plan is not None else nobody
    return [
        {
            "place": bag.place.label,
            "person": bag.person or None,
            "parts": [{"part": one.part, "count": one.count} for one in bag.parts],
        }
        for bag in bags(view.progress, whose)
    ]


def _supply(one: "Supply") -> dict[str, Any]:
    return {
        "planter": one.planter,
        "day": one.day.isoformat(),
        "part": one.part,
        "needed": one.needed,
        "sources": [
            {
                "from": source.name,
                "count": source.count,
                "ready": None if source.ready is None else source.ready.isoformat(),
            }
            for source in one.sources
        ],
        "short": one.short,
        "to_inspect": one.to_inspect,
        "order_by": None if one.order_by is None else one.order_by.isoformat(),
    }
