"""A file of bibliographic data, whichever of the formats it is in."""

from __future__ import annotations

import re
from typing import Literal

from fairhand.citing.bibtex import read_bibtex
from fairhand.citing.csl_json import read_csl_json
from fairhand.citing.nbib import read_nbib
from fairhand.citing.ris import read_ris
from fairhand.model.entry import Entry
from fairhand.model.problem import Problem

EntryFormat = Literal["csl-json", "bibtex", "ris", "nbib", ""]
"""A format of bibliographic data; empty where it is none that is read."""

ENDINGS = frozenset((".bib", ".bibtex", ".ris", ".nbib", ".json"))
"""Endings of such files."""
READERS = {"csl-json": read_csl_json, "bibtex": read_bibtex, "ris": read_ris, "nbib": read_nbib}


def detect(text: str) -> EntryFormat:
    """The format that a text is in, told by how its first record begins.

    >>> detect("@book{salt, title = {Salt}}"), detect("TY  - BOOK"), detect("[]"), detect("Salt. 2001.")
    ('bibtex', 'ris', 'csl-json', '')
    """
    start = text.removeprefix("\ufeff").lstrip()
    if start[:1] in {"[", "{"}:
        return "csl-json"
    if re.search(r"^TY {1,2}- ?", start, re.MULTILINE):
        return "ris"
    if re.search(r"^PMID {0,2}- ?\d", start, re.MULTILINE):
        return "nbib"
    return "bibtex" if re.search(r"^\s{0,80}@\w{1,40}\s{0,10}[{(]", start, re.MULTILINE) else ""


def read_entries(data: bytes, where: str) -> tuple[tuple[Entry, ...], tuple[Problem, ...]]:
    """The entries of a file in any of the formats, and what is wrong in it.

    Text that is not UTF-8 is read as Windows-1252, which holds Latin-1, and this is told.

    Args:
        data: the file's bytes.
        where: its name, for the problems.

    >>> read_entries("[]".encode("utf-16"), "sources.json")
    ((), ())
    """
    text, faults = _decode(data, where)
    found = detect(text)
    if not found:
        if text.strip():
            mend = "give CSL-JSON, BibTeX, RIS or nbib"
            faults = (*faults, Problem(where, "it is in none of the formats that are read here", mend))
        return (), faults
    entries, problems = READERS[found](text, where)
    return entries, (*faults, *problems)


def _decode(data: bytes, where: str) -> tuple[str, tuple[Problem, ...]]:
    if data[:2] in {b"\xff\xfe", b"\xfe\xff"}:
        return data.decode("utf-16", "replace"), ()
    try:
        return data.decode("utf-8-sig"), ()
    except UnicodeDecodeError as fault:
        line = data.count(b"\n", 0, fault.start) + 1
        what = f"it is not UTF-8 (first at line {line}); it was read as Latin-1"
        return data.decode("cp1252", "replace"), (Problem(where, what, "save it as UTF-8, and look at its accents"),)
