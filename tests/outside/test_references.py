"""References of published lists, tagged by hand: which words are read as which field.

Data: the tagged references redistributed by Councill, Giles and Kan (2008): *cora* (500, computer science),
*iconip* (74, with nothing but spaces between the fields), and *tei* (8,272 of all fields and of several languages, some
of them a journal's masthead alone); of these every sixth is read here. Nothing was trained on them: the models learned
from invented works alone.

Two figures: F1 over words (is each word in the right field?), and F1 over fields as wholes (is the field letter by
letter as tagged, signs and words such as *In*, *pp.* and *editors* aside?). The tag sets differ: journals, books and
series are one field here, as are volume and issue, publisher and institution, DOI, address and other numbers.
"""

from __future__ import annotations

import html
import re
from collections import Counter
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from fairhand.leads.fields import read_reference
from fairhand.leads.reference import Reference

Tagged = list[tuple[str, str]]
Words = list[tuple[str, str]]

TAGS = {"journal": "container", "booktitle": "container", "institution": "publisher", "location": "place"}
TAGS |= {"tech": "report"}
TAGS |= {tag: tag for tag in "author editor title volume pages date publisher note".split()}
OURS = {"issue": "volume", "series": "container", "doi": "link", "url": "link", "edition": ""}
APPARATUS = frozenset(
    "in pp p pages page vol vols volume no nr number issue eds ed editor editors hrsg and et und y doi arxiv "
    "http".split()
)
"""Words that some tag sets count to a field, and others leave between."""
WORD = re.compile(r"[^\W_]+")
EVERY = 6
"""Of the largest set, each so many-th reference is read."""
FLOORS = {"cora": (0.94, 0.88), "iconip": (0.80, 0.60), "tei": (0.89, 0.79)}
"""The least F1 over words and over whole fields of each set; what is reached is printed."""
FIELD_FLOORS = {"author": 0.95, "title": 0.90, "container": 0.85, "date": 0.93, "pages": 0.88, "volume": 0.84}


def read_lines(path: Path) -> Iterator[Tagged]:
    """The references of a file with one a line, its tags in angle brackets."""
    for line in path.read_text("utf-8", errors="replace").splitlines():
        parts = re.finditer(r"<(\w+)>(.*?)</\1>|([^<]+)", line)
        yield [(html.unescape(one[2] if one[1] else one[3]), TAGS.get(one[1] or "", "")) for one in parts]


def read_tei(folder: Path) -> Iterator[Tagged]:
    """The references of the TEI files, every so many-th."""
    from lxml import etree

    parser = etree.XMLParser(recover=True, resolve_entities=False, no_network=True, load_dtd=False)
    number = 0
    for path in sorted(folder.glob("*.xml")):
        root = etree.fromstring(path.read_bytes(), parser)
        for found in root.iter("{*}bibl", "bibl") if root is not None else ():
            number += 1
            if number % EVERY == 0:
                inner = {etree.QName(one).localname for one in found.iter() if isinstance(one.tag, str)}
                articles = any((one.get("level") or "") == "a" for one in found.iter("{*}title", "title"))
                tagged = list(_walk(found, "", articles=articles, signed="author" in inner))
                if any(field for _, field in tagged):
                    yield tagged


def _walk(element: Any, field: str, *, articles: bool, signed: bool) -> Iterator[tuple[str, str]]:
    if element.text:
        yield element.text, field
    for child in element:
        if isinstance(child.tag, str):
            inner = _tei_field(child, articles=articles, signed=signed)
            if child.tag.rpartition("}")[2] == "lb":
                yield " ", field
            yield from _walk(child, field if inner is None else inner, articles=articles, signed=signed)
        if child.tail:
            yield child.tail, field


def _tei_field(element: Any, *, articles: bool, signed: bool) -> str | None:
    """The field of a TEI element; None where it is that of the element around it."""
    kind = (element.get("type") or element.get("unit") or "").lower()
    match element.tag.rpartition("}")[2]:
        case "author" | "editor" | "date" | "publisher" as plain:
            return str(plain)
        case "orgName":
            return "author" if not signed or kind == "collaboration" else "publisher"
        case "title":
            level = element.get("level") or ""
            return "title" if level == "a" or (level not in {"j", "s"} and not articles) else "container"
        case "biblScope":
            return "pages" if kind in {"pp", "page", "pages"} else "volume"
        case "pubPlace" | "pubplace":
            return "place"
        case "idno":
            return "report" if kind in {"report", "arxiv", ""} else "link"
        case "ptr":
            return "link"
        case "note" | "notes":
            return "report" if kind == "report" else "note"
    return None


def flatten(tagged: Tagged) -> tuple[str, list[str]]:
    """The text on one line, and the field of each of its signs."""
    text, fields = "", list[str]()
    for part, field in tagged:
        words = re.sub(r"\s+", " ", part)
        words = words[1:] if words.startswith(" ") and (not text or text.endswith(" ")) else words
        text += words
        fields += [field] * len(words)
    return text.rstrip(), fields[: len(text.rstrip())]


def words_by_field(text: str, fields: list[str]) -> Words:
    """The words of a text, the apparatus aside, each with its field."""
    return [
        (found[0].lower(), Counter(fields[found.start() : found.end()]).most_common(1)[0][0])
        for found in WORD.finditer(text)
        if found[0].lower() not in APPARATUS
    ]


def fields_read(reference: Reference) -> list[str]:
    """The field of each sign of a reference as it was read."""
    fields = [""] * len(reference.raw)
    for part in reference.parts:
        fields[part.start : part.end] = [OURS.get(part.field, part.field)] * (part.end - part.start)
    return fields


def f1(right: int, told: int, given: int) -> float:
    """The harmonic mean of precision and recall."""
    return 2 * right / (told + given) if told + given else 0.0


class Tally:
    """What was read rightly."""

    def __init__(self) -> None:
        """Nothing yet."""
        self.words: dict[str, Counter[str]] = {name: Counter() for name in ("right", "told", "given")}
        self.wholes: dict[str, Counter[str]] = {name: Counter() for name in ("right", "told", "given")}
        self.entries = self.exact = 0

    def count(self, tagged: Tagged) -> None:
        """One reference more."""
        text, fields = flatten(tagged)
        reference = read_reference(text)
        gold = words_by_field(text, fields)
        read = words_by_field(reference.raw, fields_read(reference))
        if [word for word, _ in gold] != [word for word, _ in read]:
            text, fields = _fold(text, fields)
            gold = words_by_field(text, fields)
        pairs = list(zip(gold, read, strict=True))
        self.words["given"].update(field for _, field in gold if field)
        self.words["told"].update(field for _, field in read if field)
        self.words["right"].update(one[1] for one, other in pairs if one[1] and one[1] == other[1])
        given, told = _wholes(gold), _wholes(read)
        self.wholes["given"].update(given.keys())
        self.wholes["told"].update(told.keys())
        self.wholes["right"].update(field for field in given if given[field] == told.get(field))
        self.entries += 1
        self.exact += given == told

    def figures(self, field: str | None = None) -> tuple[float, float]:
        """F1 over words and over whole fields, of one field or of all."""
        out = []
        for held in (self.words, self.wholes):
            counts = (held[name][field] if field else held[name].total() for name in ("right", "told", "given"))
            out.append(f1(*counts))
        return out[0], out[1]


def _wholes(words: Words) -> dict[str, str]:
    out: dict[str, str] = {}
    for word, field in words:
        if field:
            out[field] = out.get(field, "") + word
    return out


def _fold(text: str, fields: list[str]) -> tuple[str, list[str]]:
    """The text with the signs that are folded when a reference is read, each with its field."""
    import unicodedata

    folded = [
        (part, field) for sign, field in zip(text, fields, strict=True) for part in unicodedata.normalize("NFKC", sign)
    ]
    return "".join(part for part, _ in folded), [field for _, field in folded]


@pytest.fixture(scope="module")
def tallies(outside_data: Callable[[str], Path]) -> dict[str, Tally]:
    """What was read rightly of each set."""
    folder = outside_data("data/references")
    sets = {
        "cora": read_lines(folder / "cora.tagged.txt"),
        "iconip": read_lines(folder / "iconip.tagged.txt"),
        "tei": read_tei(folder / "tei"),
    }
    out = {}
    for name, references in sets.items():
        tally = out[name] = Tally()
        for tagged in references:
            tally.count(tagged)
        words, wholes = tally.figures()
        share = tally.exact / tally.entries
        print(f"\n{name}, {tally.entries}: F1 of words {words:.3f}, of whole fields {wholes:.3f}; exact {share:.3f}")
        for field in sorted(tally.words["given"]):
            print("  {}: {:.2f}, {:.2f} of {}".format(field, *tally.figures(field), tally.wholes["given"][field]))
    return out


@pytest.mark.parametrize("name", FLOORS)
def test_fields_are_read_off_references(tallies: dict[str, Tally], name: str) -> None:
    """Words stand in the right fields, and fields are whole, as often as the floors say."""
    words, wholes = tallies[name].figures()
    assert words >= FLOORS[name][0]
    assert wholes >= FLOORS[name][1]


def test_all_sets_together(tallies: dict[str, Tally]) -> None:
    """Of all words that are tagged, nine in ten and more are read as what they are."""
    words, wholes = _together(tallies).figures()
    print(f"\nall sets: F1 of words {words:.3f}, of whole fields {wholes:.3f}")
    assert words >= 0.92
    assert wholes >= 0.83


def _together(tallies: dict[str, Tally]) -> Tally:
    together = Tally()
    for tally in tallies.values():
        for name in ("right", "told", "given"):
            together.words[name] += tally.words[name]
            together.wholes[name] += tally.wholes[name]
    return together


@pytest.mark.parametrize("field", FIELD_FLOORS)
def test_each_field_is_read(tallies: dict[str, Tally], field: str) -> None:
    """Of all sets together, the fields by which a work is looked for."""
    words, wholes = _together(tallies).figures(field)
    print(f"\n{field}, all sets: F1 of words {words:.3f}, of whole fields {wholes:.3f}")
    assert words >= FIELD_FLOORS[field]
