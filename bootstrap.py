"""Sets everything up, then does what is asked: ``python3 bootstrap.py demo``, on Windows ``py bootstrap.py demo``.

It needs nothing but Python and a way to the package registries. The environment is ``.venv`` at the project's root,
filled from the pins in ``requirements``, each checked against its hash; it is left alone until the pins, or what the
build is made from, change. The syntax is one that an old Python reads, so that it can be told what is wrong.
"""

from __future__ import annotations

import argparse
import hashlib
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

OLDEST, NEWEST = (3, 11), (3, 14)
ROOT = Path(__file__).resolve().parent
VENV = ROOT / ".venv"
PYTHON = VENV / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
PINNED = ("--no-deps", "--require-hashes", "--only-binary", ":all:")
BUILT_FROM = (
    "requirements/build.txt",
    "pyproject.toml",
    "build_hook.py",
    "build_words.py",
    "package.json",
    "package-lock.json",
    ".npmrc",
    "src/fairhand/citing/shipped_styles.toml",
    "src/fairhand/language/sounding.py",
)


class CannotSetUp(Exception):
    """The set-up cannot go on; the message says what is missing and what to do."""


def main(arguments: list[str]) -> int:
    """The exit status of what was asked for, once everything that it needs is there."""
    parser = argparse.ArgumentParser(prog="bootstrap.py", description="Set up what is needed, then do what is asked.")
    about = " ".join(f"{name}: {task.__doc__}" for name, task in TASKS.items())
    parser.add_argument("target", choices=TASKS, help=about)
    parser.add_argument("rest", nargs=argparse.REMAINDER, help="handed on to the target")
    asked = parser.parse_args(arguments)
    try:
        if not OLDEST <= sys.version_info[:2] <= NEWEST:
            return run([*find_python(), Path(__file__).resolve(), *arguments])
        set_up("run")
        if asked.target in ("test", "check", "pictures"):
            set_up("dev")
            set_up_browser()
        return TASKS[asked.target](asked.rest)
    except CannotSetUp as problem:
        sys.stderr.write(f"bootstrap: {problem}\n")
        return 2
    except KeyboardInterrupt:
        return 130


def demo(rest: list[str]) -> int:
    """A worked example: one paper's verdict and its fair copy."""
    return run([PYTHON, ROOT / "demo" / "run.py", *rest])


def test(rest: list[str]) -> int:
    """The tests (what follows goes to pytest)."""
    return run([PYTHON, "-m", "pytest", *(rest or ["-n", "auto", "--dist", "loadfile"])])


def check(rest: list[str]) -> int:
    """Layout, lint, types, the law of imports and the tests, each of them whatever the others found."""
    law = "from importlinter.cli import lint_imports_command as law; law()"
    steps: dict[str, list[str | Path]] = {
        "layout": [PYTHON, "-m", "ruff", "format", "--check", "."],
        "lint": [PYTHON, "-m", "ruff", "check", "."],
        "types": [PYTHON, "-m", "mypy"],
        "law of imports": [PYTHON, "-c", law],
    }
    failed = [name for name, command in steps.items() if run(command) != 0]
    if test(rest) != 0:
        failed.append("tests")
    sys.stdout.write(f"check: {'failed: ' + ', '.join(failed) if failed else 'everything holds'}\n")
    return 1 if failed else 0


def bench(rest: list[str]) -> int:
    """The measurements, as ratios within one run (what follows names some of those in benchmarks)."""
    wanted = [ROOT / "benchmarks" / f"{name}.py" for name in rest] or sorted((ROOT / "benchmarks").glob("*.py"))
    return max(run([PYTHON, path]) for path in wanted)


def pictures(rest: list[str]) -> int:
    """A picture of every page, wide, narrow, at night and in print, in the folder pictures; then those of README."""
    failed = run([PYTHON, ROOT / "tools" / "take_pictures.py", *rest])
    return failed if failed or rest else run([PYTHON, ROOT / "tools" / "draw_job.py"])


TASKS = {"demo": demo, "test": test, "check": check, "bench": bench, "pictures": pictures}


def set_up(pins: str) -> None:
    """``.venv`` holds the libraries of ``requirements/<pins>.txt`` and Fairhand itself; quick where it already does."""
    wanted = digest_inputs(pins)
    stamp = VENV / f"fairhand-{pins}.sha256"
    if PYTHON.is_file() and stamp.is_file() and stamp.read_text(encoding="ascii") == wanted:
        return
    if not PYTHON.is_file() or run([PYTHON, "-m", "pip", "--version"], quiet=True) != 0:
        make_environment()
    sys.stderr.write(f"Setting up .venv from requirements/{pins}.txt; the first time takes a minute or so.\n")
    install("the libraries", *PINNED, "-r", ROOT / "requirements" / f"{pins}.txt")
    if pins == "run":
        install_fairhand()
    stamp.write_text(wanted, encoding="ascii")


def install_fairhand() -> None:
    """Fairhand is installed to be run from here; the tools of its build, 330 MB of them, are gone again afterwards."""
    with tempfile.TemporaryDirectory(prefix="fairhand-tools-") as tools:
        install("the tools of the build", *PINNED, "--target", tools, "-r", ROOT / "requirements" / "build.txt")
        install("Fairhand itself", "--no-deps", "--no-build-isolation", "-e", ROOT, tools=tools)


def set_up_browser() -> None:
    """Chromium is there, where Debian's packages are and may be installed; else the tests that need it are skipped."""
    apt = shutil.which("apt-get")
    if apt is None or any(map(shutil.which, ("chromium", "chromium-browser"))):
        return
    is_root = hasattr(os, "geteuid") and os.geteuid() == 0
    front: list[str | Path] = [] if is_root else ["sudo", "-n"]
    if not is_root and (shutil.which("sudo") is None or run(["sudo", "-n", "true"], quiet=True) != 0):
        return
    sys.stderr.write("Installing Chromium for the tests of the page.\n")
    wanted: list[str | Path] = [*front, apt, "install", "--yes", "--no-install-recommends", "chromium"]
    if run(wanted, quiet=True) != 0 and run([*front, apt, "update"], quiet=True) == 0:
        run(wanted, quiet=True)


def digest_inputs(pins: str) -> str:
    """One hash over all that decides what is set up, the place of the project included."""
    digest = hashlib.sha256(f"{ROOT}\0".encode())
    for name in (f"requirements/{pins}.txt", *BUILT_FROM):
        digest.update(name.encode() + b"\0" + (ROOT / name).read_bytes() + b"\0")
    return digest.hexdigest()


def make_environment() -> None:
    """An empty environment stands in ``.venv``; one that was broken off half-way is made anew."""
    if run([sys.executable, "-m", "venv", "--clear", VENV]) != 0:
        version = ".".join(map(str, sys.version_info[:2]))
        raise CannotSetUp(
            f"Python {version} could not make an environment in {VENV}; where Python comes from a Linux distribution,"
            f" install its package python{version}-venv (or python3-venv) and run the same command again"
        )


def install(what: str, *arguments: str | Path, tools: str = "") -> None:
    """Pip, which may use what stands in the folder ``tools``, has installed ``what``, or the reason why not is told."""
    quiet = ("-qq", "--no-input", "--disable-pip-version-check")
    if run([PYTHON, "-m", "pip", "install", *quiet, *arguments], search=tools) != 0:
        raise CannotSetUp(
            f"pip could not install {what} (its own words stand above);"
            " see that the Python package registry can be reached from here and run the same command again"
        )


def find_python() -> list[str]:
    """How to start another Python on this machine that is neither too old nor too new."""
    versions = [f"{OLDEST[0]}.{minor}" for minor in range(NEWEST[1], OLDEST[1] - 1, -1)]
    commands = [[f"python{version}"] for version in versions] + [["py", f"-{version}"] for version in versions]
    for candidate in commands:
        if shutil.which(candidate[0]) and run([*candidate, "-c", ""], quiet=True) == 0:
            return candidate
    raise CannotSetUp(
        f"this is Python {sys.version.split()[0]}; Fairhand needs {versions[-1]} to {versions[0]}: install one of these"
        " (from python.org or your system's packages) and run the same command again"
    )


def run(command: list[str | Path], *, quiet: bool = False, search: str = "") -> int:
    """The exit status of a command that is run at the project's root; ``search`` is where Python looks for more."""
    words = [str(part) for part in command]
    settings = {**os.environ, "PIP_USER": "0", "PYTHONUTF8": "1"}
    if search:
        settings["PYTHONPATH"] = search
    sink = subprocess.DEVNULL if quiet else None
    return subprocess.run(words, cwd=ROOT, env=settings, stdout=sink, stderr=sink, check=False).returncode


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
