"""``searches.jsonl``: the log of searches, each with where it was made, its words, its hits and what was kept of it."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from typing import Literal

from fairhand.language.counts import count_of
from fairhand.language.json_text import write_json
from fairhand.language.line_files import add_line, load_record
from fairhand.model.problem import Problem

WHERE = "searches.jsonl"


@dataclass(frozen=True, slots=True)
class Search:
    """One search, or one list of references that was followed."""

    words: str
    """The words that were searched for; the source whose references were followed."""
    place: str = ""
    """Where: a catalogue, a database, a library."""
    hits: int | None = None
    """How many it gave; None where that was not said."""
    kept: tuple[str, ...] = ()
    """Ids of the sources that it led to, those known already included."""
    route: Literal["searching", "leads"] = "searching"
    """Whether words were searched for, or the references of a source followed."""
    when: str = ""
    """The moment, as ISO 8601 has it."""


def read_searches(text: str) -> tuple[tuple[Search, ...], tuple[Problem, ...]]:
    """The log in the order of its lines, with a problem for each line that cannot be read."""
    found, problems = [], []
    for number, line in enumerate(text.split("\n"), 1):
        if not line.strip():
            continue
        search = _read_line(line)
        if search is None:
            mend = 'write {"words": "…", "where": "…", "hits": 0, "kept": []}; it is left out now'
            problems.append(Problem(f"{WHERE}, line {number}", "it is no search", mend))
        else:
            found.append(search)
    return tuple(found), tuple(problems)


def _read_line(line: str) -> Search | None:
    record = load_record(line)
    words = record.get("words")
    if not isinstance(words, str) or not words.strip():
        return None
    hits, kept = record.get("hits"), record.get("kept")
    return Search(
        words=" ".join(words.split()),
        place=_text(record.get("where")),
        hits=hits if isinstance(hits, int) and not isinstance(hits, bool) and hits >= 0 else None,
        kept=tuple(one for one in kept if isinstance(one, str)) if isinstance(kept, list) else (),
        route="leads" if record.get("route") == "leads" else "searching",
        when=_text(record.get("when")),
    )


def _text(value: object) -> str:
    return " ".join(value.split()) if isinstance(value, str) else ""


def add_search(text: str, search: Search) -> str:
    r"""The log's text with one more line.

    >>> add_search("", Search("tram AND library", "the city's catalogue", 12, ("lind",)))
    '{"words": "tram AND library", "where": "the city\'s catalogue", "hits": 12, "kept": ["lind"]}\n'
    """
    record = {"words": search.words, "where": search.place, "hits": search.hits, "kept": list(search.kept)}
    record |= {"route": search.route if search.route != "searching" else "", "when": search.when}
    line = write_json({key: value for key, value in record.items() if value not in ("", None)})
    return add_line(text, line)


def found_by(searches: Collection[Search], route: str) -> frozenset[str]:
    """Ids of the sources that one route led to."""
    return frozenset(source for one in searches if one.route == route for source in one.kept)


def tell_search(search: Search) -> str:
    """A search as one line.

    >>> tell_search(Search("tram library", "the city's catalogue", 12, ("lind",)))
    "“tram library”, the city's catalogue: 12 hits, 1 source kept"
    """
    what = f"the references of “{search.words}”" if search.route == "leads" else f"“{search.words}”"
    where = f", {search.place}" if search.place else ""
    hits = f"{count_of(search.hits, 'hit')}, " if search.hits is not None else ""
    return f"{what}{where}: {hits}{count_of(len(search.kept), 'source') if search.kept else 'nothing'} kept"
