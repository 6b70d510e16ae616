"""Quotations that no citation belongs to, told by the words quoted."""

from __future__ import annotations

import pytest

from fairhand.model.entry import Entry, Issued, Name
from fairhand.model.paper import Paper
from fairhand.model.requirement import Requirement
from fairhand.model.source import Page, SourceText
from fairhand.model.span import Span
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.checks import citation_page_missing, quotation_uncited

VESK = Entry("vesk", "book", title="Tolls", authors=(Name("Vesk", "Ida"),), issued=Issued(1990))
ORR = Entry("orr", "book", title="Fares", authors=(Name("Orr", "Tam"),), issued=Issued(2004))
TEXTS = {
    "vesk": SourceText("vesk", (Page("7", "The gatekeeper slept through the whole of the wet spring."),), paged=True),
    "orr": SourceText("orr", (Page("3", "Nobody who crossed ever asked what the crossing had been for."),), paged=True),
}
CITED = "The bridge was sold (Orr 3).\n\n"
QUOTED = '"slept through the whole of the wet spring"'


def analyse(draft: str, *requirements: Requirement) -> Analysis:
    """The analysis of a draft with both sources."""
    return Analysis(Paper("p", draft, (VESK, ORR), TEXTS, requirements=requirements, style="mla"), lambda _: None)


def test_words_of_an_author_who_is_merely_named_want_their_page() -> None:
    """The name says whose they are, and the reader cannot find them."""
    analysis = analyse(f"{CITED}The toll fell, since, as Vesk has it, the keeper {QUOTED}. It rose again.\n")
    (remark,) = citation_page_missing.find(analysis)
    assert remark.says == "These words are quoted from Vesk (1990) without a page. They stand on p. 7."
    assert not list(quotation_uncited.find(analysis))


def test_words_that_nothing_gives_to_anybody_want_their_citation() -> None:
    """Neither name nor citation stands in the paragraph."""
    analysis = analyse(f"{CITED}The toll fell, since the keeper {QUOTED}. It rose again.\n")
    (remark,) = quotation_uncited.find(analysis)
    assert (
        remark.says == "These words are quoted and nothing says from where. They stand in Vesk (1990), p. 7. Cite it."
    )
    assert remark.concerns == ("vesk",)
    assert not list(citation_page_missing.find(analysis))


@pytest.mark.parametrize(
    "draft",
    [
        f"Vesk is blunt. The keeper {QUOTED}, and nobody woke him. The gate stood open for weeks (7).\n",
        f"{CITED}The keeper {QUOTED} [Vesk, seventh page].\n",
        f"The keeper {QUOTED} (Vesk 7).\n\nWho {QUOTED} cannot take a toll, and none was taken.\n",
        f'{CITED}He "slept through the" spring.\n',
    ],
    ids=["cited later in the paragraph", "cited in a way not understood", "cited before", "a few words"],
)
def test_words_that_are_cited_somehow_are_left_alone(draft: str) -> None:
    """So are words too few to be anybody's."""
    analysis = analyse(draft)
    assert not list(citation_page_missing.find(analysis))
    assert not list(quotation_uncited.find(analysis))


def test_where_the_sheet_asks_for_no_sources_a_text_may_be_quoted_bare() -> None:
    """An essay on one text names it once."""
    no_sources = Requirement("length", {"unit": "words", "min": 1, "part": "paper"}, "one word", Span(0, 8))
    assert not list(quotation_uncited.find(analyse(f"The keeper {QUOTED}.\n", no_sources)))
