"""Copying left unmarked, against worked examples, graded near copies and whole papers with copies set into them.

Sources: A. Z. Broder 1997 and P. Clough and M. Stevenson 2011 (containment; a corpus of short answers, each marked by
its writer as cut, lightly revised, heavily revised or of no source); S. Schleimer, D. Wilkerson and A. Aiken 2003
(winnowing, the worked example of section 3).
"""

from __future__ import annotations

import csv
import json
import shutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from itertools import pairwise
from pathlib import Path
from statistics import mean

import pytest

from fairhand.fidelity.copying import find_likenesses, own_words
from fairhand.fidelity.prepared import prepare, words_of
from fairhand.fidelity.shelf import shelve
from fairhand.language.sentences import split_sentences
from fairhand.language.shingles import containment, shingles, winnow
from fairhand.model.source import Page, SourceText
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.checks import close_wording, copied_unmarked
from fairhand.session.opened import OpenPaper

SOURCE = "the early bird catches the worm but the second mouse gets the cheese".split()
DRAFT = "people say the early bird catches the worm yet the second mouse gets the cheese".split()
PUBLISHED_MEANS = {"cut": 0.651, "light": 0.503, "heavy": 0.300, "non": 0.025}
"""Mean containment of three words over all five tasks (check-values 6.7)."""
RIGHT = 0.92
SEEDED = {"overlap-verbatim": copied_unmarked, "overlap-patchwork": close_wording}


@pytest.mark.parametrize(("size", "shared", "of"), [(1, 9, 12), (2, 10, 14), (3, 8, 13), (4, 6, 12), (5, 4, 11)])
def test_containment_is_as_worked_by_hand(size: int, shared: int, of: int) -> None:
    """The draft's shingles that the source has, of the draft's own, each once."""
    assert len(set(shingles(DRAFT, size))) == of
    assert containment(DRAFT, SOURCE, size) == shared / of


def test_winnowing_is_as_published() -> None:
    """The fingerprints of the paper's seventeen hashes, with their places from 0."""
    hashes = [77, 72, 42, 17, 98, 50, 17, 98, 8, 88, 67, 39, 77, 72, 42, 17, 98]
    assert winnow(hashes, 4) == [(17, 3), (17, 6), (8, 8), (39, 11), (17, 15)]


@dataclass(frozen=True)
class Answer:
    """A short answer, how it came to be, and how much of it is a copy."""

    kind: str
    containment: float
    marked: float
    """The share of its words in the spans that are told."""


@pytest.fixture(scope="module")
def answers(outside_data: Callable[[str], Path]) -> list[Answer]:
    """The answers to the tasks that are here."""
    folder = outside_data("data/near-copies")
    out = []
    for row in csv.DictReader((folder / "file_information.csv").read_text("utf-8").splitlines()):
        file, original = folder / row["File"], folder / f"orig_task{row['Task']}.txt"
        if row["Category"] != "orig" and file.exists():
            out.append(_answer(row["Category"], _text(file), _text(original)))
    return out


def _text(path: Path) -> str:
    return " ".join(path.read_text("utf-8", errors="replace").split())


def _answer(kind: str, text: str, original: str) -> Answer:
    source = prepare(SourceText("original", (Page(None, original),), paged=False))
    own = own_words(text, tuple(split_sentences(text)), (), ())
    marked = sum(one.words for one in find_likenesses(own, shelve((source,))))
    return Answer(kind, containment(own.words, source.words, 3), marked / len(words_of(text)))


def test_near_copies_are_told_from_answers_of_no_source(answers: list[Answer]) -> None:
    """By containment alone, the threshold set on the others: at least .92 are right."""
    means = {kind: mean(a.containment for a in answers if a.kind == kind) for kind in PUBLISHED_MEANS}
    right = sum(
        (one.containment > _threshold(answers[:k] + answers[k + 1 :])) == (one.kind != "non")
        for k, one in enumerate(answers)
    )
    print(f"\nmean containment: {', '.join(f'{kind} {value:.3f}' for kind, value in means.items())}")
    print(f"leaving one out, {right} of {len(answers)} right")
    assert means["cut"] > means["light"] > means["heavy"] > means["non"]
    assert right >= RIGHT * len(answers)


def test_the_passages_of_a_near_copy_are_found(answers: list[Answer]) -> None:
    """Not its score alone: most cut and lightly revised answers have spans that are told, one of no source has none."""
    told = {kind: [a.marked for a in answers if a.kind == kind] for kind in PUBLISHED_MEANS}
    for kind, shares in told.items():
        marked = sum(share > 0 for share in shares)
        print(f"\n{kind}: something marked in {marked} of {len(shares)}, on average {mean(shares):.2f} of the words")
    copied = [share > 0 for kind in ("cut", "light") for share in told[kind]]
    assert sum(copied) >= RIGHT * len(copied)
    assert not any(told["non"])


def _threshold(answers: list[Answer]) -> float:
    """The middle of the widest of the gaps that part the two kinds with the fewest errors."""
    values = sorted({a.containment for a in answers})
    wide = {(low + high) / 2: high - low for low, high in pairwise(values)}
    return min(wide, key=lambda t: (sum((a.containment > t) != (a.kind != "non") for a in answers), -wide[t]))


def _remarks(folder: Path, scratch: Path, name: str) -> Iterator[tuple[object, Remark, str]]:
    """What both checks say of a draft in a paper's folder."""
    copy = Path(shutil.copytree(folder, scratch / folder.name))
    draft = (folder / name).read_text("utf-8")
    analysis = Analysis(replace(OpenPaper(copy).look().paper, draft=draft), lambda _: None)
    for check in SEEDED.values():
        for remark in check.find(analysis):
            yield check, remark, draft


@pytest.mark.parametrize("name", ["harbour-strike", "rain-gardens"])
def test_copies_set_into_whole_papers_are_caught(
    name: str, outside_data: Callable[[str], Path], tmp_path: Path
) -> None:
    """Each is told by its own check, and nothing else is."""
    folder = outside_data(f"papers/{name}")
    seeded = [
        (SEEDED[fault["type"]], fault["quote"])
        for fault in json.loads((folder / "gold.json").read_text("utf-8"))["faults"]
        if fault["type"] in SEEDED
    ]
    told = list(_remarks(folder, tmp_path, "draft.md"))
    assert len(told) == len(seeded) == len(SEEDED)
    for check, quote in seeded:
        assert any(c is check and r.span is not None and r.span.of(draft) in quote for c, r, draft in told)


@pytest.mark.parametrize("name", ["harbour-strike", "rain-gardens"])
def test_clean_papers_are_left_alone(name: str, outside_data: Callable[[str], Path], tmp_path: Path) -> None:
    """They quote and cite their sources and say the rest in their own words."""
    assert not list(_remarks(outside_data(f"papers/{name}"), tmp_path, "clean.md"))
