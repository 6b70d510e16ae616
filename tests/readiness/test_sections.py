"""Sections that the sheet asks for."""

from __future__ import annotations

import pytest

from fairhand.model.paper import Paper
from fairhand.model.requirement import Requirement
from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.checks import section_missing
from fairhand.readiness.verdicts import element

PLAIN = "# Tolls\n\nThe gate was shut. Nobody asked why.\n\nIt stayed shut.\n"
HEADED = "# Tolls\n\nThe gate was shut.\n\n## The Keeper\n\nHe slept.\n"


def asked(what: str) -> Requirement:
    """The demand for an element."""
    return Requirement("element", {"what": what}, f"a {what}", Span(0, len(what) + 2), id=f"element.{what}")


def analyse(draft: str, what: str) -> Analysis:
    """The analysis of a draft whose sheet asks for one element."""
    return Analysis(Paper("p", draft, requirements=(asked(what),)), lambda _: None)


@pytest.mark.parametrize(
    ("draft", "what", "state"),
    [
        (PLAIN, "conclusion", "ask"),
        (HEADED, "conclusion", "unmet"),
        (HEADED + "\n## Conclusion\n\nShut.\n", "conclusion", "met"),
        (HEADED, "introduction", "met"),
        ("# Tolls\n\n## The Keeper\n\nHe slept.\n", "introduction", "unmet"),
        (PLAIN, "abstract", "unmet"),
    ],
)
def test_only_a_paper_with_headings_heads_its_parts(draft: str, what: str, state: str) -> None:
    """An essay without headings may have any part; an introduction needs no heading in any paper."""
    assert element.judge(asked(what), analyse(draft, what)).state == state


def test_a_part_that_is_missing_is_a_finding_like_any_section() -> None:
    """Whether the sheet calls it a section or merely wants it."""
    assert [remark.weight for remark in section_missing.find(analyse(HEADED, "conclusion"))] == ["must"]
    assert list(section_missing.find(analyse(PLAIN, "conclusion"))) == []
