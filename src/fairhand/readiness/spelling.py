"""What a paper's words are held against: the country's dictionary, the writer's own list, the sources."""

from __future__ import annotations

from fairhand.brief.spelling import spelling_asked
from fairhand.copyedit.words.misspelled import Spelling, country_written
from fairhand.fidelity.prepared import fold
from fairhand.language.lexicon import Country
from fairhand.language.words import words
from fairhand.readiness.analysis import Analysis


def spelling_of(analysis: Analysis) -> Spelling:
    """By the desk, else by the sheet, else by what the draft has more of, else by the style."""
    paper = analysis.paper
    asked: Country | str = paper.desk.spelling or spelling_asked(paper.brief.texts.values())
    written = None if asked else country_written(analysis.own_prose)
    fallback: Country = "GB" if analysis.is_british else "US"
    country: Country = "US" if asked == "US" else "GB" if asked == "GB" else written or fallback
    return Spelling(country, bool(asked or written), own_words(analysis), lambda word: stands_in_source(analysis, word))


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
