"""How loud each check may be, by its measured precision.

``measured.toml`` holds, for each check, how many of its alarms were read and how many were right, and on what. A check
speaks as a *must* or *should* only where the lower bound of its precision is .80 or more over at least twenty alarms,
as a *query* above .60, and otherwise stays silent. A check that only reads off what stands in the file (an aside is
left, the words are too many) cannot be wrong about it, and is marked ``exact``.
"""

from __future__ import annotations

import math
import tomllib
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from typing import Any

from fairhand.model.finding import Weight

LOUD = 0.80
ASKS = 0.60
FEWEST_ALARMS = 20
Z_95 = 1.959963984540054


def wilson_lower_bound(right: int, alarms: int) -> float:
    """The lower end of the 95 % interval of a precision.

    Source: E. B. Wilson, "Probable Inference", Journal of the American Statistical Association 22 (1927).

    >>> round(wilson_lower_bound(20, 20), 3)
    0.839
    """
    if alarms == 0:
        return 0.0
    share, z2 = right / alarms, Z_95**2
    middle = share + z2 / (2 * alarms)
    spread = Z_95 * math.sqrt(share * (1 - share) / alarms + z2 / (4 * alarms**2))
    return (middle - spread) / (1 + z2 / alarms)


def loudest_allowed(check: str) -> Weight | None:
    """The loudest weight that the check has earned, or None where it has earned none."""
    row = measured_table().get(check)
    if row is None:
        return None
    return "must" if row.get("exact") else loudest_earned(row["right"], row["alarms"])


def loudest_earned(right: int, alarms: int) -> Weight | None:
    """The loudest weight that so many right alarms of so many earn; None where the check is to be silent.

    >>> loudest_earned(20, 20), loudest_earned(19, 19), loudest_earned(15, 20), loudest_earned(60, 75)
    ('must', 'query', None, 'query')
    """
    bound = wilson_lower_bound(right, alarms)
    if bound >= LOUD and alarms >= FEWEST_ALARMS:
        return "must"
    return "query" if bound > ASKS else None


@cache
def measured_table() -> Mapping[str, Mapping[str, Any]]:
    """The rows of ``measured.toml``."""
    return tomllib.loads(files("fairhand.readiness").joinpath("measured.toml").read_text("utf-8"))
