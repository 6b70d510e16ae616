"""The sources of a paper searched: by words, and for what answers a question."""

from __future__ import annotations

import contextlib
import hashlib
import json
import threading
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from fairhand.desk.search_index import Known, SearchIndex, Words
from fairhand.desk.seen import FileSeen
from fairhand.errors import FairhandError, InputError
from fairhand.language.content_words import JOINING, list_stems, list_words
from fairhand.language.meaning import Meanings, find_meanings
from fairhand.language.stems import stem
from fairhand.model.focus import Question
from fairhand.model.piece import Piece
from fairhand.reading.passages import Passage, find_passage, has_term, weigh_by_question, weigh_by_terms
from fairhand.reading.pieces import part_source
from fairhand.reading.query import Term, match_all, match_any, match_term, read_query
from fairhand.reading.ranking import (
    Collection,
    Ranked,
    mix_likeness,
    rank_pieces,
    read_question,
    weigh_piece,
    weigh_stems,
    widen_question,
)
from fairhand.reading.vocabulary import mend_word
from fairhand.session.research.focus import look_at_focus
from fairhand.session.research.meanings import begin_reading, liken_to
from fairhand.session.texts import READ_BY, SourceTexts

INDEXED_BY = "1"
"""Raised when pieces are made or read otherwise than before, so that what was indexed is indexed again."""
MOST_SHOWN = 20
"""Passages that one search shows."""
MOST_WEIGHED = 300
"""Pieces that are weighed for a question, and as many again once it is widened."""
MOST_LIKENED = 50
"""Pieces that are ranked by their meaning too, where an encoder is installed."""
MOST_TELLING = 12
"""Words of the widened question that pieces are looked up by; all of it weighs them."""


@dataclass(frozen=True)
class Matched:
    """The pieces that have what was looked for."""

    pieces: tuple[Piece, ...]
    """The weightiest first."""
    terms: tuple[Term, ...]
    instead: tuple[tuple[str, str], ...]
    """As ``Found`` has them."""
    all_terms: bool = True


@dataclass(frozen=True)
class Found:
    """What a search found."""

    passages: tuple[Passage, ...]
    """The likeliest first, one of each piece."""
    terms: tuple[Term, ...] = ()
    """What was looked for in the end."""
    instead: tuple[tuple[str, str], ...] = ()
    """Words that stand nowhere, each with the word that was looked for in its place; empty where none is near."""
    all_terms: bool = True
    """Whether each of the passages' pages has all of the terms."""
    more: bool = False
    """Whether there are more than are shown."""

    @property
    def told(self) -> str:
        """What was looked for otherwise than it was written, in sentences; nothing where nothing was.

        >>> Found((), instead=(("harbuor", "harbour"), ("zzyzx", ""))).told
        'Nothing stands for “harbuor”; searched for “harbour”. Nothing stands for “zzyzx”.'
        """
        said = [
            f"Nothing stands for “{word}”" + (f"; searched for “{other}”." if other else ".")
            for word, other in self.instead
        ]
        if self.passages and not self.all_terms:
            said.append("No page has all of these words; these have some of them.")
        return " ".join(said)


class Search:
    """The index over a paper's sources, brought up to date."""

    def __init__(self, index: SearchIndex, meanings: Callable[[], Meanings | None] = find_meanings) -> None:
        """The index is at hand, and the encoder where one is installed."""
        self._index = index
        self._meanings = meanings
        self._unread: dict[Piece, None] = {}
        self._vocabulary: Mapping[str, int] | None = None
        self._counted: dict[str, int] = {}

    def find(self, query: str, most: int = MOST_SHOWN) -> Found:
        """The passages with all words and phrases of a query; with some of them, where no page has all.

        Words are found in every form, phrases in quotation marks as they stand; a word that stands nowhere is taken
        for the one that is nearest.
        """
        matched = self.match(query, most + 1)
        weigh = weigh_by_terms(matched.terms)
        passages = tuple(find_passage(piece, weigh) for piece in matched.pieces[:most])
        return Found(passages, matched.terms, matched.instead, matched.all_terms, len(matched.pieces) > most)

    def match(self, query: str, most: int) -> Matched:
        """The pieces that `find` finds, before the passages in them are looked for."""
        terms, instead = self._mend(read_query(query))
        if not terms:
            return Matched((), terms, instead)
        begun = [self._index.stems_beginning(term.words[-1]) if term.begins else () for term in terms]
        pieces = self._match(match_all(terms, begun), terms, most)
        whole = bool(pieces)
        if not whole and len(terms) > 1:
            either = " OR ".join(match_term(term, stems) for term, stems in zip(terms, begun, strict=True))
            pieces = self._match(either, (), most)
        return Matched(tuple(pieces), terms, instead, whole)

    def answer(self, question: str, most: int = MOST_SHOWN) -> Found:
        """The passages that are likeliest to answer a question, by its words and by what such pages speak of."""
        ranked, rarity = self.rank(question)
        weigh = weigh_by_question(rarity)
        passages = tuple(find_passage(piece, weigh) for piece in ranked[:most])
        return Found(passages, more=len(ranked) > most)

    def rank(self, question: str, most: int = MOST_WEIGHED) -> tuple[tuple[Piece, ...], Mapping[str, float]]:
        """The pieces that may answer a question, the likeliest first, and what each word of it weighs."""
        asked = read_question(question)
        if not asked.weights:
            return (), {}
        count, average = self._index.measure()
        collection = Collection(count, average, self._count)
        first = [weigh_piece(piece) for piece in self._index.find(match_any(tuple(asked.weights)), most)]
        wide = widen_question(asked, rank_pieces(asked, first, collection))
        rarity = weigh_stems(wide, collection)
        telling = sorted(rarity, key=lambda one: -rarity[one])[:MOST_TELLING]
        pieces = [weigh_piece(piece) for piece in self._index.find(match_any(telling), most)]
        ranked = rank_pieces(wide, list(dict.fromkeys((*first, *pieces))), collection)
        return tuple(one.piece for one in self._liken(question, ranked)), rarity

    def begin_reading(self) -> threading.Thread | None:
        """What would have been ranked by its meaning, had it been read for it, is being read in the background."""
        folder = self._index.folder
        return begin_reading(lambda: SearchIndex(folder, read_words), tuple(self._unread)) if folder else None

    def _liken(self, question: str, ranked: tuple[Ranked, ...]) -> tuple[Ranked, ...]:
        """The first pieces by their likeness in meaning too, once all of them were read for it."""
        head = [one.piece for one in ranked[:MOST_LIKENED]]
        kept = self._index.meanings(head)
        unread = [piece for piece in head if piece.number not in kept]
        self._unread.update(dict.fromkeys(unread))
        meanings = self._meanings() if head and not unread else None
        if meanings is None:
            return ranked
        return mix_likeness(ranked, liken_to(question, [kept[piece.number] for piece in head], meanings))

    def _match(self, expression: str, exact_in: Sequence[Term], most: int) -> list[Piece]:
        """The pieces that match; those without a phrase of ``exact_in`` in its own words left out."""
        exact = [term for term in exact_in if term.exact]
        found = self._index.find(expression, most if not exact else MOST_WEIGHED)
        if exact:
            found = tuple(p for p in found if all(has_term(list_words(p.text), term) for term in exact))
        return list(found[:most])

    def _mend(self, terms: Sequence[Term]) -> tuple[tuple[Term, ...], tuple[tuple[str, str], ...]]:
        """The terms with words that stand somewhere, and what was changed for that."""
        wanted = {word: stem(word) for term in terms if not term.begins for word in term.words}
        there = self._index.count(dict.fromkeys(wanted.values()))
        instead = {word: self._nearest(word) for word, its in wanted.items() if its not in there}
        mended = []
        for term in terms:
            words = tuple(instead.get(word, word) for word in term.words)
            if all(words):
                mended.append(replace(term, words=words))
        return tuple(dict.fromkeys(mended)), tuple(instead.items())

    def _count(self, stems: Iterable[str]) -> Mapping[str, int]:
        """In how many pieces each stem stands; counted once."""
        wanted = tuple(stems)
        new = [one for one in wanted if one not in self._counted]
        self._counted.update({**dict.fromkeys(new, 0), **self._index.count(new)})
        return {one: self._counted[one] for one in wanted}

    def _nearest(self, word: str) -> str:
        if self._vocabulary is None:
            self._vocabulary = self._index.vocabulary()
        return mend_word(word, self._vocabulary)


def list_open_questions(folder: Path) -> tuple[Question, ...]:
    """The guiding questions that are not answered yet, in the order of the writer's list."""
    return tuple(one for one in look_at_focus(folder)[0].questions if one.state == "open")


def find_question(folder: Path, name: str) -> Question:
    """The guiding question with that id, or that number in the writer's list, counted from 1.

    Raises:
        FairhandError: There is none.
    """
    questions = look_at_focus(folder)[0].questions
    found = next((one for one in questions if one.id == name), None)
    if found is None and name.isascii() and name.isdigit() and 1 <= int(name[:6]) <= len(questions):
        found = questions[int(name) - 1]
    if found is None:
        there = ", ".join(one.id for one in questions) or "none yet; write one with `fairhand focus --ask`"
        message = f"{name}: the paper's focus has no such question; there are: {there}"
        raise FairhandError(message)
    return found


@contextlib.contextmanager
def open_search(
    texts: SourceTexts,
    told: Callable[[int, int], None] | None = None,
    stopped: Callable[[], bool] = lambda: False,
) -> Iterator[Search]:
    """The search over a paper's sources; those whose files or records have changed are read and indexed first.

    Args:
        texts: The sources' texts, as ``OpenPaper.source_texts`` has them.
        told: Is told how many of how many sources were indexed, as each is.
        stopped: Asked before each source is indexed: once it says so, the others are left for the next time.
    """
    index = SearchIndex(texts.files.folder, read_words)
    try:
        _bring_up_to_date(index, texts, told, stopped)
        yield Search(index)
    finally:
        index.close()


def count_unindexed(texts: SourceTexts) -> int:
    """How many sources are new, or have changed, since they were indexed."""
    index = SearchIndex(texts.files.folder, read_words)
    try:
        return len(_list_changed(texts, index.known()))
    finally:
        index.close()


def read_words(piece: Piece) -> Words:
    """What a piece is searched by."""
    words = list_words(piece.text)
    length = sum(word not in JOINING for word in words) + len(list_stems(piece.title))
    return Words(words, list(map(stem, words)), length)


def _bring_up_to_date(
    index: SearchIndex,
    texts: SourceTexts,
    told: Callable[[int, int], None] | None,
    stopped: Callable[[], bool],
) -> None:
    files = texts.files
    known = index.known()
    for gone in known.keys() - texts.entries.keys():
        index.drop(gone)
    changed = _list_changed(texts, known)
    for done, (key, looks) in enumerate(changed, 1):
        if stopped():
            return
        content = _content(files.find_source(key), looks)
        if key in known and known[key].content == content:
            index.look_alike(key, looks)
        else:
            text, entry = texts.get(key), texts.entries[key]
            index.put(key, Known(looks, content), entry.title, part_source(text, entry.title) if text else ())
        if told:
            told(done, len(changed))


def _list_changed(texts: SourceTexts, known: Mapping[str, Known]) -> list[tuple[str, str]]:
    """The sources that do not look as they did when they were indexed, each with how it looks now."""
    looks = ((key, _looks(texts.files.find_source(key), texts, key)) for key in texts.entries)
    return [(key, now) for key, now in looks if key not in known or known[key].looks != now]


def _looks(found: Sequence[FileSeen], texts: SourceTexts, key: str) -> str:
    """What changes whenever a source's record or the look of its files does."""
    said = json.dumps(texts.entries[key].csl, sort_keys=True, default=str)
    record = hashlib.sha256(said.encode("utf-8", "replace")).hexdigest()
    return json.dumps([INDEXED_BY, READ_BY, record, [(file.name, file.size, file.mtime_ns) for file in found]])


def _content(found: Sequence[FileSeen], looks: str) -> str:
    """What changes whenever a source's record or the bytes of its files do."""
    made = json.loads(looks)[:3]
    for file in found:
        with contextlib.suppress(InputError):
            made.append((file.name, file.sha256))
    return json.dumps(made)
