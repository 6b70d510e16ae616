"""The ground that everything stands on: the law of imports, the pins, the build's additions and a quick start."""

from __future__ import annotations

import ast
import json
import re
import shutil
import subprocess
import sys
import tomllib
from importlib.resources import files
from pathlib import Path

import pytest
from lxml import etree
from packaging.requirements import Requirement

ROOT = Path(__file__).parents[1]
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
PINS = {name: (ROOT / "requirements" / f"{name}.txt").read_text(encoding="utf-8") for name in ("run", "build", "dev")}
HOSTS = re.compile(r"pypi\.(?:org|io)|pythonhosted\.org|npmjs\.(?:org|com)|yarnpkg\.com|registry\.npm", re.IGNORECASE)
HEAVY = (
    "PIL",
    "bibtexparser",
    "docx",
    "jinja2",
    "lxml",
    "markdown_it",
    "numpy",
    "nupunkt",
    "onnxruntime",
    "pylatexenc",
    "pypandoc",
    "pypdfium2",
    "rapidfuzz",
    "rapidocr",
    "sqlite3",
    "starlette",
    "typst",
    "uvicorn",
    "watchfiles",
    "zstandard",
)
CSL = "{http://purl.org/net/xbiblio/csl}"


def committed_files() -> list[Path]:
    """Every file that is committed, or would be."""
    git = shutil.which("git")
    if git is None or not (ROOT / ".git").exists():
        pytest.skip("not a checkout: what is committed cannot be told")
    command = [git, "ls-files", "-z", "--cached", "--others", "--exclude-standard"]
    listed = subprocess.run(command, cwd=ROOT, capture_output=True, check=True).stdout.decode()
    return [path for name in listed.split("\0") if name and (path := ROOT / name).is_file()]


def pinned(name: str) -> dict[str, str]:
    """The version that one of the files of pins gives each library."""
    return dict(re.findall(r"^([a-z0-9-]+)==([^ ;\\]+)", PINS[name], re.MULTILINE))


def canonical(name: str) -> str:
    """A library's name as the pins write it."""
    return re.sub(r"[-_.]+", "-", name).lower()


def test_the_law_of_imports_holds() -> None:
    """No room imports upwards or sideways, and none but the edges reaches the disk, the clock or the network."""
    command = "from importlinter.cli import lint_imports; raise SystemExit(lint_imports(no_cache=True, no_logo=True))"
    done = subprocess.run([sys.executable, "-c", command], cwd=ROOT, capture_output=True, check=False)
    assert done.returncode == 0, done.stdout.decode()


def test_no_room_escapes_the_law() -> None:
    """Every room of the row of layers stands in both contracts that keep the rooms pure."""
    layers, *pure = PROJECT["tool"]["importlinter"]["contracts"]
    rows = [set(re.findall(r"\w+", row)) for row in layers["layers"]]
    rooms = set().union(*rows) - {"cli", "web", "session", "desk", "outside", "press"}
    there = {f"fairhand.{room}" for room in rooms if list((ROOT / "src" / "fairhand").glob(f"{room}*/*.py"))}
    for contract in pure:
        assert there <= set(contract["source_modules"]), contract["name"]


def test_the_command_starts_without_heavy_libraries() -> None:
    """Loading the command line loads none of the libraries that only some commands need."""
    command = f"import sys, fairhand.cli; print(*[name for name in {HEAVY!r} if name in sys.modules])"
    done = subprocess.run([sys.executable, "-c", command], capture_output=True, check=True, encoding="utf-8")
    assert done.stdout.split() == []


def test_no_committed_file_names_a_registry() -> None:
    """What is fetched is named and hashed; where it is fetched from is the machine's own setting."""
    named = [
        str(path.relative_to(ROOT))
        for path in committed_files()
        if path != Path(__file__) and HOSTS.search(path.read_bytes().decode(errors="replace"))
    ]
    assert named == []


def test_no_lock_with_addresses_is_committed() -> None:
    """Neither a lock of a kind that holds addresses, nor an address in the locks that are there."""
    locks = {"uv.lock", "poetry.lock", "pdm.lock", "yarn.lock", "pnpm-lock.yaml", "npm-shrinkwrap.json"}
    assert [path for path in committed_files() if path.name in locks] == []
    assert all("://" not in text for text in PINS.values())
    packages = json.loads((ROOT / "package-lock.json").read_text(encoding="utf-8"))["packages"]
    assert all("resolved" not in package for package in packages.values())
    assert all("integrity" in package for name, package in packages.items() if name)


@pytest.mark.parametrize("name", PINS)
def test_each_pin_is_hashed(name: str) -> None:
    """A library is one exact version, of which every file that may be fetched is known by its hash."""
    entries = re.split(r"^(?=\S)", PINS[name], flags=re.MULTILINE)[1:]
    assert len(entries) == len(pinned(name))
    assert [entry.split()[0] for entry in entries if "--hash=sha256:" not in entry] == []


def test_the_pins_are_what_the_project_asks_for() -> None:
    """Each library that the project names is pinned in its file, at a version that the project allows."""
    asked = {
        "run": PROJECT["project"]["dependencies"],
        "build": PROJECT["dependency-groups"]["build"],
        "dev": PROJECT["dependency-groups"]["dev"],
    }
    for name, requirements in asked.items():
        for requirement in map(Requirement, requirements):
            version = pinned(name).get(canonical(requirement.name))
            assert version is not None, f"{requirement.name} is not pinned in requirements/{name}.txt"
            assert requirement.specifier.contains(version, prereleases=True), requirement.name


def test_the_three_files_of_pins_agree() -> None:
    """No library is pinned at two versions."""
    for name in ("build", "dev"):
        for library, version in pinned(name).items():
            assert pinned("run").get(library, version) == version


def test_a_build_apart_and_a_build_here_use_the_same_tools() -> None:
    """What a packager's build asks for is what the pins of the build hold."""
    assert set(PROJECT["build-system"]["requires"]) <= set(PROJECT["dependency-groups"]["build"])


def test_each_rule_that_is_left_out_has_its_reason() -> None:
    """Every code in a list of ignored lint rules is followed by the reason, on its line."""
    text = (ROOT / "pyproject.toml").read_text(encoding="utf-8")
    lint = text[text.index("[tool.ruff.lint]") : text.index("[tool.ruff.lint.flake8-tidy-imports.banned-api]")]
    codes = re.findall(r'^    "[A-Z]+[0-9]*",(.*)$', lint, re.MULTILINE)
    assert len(codes) > 20
    assert [rest for rest in codes if not re.fullmatch(r"  # \S.{8,}", rest)] == []


def test_an_old_python_can_read_the_set_up() -> None:
    """A Python that is too old is told so in words, not with a fault of syntax."""
    ast.parse((ROOT / "bootstrap.py").read_text(encoding="utf-8"), feature_version=(3, 7))


def test_the_set_up_watches_all_that_the_build_is_made_from() -> None:
    """A change in anything that the build reads makes the next command build again."""
    sources = {name: ast.parse((ROOT / name).read_text(encoding="utf-8")) for name in ("bootstrap.py", "build_hook.py")}
    watched, read = (
        next(
            ast.literal_eval(node.value)
            for node in tree.body
            if isinstance(node, ast.Assign) and isinstance(node.targets[0], ast.Name) and node.targets[0].id == name
        )
        for tree, name in zip(sources.values(), ("BUILT_FROM", "INPUTS"), strict=True)
    )
    assert set(read) <= set(watched)


def test_every_shipped_style_is_there_whole() -> None:
    """Each style of the list is built in, stands on its own, and keeps its licence."""
    package = files("fairhand")
    listed = tomllib.loads((package / "citing" / "shipped_styles.toml").read_text(encoding="utf-8"))
    assert len(listed) >= 20
    for name in listed.values():
        style = etree.fromstring((package / "built" / "styles" / f"{name}.csl").read_bytes())
        rights = style.find(f"{CSL}info/{CSL}rights")
        assert style.find(f"{CSL}citation") is not None, name
        assert rights is not None, name
        assert "by-sa/3.0" in str(rights.get("license")), name
