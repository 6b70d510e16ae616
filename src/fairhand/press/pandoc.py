"""Pandoc, run once for each request, kept from the network and from files that it was not given."""

from __future__ import annotations

import functools
import importlib.util
import subprocess
import tempfile
from pathlib import Path

from fairhand.errors import EngineFailed
from fairhand.model.request import PandocRequest

TIME_LIMIT_SECONDS = 60
"""Longest run that is waited for: thirty times what a long paper takes."""
MEMORY_LIMIT = "-M512m"
"""Most memory that pandoc may take, as its run-time system says it."""


def run_pandoc(request: PandocRequest) -> bytes:
    """What pandoc answers to ``request``: the bytes of its output file, or of its standard output.

    It runs without a shell and in its sandbox, in a folder of its own that holds only the request's files.

    Raises:
        EngineFailed: Pandoc refused the input, or took too long or too much memory.

    >>> run_pandoc(PandocRequest(("--from=commonmark", "--to=plain"), b"*fair* hand")).decode().strip()
    'fair hand'
    """
    with tempfile.TemporaryDirectory(prefix="fairhand-") as folder:
        for name, data in request.files.items():
            _within(folder, name).write_bytes(data)
        command = [pandoc_path(), "+RTS", MEMORY_LIMIT, "-RTS", "--sandbox", *request.args]
        if request.output:
            command.append(f"--output={request.output}")
        try:
            run = subprocess.run(
                command, input=request.stdin, capture_output=True, cwd=folder, timeout=TIME_LIMIT_SECONDS, check=False
            )
        except subprocess.TimeoutExpired:
            message = f"pandoc took longer than {TIME_LIMIT_SECONDS} s and was stopped; try a smaller file"
            raise EngineFailed(message) from None
        except OSError as error:
            message = f"pandoc could not be started ({error.strerror}); install the program again"
            raise EngineFailed(message) from None
        if run.returncode != 0:
            raise EngineFailed(_complaint(run.stderr, run.returncode))
        return _within(folder, request.output).read_bytes() if request.output else run.stdout


@functools.cache
def pandoc_path() -> str:
    """Where the pandoc that came with the program stands.

    It is looked for beside the package that carries it, whose own import would cost more than the look.
    """
    spec = importlib.util.find_spec("pypandoc")
    for place in (spec.submodule_search_locations or ()) if spec else ():
        for name in ("pandoc", "pandoc.exe"):
            if (found := Path(place) / "files" / name).is_file():
                return str(found)
    import pypandoc

    return str(pypandoc.get_pandoc_path())


def _within(folder: str, name: str) -> Path:
    """The path of the bare ``name`` in ``folder``; anything that leads elsewhere is refused."""
    if not name or name in {".", ".."} or Path(name).name != name or "\\" in name:
        message = f"{name!r} is not a bare file name; give pandoc's files names without folders"
        raise EngineFailed(message)
    return Path(folder) / name


def _complaint(stderr: bytes, code: int) -> str:
    """Pandoc's last words as one line."""
    lines = stderr.decode("utf-8", "replace").split("\n")
    said = " ".join(" ".join(lines).split())[:300]
    return (
        f"pandoc could not do it: {said or f'it ended with code {code} and said nothing'}; check the file it was given"
    )
