"""The command as tests run it: each fixture is the function that does so."""

from __future__ import annotations

import io
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from fairhand.cli import main


@pytest.fixture
def ends(monkeypatch: pytest.MonkeyPatch) -> Callable[..., int]:
    """Runs ``fairhand`` with some words: how it ends. What it prints is left to ``capsys``."""

    def ends_(*words: str | Path, typed: str | None = None) -> int:
        if typed is not None:
            monkeypatch.setattr(sys, "stdin", io.StringIO(typed))
        with pytest.raises(SystemExit) as ended:
            main([str(word) for word in words])
        assert isinstance(ended.value.code, int)
        return ended.value.code

    return ends_


@pytest.fixture
def run(ends: Callable[..., int], capsys: pytest.CaptureFixture[str]) -> Callable[..., tuple[int, str]]:
    """Runs ``fairhand`` with some words: how it ends, and all that it prints, on one line."""

    def run_(*words: str | Path, typed: str | None = None) -> tuple[int, str]:
        capsys.readouterr()
        code = ends(*words, typed=typed)
        printed = capsys.readouterr()
        return code, " ".join((printed.out + printed.err).split())

    return run_


@pytest.fixture
def says(run: Callable[..., tuple[int, str]]) -> Callable[..., str]:
    """Runs ``fairhand`` with some words: what it says, on one line, once it has ended well."""

    def says_(*words: str | Path, typed: str | None = None) -> str:
        code, told = run(*words, typed=typed)
        assert code == 0, told
        return told

    return says_


@pytest.fixture
def told(ends: Callable[..., int], capsys: pytest.CaptureFixture[str]) -> Callable[..., tuple[int, str, str]]:
    """Runs ``fairhand`` with some words: how it ends, and what it prints as it is printed, of both streams."""

    def told_(*words: str | Path) -> tuple[int, str, str]:
        capsys.readouterr()
        code = ends(*words)
        printed = capsys.readouterr()
        return code, printed.out, printed.err

    return told_
