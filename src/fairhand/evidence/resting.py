"""Whether one source rests on another: it cites it, and says so, or has its words or its figures."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

from fairhand.evidence.mentioning import find_mentions, find_names
from fairhand.evidence.passage import Passage, cut_passage, show_whole
from fairhand.evidence.recurring import find_figure, find_wording, list_begins
from fairhand.evidence.relying import says_it_relies
from fairhand.evidence.sentence import sentence_around
from fairhand.language.folding import fold
from fairhand.model.entry import Entry
from fairhand.model.source import SourceText
from fairhand.model.span import Span


@dataclass(frozen=True, slots=True)
class Rests:
    """That a source rests on another."""

    cites: Passage
    """The words that cite it."""
    here: Passage | None
    """Its own words, or its figure, that stand in the other too; None where it only says that it rests on it."""
    there: Passage | None
    """The same in the other."""


def find_what_rests(
    text: SourceText, cited: Entry, cited_text: SourceText | None, namesakes: Collection[str] = ()
) -> Rests | None:
    """How a text rests on a work that it cites; None where it does not cite it, or merely cites it.

    Args:
        text: The text that may cite.
        cited: The work.
        cited_text: Its text, where one is at hand.
        namesakes: Surnames, folded, that several works on the list share: a bare one tells nothing.
    """
    relies = _find_reliance(text, cited, namesakes)
    mention = next(find_mentions(text, cited), None)
    if relies is None and mention is None:
        return None
    recurs = _find_recurring(text, cited_text, cited) if cited_text else None
    if relies is None and recurs is None:
        return None
    cites = show_whole(text, *relies) if relies else cut_passage(text, *mention) if mention else Passage("")
    return Rests(cites, *(recurs or (None, None)))


def _find_reliance(text: SourceText, cited: Entry, namesakes: Collection[str]) -> tuple[int, Span] | None:
    """The first sentence that names the work and says that it takes its matter from there."""
    ends = list_begins(text)
    surname = fold(cited.authors[0].surname) if cited.authors else ""
    bare = () if surname in namesakes else find_names(text, cited)
    for page, span in (*find_mentions(text, cited), *bare):
        if ends is not None and (page, span.start) >= ends:
            continue
        sentence = sentence_around(text.pages[page].text, span.start)
        if says_it_relies(sentence.of(text.pages[page].text)):
            return page, sentence
    return None


def _find_recurring(one: SourceText, other: SourceText, cited: Entry) -> tuple[Passage, Passage] | None:
    return find_wording(one, other, (cited.title,)) or find_figure(one, other)
