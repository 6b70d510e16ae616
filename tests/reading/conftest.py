"""Small files of every kind, made on the spot: each fixture is the function that makes one."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Callable, Mapping

import pytest

W = 'xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main"'
OFFICE = "urn:oasis:names:tc:opendocument:xmlns"


def make_zipped(members: Mapping[str, str | bytes]) -> bytes:
    """A zip of these members; a mimetype is not compressed (EPUB, ODT)."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as file:
        for name, content in members.items():
            file.writestr(name, content, zipfile.ZIP_STORED if name == "mimetype" else zipfile.ZIP_DEFLATED)
    return out.getvalue()


def make_docx(body: str, **parts: str) -> bytes:
    """A DOCX with this body, and other parts of its ``word`` folder by name."""
    return make_zipped(
        {"word/document.xml": f"<w:document {W}><w:body>{body}</w:body></w:document>"}
        | {f"word/{name}.xml": f"<w:{name} {W}>{content}</w:{name}>" for name, content in parts.items()}
    )


def make_odt(body: str) -> bytes:
    """An ODT with this text."""
    names = " ".join(f'xmlns:{name}="{OFFICE}:{name}:1.0"' for name in ("office", "text", "table"))
    content = (
        f"<office:document-content {names}><office:body><office:text>{body}</office:text></office:body>"
        "</office:document-content>"
    )
    return make_zipped({"mimetype": "application/vnd.oasis.opendocument.text", "content.xml": content})


def make_epub(*chapters: str) -> bytes:
    """An EPUB with these chapters."""
    container = '<container><rootfiles><rootfile full-path="OPS/book.opf"/></rootfiles></container>'
    items = "".join(f'<item id="c{n}" href="c%20{n}.xhtml"/>' for n in range(len(chapters)))
    spine = "".join(f'<itemref idref="c{n}"/>' for n in range(len(chapters)))
    package = f"<package><manifest>{items}</manifest><spine>{spine}</spine></package>"
    pages = {
        f"OPS/c {n}.xhtml": f'<?xml version="1.0"?><html xmlns="http://www.w3.org/1999/xhtml" '
        f'xmlns:epub="http://www.idpf.org/2007/ops"><head><title>No</title></head><body>{chapter}</body></html>'
        for n, chapter in enumerate(chapters)
    }
    return make_zipped(
        {"mimetype": "application/epub+zip", "META-INF/container.xml": container, "OPS/book.opf": package} | pages
    )


def make_pdf(*pages: str, numbering: str = "none", first: int = 1) -> bytes:
    """A PDF with a page for each text, set by typst."""
    import typst

    body = "\n#pagebreak()\n".join(pages)
    source = f"#set page(width: 12cm, height: 12cm, numbering: {numbering})\n#counter(page).update({first})\n{body}\n"
    return typst.compile(source.encode())


@pytest.fixture(scope="session")
def zipped() -> Callable[..., bytes]:
    """Makes a zip."""
    return make_zipped


@pytest.fixture(scope="session")
def docx() -> Callable[..., bytes]:
    """Makes a DOCX."""
    return make_docx


@pytest.fixture(scope="session")
def odt() -> Callable[..., bytes]:
    """Makes an ODT."""
    return make_odt


@pytest.fixture(scope="session")
def epub() -> Callable[..., bytes]:
    """Makes an EPUB."""
    return make_epub


@pytest.fixture(scope="session")
def pdf() -> Callable[..., bytes]:
    """Makes a PDF."""
    return make_pdf
