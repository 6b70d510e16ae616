"""What other programs may rely on in a verdict."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

CONTRACT = ("verdict", "pages", "words", "requirements", "findings")
"""The keys that other programs rely on, in their order."""
OF_FINDING = ("check", "pass", "weight", "start", "end", "line", "quote", "says", "source")
"""The keys of a finding there."""


def as_contract(told: Mapping[str, Any]) -> dict[str, Any]:
    """What other programs rely on, and nothing more."""
    answer = {key: told[key] for key in CONTRACT}
    answer["findings"] = [{key: finding[key] for key in OF_FINDING} for finding in told["findings"]]
    return answer
