"""A speech that its source breaks, quoted as one."""

from __future__ import annotations

import pytest

from fairhand.model.entry import Entry, Issued, Name
from fairhand.model.finding import Finding
from fairhand.model.paper import Paper
from fairhand.model.source import Page, SourceText
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import run_checks
from fairhand.readiness.table import CHECKS

NOVEL = SourceText(
    "vesk",
    (
        Page(
            "7",
            "He put the lamp out. “Nobody will come now,” said the keeper, “and nobody ever came before.” It rained.",
        ),
    ),
    paged=True,
)
ENTRY = Entry("vesk", "book", "The Lamp", authors=(Name("Vesk", "Ada"),), issued=Issued(1931))


def findings_in(quoted: str) -> list[Finding]:
    """What is said of a quotation of the novel for the words that it leaves out."""
    paper = Paper("p", f"It is put so: “{quoted}” (Vesk 7).", (ENTRY,), {"vesk": NOVEL}, style="mla-9")
    gap = [check for check in CHECKS if check.name == "quotation-gap"]
    return list(run_checks(Analysis(paper, lambda _: None), gap, allowed=lambda _: "must"))


def test_a_speech_run_together_is_asked_about() -> None:
    """The words that say who speaks are shown; it is a question, and no demand."""
    (found,) = findings_in("Nobody will come now, and nobody ever came before")
    assert found.weight == "query"
    assert "to say who speaks" in found.says
    assert found.wordings is not None
    assert "said the keeper" in found.wordings.source


@pytest.mark.parametrize("right", ["Nobody will come now", "Nobody will come now . . . and nobody ever came before"])
def test_a_speech_quoted_in_part_or_with_its_ellipsis_is_let_be(right: str) -> None:
    """Nothing is left out unmarked."""
    assert findings_in(right) == []


def test_other_words_left_out_are_a_demand() -> None:
    """As before: what is dropped within a speech is no matter of who speaks."""
    (found,) = findings_in("Nobody will now, and nobody ever came before")
    assert found.weight == "must"
