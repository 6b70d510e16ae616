"""How much of form is seen: faults of form set into found prose, into whole articles and into made papers that cite.

Source: open-access articles of PLOS, the academic prose of GUM, student drafts, papers and answers; what the checks say
of the same texts as they stand was read alarm by alarm (``tools/measuring``, ``docs/decisions/0085``).
"""

from __future__ import annotations

import importlib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from fairhand.copyedit.form.page_ranges import misset_ranges, second_number

TOOLS = Path(__file__).resolve().parents[2] / "tools"
SETS = [
    f"data/{name}" for name in "articles-jats sentences student-drafts student-papers near-copies quotations".split()
]
SEEN = {
    "mark-spacing": 0.80,
    "dash": 0.75,
    "mark-unpaired": 0.75,
    "quotation-stop": 0.90,
    "numeral-opening": 0.75,
    "exhibit-mention": 0.75,
    "heading-form": 0.65,
    "citation-stop": 0.90,
    "citation-names": 0.90,
    "citation-form": 0.80,
    "quotation-mechanics": 0.90,
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
        importlib.import_module("measuring.citation_faults").measure_citation_forms(tally, 90)
        importlib.import_module("measuring.mark_faults").measure_marks(tally, 60)
    return tally


@pytest.mark.parametrize("check", SEEN)
def test_faults_of_form_are_seen(tally: Any, check: str) -> None:
    """Most of the faults that the rule names, set at places taken at random."""
    seen, spoiled = tally.seen[check], tally.spoiled[check]
    print(f"\n{check}: {seen} of {spoiled} faults seen; {tally.right[check]} of {tally.alarms[check]} alarms right")
    assert seen >= SEEN[check] * spoiled


@pytest.mark.parametrize("check", ["citation-stop", "citation-names", "citation-form", "quotation-mechanics"])
def test_a_form_that_the_style_has_is_let_be(tally: Any, check: str) -> None:
    """In made papers that cite and quote as the manuals say, nothing else is told than the faults that were set."""
    print(f"\n{check}: {tally.alarms[check] - tally.right[check]} wrong alarms")
    assert tally.right[check] == tally.alarms[check]


PUBLISHED_RANGES = {
    "mla": "69-88 150-59 73-88 194-220 275-98 250-58",
    "apa": "293-296 207-217 1-16 69-96 555-571 115-129 21-27 490-507",
    "chicago": "117-18 247-88 100-104 315-16 167-95 1-34 95-109 165-76 9-10 104-5 66-67 18-21 177-78",
}
"""Ranges in the example references and rules of the manuals, and of library guides that follow them (check-values, 3
and 4)."""


@pytest.mark.parametrize("manual", PUBLISHED_RANGES)
def test_published_ranges_of_pages_are_as_the_manual_has_them(manual: str) -> None:
    """None is told; and each written out in full, where the manual shortens it, is set as published."""
    for published in PUBLISHED_RANGES[manual].split():
        assert misset_ranges(published, manual) == []
        first, _, last = published.partition("-")
        whole = first[: len(first) - len(last)] + last if len(last) < len(first) else last
        assert second_number(int(first), int(whole), manual) == last


def test_a_shortened_range_seen_in_a_guide_to_apa_is_told() -> None:
    """*221-8* as an APA range (check-values, faults seen in real guides)."""
    assert misset_ranges("221-8", "apa") == [("221-8", "221-228")]
