"""How well questions find their pages: the full search beside words alone, on a public collection.

**Source**: the Cranfield collection (Cleverdon 1967): 1400 abstracts, the first 150 of its questions, 1,154 judgements,
every judged document is taken as relevant. Nothing in the search was fitted to it; that holds for each fifth of the
questions by itself, which is printed too.
"""

from __future__ import annotations

import math
import re
from collections import Counter, defaultdict
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from statistics import mean

import pytest

from fairhand.desk.search_index import Known, SearchIndex
from fairhand.model.piece import Piece
from fairhand.session.research.searching import Search, read_words

BARE_MAP, BARE_NDCG = 0.386, 0.479
"""What BM25 with k1 1.2, b .75, no stemming and no stop list gives on title and body, computed from these files."""
FLOOR_MAP, FLOOR_NDCG = 0.455, 0.545
"""The search's own, a little below what was measured: .461 and .552."""
FOLDS = 5


@dataclass(frozen=True)
class Trial:
    """The collection."""

    documents: Mapping[str, tuple[str, str]]
    """Title and body."""
    questions: Mapping[str, str]
    relevant: Mapping[str, frozenset[str]]


@pytest.fixture(scope="module")
def trial(outside_data: Callable[[str], Path]) -> Trial:
    """The collection as its files have it; questions are numbered as they stand, from 1."""
    folder = outside_data("data/retrieval")
    read = {path.name: path.read_text(encoding="latin-1") for path in folder.glob("cran*")}
    documents = {}
    for found in re.finditer(r"<docno>(\d+)</docno>(.*?)</doc>", read["cran.all.1400.xml"], re.DOTALL):
        parts = [re.search(f"<{tag}>(.*?)</{tag}>", found[2], re.DOTALL) for tag in ("title", "text")]
        documents[found[1]] = (parts[0][1] if parts[0] else "", parts[1][1] if parts[1] else "")
    asked = re.findall(r"<title>(.*?)</title>", read["cran.qry.xml"], re.DOTALL)
    relevant: dict[str, set[str]] = defaultdict(set)
    for line in read["cranqrel.trec.txt"].splitlines():
        question, _, document, _ = line.split()
        relevant[question].add(document)
    return Trial(
        documents,
        {str(n): text for n, text in enumerate(asked, 1) if str(n) in relevant},
        {question: frozenset(found) for question, found in relevant.items()},
    )


def measure(trial: Trial, rank: Callable[[str], Sequence[str]]) -> tuple[list[float], list[float]]:
    """Average precision and nDCG at 10 of each question."""
    precision, gain = [], []
    for number, question in trial.questions.items():
        relevant = trial.relevant[number]
        hits = [place for place, document in enumerate(rank(question), 1) if document in relevant]
        precision.append(sum(n / place for n, place in enumerate(hits, 1)) / len(relevant))
        best = sum(1 / math.log2(place + 1) for place in range(1, min(10, len(relevant)) + 1))
        gain.append(sum(1 / math.log2(place + 1) for place in hits if place <= 10) / best)
    return precision, gain


def test_words_alone_are_the_published_floor(trial: Trial) -> None:
    """The bare formula, computed here, gives what is known of these files: the measuring itself is right."""
    words: dict[str, Counter[str]] = {
        i: Counter(re.findall(r"[a-z0-9]+", f"{title} {body}".lower())) for i, (title, body) in trial.documents.items()
    }
    lengths = {i: found.total() for i, found in words.items()}
    average = mean(lengths.values())
    holders: dict[str, list[str]] = defaultdict(list)
    for i, found in words.items():
        for word in found:
            holders[word].append(i)

    def rank(question: str) -> Sequence[str]:
        weights: dict[str, float] = dict.fromkeys(words, 0.0)
        for word in re.findall(r"[a-z0-9]+", question.lower()):
            rare = math.log1p((len(words) - len(holders[word]) + 0.5) / (len(holders[word]) + 0.5))
            for i in holders[word]:
                times = words[i][word]
                weights[i] += rare * times * 2.2 / (times + 1.2 * (0.25 + 0.75 * lengths[i] / average))
        return sorted(weights, key=lambda i: -weights[i])

    precision, gain = measure(trial, rank)
    print(f"\nwords alone: MAP {mean(precision):.3f}, nDCG@10 {mean(gain):.3f}")
    assert mean(precision) == pytest.approx(BARE_MAP, abs=0.005)
    assert mean(gain) == pytest.approx(BARE_NDCG, abs=0.005)


def test_the_full_search_beats_words_alone(trial: Trial, tmp_path: Path) -> None:
    """By a tenth and more in both measures, as the program searches; and in each fifth of the questions by itself."""
    assert FLOOR_MAP >= 1.1 * BARE_MAP
    assert FLOOR_NDCG >= 1.1 * BARE_NDCG
    index = SearchIndex(tmp_path, read_words)
    for i, (title, body) in trial.documents.items():
        index.put(i, Known("", ""), title, [Piece(i, 0, "1", 0, body)])
    search = Search(index)
    precision, gain = measure(trial, lambda question: [piece.source for piece in search.rank(question)[0]])
    index.close()
    print(f"\nthe full search: MAP {mean(precision):.3f}, nDCG@10 {mean(gain):.3f}")
    for fold in range(FOLDS):
        print(f"  fifth {fold + 1}: {_mean_of(precision, fold):.3f}, {_mean_of(gain, fold):.3f}")
    assert mean(precision) >= FLOOR_MAP
    assert mean(gain) >= FLOOR_NDCG


def _mean_of(figures: Iterable[float], fold: int) -> float:
    return mean(list(figures)[fold::FOLDS])
