"""``fairhand find``: where the sources speak of something."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path

import pytest


@pytest.fixture
def find(says: Callable[..., str], demo_paper: Path) -> Callable[..., str]:
    """What is found in the demo's paper."""
    return partial(says, "find", demo_paper)


def test_each_passage_has_its_page(find: Callable[..., str]) -> None:
    """With its sentence in half brackets; a word that stands nowhere is told of."""
    said = find("strap", "readars")
    assert "Nothing stands for “readars”; searched for “readers”." in said
    assert "Osei (2014), page 118 ⸢" in said
    assert "Nothing was found in the texts at hand." in find("xylophone")
    assert "ask with --most 2" in find("tram", "--most", "1")


def test_questions_are_asked_in_words_or_by_their_number(find: Callable[..., str], demo_paper: Path) -> None:
    """Of those in the paper's focus; both find the same."""
    (demo_paper / "focus.toml").write_text('[[questions]]\ntext = "Who kept the slips?"\n', "utf-8")
    by_number = find("--question", "1")
    assert by_number == f"Who kept the slips? {find('--ask', 'Who', 'kept', 'the', 'slips?')}"


def test_without_words_there_is_nothing_to_find(run: Callable[..., tuple[int, str]], demo_paper: Path) -> None:
    """That is said in one line."""
    for more in ([], ["  "], ["--question", "9"]):
        code, told = run("find", demo_paper, *more)
        assert code == 2
        assert "Nothing to look for" in told or "no such question" in told
