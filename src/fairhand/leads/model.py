"""The two models that come with the package: one tells the fields of a reference, the other where references begin.

Each is a conditional random field over a row: the weights of what is seen, and of one label after another, by which
the likeliest labels of the whole row are found. ``tools/train_references.py`` makes them from invented references
alone; they are loaded when first needed.

**Source**: Lafferty, McCallum and Pereira 2001; Viterbi 1967.
"""

from __future__ import annotations

import gzip
import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

_NOTHING: tuple[tuple[int, float], ...] = ()


@dataclass(frozen=True)
class Model:
    """What was learned."""

    labels: tuple[str, ...]
    transitions: tuple[tuple[float, ...], ...]
    """The weight of each label (column) after each (row)."""
    features: Mapping[str, Sequence[tuple[int, float]]]
    """The weights that a feature gives to labels, by their numbers; those that it says nothing of are left out."""


def tell_fields(rows: Sequence[Sequence[str]]) -> list[str]:
    """The field of each token, ``o`` for none.

    Args:
        rows: The features of each token.
    """
    return label_row(load_model("fields"), rows)


def tell_starts(rows: Sequence[Sequence[str]]) -> list[bool]:
    """Whether a reference begins on each line.

    Args:
        rows: The features of each line.
    """
    return [label == "B" for label in label_row(load_model("starts"), rows)]


def label_row(model: Model, rows: Sequence[Sequence[str]]) -> list[str]:
    """The likeliest labels of a row as a whole.

    >>> told = Model(("a", "b"), ((0.0, 1.0), (0.0, 0.0)), {"x": ((0, 2.0),), "y": ((1, 0.5),)})
    >>> label_row(told, [["x"], ["y"], ["z"]])
    ['a', 'b', 'a']
    """
    count = range(len(model.labels))
    came_from: list[list[int]] = []
    best: list[float] = []
    columns = tuple(zip(*model.transitions, strict=True))
    for row in rows:
        own = [0.0] * len(model.labels)
        for feature in row:
            for label, weight in model.features.get(feature, _NOTHING):
                own[label] += weight
        if not best:
            best = own
            continue
        froms, next_best = [], []
        for label in count:
            weights = [before + step for before, step in zip(best, columns[label], strict=True)]
            highest = max(weights)
            froms.append(weights.index(highest))
            next_best.append(highest + own[label])
        came_from.append(froms)
        best = next_best
    if not best:
        return []
    at = best.index(max(best))
    out = [at]
    for froms in reversed(came_from):
        at = froms[at]
        out.append(at)
    return [model.labels[label] for label in reversed(out)]


@cache
def load_model(name: str) -> Model:
    """One of the two, ``fields`` or ``starts``."""
    return read_model((files("fairhand.leads") / f"{name}.json.gz").read_bytes())


def read_model(data: bytes) -> Model:
    """A model as it was written by `write_model`."""
    told = json.loads(gzip.decompress(data))
    return Model(
        tuple(told["labels"]),
        tuple(tuple(row) for row in told["transitions"]),
        {name: tuple(zip(held[::2], held[1::2], strict=True)) for name, held in told["features"].items()},
    )


def write_model(model: Model) -> bytes:
    """A model as bytes, the same for the same model.

    >>> told = Model(("a",), ((0.5,),), {"x": ((0, 2.0),)})
    >>> read_model(write_model(told)) == told
    True
    """
    held = {name: [part for pair in model.features[name] for part in pair] for name in sorted(model.features)}
    told = {"labels": model.labels, "transitions": model.transitions, "features": held}
    return gzip.compress(json.dumps(told, separators=(",", ":"), ensure_ascii=False).encode(), mtime=0)
