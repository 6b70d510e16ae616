"""What to ask of pandoc for each format that the fair copy is handed in as."""

from __future__ import annotations

from fairhand.fair_copy.document import FairCopy
from fairhand.fair_copy.opendocument import reference_odt
from fairhand.fair_copy.pandoc_tree import to_pandoc
from fairhand.fair_copy.web_page import page_template
from fairhand.fair_copy.word import reference_docx
from fairhand.model.request import PandocRequest

ODT_BASE = PandocRequest(("--print-default-data-file=reference.odt",))
"""Asks for the document that ``odt_request`` builds its styles on."""


def docx_request(copy: FairCopy) -> PandocRequest:
    """The paper for a word processor; ``word.finish_docx`` goes over the answer."""
    return PandocRequest(
        ("--from=json", "--to=docx", "--reference-doc=reference.docx"),
        to_pandoc(copy, "docx"),
        {"reference.docx": reference_docx(copy)},
        output="fair-copy.docx",
    )


def odt_request(copy: FairCopy, base: bytes) -> PandocRequest:
    """The paper as OpenDocument text; ``base`` is pandoc's answer to ``ODT_BASE``.

    ``opendocument.finish_odt`` goes over the answer.
    """
    return PandocRequest(
        ("--from=json", "--to=odt", "--reference-doc=reference.odt"),
        to_pandoc(copy, "odt"),
        {"reference.odt": reference_odt(copy, base)},
        output="fair-copy.odt",
    )


def html_request(copy: FairCopy) -> PandocRequest:
    """The paper as one web page that needs nothing else, on screen or printed."""
    return PandocRequest(
        ("--from=json", "--to=html5", "--standalone", "--template=page.html", "--wrap=none", "--section-divs"),
        to_pandoc(copy, "html"),
        {"page.html": page_template(copy).encode()},
    )


def md_request(copy: FairCopy) -> PandocRequest:
    """The paper as CommonMark with footnotes and tables, its citations rendered."""
    extensions = "+footnotes+pipe_tables+superscript+subscript+strikeout"
    return PandocRequest(("--from=json", f"--to=commonmark{extensions}", "--wrap=none"), to_pandoc(copy, "md"))
