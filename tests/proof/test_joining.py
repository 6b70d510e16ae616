"""A draft that comes again does not undo what was done here meanwhile."""

from __future__ import annotations

import re

from hypothesis import given
from hypothesis import strategies as st

from fairhand.manuscript.draft import read_manuscript
from fairhand.proof.joining import join_drafts

BASE = (
    "# Mills",
    "Rain fell on the upper valley for nine days.",
    "The mill stood by the river.",
    "Its owner kept a book.",
)


def draft(*passages: str) -> str:
    """The passages as a draft."""
    return "\n\n".join(passages) + "\n"


def test_what_one_side_changed_stands() -> None:
    """Here and in the file, each in its passage."""
    here = draft(BASE[0], BASE[1].replace("nine", "eleven"), *BASE[2:])
    there = draft(*BASE[:3], BASE[3].replace("book", "ledger"))
    joined = join_drafts(draft(*BASE), here, there)
    assert joined.text == draft(
        BASE[0], "Rain fell on the upper valley for eleven days.", BASE[2], "Its owner kept a ledger."
    )
    assert (joined.here, joined.both) == (1, ())


def test_what_came_or_went_here_stands() -> None:
    """A passage put in stands after the one that it followed; one taken out stays out."""
    here = draft(BASE[0], BASE[1], "Nobody knew why.", BASE[3])
    there = draft(*BASE[:3], BASE[3].replace("book", "ledger"), "It is lost.")
    joined = join_drafts(draft(*BASE), here, there)
    assert joined.text == draft(BASE[0], BASE[1], "Nobody knew why.", "Its owner kept a ledger.", "It is lost.")
    assert joined.here == 2


def test_what_both_changed_is_named() -> None:
    """The file's stands; both are told; the same change twice is none."""
    here = draft(*BASE[:2], "The mill stood by the old river.", BASE[3])
    there = draft(*BASE[:2], "The mill stood by the wide river.", BASE[3])
    joined = join_drafts(draft(*BASE), here, there)
    assert joined.text == there
    assert joined.both == (("The mill stood by the old river.", "The mill stood by the wide river."),)
    assert join_drafts(draft(*BASE), here, here).both == ()
    gone = join_drafts(draft(*BASE), here, draft(*BASE[:2], BASE[3]))
    assert gone.both == (("The mill stood by the old river.", ""),)


def test_lists_and_notes_keep_their_form() -> None:
    """What was not changed here stands in the file's own form."""
    base = "- ebb\n- flow\n\nSo.[^1]\n\n[^1]: Lind, 12.\n"
    assert join_drafts(base, base.replace("ebb", "low ebb"), base).text == base.replace("ebb", "low ebb")


def test_footnotes_keep_to_their_places() -> None:
    """Though the file numbers them anew: a passage changed here leads to the note that it led to, and a new one too."""
    base = "Rain fell for nine days.[^1]\n\nThe mill stood by the river.\n\n[^1]: Lind, 12.\n"
    here = "Rain fell for eleven days.[^1]\n\nThe mill stood by the river.[^2]\n\n[^1]: Lind, 12.\n\n[^2]: Okafor, 5.\n"
    there = (
        "A mill is old.[^1]\n\nRain fell for nine days.[^2]\n\nThe mill stood by the river.\n\n"
        "[^1]: Marsh, 3.\n\n[^2]: Lind, 12.\n"
    )
    joined = join_drafts(base, here, there)
    assert joined.both == ()
    manuscript = read_manuscript(joined.text)
    notes = {label: note.content.of(joined.text) for label, note in manuscript.notes.items()}
    led = {found[0]: notes[found[1]] for found in re.findall(r"^(\w+)[^\n]*\[\^(\w+)\]$", joined.text, re.MULTILINE)}
    assert led == {"A": "Marsh, 3.", "Rain": "Lind, 12.", "The": "Okafor, 5."}
    assert "eleven" in joined.text


PASSAGES = st.lists(
    st.sampled_from(["One is here.", "Two is there.", "# Three", "- four", "Five is a longer one by far.", "> six"]),
    max_size=5,
)


@given(PASSAGES, PASSAGES)
def test_where_one_side_changed_nothing_the_other_stands(base: list[str], other: list[str]) -> None:
    """The file's draft as it is where nothing was done here."""
    first, second = draft(*base), draft(*other)
    assert join_drafts(first, first, second).text.split() == second.split()


@given(PASSAGES, PASSAGES, PASSAGES)
def test_any_three_drafts_can_be_joined(base: list[str], here: list[str], there: list[str]) -> None:
    """Nothing crashes, and nothing is written into the middle of a passage."""
    joined = join_drafts(draft(*base), draft(*here), draft(*there))
    known = {" ".join(one.split()) for one in (*base, *here, *there)}
    assert {" ".join(one.split()) for one in joined.text.split("\n\n") if one.strip()} <= known
