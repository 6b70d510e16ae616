"""The form of the writer's own prose: marks, dashes, ranges, numerals, headings."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.copyedit.form_headings import find_empty_sections, find_lone_subsections
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.finding import Finding
from fairhand.model.paper import Paper
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import run_checks
from fairhand.readiness.table import CHECKS

FORM = ("mark-spacing", "dash", "range-hyphen", "numeral-opening", "heading-alone")


def findings_in(draft: str, style: str = "apa-7", named: tuple[str, ...] = FORM) -> list[Finding]:
    """What the checks of form say of a draft."""
    checks = [check for check in CHECKS if check.name in named]
    return list(run_checks(Analysis(Paper("p", draft, style=style), lambda _: None), checks, allowed=lambda _: "must"))


def marked(draft: str, check: str, style: str = "apa-7") -> list[str]:
    """The words that one check marks."""
    return [f.span.of(draft) for f in findings_in(draft, style, (check,)) if f.span is not None]


@pytest.mark.parametrize(
    ("draft", "told"),
    [
        ("The tide rose , and fell.", ["rose ,"]),
        ("The tide rose .", ["rose ."]),
        ("It rose,then it fell.", ["rose,then"]),
        ("It rose at night.The quay stood dry.", ["night.The"]),
        ("It rose ( by a foot), it seems.", ["( "]),
        ("It rose,, and fell.", ["rose,,"]),
        ("It rose and fell..", ["fell.."]),
        ("It rose . . . and fell.", []),
        ("It rose ... and fell.", []),
        ("A ratio of 1 : 2, or 1,200 men, at 10:30.", []),
        ("See www.tides.org,and `x ,y` too.", []),
        ("She wrote “it rose ,then fell” there.", []),
        ("e.g., the U.S.A. and Node.js, v1.2.3 and file.Txt", []),
        ("The tide(s) rose [sic] and fell.", []),
        ("It rose [NB: true?], and fell.", []),
        ("> It rose ,then fell.", []),
    ],
)
def test_marks_are_set_close(draft: str, told: list[str]) -> None:
    """Common practice: no blank before a mark, one after it; quotations, code, ratios and points of omission let be."""
    assert marked(draft, "mark-spacing") == told


@pytest.mark.parametrize(
    ("draft", "told"),
    [
        ("The tide - so they said - fell.", [" - ", " - "]),
        ("It fell by 3 - 4 feet; model A - B; a well-known tide.", []),
        ("The tide -- so they said --- fell — again – there.", []),
        ("- a list\n- of things", []),
        ("“The tide - so they said - fell.”", []),
    ],
)
def test_a_hyphen_is_no_dash(draft: str, told: list[str]) -> None:
    """APA 7, 6.6 (from memory); figures, codes and what the fair copy sets right are let be."""
    assert marked(draft, "dash") == told


@pytest.mark.parametrize(
    ("draft", "told"),
    [
        ("From 1914-1918 and 1914-18 it fell.", ["1914-1918", "1914-18"]),
        ("A rise of 20-30 percent.", ["20-30"]),
        ("On pp. 315-16 of the log.", ["315-16"]),
        ("By ISO 639-3, on 555-1234, in 1914–1918, 2019-05-12.", []),
        ("A vote of 7-2, and COVID-19.", []),
    ],
)
def test_a_range_has_an_en_dash(draft: str, told: list[str]) -> None:
    """APA 7, 6.6 (from memory): between the ends of a range; MLA 9 has the hyphen there."""
    assert marked(draft, "range-hyphen") == told
    assert marked(draft, "range-hyphen", "mla-9") == []


@pytest.mark.parametrize(
    ("draft", "told"),
    [
        ("The men rested. 40 men came along.", ["40"]),
        ("45% of the men came along.", ["45%"]),
        ("The men rested. 1914 was a dry year.", []),
        ("It stood on p. 40 of the log book.", []),
        ("The men rested. 9 For example, they sat.", []),
        ("1. The men rested all day.\n2. They came along.", []),
        ("2,4-D was used on the fields, and 5-HT too.", []),
    ],
)
def test_no_sentence_opens_with_a_numeral(draft: str, told: list[str]) -> None:
    """APA 7, 6.33 (from memory); years, lists and notes let be."""
    assert marked(draft, "numeral-opening") == told


def test_headings_have_something_under_them() -> None:
    """A heading with neither text nor heading under it is told; the list of works, which is made, is not."""
    draft = "# T\n\n## A\n\n### B\n\nText.\n\n### C\n\n## D\n\n![x](y.png)\n\n## References\n"
    assert marked(draft, "heading-alone") == ["C"]
    assert [title for _, title in find_empty_sections(read_manuscript("## A\n\n> q\n\n## B\n"))] == ["B"]


def test_one_subsection_is_asked_about() -> None:
    """MLA 9, 1.5 (from memory): a section with a single subsection; a query, and never of the paper's title."""
    draft = "# T\n\n## A\n\nText.\n\n### B\n\nText.\n\n## C\n\nText.\n\n### D\n\nText.\n\n### E\n\nText.\n"
    (found,) = findings_in(draft, named=("heading-alone",))
    assert (found.weight, found.span and found.span.of(draft)) == ("query", "B")
    assert not list(find_lone_subsections(read_manuscript("# T\n\n## A\n\nText.\n\n### References\n\nText.\n")))


@given(st.text(alphabet="ab.,;: -()[]“”\"'’0123456789\n#>*A|^%", max_size=80))
def test_any_text_is_looked_through(draft: str) -> None:
    """Places lie within the draft, and so does what is put in instead."""
    for finding in findings_in(draft):
        assert finding.span is not None
        assert 0 <= finding.span.start < finding.span.end <= len(draft)
        assert all(0 <= one.span.start <= one.span.end <= len(draft) for one in finding.instead)
