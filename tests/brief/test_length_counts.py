"""What counts toward the length, read off sheets: the wordings are ours, the rules those of the houses named."""

from __future__ import annotations

import datetime as dt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.brief.length_counts import list_excludes, uncounted_parts
from fairhand.brief.read import read_brief
from fairhand.model.requirement import Requirement


def _length(text: str) -> Requirement:
    (length,) = (r for r in read_brief([("a.txt", text)], dt.date(2027, 1, 11)).requirements if r.kind == "length")
    return length


@pytest.mark.parametrize(
    ("text", "uncounted", "counted", "bounds"),
    [
        (  # Exeter, humanities
            "Write 2,000 words: in-text references, notes, quotations count; captions, bibliography, appendix do not.",
            {"captions", "references", "appendices"},
            {"citations", "footnotes", "quotations"},
            (2000, 2000),
        ),
        (  # Auckland, law
            "Word limit: 3,000 words, 5% leeway. All notes and headings count; the abstract and the contents do not.",
            {"abstract", "contents"},
            {"footnotes", "headings"},
            (2850, 3150),
        ),
        (  # Manchester, history of science
            "Write 1,500 words. Everything counts except the bibliography, the title and any appendix; no leeway.",
            {"references", "title-page", "appendices"},
            set(),
            (1500, 1500),
        ),
        (  # UEA and Melbourne, history
            "Length: 2,500 words. Purely bibliographic footnotes do not count toward the word limit.",
            {"bibliographic-notes"},
            set(),
            (2500, 2500),
        ),
        ("Write 2,000 words, including in-text citations but excluding block quotations.", {"block-quotes"},
         {"citations"}, (2000, 2000)),
        ("Write 900 words, in-text references included, notes not counted.", {"footnotes"}, {"citations"}, (900, 900)),
        ("Length: 1,200 words (tolerance 10% above; no lower limit).", set(), set(), (None, 1320)),
        ("Length: 1,200 words. You may exceed this by up to 50 words.", set(), set(), (1200, 1250)),
        ("The word limit is 1,200 words. There is a leeway of 5%.", set(), set(), (None, 1260)),
        ("Length: 1,200 words, +10%/-5%.", set(), set(), (1140, 1320)),
        ("Write 900 words, everything included, the reference list too.", set(), set(), (900, 900)),
    ],
)  # fmt: skip
def test_rules_of_counting_are_read(
    text: str, uncounted: set[str], counted: set[str], bounds: tuple[int | None, int]
) -> None:
    """Each part that the sheet names is counted or not as it says, and the tolerance is in the bounds."""
    values = _length(text).values
    assert set(values["uncounted"]) == uncounted  # type: ignore[arg-type]
    assert counted <= set(values["counted"])  # type: ignore[arg-type]
    assert (values["min"], values["max"]) == bounds


def test_the_list_of_references_counts_only_where_the_sheet_says_so() -> None:
    """It is left out by custom, and counted where the sheet counts it."""
    assert uncounted_parts({}) == {"references"}
    assert uncounted_parts({"counted": ("references",)}) == set()
    assert uncounted_parts({"excludes": ("figures", "headings"), "uncounted": ("captions", "headings")}) == {
        "captions",
        "headings",
        "references",
    }


@given(st.lists(st.sampled_from("captions tables figures citations contents headings references".split())))
def test_the_short_list_is_part_of_the_long_one(names: list[str]) -> None:
    """What a sheet leaves out is left out whether it is read from the exact names or from both lists."""
    exact = tuple(sorted(set(names)))
    assert uncounted_parts({"excludes": list_excludes(exact), "uncounted": exact}) == {*exact, "references"}
