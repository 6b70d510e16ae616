"""From a late requirement's values, as they were read or corrected, to the rule that they state."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Mapping

from fairhand.model.late_rule import LateRule, LateUnit, LossUnit, Tier
from fairhand.model.requirement import Value

_TIER = re.compile(r"(?P<amount>\d{1,3}(?:\.\d{1,2})?) (?P<how>each|in all)(?: to (?P<to>\d{1,4}))?")


def write_tier(tier: Tier) -> str:
    """A tier as one of a requirement's values.

    >>> write_tier(Tier(10, to=1)), write_tier(Tier(20, to=7, in_all=True))
    ('10 each to 1', '20 in all to 7')
    """
    return f"{tier.amount:g} {'in all' if tier.in_all else 'each'}{f' to {tier.to}' if tier.to else ''}"


def read_tier(written: str) -> Tier | None:
    """The tier that a value states; None where it is none."""
    match = _TIER.fullmatch(written.strip())
    if not match:
        return None
    return Tier(float(match["amount"]), int(match["to"]) if match["to"] else None, match["how"] == "in all")


def late_rule_of(values: Mapping[str, Value]) -> LateRule | None:
    """The rule that a late requirement's values state; None where they state none that can be reckoned with.

    A percentage is of the total where the sheet does not say of what: the harsher reading.

    >>> late_rule_of({"penalty": 5, "unit": "percent", "per": "day", "days": "working", "refused_after_days": 5})
    LateRule(tiers=(Tier(amount=5.0, to=None, in_all=False),), unit='percent of the total', per='working day', \
compound=False, day_starts=None, grace_minutes=0, refused_after=5.0, refused_in='working day', floor=0.0, cap=None)
    """
    tiers = _tiers(values)
    refused, refused_in = _refusal(values)
    cap = _number(values.get("cap"))
    if not tiers and refused is None and cap is None:
        return None
    return LateRule(
        tiers=tiers,
        unit=_unit(values),
        per=_per(values),
        compound=values.get("compound") is True,
        day_starts=_hour(values.get("day_from")),
        grace_minutes=int(_number(values.get("grace_minutes")) or 0),
        refused_after=refused,
        refused_in=refused_in,
        floor=_number(values.get("floor")) or 0.0,
        cap=cap,
    )


def _number(value: Value) -> float | None:
    return float(value) if isinstance(value, int | float) and not isinstance(value, bool) else None


def _tiers(values: Mapping[str, Value]) -> tuple[Tier, ...]:
    written = values.get("tiers")
    tiers = tuple(tier for each in written if (tier := read_tier(each))) if isinstance(written, tuple) else ()
    penalty = _number(values.get("penalty"))
    most = _number(values.get("at_most"))
    if len(tiers) < 2:
        tiers = (Tier(penalty),) if penalty else ()
    if most and penalty and len(tiers) == 1:
        units = int(most // penalty)
        tiers = (Tier(penalty, to=units), Tier(most, in_all=True)) if units else (Tier(most, in_all=True),)
    return tiers


def _unit(values: Mapping[str, Value]) -> LossUnit:
    match values.get("unit"):
        case "points":
            return "points"
        case "grade-step":
            return "grade steps"
    return "percent of the mark" if values.get("of") == "mark" or values.get("compound") else "percent of the total"


def _per(values: Mapping[str, Value]) -> LateUnit:
    per = values.get("every") or values.get("per")
    match "day" if per == "once" and len(_tiers(values)) > 1 else per:
        case "hour":
            return "hour"
        case "week":
            return "week"
        case "once":
            return "once"
    return "working day" if values.get("days") == "working" else "day"


def _refusal(values: Mapping[str, Value]) -> tuple[float | None, LateUnit]:
    hours = _number(values.get("refused_after_hours"))
    if hours is not None:
        return hours, "hour"
    days = _number(values.get("refused_after_days"))
    return days, "working day" if days and values.get("days") == "working" else "day"


def _hour(value: Value) -> dt.time | None:
    try:
        return dt.time.fromisoformat(value) if isinstance(value, str) else None
    except ValueError:
        return None
