"""Citations that name no work, and quotations that cite nothing, settled by the words quoted."""

from __future__ import annotations

from dataclasses import replace

from fairhand.model.entry import Entry, Issued, Name
from fairhand.model.paper import Paper
from fairhand.model.requirement import Requirement
from fairhand.model.source import Page, SourceText
from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.checks import citation_unknown, source_uncited

VESK = Entry("vesk", "book", title="Tolls", authors=(Name("Vesk", "Ida"),), issued=Issued(1990))
ORR = Entry("orr", "book", title="Fares", authors=(Name("Orr", "Tam"),), issued=Issued(2004))
TEXTS = {
    "vesk": SourceText("vesk", (Page("7", "The gatekeeper slept through the whole of the wet spring."),), paged=True),
    "orr": SourceText("orr", (Page("3", "Nobody who crossed ever asked what the crossing had been for."),), paged=True),
}
NO_LENGTH = Requirement("length", {"unit": "words", "min": 1, "part": "paper"}, "one word", Span(0, 8))


def analyse(draft: str, *entries: Entry, style: str = "mla") -> Analysis:
    """The analysis of a draft with some sources and a sheet that asks for none."""
    texts = {entry.id: TEXTS[entry.id] for entry in entries}
    paper = Paper("p", draft, entries, texts, requirements=(NO_LENGTH,), style=style)
    return Analysis(paper, lambda _: None)


def outcomes(analysis: Analysis) -> list[tuple[str | None, str]]:
    """The source and the outcome of each quotation looked up."""
    return [(one.entry, one.match.outcome) for one in analysis.looked_up]


def test_a_page_alone_means_the_source_that_has_the_words() -> None:
    """Of two authors named in its sentence it means the one whose words stand beside it."""
    draft = 'For Orr the point is plain: Vesk, he says, forgot that "nobody who crossed ever asked" (3).\n'
    analysis = analyse(draft, VESK, ORR)
    assert [one.entry for one in analysis.resolved] == ["orr"]
    assert [source for source, _ in outcomes(analysis)] == ["orr"]


def test_words_given_to_another_author_are_not_settled_away() -> None:
    """Where the sentence names one author alone and the words are another's, that is the fault to be told."""
    draft = (
        'Orr comes later (3). Vesk writes that "nobody who crossed ever asked what the crossing had been for" (7).\n'
    )
    assert ("vesk", "other-source") in outcomes(analyse(draft, VESK, ORR))


def test_an_essay_on_one_text_may_quote_it_without_citing() -> None:
    """Its words are held against the text all the same; dialogue of the writer's own is left alone."""
    draft = (
        'The fable ends well. It says that "the gatekeeper slept through the whole of the dry spring," and I ask '
        'myself, "Was he tired, or merely careful of his boots?" He is no "hero."\n'
    )
    assert outcomes(analyse(draft, VESK)) == [("vesk", "differs")]


def test_a_few_words_are_held_against_the_only_text() -> None:
    """A phrase of four words with one changed is a misquotation; three words prove nothing."""
    draft = 'He "dozed through the whole" of it; he is "a tired gatekeeper."\n'
    assert outcomes(analyse(draft, VESK)) == [("vesk", "differs")]


def test_a_text_quoted_without_citing_is_not_called_uncited() -> None:
    """Where the sheet asks for no sources, quoting is enough."""
    analysis = analyse('It says that "the gatekeeper slept through the whole" of it.\n', VESK)
    assert list(source_uncited.find(analysis)) == []


def test_a_source_read_for_its_references_need_not_be_cited() -> None:
    """Of two that are never cited, the one that only led to others is not asked about."""
    led = replace(ORR, csl={"custom": {"read-for": "references"}})
    draft = "Tolls rose (Vesk 7).\n"
    assert [remark.concerns for remark in source_uncited.find(analyse(draft, VESK, ORR))] == [("orr",)]
    assert list(source_uncited.find(analyse(draft, VESK, led))) == []


def test_one_unknown_source_is_told_once() -> None:
    """A page alone that follows a citation of nothing on the list says nothing new."""
    draft = "One slept (Vesk 7); one paid (Orr 3).\n\nTolls rose (Pell 88). They rose again, it goes on (91).\n"
    found = [remark.span for remark in citation_unknown.find(analyse(draft, VESK, ORR))]
    assert [span.of(draft) for span in found if span] == ["Pell 88"]


def test_a_doubtful_citation_means_none_that_lacks_its_page() -> None:
    """Of two works by one author, the one that has no such page is never cited."""
    other = replace(ORR, id="orr", authors=VESK.authors)
    (remark,) = source_uncited.find(analyse("Tolls rose (Vesk 7).\n", VESK, other))
    assert remark.concerns == ("orr",)
    assert not list(source_uncited.find(analyse("Tolls rose (Vesk 88).\n", VESK, other)))


def test_numbers_after_the_first_line_are_lines() -> None:
    """Of verse that is cited by line once, a number alone is a line, after a critic too; a page that fits stays one."""
    poem = replace(VESK, type="chapter", title="The Gate")
    texts = {**TEXTS, "vesk": SourceText("vesk", (Page("88", "The gate is long.\nThe keeper is not in."),), paged=True)}
    draft = (
        "# Sleep in “The Gate”\n\nVesk’s “The Gate” opens flatly: “The gate is long” (line 1).\n\n"
        "Orr, who finds in it “what the crossing had been for” (3), sighs. “The keeper is not in” (2), we read.\n\n"
        "Vesk mourns, and yet, as Orr says, “[n]obody who crossed ever asked” (3).\n"
    )
    analysis = Analysis(Paper("p", draft, (poem, ORR), texts, style="mla"), lambda _: None)
    assert outcomes(analysis) == [
        ("vesk", "verbatim"),
        ("orr", "verbatim"),
        ("vesk", "verbatim"),
        ("orr", "allowed"),
    ]
    assert [one.cite.locator.kind for one in analysis.resolved if one.cite.locator] == ["line", "page", "line", "page"]
