"""The reverse outline: chosen from the draft, corrected by the writer."""

from __future__ import annotations

from collections.abc import Callable

from hypothesis import given
from hypothesis import strategies as st

from fairhand.model.point import Point, Points, Support
from fairhand.readiness.analysis import Analysis
from fairhand.revision.outline_file import (
    Answer,
    Correction,
    place_corrections,
    put_answer,
    put_correction,
    read_outline,
)

DRAFT = """# The Quay

This paper argues that the quay was sold because its men were divided. Many have told another story of the sale.

Badges divided the men of the quay. Those who wore one were paid by the week, and those without one by the hour
(Lind, 2019, p. 10). Who would have stood by whom?

Yet badges alone did not sell the quay. The price of salt had fallen, and a quay that ships no salt earns no dues
for its council (Reyes, 2018, p. 40).

In the end the quay was sold, because badges and prices had divided the men on whom it had rested. Nobody mourned.
"""
POINTS = Points(
    thesis="The quay was sold because its men were divided.",
    points=(
        Point("p1", "Badges divided the men.", support=(Support("lind-2019", "10"),)),
        Point("p2", "The price of salt fell.", support=(Support("reyes-2018", "40"),)),
    ),
)


def test_each_paragraph_is_told_by_its_own_sentence(analysis_of: Callable[..., Analysis]) -> None:
    """The key sentence is chosen and not written; the point is the one whose source is cited at its page."""
    known = analysis_of(DRAFT, POINTS)
    told = known.argument.outline
    assert [one.key.of(DRAFT) for one in told] == [
        "This paper argues that the quay was sold because its men were divided.",
        "Badges divided the men of the quay.",
        "Yet badges alone did not sell the quay.",
        "In the end the quay was sold, because badges and prices had divided the men on whom it had rested.",
    ]
    assert [one.point for one in told] == ["", "p1", "p2", ""]
    assert told[0].tie is None
    assert told[2].tie is not None
    assert told[2].tie.link.startswith("Yet")
    assert {"badges", "quay"} <= set(told[2].tie.words)


def test_a_correction_sticks_to_its_paragraph() -> None:
    """Through edits and moves; one whose paragraph has gone is placed nowhere."""
    first = "The quay was sold in the spring, because nobody could pay its debts, and it went for a song."
    second = "Roses were planted along the wall by the last of the harbour masters, who loved nothing else."
    said = [Correction(first, says="Debts."), Correction(second, says="Roses."), Correction("Quite another text.")]
    now = [second, "New words.", first.replace("in the spring", "that autumn").replace("a song", "next to nothing")]
    assert {at: one.says for at, one in place_corrections(said, now).items()} == {0: "Roses.", 2: "Debts."}


def test_the_file_keeps_what_it_does_not_know() -> None:
    """Lines that cannot be read and strange keys stay; a correction is replaced in its place."""
    text = 'no json\n{"paragraph": "It rained.", "says": "Rain.", "mine": 1}\n{"odd": 2}\n'
    read = read_outline(text)
    assert [problem.where for problem in read.problems] == ["outline.jsonl, line 1", "outline.jsonl, line 3"]
    changed = put_correction(text, Correction("It poured.", says="Rain."), "It rained.")
    assert changed == 'no json\n{"paragraph": "It poured.", "says": "Rain.", "mine": 1}\n{"odd": 2}\n'
    assert put_correction(changed, Correction("It poured.")) == 'no json\n{"odd": 2}\n'
    assert put_answer(put_answer("", Answer("terms", "None.", "2027")), Answer("terms", "")) == ""


@given(st.text(), st.text(min_size=1), st.text())
def test_what_is_put_is_read_again(text: str, paragraph: str, says: str) -> None:
    """Whatever the file holds."""
    read = read_outline(put_correction(text, Correction(paragraph, says=says)))
    assert Correction(paragraph, says=says) in read.corrections
