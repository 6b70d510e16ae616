"""Lapses from the terminal: written down, learnt, looked for, forgotten."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path

import pytest

DRAFT = "# Salt\n\nThe sault pan was larger then the sault house. “A sault mine,” he wrote.\n"


@pytest.fixture
def paper(tmp_path: Path) -> Path:
    """A paper on a desk."""
    (tmp_path / "desk.toml").write_text("", "utf-8")
    folder = tmp_path / "salt"
    folder.mkdir()
    (folder / "draft.md").write_text(DRAFT, "utf-8")
    return folder


@pytest.fixture
def run(run: Callable[..., tuple[int, str]], paper: Path) -> Callable[..., tuple[int, str]]:
    """Runs the command on the paper."""
    return partial(run, "lapses", paper)


def test_a_lapse_is_written_down_and_found(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """It stands on the desk, and its places in the writer's own words are shown; quotations are not."""
    assert run()[1].startswith("No lapses yet.")
    code, told = run("--wrong", "sault", "--right", "salt")
    assert code == 0
    assert "sault for salt: 1 time, last on " in told
    assert told.count("line 3:") == 2
    assert 'wrong = "sault"' in (paper.parent / "lapses.toml").read_text("utf-8")
    assert run("--forget", "sault for salt")[1].startswith("No lapses yet.")
    assert run("--wrong", "sault", "--right", "salt")[0] == 0


def test_remarks_are_learnt_from(run: Callable[..., tuple[int, str]], paper: Path, tmp_path: Path) -> None:
    """Those that say what is wrong and what is right."""
    (tmp_path / "remarks.txt").write_text("“then” should be “than”\nNicely put.\n", "utf-8")
    told = run("--from", str(tmp_path / "remarks.txt"))[1]
    assert told.startswith("Of 2 remarks 1 new name an error")
    assert "⸢then⸣ the sault house" in told
    assert 'check = "confused-words"' in (paper.parent / "lapses.toml").read_text("utf-8")


def test_a_check_that_there_is_none_of_is_refused(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """With the names of those that there are; nothing is written."""
    code, told = run("--check", "comas")
    assert code == 2
    assert "comas: no check has that name; there are " in told
    assert "doubled-word" in told
    assert not (paper.parent / "lapses.toml").exists()


def test_another_draft_that_is_no_text_stands_in_nobody_s_way(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """It is told of where that paper is opened."""
    (paper.parent / "other").mkdir()
    (paper.parent / "other" / "draft.md").write_bytes(b"PK\x03\x04\x00\x00")
    assert run("--wrong", "sault", "--right", "salt")[0] == 0


def test_a_lapse_that_has_died_out_is_told(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """In none of the last three drafts on the desk that are long enough to tell."""
    (paper / "draft.md").write_text("The salt. " * 120, "utf-8")
    for name in ("one", "two"):
        (paper.parent / name).mkdir()
        (paper.parent / name / "draft.md").write_text("The pan. " * 120, "utf-8")
    (paper.parent / "lapses.toml").write_text(
        '[[lapses]]\nname = "s"\nwrong = "sault"\ncount = 5\nlast = "2020-01-01"\n'
    )
    assert "it has died out" in run()[1]


def test_a_name_that_there_is_not(run: Callable[..., tuple[int, str]]) -> None:
    """One line: what, where, what to do."""
    assert run("--forget", "nobody") == (2, "fairhand: nobody: no lapse has that name; there are none")
    code, told = run("--only", "nobody")
    assert (code, "no lapse has that name" in told) == (2, True)


def test_a_rule_on_tools_keeps_lapses_from_being_looked_for(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """They are listed, to be had in mind, and it is said that they were not looked for."""
    run("--wrong", "sault", "--right", "salt")
    (paper / "brief.txt").write_text("Write 900 words. Do not use spell-checkers on this paper.\n", "utf-8")
    told = run()[1]
    assert "sault for salt: 1 time" in told
    assert "Not looked for, by the sheet’s rule on tools." in told
    assert "line 3" not in told
