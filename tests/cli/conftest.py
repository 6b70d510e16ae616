"""The command as tests run it."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from fairhand.cli import main


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]) -> Callable[..., tuple[int, str]]:
    """Runs ``fairhand`` with some words: its exit code, and all that it printed, on one line."""

    def run_(*words: str | Path) -> tuple[int, str]:
        capsys.readouterr()
        with pytest.raises(SystemExit) as ended:
            main([str(word) for word in words])
        printed = capsys.readouterr()
        assert isinstance(ended.value.code, int)
        return ended.value.code, " ".join((printed.out + printed.err).split())

    return run_
