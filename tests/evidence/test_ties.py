"""What ties two sources, and what does not."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.evidence.independence import find_dependences
from fairhand.evidence.recurring import find_figure, find_wording
from fairhand.evidence.relying import says_it_relies
from fairhand.evidence.reprinting import find_reprint, share_printed
from fairhand.evidence.same_study import find_same_study
from fairhand.model.entry import Entry, Issued, Name
from fairhand.model.source import Page, SourceText

MOORINGS = (
    "The moorings of the lower quay were let by the week until the winter of 1908, when the harbour master, who had "
    "lost patience with the pilots, closed the book for good. Of the 412 boats that paid dues in that year fewer than "
    "half returned, and the rest lay on the mud below the mill. "
)
OTHER = (
    "Nothing about the upper valley suggests a quarrel between farmers; they drained the meadows together, and shared "
    "what the spring floods had left of the hay among nineteen households. "
)
LONG = " ".join(
    f"The {n}th keeper of the lamp wrote {n * 7} lines of weather, and signed each with a mark." for n in range(30)
)
ENTRIES = {
    "ask": Entry("ask", "book", "The Tide and the Town", authors=(Name("Ask", "Berit"),), issued=Issued(1990)),
    "moe": Entry("moe", "book", "Salt and Bread in the Valley", authors=(Name("Moe", "Dag"),), issued=Issued(2003)),
    "mu": Entry("mu", "book", "Hay", authors=(Name("Mu", "Li"),), issued=Issued(2011)),
}


def text(i: str, *pages: str) -> SourceText:
    """A source."""
    return SourceText(i, tuple(Page(str(n + 1), words) for n, words in enumerate(pages)), paged=True)


def kinds(**texts: str) -> list[str]:
    """How the sources of these texts are tied."""
    given = {i: text(i, words) for i, words in texts.items()}
    return [tie.kind for tie in find_dependences(list(texts), ENTRIES, given)]


def test_sentences_that_rest_on_what_they_cite_are_told_from_those_that_cite() -> None:
    """Of seventy of each, written before the signs for them were widened; on first sight 39 of the 70 were seen.

    **Source**: sentences of our own.
    """
    lines = (Path(__file__).parent / "relying.txt").read_text("utf-8")
    relying, citing = (part.split("\n")[1:] for part in lines.strip().split("\n\n"))
    seen, wrong = sum(map(says_it_relies, relying)), sum(map(says_it_relies, citing))
    print(f"\n{seen} of {len(relying)} that rest seen, {wrong} of {len(citing)} that cite taken for them")
    assert (len(relying), len(citing)) == (70, 70)
    assert seen >= 0.85 * len(relying)
    assert wrong <= 0.02 * len(citing)


def test_a_citation_with_words_or_a_figure_of_the_cited_is_a_tie() -> None:
    """Either recurs in running words of both; the citation alone, or the words alone, are none."""
    cites = "Ask (1990) is the best guide to it. "
    words = "Few remember that the harbour master, who had lost patience with the pilots, closed the book for good."
    figure = "Dues were paid by 412 boats in that year, of which fewer than half came back."
    assert kinds(ask=MOORINGS, moe=OTHER + cites) == []
    assert kinds(ask=MOORINGS, moe=OTHER + words) == []
    assert kinds(ask=MOORINGS, moe=OTHER + cites + words) == ["rests"]
    assert kinds(ask=MOORINGS, moe=OTHER + cites + figure) == ["rests"]
    given = {"ask": text("ask", MOORINGS), "moe": text("moe", OTHER, cites + words)}
    (tie,) = find_dependences(["ask", "moe"], ENTRIES, given)
    assert tie.here is not None
    assert tie.there is not None
    assert (tie.here.page, tie.there.page) == ("2", "1")
    assert "who had lost patience" in tie.here.words
    assert "who had lost patience" in tie.there.words


@pytest.mark.parametrize(
    "said",
    [
        "“The harbour master, who had lost patience with the pilots, closed the book for good” (Ask, 1990).",
        "As Ask (1990) says, 412 letters survive from the bishop, and few are dated.",
        "The count in Ask (1990) was made in 1908.",
    ],
)
def test_a_quotation_and_a_chance_figure_are_no_tie(said: str) -> None:
    """What is set off as another's words is no second witness; nor is a number of something else, nor a year."""
    assert kinds(ask=MOORINGS, moe=OTHER + said) == []


def test_lists_of_references_do_not_tie() -> None:
    """Two works may list the same third one, word for word."""
    listed = (
        "References\nPenrow, J. (1931). The minute book of the quaymen of the lower harbour. Waterside, 4, 12-19.\n"
    )
    a, b = f"{MOORINGS}\n{listed}", f"{OTHER * 2}Ask (1990) thinks so.\n{listed}"
    assert kinds(ask=a, moe=b) == []


def test_notices_and_titles_are_no_wording() -> None:
    """What every issue prints, and the title by which a work is cited, tell nothing."""
    notice = (
        "This is an article distributed under the terms of a license, which permits unrestricted use with credit given."
    )
    assert find_wording(text("a", MOORINGS + notice), text("b", OTHER + notice)) is None
    title = "A long and winding history of the moorings below the old mill of the town"
    assert find_wording(text("a", f"{MOORINGS} {title}."), text("b", f"{OTHER} {title}."), (title,)) is None


def test_numbers_of_notes_are_no_figures() -> None:
    """Two works may cite their forty-fifth note in the same words."""
    a = "Cells were mounted and examined as described previously [45], with care."
    b = "Cells were mounted, then examined as described previously [45], with luck."
    assert find_figure(text("a", a), text("b", b)) is None


def test_one_text_printed_twice_is_one_witness() -> None:
    """Cut by half, under another name; a shared paragraph in a long text is not enough."""
    cut = LONG[len(LONG) // 2 :] + OTHER
    assert kinds(ask=LONG, mu=cut) == ["reprint"]
    assert share_printed(text("a", LONG), text("b", cut)) > 0.5
    assert (
        kinds(ask=LONG + MOORINGS, mu=OTHER * 3 + LONG.replace("keeper", "warden").replace("weather", "sky")[:400])
        == []
    )


def test_a_registered_number_ties_two_reports() -> None:
    """A trial has one number wherever it is reported."""
    a, b = f"{MOORINGS} The trial is registered as NCT00848692.", f"{OTHER} We report on NCT00848692 after a year."
    assert kinds(ask=a, moe=b) == ["same-study"]
    assert kinds(ask=a, moe=b.replace("NCT00848692", "NCT00848693")) == []


def test_a_named_study_ties_where_both_report_it() -> None:
    """Not where one merely knows of it, nor where the name is what any study is called."""
    own = "We used the records of the Calder Hollow Rain Survey for three summers."
    knows = "The Calder Hollow Rain Survey has been much discussed."
    found = find_same_study(text("a", own), text("b", f"{OTHER} Our figures come from the Calder Hollow Rain Survey."))
    assert found is not None
    assert found[0] == "Calder Hollow Rain Survey"
    assert find_same_study(text("a", own), text("b", knows)) is None
    small = "We rely on the Calder Hollow storm-water trial for all our figures."
    assert find_same_study(text("a", small), text("b", "Our results in the Calder Hollow storm-water trial agree."))
    generic = "In this Randomized Controlled Trial we measured the beds."
    assert find_same_study(text("a", generic), text("b", generic)) is None


@given(st.lists(st.text(max_size=400), min_size=2, max_size=2))
def test_no_text_breaks_it(pages: list[str]) -> None:
    """Whatever the sources hold."""
    one, other = (text(str(n), page) for n, page in enumerate(pages))
    assert 0 <= share_printed(one, other) <= 1
    find_wording(one, other)
    find_figure(one, other)
    find_reprint(one, other)
    find_same_study(one, other)


def test_an_unsigned_piece_is_cited_by_what_it_stands_in() -> None:
    """With its year; a body that publishes much is not known by its bare name."""
    courier = Entry("c", "article-newspaper", "Gate", container_title="Valley Courier", issued=Issued(1924))
    board = Entry("d", "report", "Beds", authors=(Name(literal="Drainage Board"),), issued=Issued(2020))
    both = {"c": courier, "d": board, "moe": ENTRIES["moe"]}
    for said, tied in (
        ("The numbers below are taken from the Valley Courier of 10 June 1924.", ["rests"]),
        ("The numbers below are taken from the Valley Courier.", []),
        ("The numbers below are taken from the Drainage Board (2020).", ["rests"]),
        ("The numbers below are taken from a letter to the Drainage Board.", []),
    ):
        given = {i: text(i, MOORINGS) for i in ("c", "d")} | {"moe": text("moe", OTHER + said)}
        cited = "c" if "Courier" in said else "d"
        assert [tie.kind for tie in find_dependences([cited, "moe"], both, given)] == tied, said
