"""Another paper of the writer's own: drafts of students beside those of others, and beside their own earlier ones.

**Source**: ArgRewrite V.2 (O. Kashefi and others 2022), drafts 1 and 2 of 45 students on one task, from one article.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from fairhand.model.own_paper import OwnPaper
from fairhand.model.paper import Paper
from fairhand.model.source import Page, SourceText
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.checks import close_wording, copied_unmarked

Drafts = dict[str, str]


@pytest.fixture(scope="module")
def drafts(outside_data: Callable[[str], Path]) -> tuple[Drafts, Drafts]:
    """The first and second drafts, by student."""
    folder = outside_data("data/student-drafts")
    first, second = (
        {path.stem.rpartition("_")[2]: path.read_text("utf-8", "replace") for path in sorted(place.glob("*.txt"))}
        for place in (folder / "draft1", folder / "draft2")
    )
    return first, second


def remarks(draft: str, others: Drafts) -> list[Remark]:
    """What both checks say of a draft beside other papers."""
    own = tuple(OwnPaper(n, n, SourceText(f"own paper {n}", (Page(None, t),), paged=False)) for n, t in others.items())
    analysis = Analysis(Paper("made", draft, own_papers=own), lambda _: None)
    return [*copied_unmarked.find(analysis), *close_wording.find(analysis)]


def test_papers_on_one_task_are_nearly_left_alone(drafts: tuple[Drafts, Drafts]) -> None:
    """What is told are words that both have: they used one article."""
    first, _ = drafts
    told = [remarks(draft, {n: t for n, t in first.items() if n != name}) for name, draft in first.items()]
    print(f"\n{len(first)} drafts beside all the others: {sum(map(len, told))} told, in {sum(map(bool, told))} drafts")
    assert sum(map(len, told)) <= 10


def test_an_earlier_draft_is_told_once_as_a_whole(drafts: tuple[Drafts, Drafts]) -> None:
    """Most second drafts stand in the first; where less than half does, its passages are told."""
    first, second = drafts
    told = [remarks(second[name], {name: first[name]}) for name in first if name in second]
    whole = sum(len(one) == 1 and one[0].span is None for one in told)
    seen = sum(map(bool, told))
    print(f"\n{len(told)} second drafts beside the first: {whole} told as a whole, {seen - whole} by passages")
    assert seen >= 0.95 * len(told)
    assert whole >= 0.7 * len(told)
