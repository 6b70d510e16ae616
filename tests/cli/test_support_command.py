"""Support and searches from the terminal."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest


@pytest.fixture
def paper(demo_desk: Path, tmp_path: Path) -> Path:
    """A copy of the demo's paper, on its desk."""
    return Path(shutil.copytree(demo_desk, tmp_path / "desk")) / "tram-libraries"


@pytest.fixture
def run(run: Callable[..., tuple[int, str]], paper: Path) -> Callable[..., tuple[int, str]]:
    """Runs a command on the paper."""
    return lambda name, *options: run(name, paper, *options)


def test_a_pair_is_ruled_on(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """Holes come first; the writer's word changes what is to be found, and can be taken back."""
    code, told = run("support")
    assert code == 0
    assert told.startswith("Look for 1 more independent source for “Borrowing was heavy")
    assert "[brandvold-2016 " in told
    other = told.split("[brandvold-2016 ", 1)[1].split("]", 1)[0]
    ruled = run("support", "--two", "brandvold-2016", other, "--why", "He counted again.")[1]
    assert not ruled.startswith("Look for 1 more independent source for “Borrowing was heavy")
    assert "Count as two, by your word" in ruled
    assert 'why = "He counted again."' in (paper / "support.toml").read_text("utf-8")
    assert run("support", "--undecided", other, "brandvold-2016")[1] == told


def test_a_pair_must_be_on_the_list(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """Nothing is written where a source is not there."""
    code, told = run("support", "--one", "lund-1999", "nobody")
    assert code == 2
    assert "nobody: name two sources by their ids" in told
    assert not (paper / "support.toml").exists()


def test_estimates_are_told_only_where_enough_tells(run: Callable[..., tuple[int, str]]) -> None:
    """Two routes that met often enough give a figure with its range and its assumption."""
    assert "Too little is known to estimate." in run("support", "--estimates")[1]
    first = [word for one in ("a", "b", "c", "d") for word in ("--kept", one)]
    second = [word for one in ("b", "c", "d", "e", "f") for word in ("--kept", one)]
    run("searched", "--for", "trams", "--in", "city catalogue", "--hits", "40", *first)
    told = run("searched", "--for", "Osei (2014)", "--leads", *second)[1]
    assert "“trams”, city catalogue: 40 hits, 4 sources kept" in told
    assert "the references of “Osei (2014)”: 5 sources kept" in told
    estimated = run("support", "--estimates")[1]
    assert "you found 6 sources; there may be 6 in all, between 6 and" in estimated
    assert "takes the two ways to be independent" in estimated


def test_notes_for_questions_count_in_the_estimate(run: Callable[..., tuple[int, str]], paper: Path) -> None:
    """Which question a source has a note for is a theme that it was seen to speak of."""
    (paper / "focus.toml").write_text(
        "".join(f'[[questions]]\nid = "q{n}"\ntext = "Which {n}?"\n\n' for n in range(1, 4)), "utf-8"
    )
    for question, sources in (("q1", ("lund-1999",)), ("q2", ("osei-2014", "haldane-2008")), ("q3", ("quist-1988",))):
        for source in sources:
            run("note", source, "so", "--question", question)
    told = run("support", "--estimates")[1]
    assert "would be on points and questions that you have (Good–Turing)" in told
