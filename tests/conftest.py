"""What every test may count on: the outside data where they are to be had, and no test that fails for being slow."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import settings

ROOT = Path(__file__).parents[1]

settings.register_profile("house", deadline=None)
settings.register_profile("ci", deadline=None, derandomize=True, print_blob=True)
settings.load_profile("ci" if os.environ.get("CI") else "house")


@pytest.fixture(scope="session")
def outside_data() -> Callable[[str], Path]:
    """The path of a data set named from the folder of FAIRHAND_DATA; the test is skipped where it is missing."""
    folder = Path(os.environ.get("FAIRHAND_DATA", ROOT.parent / "shared"))

    def find(name: str) -> Path:
        if not (folder / name).exists():
            pytest.skip(f"no {name} in {folder}: CONTRIBUTING.md says where it is to be had")
        return folder / name

    return find
