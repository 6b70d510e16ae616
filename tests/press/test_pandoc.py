"""Pandoc is run alone with what it was given."""

from __future__ import annotations

import pytest

from fairhand.errors import EngineFailed
from fairhand.model.request import PandocRequest
from fairhand.press.pandoc import run_pandoc


def test_output_file_is_answered() -> None:
    """A request that names an output file is answered with that file's bytes."""
    request = PandocRequest(("--from=commonmark", "--to=docx"), b"a fair hand", output="copy.docx")
    assert run_pandoc(request).startswith(b"PK")


def test_files_stand_beside_the_run() -> None:
    """A file of the request is found by its bare name."""
    request = PandocRequest(
        ("--from=commonmark", "--to=plain", "--standalone", "--template=frame.txt"),
        b"hand",
        {"frame.txt": b"a fair $body$"},
    )
    assert run_pandoc(request).strip() == b"a fair hand"


def test_a_draft_cannot_read_the_disk() -> None:
    """Text that asks pandoc to include a file of the machine's does not get it."""
    secret = b".. include:: /etc/passwd\n"
    try:
        answer = run_pandoc(PandocRequest(("--from=rst", "--to=plain"), secret))
    except EngineFailed:
        answer = b""
    assert b"root:" not in answer


@pytest.mark.parametrize("name", ["../up.txt", "a/b.txt", "", "..", "a\\b.txt"])
def test_names_that_lead_elsewhere_are_refused(name: str) -> None:
    """A file's name with a folder in it is refused before pandoc is started."""
    with pytest.raises(EngineFailed, match="bare file name"):
        run_pandoc(PandocRequest(("--from=commonmark",), b"", {name: b"x"}))


def test_failure_is_one_line() -> None:
    """What pandoc refuses is told in one line."""
    with pytest.raises(EngineFailed) as failed:
        run_pandoc(PandocRequest(("--from=json", "--to=plain"), b"no tree\nat all"))
    assert "\n" not in str(failed.value)
