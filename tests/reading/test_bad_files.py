"""Broken, locked, empty and oversized files are refused in one line that says what to do."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from fairhand.errors import FileEncrypted, FileTooLarge, FileUnreadable, InputError, UnknownFormat
from fairhand.reading.decoding import decode_text
from fairhand.reading.source import read_source

Make = Callable[..., bytes]

LOCKED_PDF = b"""%PDF-1.4
1 0 obj<</Type/Catalog/Pages 2 0 R>>endobj
2 0 obj<</Type/Pages/Kids[3 0 R]/Count 1>>endobj
3 0 obj<</Type/Page/Parent 2 0 R/MediaBox[0 0 99 99]>>endobj
4 0 obj<</Filter/Standard/V 1/R 2/Length 40/P -4
/O<0102030405060708090a0b0c0d0e0f101112131415161718191a1b1c1d1e1f20>
/U<2102030405060708090a0b0c0d0e0f101112131415161718191a1b1c1d1e1f20>>>endobj
trailer<</Root 1 0 R/Size 5/Encrypt 4 0 R/ID[<01020304050607080102030405060708><01020304050607080102030405060708>]>>
%%EOF
"""
"""A PDF whose keys fit no empty password."""


def refuse(data: bytes, file: str, error: type[InputError]) -> str:
    """The message with which the file is refused."""
    with pytest.raises(error) as caught:
        read_source(data, file, None)
    message = str(caught.value)
    assert message.startswith(file)
    assert "\n" not in message
    assert ";" in message
    return message


@pytest.mark.parametrize("ending", ["pdf", "txt", "docx", "html", "epub", "odt", "md"])
def test_empty_files_are_refused(ending: str) -> None:
    """An empty file is unreadable, whatever its kind."""
    assert "empty" in refuse(b" \n", f"a.{ending}", FileUnreadable)


def test_broken_pdfs_are_refused(pdf: Make) -> None:
    """A PDF cut short, or of another kind than its name says, is unreadable."""
    assert "cut short" in refuse(pdf("The quay.")[:700], "a.pdf", FileUnreadable)
    assert "no PDF" in refuse(b"The quay.", "a.pdf", FileUnreadable)


def test_locked_files_are_refused(zipped: Make) -> None:
    """A file under a password is said to be so."""
    refuse(LOCKED_PDF, "a.pdf", FileEncrypted)
    refuse(b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + "EncryptedPackage".encode("utf-16-le"), "a.docx", FileEncrypted)
    locked = {
        "mimetype": "application/vnd.oasis.opendocument.text",
        "META-INF/manifest.xml": "<m><encryption-data/></m>",
    }
    refuse(zipped(locked), "a.odt", FileEncrypted)


@pytest.mark.parametrize("ending", ["docx", "odt", "epub"])
def test_files_that_are_no_zip_are_refused(ending: str) -> None:
    """A zipped kind that is no zip, or a damaged one, is unreadable."""
    refuse(b"The quay.", f"a.{ending}", FileUnreadable)
    refuse(b"PK\x03\x04 cut short", f"a.{ending}", FileUnreadable)


def test_zips_without_a_document_are_refused(zipped: Make) -> None:
    """A zip that holds no document is unreadable under a document's name, and unknown under another."""
    refuse(zipped({"readme.txt": "The quay."}), "a.docx", FileUnreadable)
    refuse(zipped({"readme.txt": "The quay."}), "a.zip", UnknownFormat)


def test_zip_bombs_are_refused_before_they_expand(zipped: Make) -> None:
    """A member that expands beyond all bounds is not expanded."""
    bomb = zipped({"word/document.xml": b"<a>" + b" " * 130_000_000 + b"</a>"})
    assert len(bomb) < 1_000_000
    refuse(bomb, "a.docx", FileTooLarge)


def test_zip_bombs_that_lie_about_their_size_are_refused(zipped: Make) -> None:
    """A member that promises little and gives much is cut off."""
    bomb = zipped({"word/document.xml": b"<a>" + b" " * 5_000_000 + b"</a>"})
    size = (5_000_007).to_bytes(4, "little")
    assert bomb.count(size) == 2
    refuse(bomb.replace(size, (100).to_bytes(4, "little")), "a.docx", FileUnreadable)


def test_entities_are_not_expanded(docx: Make) -> None:
    """A document's own entities stay as they are: neither do they multiply nor do they fetch files."""
    nested = "".join(f'<!ENTITY e{n} "{f"&e{n - 1};" * 10}">' for n in range(1, 12))
    head = f'<!DOCTYPE w [<!ENTITY e0 "quay">{nested}<!ENTITY out SYSTEM "file:///etc/hostname">]>'
    body = "<w:p><w:r><w:t>The quay. &e11; &out;</w:t></w:r></w:p>"
    data = docx(body)
    plain = b"<w:document "
    bomb = _with_document(data, lambda xml: head.encode() + xml if xml.startswith(plain) else xml)
    try:
        source, _ = read_source(bomb, "a.docx", None)
    except FileUnreadable:
        return
    assert len(source.pages[0].text) < 200


def _with_document(data: bytes, change: Callable[[bytes], bytes]) -> bytes:
    """The same DOCX, its main part changed."""
    import io
    import zipfile

    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(out, "w") as new:
        for name in old.namelist():
            new.writestr(name, change(old.read(name)))
    return out.getvalue()


def test_deep_nesting_is_refused(docx: Make) -> None:
    """Elements nested beyond all use are refused, not followed."""
    refuse(docx("<w:p>" * 5000 + "</w:p>" * 5000), "a.docx", FileUnreadable)
    refuse(b"<html>" + b"<div>" * 20_000 + b"The quay.", "a.html", FileUnreadable)
    source, _ = read_source(b"<html>" + b"<div>" * 1000 + b"The quay.", "a.html", None)
    assert source.pages


def test_long_texts_are_refused() -> None:
    """A text of thirty megabytes is too large, and the message says how large may be."""
    assert "30 MB" in refuse(b"quay " * 6_000_000, "a.txt", FileTooLarge)


@pytest.mark.parametrize(("data", "file"), [(b"{\\rtf1 quay}", "a.rtf"), (b"quay", "a.xyz"), (b"\0\1quay", "a")])
def test_unknown_kinds_are_refused(data: bytes, file: str) -> None:
    """A kind that nothing here reads is named, with what to do instead."""
    refuse(data, file, UnknownFormat)


@pytest.mark.parametrize(
    ("encoding", "how"),
    [
        ("utf-8", "UTF-8"), ("utf-8-sig", "UTF-8"), ("utf-16", "UTF-16"), ("utf-16-le", "UTF-16"),
        ("utf-16-be", "UTF-16"), ("cp1252", "Windows-1252"),
    ],
)  # fmt: skip
def test_encodings_are_recognised(encoding: str, how: str) -> None:
    """The common encodings are told apart; the old Western one is a guess, and said to be."""
    text = "The café’s “quay” – sold."
    assert decode_text(text.encode(encoding)) == (text, how)
    source, problems = read_source(text.encode(encoding), "a.txt", None)
    assert source.pages[0].text == text
    assert bool(problems) == (how == "Windows-1252")
