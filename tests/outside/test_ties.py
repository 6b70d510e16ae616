"""Which sources are called one witness: every pair of whole papers, and pairs of published articles at random.

**Source**: open-access articles of PLOS (JATS XML). Articles drawn at random are two witnesses unless they share an
author; two of them cite another, both for a method, and rest on nothing of it.
"""

from __future__ import annotations

import importlib
import json
import random
from collections.abc import Callable, Mapping
from dataclasses import replace
from itertools import combinations
from pathlib import Path
from typing import Any

import pytest

from fairhand.evidence.independence import find_dependences
from fairhand.evidence.recurring import find_figure, find_wording
from fairhand.evidence.reprinting import ONE_TEXT, share_printed
from fairhand.evidence.same_study import find_same_study
from fairhand.model.entry import Entry
from fairhand.model.source import SourceText
from fairhand.session.opened import OpenPaper

TOOLS = Path(__file__).resolve().parents[2] / "tools"
DRAWN = 24
"""Articles that are drawn: 276 pairs."""


@pytest.mark.parametrize("name", ["harbour-strike", "rain-gardens"])
def test_of_all_pairs_of_a_paper_those_of_its_key_are_tied(outside_data: Callable[[str], Path], name: str) -> None:
    """Though most of its sources speak of the same events, with the same figures."""
    folder = outside_data("papers") / name
    key = json.loads((folder / "gold.json").read_text("utf-8"))["support"]
    paper = OpenPaper(folder).look().paper
    entries = {entry.id: entry for entry in paper.entries}
    tied = {tie.pair for tie in find_dependences(list(entries), entries, paper.texts)}
    print(f"\n{name}: {len(tied)} of {len(entries) * (len(entries) - 1) // 2} pairs tied")
    assert tied == {frozenset(one["sources"]) for one in key if one["issue"] == "not-independent"}


@pytest.fixture(scope="module")
def articles(outside_data: Callable[[str], Path]) -> tuple[Mapping[str, Entry], Mapping[str, SourceText]]:
    """Some of the articles, as sources."""
    outside_data("data/articles-jats")
    with pytest.MonkeyPatch.context() as patch:
        patch.syspath_prepend(str(TOOLS))
        corpora: Any = importlib.import_module("measuring.corpora")
        found = [one for one in corpora.articles() if one.entry.authors and one.entry.issued]
        drawn = random.Random(7).sample(found, DRAWN)  # noqa: S311 - a sample
        shelved = [one.shelved(1) for one in drawn]
    entries = {f"a{n}": replace(one.entry, id=f"a{n}") for n, one in enumerate(shelved)}
    return entries, {f"a{n}": replace(one.source(), id=f"a{n}") for n, one in enumerate(shelved)}


def test_articles_at_random_are_not_tied(
    articles: tuple[Mapping[str, Entry], Mapping[str, SourceText]],
) -> None:
    """But by an author's name."""
    entries, texts = articles
    ties = find_dependences(list(entries), entries, texts)
    print(f"\n{len(ties)} of {len(entries) * (len(entries) - 1) // 2} pairs tied, all by an author's name")
    assert {tie.kind for tie in ties} <= {"shared-author"}
    assert len(ties) <= 2


def test_words_and_figures_seldom_recur_by_chance(
    articles: tuple[Mapping[str, Entry], Mapping[str, SourceText]],
) -> None:
    """What a citation would need beside it to be a tie."""
    _, texts = articles
    pairs = list(combinations(texts.values(), 2))
    worded = sum(find_wording(*pair) is not None for pair in pairs)
    figured = sum(find_figure(*pair) is not None for pair in pairs)
    studied = sum(find_same_study(*pair) is not None for pair in pairs)
    most = max(share_printed(*pair) for pair in pairs)
    print(f"\n{len(pairs)} pairs: words in {worded}, a figure in {figured}, a study in {studied}; {most:.3f} printed")
    assert worded <= 0.01 * len(pairs)
    assert figured <= 0.02 * len(pairs)
    assert studied == 0
    assert most < ONE_TEXT / 10
