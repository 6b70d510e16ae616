"""What a paper's words are held against: the country's dictionary, the writer's own list, the sources."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.brief.spelling import spelling_asked
from fairhand.copyedit.words.misspelled import Spelling, country_written, find_other_country
from fairhand.fidelity.prepared import fold
from fairhand.language.lexicon import Country
from fairhand.language.words import words
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark

COUNTRIES: dict[Country, str] = {"US": "American", "GB": "British"}


def spelling_of(analysis: Analysis) -> Spelling:
    """By the desk, else by the sheet, else by what the draft has more of, else by the style."""
    asked = country_asked(analysis)
    written = None if asked else country_written(analysis.own_prose)
    fallback: Country = "GB" if analysis.is_british else "US"
    return Spelling(
        asked or written or fallback,
        bool(asked or written),
        own_words(analysis),
        lambda word: stands_in_source(analysis, word),
    )


def country_asked(analysis: Analysis) -> Country | None:
    """Whose spelling the desk says to keep, or else the sheet; None where neither says."""
    paper = analysis.paper
    asked: str = paper.desk.spelling or spelling_asked(paper.brief.texts.values())
    return "US" if asked == "US" else "GB" if asked == "GB" else None


def other_country(analysis: Analysis, against: Spelling, kept: str) -> Iterator[Remark]:
    """Each word that only the other country spells so, once.

    Args:
        analysis: The paper.
        against: What its words are held against.
        kept: How the paper's own country is known: "paper keeps to".
    """
    mine, other = COUNTRIES[against.country], COUNTRIES["GB" if against.country == "US" else "US"]
    for found in find_other_country(analysis.own_prose, against):
        says = f"“{found.word}” is {other} spelling, and the {kept} {mine}: “{found.instead[0]}”."
        yield Remark(found.span, says, instead=(Instead(found.span, found.instead[0]),))


def own_words(analysis: Analysis) -> frozenset[str]:
    """The words of the writer's own list, of the records of the sources, of the writer's name and the course."""
    paper = analysis.paper
    said = [paper.desk.name, paper.course.title, paper.course.teacher, paper.course.institution, paper.settings.title]
    for entry in paper.entries:
        said += [entry.title, entry.container_title, entry.publisher]
        said += [part for name in (*entry.authors, *entry.editors) for part in (name.family, name.given, name.literal)]
    listed = (*paper.words, *filter(None, said))
    return frozenset(word.key for text in listed for word in words(text))


def stands_in_source(analysis: Analysis, word: str) -> bool:
    """Whether a source has the word twice, so that it is no slip of the source's own."""
    wanted = f" {fold(word)} "
    return sum(source.line.count(wanted) for source in analysis.prepared.values()) > 1
