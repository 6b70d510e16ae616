"""Quotations: their marks, their words and their places."""

from __future__ import annotations

import pytest

from fairhand.manuscript.draft import quotation_offsets, read_manuscript


def quoted(text: str) -> list[str]:
    """The words of each quotation."""
    return [quotation.text for quotation in read_manuscript(text).quotations]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ('He said "no" to me.', ["no"]),
        ("He said “no,\nnever” to me.", ["no, never"]),
        ("“She said ‘no’ twice.”", ["She said ‘no’ twice.", "no"]),
        ("\"She said 'no' twice.\"", ["She said 'no' twice.", "no"]),
        ("‘She said “no” twice.’", ["She said “no” twice.", "no"]),
        ('He said "no, "never" again" to me.', ['no, "never" again', "never"]),
        ('("Short Title" 4)', ["Short Title"]),
        ("*“Set in italics”*", ["Set in italics"]),
        ("«Oui», „Ja“ and »doch«.", ["Oui", "Ja", "doch"]),
        ("‹single› marks", ["single"]),
        ("a mark typed “twice“ alike", ["twice"]),
        ('a “mixed" pair', ["mixed"]),
        ("said “[t]he rest [sic] . . . of it”", ["[t]he rest [sic] . . . of it"]),
        ("“Dash”—“dash”", ["Dash", "dash"]),
        ("“One.”[^1] “Two”(Orr 3).", ["One.", "Two"]),
        ("“A [NB: check] B [TK: year], C”", ["A B, C"]),
        ("“five \\* six \\[sic\\]”", ["five * six [sic]"]),
    ],
)
def test_quotation_marks_of_every_kind_are_paired(text: str, expected: list[str]) -> None:
    """Straight and curly, double and single, nested, foreign and mixed marks; markup and remarks inside them vanish."""
    assert quoted(text) == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("The workers’ savings and the dogs’ bowls.", []),
        ("The workers' savings and the dogs' bowls.", []),
        ("’Tis the ’90s; rock ’n’ roll isn’t dead.", []),
        ("'Tis the '90s; rock 'n' roll isn't dead.", []),
        ("‘the workers’ savings’ ran out", ["the workers’ savings"]),
        ("'the workers' savings', he said", ["the workers' savings"]),
        ("‘the cabin’ was cold and ‘the house’ warm", ["the cabin", "the house"]),
        ("‘I’m goin’ to town,’ he said.", ["I’m goin’ to town,"]),
        ('He was 5\'10" tall with a 12" pipe.', []),
        ('A 6\' fence and "a gate".', ["a gate"]),
        ("the depth is 5′10″", []),
        ("O’Brien and D'Arcy", []),
    ],
)
def test_apostrophes_and_measures_are_no_quotation_marks(text: str, expected: list[str]) -> None:
    """Possessives, clipped words, decades, feet and inches are told from single and double marks."""
    assert quoted(text) == expected


def test_a_quotation_that_is_not_closed_ends_at_the_next_of_its_kind() -> None:
    """A closing mark forgotten swallows neither the quotations after it nor the next paragraph."""
    draft = read_manuscript("An “open one (Orr 3). Then “another” (Orr 4).\n\n“Next.”")
    assert [(each.text, each.closed) for each in draft.quotations] == [
        ("open one (Orr 3). Then", False),
        ("another", True),
        ("Next.", True),
    ]


def test_a_quotation_continued_over_paragraphs_opens_again() -> None:
    """Where the mark is repeated and not closed, the first paragraph's quotation runs to its end, not closed."""
    draft = read_manuscript("“First part (it goes on).\n\n“Second part.”")
    assert [(each.text, each.closed) for each in draft.quotations] == [
        ("First part (it goes on).", False),
        ("Second part.", True),
    ]


@pytest.mark.parametrize(
    ("text", "words", "end"),
    [
        ("> It ends. (Orr, 2020, p. 4)", "It ends.", "It ends."),
        ("> It ends? (“Short Title” 4)", "It ends?", "It ends?"),
        ("> It ends (1.2.3–4)", "It ends", "It ends"),
        ("> It (so to speak) ends.", "It (so to speak) ends.", "ends."),
        ("> It ends. (It never began.)", "It ends. (It never began.)", "began.)"),
        ("> It ends.\n>\n> (Orr 4)", "It ends.", "It ends."),
        ("> It ends.\n> — Ada Orr, *Letters*", "It ends.", "It ends."),
        ("> It ends.[^1]", "It ends.", "It ends."),
        ("> lazy\nline", "lazy line", "line"),
        ("> One.\n>\n> Two.", "One. Two.", "Two."),
        ("> a line,  \n> a line\n>\n> a stanza (5–7)", "a line, / a line // a stanza", "a stanza"),
        ("> a line,\\\n> a line", "a line, / a line", "a line"),
    ],
)
def test_a_block_quotation_is_read_without_its_citation(text: str, words: str, end: str) -> None:
    """A parenthesis after the closing point, or with a figure in it, and an attribution are not part of the words."""
    draft = read_manuscript(text)
    (block,) = [each for each in draft.quotations if each.kind == "block"]
    assert block.text == words
    assert block.span.of(text).endswith(end)
    assert block.inner.of(text).startswith(words[:2])


def test_quotations_nest_across_kinds() -> None:
    """A run-in quotation within a block quotation, and a block within a block, know what they stand in."""
    draft = read_manuscript("> He said “no.”\n>\n> > Deeper.\n\nAnd “yes.”")
    assert [(each.kind, each.text, each.within) for each in draft.quotations] == [
        ("block", "He said “no.” Deeper.", None),
        ("run-in", "no.", 0),
        ("block", "Deeper.", 0),
        ("run-in", "yes.", None),
    ]


def test_offsets_lead_back_to_the_characters() -> None:
    """Each character of the words stands in the draft where its offset says, markers and remarks skipped."""
    text = "> An *odd*\r\n> word [NB: x] \\& more. (Orr 3)"
    draft = read_manuscript(text)
    (block,) = draft.quotations
    assert block.text == "An odd word & more."
    found = "".join(text[place] for place in quotation_offsets(draft, block))
    assert found.replace("\r", " ").replace("\\", "&") == block.text


def test_verse_run_in_is_told_by_its_strokes() -> None:
    """Lines parted by a stroke between blanks make verse; a stroke between words does not."""
    draft = read_manuscript("“one line / two lines // stanza” and “and/or”")
    assert [each.verse for each in draft.quotations] == [True, False]
