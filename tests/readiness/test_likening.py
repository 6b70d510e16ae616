"""What the writer is told of words that are a source's."""

from __future__ import annotations

from fairhand.model.entry import Entry, Issued, Name
from fairhand.model.paper import Paper
from fairhand.model.source import Page, SourceText
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.checks import close_wording, copied_unmarked

SENTENCE = "They carried their own ladders through the snow and mended whatever glass the wind had broken in the night"
ENTRY = Entry("aas", "book", "Lamps", authors=(Name("Aas", "Ida"),), issued=Issued(1994))
TEXTS = {"aas": SourceText("aas", (Page("11", "Nothing yet."), Page("12", f"{SENTENCE}.")), paged=True)}


def remarks(draft: str) -> list[Remark]:
    """What both checks say of a draft."""
    analysis = Analysis(Paper("made", draft, (ENTRY,), TEXTS, style="apa-7"), lambda _: None)
    return [*copied_unmarked.find(analysis), *close_wording.find(analysis)]


def test_a_cited_run_is_told_from_one_that_is_not() -> None:
    """Both are told with the page and with the caution; what to do differs."""
    (cited,) = remarks(f"{SENTENCE} (Aas, 1994, p. 12).\n")
    (uncited,) = remarks(f"{SENTENCE}.\n")
    assert "Aas (1994), p. 12, which is cited but not quoted" in cited.says
    assert "neither quoted nor cited" in uncited.says
    assert all(one.says.endswith("a place to look, never a verdict.") for one in (cited, uncited))


def test_both_passages_are_shown_with_what_differs() -> None:
    """The words that are the writer's own are told in the draft, and those in their stead in the source."""
    (one,) = remarks(f"{SENTENCE.replace('mended', 'repaired')}.\n")
    wordings = one.wordings
    assert wordings is not None
    assert [span.of(wordings.draft) for span in wordings.draft_differs] == ["repaired"]
    assert [span.of(wordings.source) for span in wordings.source_differs] == ["mended"]


def test_what_is_quoted_or_listed_is_let_be() -> None:
    """Neither quotation marks, nor a block quotation, nor the list of works is a copy left unmarked."""
    assert not remarks(f"“{SENTENCE}” (Aas, 1994, p. 12).\n")
    assert not remarks(f"As she says:\n\n> {SENTENCE} (Aas, 1994, p. 12)\n")
    assert not remarks(f"Nothing copied.\n\n## References\n\n{SENTENCE}.\n")
