"""The draft set with its marks."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from fairhand.manuscript.draft import read_manuscript
from fairhand.model.finding import Finding, Instead, Wordings
from fairhand.model.span import Span
from fairhand.proof.galley import Galley, Line, Mark, Stretch, mark_findings, set_galley
from fairhand.proof.passages import list_passages
from fairhand.proof.signs import Place, place_marks

PIECES = st.sampled_from(
    ["tide ", "*ebb* ", "**slack** ", "“flow” ", "\n\n", "\n", "> ", "# ", "- ", "`code` ", "[^1]", "\n\n[^1]: note ",
     "| a | b |\n|---|---|\n| c | d |\n", "[NB: when?] ", "(Lind 2) ", "<i>", "```\n", "_"]
)  # fmt: skip
DRAFTS = st.lists(PIECES, max_size=30).map("".join)


def found(text: str, words: str, check: str = "spelling", **more: object) -> Finding:
    """A finding on some words of a text."""
    at = text.index(words)
    return Finding(check, "copy-edit", "should", Span(at, at + len(words)), "", "", **more)  # type: ignore[arg-type]


def every_stretch(galley: Galley) -> Iterator[Stretch]:
    """The stretches of type in the order in which they stand."""

    def within(line: Line) -> Iterator[Stretch]:
        yield from line.stretches
        for child in line.children:
            yield from within(child)
        for row in line.rows:
            for cell in row:
                yield from cell
        yield from line.caption

    for line in galley.lines:
        yield from within(line)
    for note in galley.notes:
        yield from note


def every_beside(lines: tuple[Line, ...]) -> list[tuple[int, int]]:
    """The marks that stand beside blocks."""
    return [key for line in lines for key in (*line.beside, *every_beside(line.children))]


@given(DRAFTS, st.lists(st.tuples(st.integers(0, 200), st.integers(0, 40)), max_size=6))
def test_no_word_and_no_mark_is_lost(text: str, spans: list[tuple[int, int]]) -> None:
    """Whatever is marked, the type reads as it would without marks, and each mark is noted once."""
    manuscript = read_manuscript(text)
    places = [Span(min(a, len(text)), min(a + n, len(text))) for a, n in spans]
    marks = [Mark(n, Finding("spelling", "copy-edit", "must", p, "", ""), (Place(p, "query"),))
             for n, p in enumerate(places)]  # fmt: skip
    plain, marked = set_galley(manuscript, ()), set_galley(manuscript, marks)
    assert "".join(s.text for s in every_stretch(marked)) == "".join(s.text for s in every_stretch(plain))
    noted = [key for s in every_stretch(marked) for key in s.begins] + every_beside(marked.lines)
    assert sorted(noted) == ([(n, 0) for n in range(len(marks))] if marked.lines else [])


@given(DRAFTS)
def test_the_passages_are_apart_and_in_order(text: str) -> None:
    """Each is mended without touching another."""
    spans = list_passages(read_manuscript(text))
    assert all(a.end <= b.start for a, b in pairwise(spans))


def test_a_mark_crosses_emphasis() -> None:
    """The words lie under the mark whatever face they are set in."""
    text = "It was *the Mercury that said* so."
    manuscript = read_manuscript(text)
    (mark,) = mark_findings([(found(text, "was *the Mercury"), None)], manuscript)
    under = [(s.text, s.styles) for s in every_stretch(set_galley(manuscript, [mark])) if s.under]
    assert under == [("was ", ()), ("the Mercury", ("italic",))]


def test_a_block_quotation_is_marked_from_its_first_word() -> None:
    """The marker of the block is no type; the mark is drawn in to the words, over both paragraphs."""
    text = "He said:\n\n> One word.\n>\n> Two words.\n\nEnd."
    manuscript = read_manuscript(text)
    (mark,) = mark_findings([(found(text, "> One word.\n>\n> Two words."), None)], manuscript)
    galley = set_galley(manuscript, [mark])
    assert [s.text for s in every_stretch(galley) if s.under] == ["One word.", "Two words."]


def test_a_footnote_has_its_own_marks() -> None:
    """A mark around a number does not reach into the note, and one in the note is shown there."""
    text = "Rain fell.[^1] It stopped.\n\n[^1]: At noon noon.\n"
    manuscript = read_manuscript(text)
    marks = mark_findings([(found(text, "fell.[^1] It"), None), (found(text, "noon noon"), None)], manuscript)
    galley = set_galley(manuscript, marks)
    assert [[s.text for s in note if s.under] for note in galley.notes] == [["noon noon"]]


def test_the_fewest_words_are_struck() -> None:
    """Of a quotation only what differs is marked, with what the source has in its place."""
    text = "He said, “We put our *faith* in the people,” and left."
    manuscript = read_manuscript(text)
    wordings = Wordings("We put our faith in the people,", "We put our trust in people,", (Span(11, 16), Span(20, 23)),
                        (Span(11, 16),))  # fmt: skip
    finding = found(text, "“We put our *faith* in the people,”", "quotation-differs", wordings=wordings)
    places = place_marks(finding, manuscript)
    assert [(p.span.of(text), p.sign, p.words) for p in places] == [
        ("faith", "substitute", "trust"),
        ("the", "delete", ""),
    ]


def test_words_left_out_have_a_caret() -> None:
    """It stands after the word before the gap, and gives what is missing."""
    text = "It “opens the soil, and leaves channels.”"
    wordings = Wordings("opens the soil, and leaves channels.", "opens the soil, dies back, and leaves channels.", (),
                        (Span(16, 25),))  # fmt: skip
    (place,) = place_marks(found(text, text[3:], "quotation-gap", wordings=wordings), read_manuscript(text))
    assert (text[: place.span.start], place.sign, place.words) == ("It “opens the soil,", "insert", "dies back,")


def test_a_query_is_ringed_and_what_stands_is_dotted() -> None:
    """The ring belongs to questions, whatever the check; a stet has its dots."""
    text = "Lind (2018) says so."
    year = Finding("citation-year", "copy-edit", "query", Span(0, 11), "", "", instead=(Instead(Span(6, 10), "2019"),))
    manuscript = read_manuscript(text)
    assert place_marks(year, manuscript) == (Place(Span(6, 10), "query"),)
    assert place_marks(year, manuscript, stet=True) == (Place(Span(0, 11), "stet"),)


def test_a_question_about_words_left_out_is_ringed_too() -> None:
    """A ring stands round words: where some are missing, round all that are quoted."""
    text = "It “opens the soil, and leaves channels.”"
    wordings = Wordings("opens the soil, and leaves channels.", "opens the soil, dies back, and leaves channels.", (),
                        (Span(16, 25),))  # fmt: skip
    asked = replace(found(text, text[3:], "quotation-gap", wordings=wordings), weight="query")
    assert place_marks(asked, read_manuscript(text)) == (Place(Span(3, len(text)), "query"),)
