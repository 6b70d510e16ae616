"""The writer's name looked for in bytes."""

from __future__ import annotations

import io
import zipfile
import zlib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.hand_in.names import find_names, holds_name

NAME = "Ida Vance"


def zipped(name: str, data: bytes) -> bytes:
    """An archive with one member."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr(name, data)
    return out.getvalue()


@pytest.mark.parametrize(
    ("file", "data"),
    [
        ("a.txt", b"by VANCE"),
        ("a.txt", "by Ida".encode("utf-16")),
        ("a.docx", zipped("docProps/core.xml", b"<creator>Ida Vance</creator>")),
        ("a.zip", zipped("b.docx", zipped("docProps/core.xml", b"<creator>Vance</creator>"))),
        ("a.zip", zipped("Vance_essay.pdf", b"")),
        ("a.pdf", b"%PDF-1.7\n<< /Author (Ida Vance) >>"),
        (
            "a.pdf",
            b"%PDF-1.7\n<< /Author <FEFF0049006400610020005600610063> >>".replace(b"5600610063", b"560061006E00630065"),
        ),
        ("a.pdf", b"%PDF-1.7\n<< /Author (\\126\\141\\156\\143\\145) >>"),
        ("a.pdf", b"%PDF-1.7\nstream\n" + zlib.compress(b"<dc:creator>Vance</dc:creator>") + b"\nendstream"),
        ("vance.pdf", b""),
    ],
)
def test_a_name_is_found_wherever_it_hides(file: str, data: bytes) -> None:
    """In any case and encoding, in properties, packed members, streams, strings and the file's own name."""
    assert holds_name(NAME, file, data)


@pytest.mark.parametrize(
    ("file", "data"),
    [
        ("a.txt", b"the advances of Idaho"),
        ("a.docx", zipped("docProps/core.xml", b"<creator></creator>")),
        ("a.pdf", b"%PDF-1.7\nstream\n" + b"\0broken" + b"\nendstream"),
        ("a.zip", b"PK\x03\x04 not an archive"),
    ],
)
def test_other_words_are_no_name(file: str, data: bytes) -> None:
    """Nor is a file that cannot be unpacked a reason to fail."""
    assert not holds_name(NAME, file, data)


def test_a_first_name_alone_is_not_called_the_writers_in_the_text() -> None:
    """It may be another's; the surname is asked about, and the whole name in any spacing."""
    assert find_names("Ida wrote to Mr Vance; IDA  VANCE did not.", NAME) == (16, 23)
    assert find_names("Nobody.", "") == ()


@given(st.binary(max_size=400), st.text(max_size=30), st.sampled_from(["a.pdf", "a.docx", "a.txt"]))
def test_no_bytes_stop_the_search(data: bytes, name: str, file: str) -> None:
    """Whatever a file holds, and whatever a name is made of, an answer comes."""
    holds_name(name, file, data)
    holds_name(name, file, b"%PDF-" + data)
    find_names(data.decode("latin-1"), name)
