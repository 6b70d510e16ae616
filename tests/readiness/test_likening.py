"""What the writer is told of words that are a source's."""

from __future__ import annotations

from fairhand.model.entry import Entry, Issued, Name
from fairhand.model.own_paper import OwnPaper
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


OWN = OwnPaper(
    "lamps-1", "Lamps", SourceText("own paper lamps-1", (Page(None, f"# Lamps\n\nOne. {SENTENCE}.\n"),), paged=False)
)
OTHER = "Nobody in the valley had seen a lamp before that winter, and few of them trusted what it showed. "


def reused(draft: str, *papers: OwnPaper, texts: dict[str, SourceText] | None = None) -> list[Remark]:
    """What both checks say of a draft beside the writer's other papers."""
    paper = Paper("made", draft, (ENTRY,), texts or {}, style="apa-7", own_papers=papers)
    analysis = Analysis(paper, lambda _: None)
    return [*copied_unmarked.find(analysis), *close_wording.find(analysis)]


def test_words_of_the_writers_own_earlier_paper_are_asked_about() -> None:
    """It is named, the leave that is wanted is told, and both passages are shown."""
    (one,) = reused(f"{OTHER * 3}{SENTENCE}.\n", OWN)
    assert one.weight == "query"
    assert one.says.startswith("These 19 words stand word for word in your own paper “Lamps”.")
    assert "only with your instructor's leave" in one.says
    assert one.wordings is not None
    assert one.wordings.source.startswith("They carried their own ladders")


def test_what_is_a_sources_is_told_as_the_sources() -> None:
    """Though the earlier paper has the same words; and a quotation in both is none of the writer's own."""
    (one,) = reused(f"{OTHER * 3}{SENTENCE}.\n", OWN, texts=TEXTS)
    assert "Aas (1994)" in one.says
    assert "your own paper" not in one.says
    assert not reused(f"{OTHER}“{SENTENCE}” (Aas, 1994, p. 12).\n", OWN)


def test_an_earlier_version_of_the_whole_is_told_once() -> None:
    """Where most of the draft stands in it, each passage for itself would only be in the way."""
    (one,) = reused(f"{SENTENCE}.\n\n{SENTENCE.replace('snow', 'rain')}.\n", OWN)
    assert one.span is None
    assert one.says.startswith("Most of this draft stands in your own paper “Lamps” too (77 in 100 of its")
