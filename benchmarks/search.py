"""What a search costs, beside the same words asked of a bare full-text index, and how the index grows.

Run as ``python benchmarks/search.py [SOURCES...]`` (10, 100 and 1000 where none are named). Each source has ten pages
of 400 words by a seeded generator, words as common and as rare as those of prose (Zipf's law). All is measured in one
run.
"""

from __future__ import annotations

import itertools
import random
import resource
import sqlite3
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from pathlib import Path

from measuring import in_turn, measured, over, tell

from fairhand.desk.search_index import INDEX, Known, SearchIndex
from fairhand.model.piece import Piece
from fairhand.session.research.searching import Search, read_words

PAGES = 10
WORDS = 400
VOCABULARY = 30_000


def make_lexicon(chance: random.Random) -> list[str]:
    """Words that look like words, no two alike."""
    starts = "b c d f g h l m n p r s t v w br cr dr gr pl pr st tr".split()
    vowels = "a e i o u ea ou".split()
    ends = ["", "s", "ed", "ing", "er", "ation", "ly", "ment"]
    found: dict[str, None] = {}
    while len(found) < VOCABULARY:
        parts = (chance.choice(starts) + chance.choice(vowels) for _ in range(chance.randint(1, 3)))
        found["".join(parts) + chance.choice("nrtlmk") + chance.choice(ends)] = None
    return list(found)


def make_pages(sources: int) -> Iterator[tuple[str, list[Piece]]]:
    """The sources with their pages."""
    chance = random.Random(61)  # noqa: S311 - the same pages in each run
    lexicon = make_lexicon(chance)
    weights = list(itertools.accumulate(1 / rank for rank in range(1, VOCABULARY + 1)))
    for source in range(sources):
        name = f"source-{source}"
        pages = []
        for page in range(PAGES):
            words = chance.choices(lexicon, cum_weights=weights, k=WORDS)
            text = ". ".join(" ".join(words[at : at + 16]).capitalize() for at in range(0, WORDS, 16)) + "."
            pages.append(Piece(name, page, str(page + 1), 0, text))
        yield name, pages


def make_bare(place: Path, sources: int) -> sqlite3.Connection:
    """The same pages in an index with nothing of ours, committed source by source."""
    base = sqlite3.connect(place)
    base.execute("PRAGMA journal_mode = WAL")
    base.execute("CREATE VIRTUAL TABLE page USING fts5(text, tokenize = 'porter unicode61')")
    for _, pages in make_pages(sources):
        base.executemany("INSERT INTO page(text) VALUES (?)", [(page.text,) for page in pages])
        base.commit()
    return base


def measure(sources: int) -> None:
    """Prints what so many sources cost."""
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder)
        made = measured(lambda: sum(len(pages) for _, pages in make_pages(sources)))
        begun = time.perf_counter()
        bare = make_bare(place / "bare.sqlite", sources)
        bare_seconds = time.perf_counter() - begun - made
        index = SearchIndex(place, read_words)
        begun = time.perf_counter()
        for name, pages in make_pages(sources):
            index.put(name, Known("", ""), "", pages)
        seconds = time.perf_counter() - begun - made
        search = Search(index)
        chance = random.Random(14)  # noqa: S311 - the same words in each run
        lexicon = make_lexicon(random.Random(61))  # noqa: S311 - as the pages have them
        pairs = [" ".join(chance.choices(lexicon[40:2000], k=2)) for _ in range(30)]
        text = "SELECT rowid, text FROM page WHERE page MATCH ? ORDER BY rank LIMIT 21"

        def ask_bare() -> None:
            for pair in pairs:
                list(bare.execute(text, (pair,)))

        def ask_words() -> None:
            for pair in pairs:
                search.match(pair, 21)

        def show_words() -> None:
            for pair in pairs:
                search.find(pair)

        ours, shown, theirs = in_turn(*(_timed(one) for one in (ask_words, show_words, ask_bare)), runs=5)
        questions = [" ".join(chance.choices(lexicon[20:3000], k=9)) for _ in range(10)]
        first = measured(lambda: search.answer(questions[0]))
        asked = sorted(measured(lambda one=one: search.answer(one)) for one in questions[1:])
        again = next(make_pages(1))[1]
        one_more = measured(lambda: index.put("source-0", Known("", ""), "", again))
        index.close()
        size = (place / ".fairhand" / INDEX).stat().st_size
        print(f"\n{sources} sources, {sources * PAGES} pages")
        tell("words, beside the same bare query", over(ours, theirs), "at most 3")
        tell("words with their passages set, beside the same bare query", over(shown, theirs), "told")
        tell("ms for words with their passages, at the median", sorted(shown)[2] / len(pairs) * 1e3, "told")
        tell("ms for a question, at the median", asked[len(asked) // 2] * 1e3, "under 200")
        tell("ms for the first question of a process", first * 1e3, "told")
        tell("times as long to index as the bare index takes", seconds / bare_seconds, "told")
        tell("pages indexed in a second", sources * PAGES / seconds, "told")
        tell("ms to index one source of ten pages again", one_more * 1e3, "told")
        tell("MB of index", size / 1e6, "told")
        tell("times the bare index", size / (place / "bare.sqlite").stat().st_size, "told")
        tell("MB of memory at most, all of it", resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1e3, "told")
        bare.close()


def _timed(what: Callable[[], None]) -> Callable[[], float]:
    return lambda: measured(what)


if __name__ == "__main__":
    for many in [int(one) for one in sys.argv[1:]] or [10, 100, 1000]:
        measure(many)
