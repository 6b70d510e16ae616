"""The documents say what the code does."""

from __future__ import annotations

import importlib.util
import re
from pathlib import Path
from types import ModuleType

import pytest

from fairhand.cli import COMMANDS
from fairhand.readiness.table import CHECKS

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="module")
def reference() -> ModuleType:
    """The tool that writes the reference pages."""
    spec = importlib.util.spec_from_file_location("write_reference", ROOT / "tools" / "write_reference.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.mark.parametrize("page", ["commands.md", "checks.md"])
def test_the_reference_pages_are_written_from_the_code(reference: ModuleType, page: str) -> None:
    """``python tools/write_reference.py`` would change nothing."""
    assert (ROOT / "docs" / page).read_text("utf-8") == reference.PAGES[page]()


def test_the_readme_names_only_commands_that_there_are() -> None:
    """Each ``fairhand …`` of the README is a command, and both of its make targets exist."""
    readme = (ROOT / "README.md").read_text("utf-8")
    named = set(re.findall(r"(?:\$ |`)fairhand ([a-z]+)", readme))
    assert named
    assert named <= set(COMMANDS)
    makefile = (ROOT / "Makefile").read_text("utf-8")
    for target in ("make demo", "make test"):
        assert target in readme
        assert target.split()[1] in makefile


def test_every_check_file_has_its_row() -> None:
    """A check is one file and one row, of one name."""
    files = {path.stem.replace("_", "-") for path in (ROOT / "src/fairhand/readiness/checks").glob("[a-z]*.py")}
    assert files == {check.name for check in CHECKS}


def test_the_architecture_names_every_room() -> None:
    """No room stands outside the plan."""
    plan = (ROOT / "docs" / "architecture.md").read_text("utf-8")
    rooms = {path.parent.name for path in (ROOT / "src" / "fairhand").glob("*/__init__.py")}
    assert {room for room in rooms if room not in plan} == set()
