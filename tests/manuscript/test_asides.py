"""Asides and TKs, told from other brackets."""

from __future__ import annotations

import pytest

from fairhand.manuscript.draft import read_manuscript


def left(text: str) -> tuple[list[str], list[str]]:
    """The asides and the TKs of a draft, as they stand there."""
    draft = read_manuscript(text)
    return [each.span.of(text) for each in draft.asides], [each.span.of(text) for each in draft.placeholders]


@pytest.mark.parametrize(
    ("text", "aside"),
    [
        ("So [NB: ask] it is.", "[NB: ask]"),
        ("[NB: ask](http://a.org) it is.", "[NB: ask]"),
        ("[NB: ask](p. 4)", "[NB: ask]"),
        ("[NB: ask]: http://a.org 'x'", "[NB: ask]"),
        ("> [NB: ask]: quoted", "[NB: ask]"),
        ("[NB]: http://a.org", "[NB]"),
        ("A [nb: which\nof [the] two?] B", "[nb: which\nof [the] two?]"),
        ("> A [NB: which\n> of them] B", "[NB: which\n> of them]"),
        ("“He said [N.B. check] so.”", "[N.B. check]"),
        ("# Title [n.b. better?]", "[n.b. better?]"),
        ("A \\[NB: from a word processor\\] B", "\\[NB: from a word processor\\]"),
        ("A [**NB:** bold] B", "[**NB:** bold]"),
        ("A [NB: never closed (Orr 3)\n\nB", "[NB: never closed (Orr 3)"),
        ("| a |\n|---|\n| [NB: cell] |", "[NB: cell]"),
        ("A.[^1]\n\n[^1]: [NB: in a note]", "[NB: in a note]"),
        ("- [NB: x] item", "[NB: x]"),
    ],
)
def test_a_labelled_bracket_is_an_aside_wherever_it_stands(text: str, aside: str) -> None:
    """It is found before a parenthesis, before a colon, over lines, in headings, notes, cells and quotations."""
    assert left(text) == ([aside], [])


@pytest.mark.parametrize(
    "text",
    [
        "[sic]",
        "[emphasis added]",
        "[…]",
        "[A]fter",
        "[his] own",
        "[NBC] news",
        "[Nbar]",
        "`[NB: code]`",
        "```\n[NB: x]\nTK\n```",
    ],
)
def test_other_brackets_are_no_asides(text: str) -> None:
    """The bracketed insertions of the manuals, names that begin alike, and code stay what they are."""
    assert left(text) == ([], [])


@pytest.mark.parametrize(
    ("text", "matter"),
    [
        ("After TK minutes.", "TK"),
        ("It cost $TK.", "$TK"),
        ("TKTK", "TKTK"),
        ("In 18TK, then.", "TK"),
        ("(Orr, TK)", "TK"),
        ("**TK**", "TK"),
        ("A [TK: figure] B", "[TK: figure]"),
        ("[TK]: http://a.org", "[TK]"),
        ("[tk source](http://a.org)", "[tk source]"),
        ("\\[TK\\]", "\\[TK\\]"),
        ("“a TK b”", "TK"),
    ],
)
def test_matter_to_come_is_found(text: str, matter: str) -> None:
    """TK as a word in capitals, with a currency sign or a century before it, or labelled in a bracket."""
    assert left(text) == ([], [matter])


@pytest.mark.parametrize(
    "text", ["A TKO.", "tk", "TK-421", "TK_1", "`TK`", "http://a.org/TK", "<https://TK.org>", "T K"]
)
def test_other_words_are_no_matter_to_come(text: str) -> None:
    """Names that hold the letters, code and addresses are left alone."""
    assert left(text) == ([], [])


def test_an_abbreviation_that_the_draft_explains_is_no_matter_to_come() -> None:
    """Where a draft says what TK stands for, only the labelled form is matter to come."""
    assert left("Thymidine kinase (TK) was high; TK fell. [TK: units]") == ([], ["[TK: units]"])
