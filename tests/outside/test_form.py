"""How much of form is seen: faults of form set into found prose and into whole articles.

Source: open-access articles of PLOS, the academic prose of GUM, student drafts, papers and answers; what the checks say
of the same texts as they stand was read alarm by alarm (``tools/measuring``, ``docs/decisions/0085``).
"""

from __future__ import annotations

import importlib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

TOOLS = Path(__file__).resolve().parents[2] / "tools"
SETS = [f"data/{name}" for name in "articles-jats sentences student-drafts student-papers near-copies".split()]
SEEN = {
    "mark-spacing": 0.80,
    "dash": 0.75,
    "mark-unpaired": 0.75,
    "quotation-stop": 0.90,
    "numeral-opening": 0.75,
    "exhibit-mention": 0.75,
}
"""The least share of the faults set that is seen."""


@pytest.fixture(scope="module")
def tally(outside_data: Callable[[str], Path]) -> Any:
    """What was set, and what of it was seen."""
    for name in SETS:
        outside_data(name)
    with pytest.MonkeyPatch.context() as patch:
        patch.syspath_prepend(str(TOOLS))
        tally = importlib.import_module("measuring.tally").Tally("faults of form")
        importlib.import_module("measuring.form_faults").measure_form(tally, 0.5)
        importlib.import_module("measuring.form_papers").measure_papers(tally, 0.5)
    return tally


@pytest.mark.parametrize("check", SEEN)
def test_faults_of_form_are_seen(tally: Any, check: str) -> None:
    """Most of the faults that the rule names, set at places taken at random."""
    seen, spoiled = tally.seen[check], tally.spoiled[check]
    print(f"\n{check}: {seen} of {spoiled} faults seen; {tally.right[check]} of {tally.alarms[check]} alarms right")
    assert seen >= SEEN[check] * spoiled
