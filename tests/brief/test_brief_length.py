"""Lengths. Wordings: common practice of assignment sheets."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from fairhand.brief.read import read_brief
from fairhand.model.requirement import Value

Reading = Callable[..., list[dict[str, Value]]]


@pytest.mark.parametrize(
    ("text", "unit", "low", "high"),
    [
        ("Write an essay of 1,200 to 1,500 words.", "words", 1200, 1500),
        ("Six to eight pages, double-spaced.", "pages", 6, 8),
        ("The essay must not exceed 3,000 words.", "words", None, 3000),
        ("Length: 2,000 words (plus or minus 10%).", "words", 1800, 2200),
        ("The report should be no fewer than ten pages.", "pages", 10, None),
        ("Not less than 5,000 and not more than 6,000 words in length.", "words", 5000, 6000),
        ("Word limit: 2,500 words", "words", None, 2500),
        ("In a 5-7 page paper, discuss the strike.", "pages", 5, 7),
        ("5-6 pp., due Friday.", "pages", 5, 6),
    ],
)
def test_a_length_is_read(values_of: Reading, text: str, unit: str, low: int | None, high: int | None) -> None:
    """Ranges, limits on either side and tolerances give the least and the greatest number."""
    (length,) = values_of("length", text)
    assert (length["unit"], length["min"], length["max"], length["part"]) == (unit, low, high, "paper")


def test_what_is_not_counted_is_kept_with_the_length(values_of: Reading) -> None:
    """Parts left out of the count are named, whether the phrase leads or trails; included ones are not."""
    (length,) = values_of("length", "Write 2,000 words. Footnotes are included; the bibliography and captions are not.")
    assert length["excludes"] == ("figures", "references")
    (length,) = values_of("length", "Length: 8 pages, not counting the title page or any appendix.")
    assert length["excludes"] == ("appendices", "title-page")


def test_the_sheets_own_rate_is_kept(values_of: Reading) -> None:
    """A stated number of words to the page goes with a length in pages, and is no length itself."""
    (length,) = values_of("length", "The paper runs to 10 pages; reckon 275 words to the page.")
    assert (length["min"], length["words_per_page"]) == (10, 275)


def test_a_part_has_a_length_of_its_own(values_of: Reading) -> None:
    """An abstract's, a proposal's and a reflection's length is not the paper's."""
    lengths = values_of(
        "length", "Proposal (200-300 words): 1 October\nAbstract: 150 words or fewer\n\nEssay: 9 pages."
    )
    assert {(str(v["part"]), v["max"]) for v in lengths} == {("proposal", 300), ("abstract", 150), ("paper", 9)}


@pytest.mark.parametrize(
    "text",
    [
        "Last year's essays ran to 4,000 words.",
        "For Thursday read chapter 4 (30 pages).",
        "The sample paper on the shelf is 11 pages long.",
        "Seminar reading is about 60 pages a week.",
        'Rephrase it: "The price rose." (3 words)',
    ],
)
def test_other_counts_are_no_length(values_of: Reading, text: str) -> None:
    """Readings, samples and other years' papers ask nothing."""
    assert values_of("length", text) == []


def test_what_does_not_count_may_be_said_by_does_not_alone() -> None:
    """The verb stands in the clause before: *X counts; Y does not*."""
    sheet = "900 to 1,200 words. Quotations count; headings and the list of works cited do not."
    (length,) = read_brief([("a.txt", sheet)]).requirements
    assert length.values["excludes"] == ("headings", "references")


@pytest.mark.parametrize(
    ("text", "least"),
    [
        ("I am after 1,500 words.", 1500),
        ("We'd like about 2,000 words.", 2000),
        ("I'm hoping for 1,800 words.", 1800),
        ("Your last essay, of 900 words, will be returned on Friday. Write 1,500 words.", 1500),
        ("The first paper was 800 words and is now marked. This one is to run to 1,200 words.", 1200),
    ],
)
def test_what_a_teacher_hopes_for_is_asked_and_what_lies_behind_is_not(
    values_of: Reading, text: str, least: int
) -> None:
    """A wish gives the length as an order does; the length of a paper that is already marked does not."""
    assert [v["min"] for v in values_of("length", text)] == [least]
