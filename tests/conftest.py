"""What every test may count on: the outside data where they are to be had, and no test that fails for being slow."""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import settings

from fairhand.session.demo import lay_out_demo

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


@pytest.fixture(scope="session")
def demo_desk(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo's desk, laid out once; tests work on copies."""
    return lay_out_demo(tmp_path_factory.mktemp("demo") / "desk").parent


@pytest.fixture
def demo_paper(demo_desk: Path, tmp_path: Path) -> Path:
    """A copy of the demo's paper, on a copy of its desk."""
    shutil.copytree(demo_desk, tmp_path / "desk")
    return tmp_path / "desk" / "tram-libraries"
