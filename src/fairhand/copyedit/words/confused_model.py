"""What has been learnt of the places where words stand: what parts of speech a place holds, and which of two words.

**Source**: two log-linear models, one for the parts of speech and one for each pair that is frequent enough, over the
features of A. Golding and D. Roth 1999, *A Winnow-Based Approach to Context-Sensitive Spelling Correction*, Machine
Learning 34, the pairs over those of the clause too. On what they were trained, and how, stands in
``tools/train_confusions.py``.
"""

from __future__ import annotations

import gzip
import json
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from importlib.resources import files
from itertools import accumulate

from fairhand.copyedit.around import Token
from fairhand.copyedit.words.confused_clause import clause_at
from fairhand.copyedit.words.confused_features import Seen, features_at, see
from fairhand.language.lexicon import find_word, weigh_pair

_STEP = 4
"""Weights are kept as whole quarters."""
_ZERO = ord("m")
"""The letter of a weight of nothing; each letter on or back is a quarter."""
_PLAIN = frozenset(".,;:?!'\"’‘“”—–-")
"""Marks of plain prose."""
_AGAINST, _SELDOM = 10, 65
"""Ten times the logarithm of how much oftener books may have the word as written between its neighbours, and of how
often two words in a row were counted where the list does not have them, about."""
_SURELY = 4
"""How far beyond its bar a word surely stands for another: a logarithm."""
_LEAST = 1e-6
"""What a place is never less likely to hold."""


@dataclass(frozen=True)
class Model:
    """What was learnt."""

    known: Mapping[str, str]
    """Words that were met, with the parts of speech that they were."""
    features: Sequence[str]
    """What can be seen around a place: first what is weighed for the parts of speech, then what for pairs alone."""
    bias: Sequence[float]
    """How frequent each part of speech is: a logarithm."""
    columns: Sequence[str]
    """For each part of speech, the weight of each feature of the first kind as a letter."""
    bars: Mapping[str, Mapping[str, float]]
    """By the word as written and the word meant: how much rather the place must hold the latter for it to be told."""
    parts: Mapping[str, Sequence[int]]
    """The parts of speech that each of the words in question can be."""
    pairs: Mapping[str, tuple[float, float, str]]
    """For two words in the order of the alphabet, parted by a blank: what speaks for the second from the first, how
    much the parts of speech count, and what each feature says for it (steps to its number and quarters by turns)."""

    @cached_property
    def unpacked(self) -> dict[str, Mapping[int, int]]:
        """The weights of the pairs that were asked for, by the numbers of the features."""
        return {}

    @cached_property
    def numbers(self) -> Mapping[str, int]:
        """Each feature's number."""
        return {feature: number for number, feature in enumerate(self.features)}

    def meant_at(self, tokens: Sequence[Token], at: int, seen: Seen | None = None) -> str | None:
        """The word that its place asks for instead of the one that stands there; None where that one is let be.

        ``seen`` is the same sentence as it is seen, where it is asked for more than one place. A word beside a number,
        a sign, a letter or a name of no dictionary, or what is not the writer's own, is let be, and so is one alone
        between two marks.
        """
        wrote = tokens[at].text
        bars = self.bars.get(wrote)
        beside = [each.text for each in (*tokens[max(0, at - 1) : at], *tokens[at + 1 : at + 2])]
        if bars is None or any(map(_is_strange, beside)) or not any(each[0].isalpha() for each in beside):
            return None
        seen = seen or see(tokens, self.known)
        around = [self.numbers[each] for each in features_at(seen, at) if each in self.numbers]
        wider = [self.numbers[each] for each in clause_at(seen, at) if each in self.numbers]
        over = {meant: self._favours(around, wider, wrote, meant) - bar for meant, bar in bars.items()}
        best = max(over, key=lambda meant: over[meant])
        if over[best] <= 0 or not self._is_borne_out(seen, at, best, surely=over[best] > _SURELY):
            return None
        return best

    def _is_borne_out(self, seen: Seen, at: int, meant: str, *, surely: bool) -> bool:
        """Whether books at large speak for the other word beside these neighbours, not against it.

        It is enough that they do not speak against it where the place surely holds the other word, and for words of
        which the parts of speech alone were learnt. They did not count a pronoun and its verb as one word.
        """
        before, wrote, after = seen.word(at - 1), seen.words[at], seen.word(at + 1)
        if "'" in wrote:
            return surely or weigh_pair(meant, after) > 0
        against = _weigh_between(before, wrote, after) - _weigh_between(before, meant, after)
        enough = surely or " ".join(sorted((wrote, meant))) not in self.pairs
        return against <= _AGAINST and (enough or any((weigh_pair(before, meant), weigh_pair(meant, after))))

    def _favours(self, around: Sequence[int], wider: Sequence[int], wrote: str, meant: str) -> float:
        """How much rather one word stands at a place than another: a logarithm."""
        by_part = self._by_part([each for each in around if each < len(self.columns[0])], wrote, meant)
        first, second = sorted((wrote, meant))
        if f"{first} {second}" not in self.pairs:
            return by_part
        bias, share, _ = self.pairs[f"{first} {second}"]
        weights = self._weights(f"{first} {second}")
        by_pair = bias + sum(weights.get(each, 0) for each in (*around, *wider)) / _STEP
        return share * by_part + (by_pair if meant == second else -by_pair)

    def _by_part(self, seen: Sequence[int], wrote: str, meant: str) -> float:
        sums = [
            bias + sum(ord(column[each]) - _ZERO for each in seen) / _STEP
            for bias, column in zip(self.bias, self.columns, strict=True)
        ]
        most = max(sums)
        likely = [math.exp(each - most) for each in sums]
        whole = sum(likely)
        of_meant = sum(likely[each] for each in self.parts.get(meant, ())) / whole
        of_wrote = sum(likely[each] for each in self.parts.get(wrote, ())) / whole
        return math.log(of_meant + _LEAST) - math.log(of_wrote + _LEAST)

    def _weights(self, pair: str) -> Mapping[int, int]:
        if pair not in self.unpacked:
            packed = list(map(int, self.pairs[pair][2].split()))
            self.unpacked[pair] = dict(zip(accumulate(packed[::2]), packed[1::2], strict=True))
        return self.unpacked[pair]


def _weigh_between(before: str, word: str, after: str) -> int:
    """Ten times the logarithm of how often books have a word between two others, from how often beside each of them."""
    found = find_word(word)
    beside = max(weigh_pair(before, word), _SELDOM) + max(weigh_pair(word, after), _SELDOM)
    return beside - (found.weight if found else _SELDOM)


def _is_strange(word: str) -> bool:
    if word[0].isalpha():
        if len(word) == 1:
            return word not in "ai"
        return find_word(word) is None and find_word(word.capitalize()) is None
    return word not in _PLAIN


@lru_cache(maxsize=1)
def read_model() -> Model:
    """The model as shipped.

    >>> from fairhand.copyedit.around import read_tokens
    >>> read_model().meant_at(read_tokens("No later edition could altar the first impression."), 4)
    'alter'
    """
    raw = json.loads(
        gzip.decompress((files("fairhand") / "copyedit" / "words" / "confused_model.json.gz").read_bytes())
    )
    known = dict(line.split(" ") for line in raw["known"].split("\n"))
    raw["known"], raw["features"] = known, raw["features"].split("\n")
    return Model(**raw)
