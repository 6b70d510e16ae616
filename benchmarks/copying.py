"""What it costs to look for copying: the sources made ready, a draft asked, and the same by a search for likeness.

Run as ``python benchmarks/copying.py [SOURCES...]`` (10, 100 and 1000 where none are named). Each source has 8,000
words by a seeded generator, as common and as rare as those of prose (Zipf's law); the draft has 5,000 in paragraphs of
100, in each of which a sentence of 20 is a source's with one word in six changed. The search is ``rapidfuzz``'s best
partial ratio of a sentence in each source, over a sample of the sentences. Beside it stands what the index would be and
find if it were winnowed to fingerprints, as it is not. All is measured in one run.
"""

from __future__ import annotations

import itertools
import random
import resource
import sys
from collections.abc import Sequence

from measuring import measured, tell
from rapidfuzz.fuzz import partial_ratio_alignment
from search import VOCABULARY, make_lexicon

from fairhand.fidelity.copying import find_likenesses, own_words
from fairhand.fidelity.prepared import prepare
from fairhand.fidelity.shelf import Shelf, shelve
from fairhand.language.sentences import split_sentences
from fairhand.language.shingles import shingles, winnow
from fairhand.model.source import Page, SourceText

WORDS = 8_000
PARAGRAPHS = 50
SENTENCE = 20
SENTENCES = 5
WINDOW = 4
"""Shingles of which a fingerprint is the least: any six words in a row that are left whole are among them."""
SAMPLE = 2
"""Sentences that the search for likeness is asked for; its time is told for all."""


def make_words(chance: random.Random, sources: int) -> tuple[list[list[str]], list[str]]:
    """The words of each source, and those of the draft's own sentences."""
    lexicon = make_lexicon(chance)
    weights = list(itertools.accumulate(1 / rank for rank in range(1, VOCABULARY + 1)))
    texts = [chance.choices(lexicon, cum_weights=weights, k=WORDS) for _ in range(sources)]
    return texts, chance.choices(lexicon, cum_weights=weights, k=PARAGRAPHS * SENTENCES * SENTENCE)


def make_draft(chance: random.Random, texts: Sequence[Sequence[str]], own: Sequence[str]) -> list[str]:
    """Paragraphs of five sentences, the third of each copied."""
    paragraphs = []
    for number in range(PARAGRAPHS):
        begin = number * SENTENCES * SENTENCE
        words = list(own[begin : begin + SENTENCES * SENTENCE])
        source = chance.choice(texts)
        at = chance.randrange(len(source) - SENTENCE)
        words[2 * SENTENCE : 3 * SENTENCE] = [
            words[2 * SENTENCE + k] if k % 6 == 5 else word for k, word in enumerate(source[at : at + SENTENCE])
        ]
        sentences = (words[k : k + SENTENCE] for k in range(0, len(words), SENTENCE))
        paragraphs.append(" ".join(f"{' '.join(each).capitalize()}." for each in sentences))
    return paragraphs


def winnowed(texts: Sequence[Sequence[str]], draft: Sequence[str]) -> tuple[float, float]:
    """The share of the sources' places that fingerprints keep, and of the copied sentences that they still find."""
    kept = [winnow([hash(one) for one in shingles(text, 3)], WINDOW) for text in texts]
    known = {one for prints in kept for one, _ in prints}
    places = sum(len(prints) for prints in kept) / sum(len(text) for text in texts)
    copied = [paragraph.split(". ")[SENTENCES // 2].lower().split() for paragraph in draft]
    found = sum(
        any(one in known for one, _ in winnow([hash(each) for each in shingles(words, 3)], WINDOW)) for words in copied
    )
    return places, found / len(copied)


def ask(shelf: Shelf, paragraphs: Sequence[str]) -> int:
    """In how many paragraphs something is told."""
    return sum(bool(find_likenesses(own_words(p, tuple(split_sentences(p)), (), ()), shelf)) for p in paragraphs)


def measure(sources: int) -> None:
    """Prints what one size costs."""
    chance = random.Random(82)  # noqa: S311 - the same texts in each run
    texts, own = make_words(chance, sources)
    draft = make_draft(chance, texts, own)
    lines = [" ".join(words) for words in texts]
    # What `prepare` keeps of a few sources is kept for all by the shelf.
    prepared = tuple(prepare(SourceText(str(n), (Page("1", line),), paged=True)) for n, line in enumerate(lines))
    split_sentences(draft[0])
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    shelf = shelve(prepared)
    build = measured(lambda: (shelf.words, shelf.stems, shelf.word_stems))
    taken = (resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - memory) / 1024
    ask(shelf, ["Sentences are told apart by a model that is loaded once."])
    asked = measured(lambda: ask(shelf, draft))
    found = ask(shelf, draft)
    draft[7] += " One more."
    again = measured(lambda: ask(shelf, draft))
    some = draft[0].split(". ")[1 : 1 + SAMPLE]
    searched = measured(lambda: [partial_ratio_alignment(one, line, score_cutoff=75) for one in some for line in lines])
    searched *= PARAGRAPHS * SENTENCES / SAMPLE
    places, still = winnowed(texts, draft)
    print(f"{sources} sources")
    tell("seconds to make them ready", build, "once for the same sources")
    tell("megabytes that this takes", taken, "no goal")
    tell("milliseconds to ask 5,000 words", asked * 1000, "tens")
    tell("milliseconds after one paragraph changed", again * 1000, "that paragraph alone")
    tell("share of the copies found", found / PARAGRAPHS, "1")
    tell("times as long for a search by likeness", searched / asked, "1 or more")
    tell("share of the places that fingerprints would keep", places, "no goal")
    tell("share of the copies that these would touch", still, "no goal")


if __name__ == "__main__":
    for size in [int(said) for said in sys.argv[1:]] or [10, 100, 1000]:
        measure(size)
