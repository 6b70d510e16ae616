"""References set by the citation engine in styles of the public collection, each word with its field.

What the records say is put between private-use signs, which the engine carries through; numbers and dates, which it
takes apart and joins anew, are found again by their values, which no two fields of a record share.
"""

from __future__ import annotations

import json
import random
import re
import subprocess
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from tempfile import TemporaryDirectory

from training.records import Person, Record, abbreviate, make_record, title_case
from training.vocabulary import MONTHS

TYPES = {
    "article": "article-journal",
    "paper": "paper-conference",
    "book": "book",
    "chapter": "chapter",
    "report": "report",
    "thesis": "thesis",
    "web": "webpage",
    "preprint": "article",
}
MARKED = ("author", "editor", "title", "container", "series", "publisher", "place", "report", "doi", "url", "note")
OPEN, CLOSE = 0xE100, 0xE200
_DASH = r"\s?[-‐–—]{1,2}\s?"


def mark(text: str, field: str) -> str:
    """The text between the two signs of its field."""
    at = MARKED.index(field)
    return f"{chr(OPEN + at)}{text}{chr(CLOSE + at)}" if text else ""


def _name(person: Person, field: str) -> dict[str, str]:
    if person.body:
        return {"literal": mark(person.body, field)}
    name = {"family": mark(f"{person.particle} {person.family}".strip(), field), "given": " ".join(person.given)}
    return {**name, "suffix": person.suffix} if person.suffix else name


def to_csl(record: Record, id_: str, rng: random.Random) -> dict[str, object]:
    """The record as CSL-JSON, with the signs in it."""
    date = [record.year, *([MONTHS.index(record.month) + 1] if record.month else [])]
    if record.month and record.day:
        date.append(record.day)
    journal = record.container
    if record.kind == "article" and rng.random() < 0.3:
        journal = abbreviate(journal, rng)
    out: dict[str, object] = {
        "id": id_,
        "type": TYPES[record.kind],
        "title": mark(title_case(record.title) if rng.random() < 0.3 else record.title, "title"),
        "author": [_name(one, "author") for one in record.authors],
        "editor": [_name(one, "editor") for one in record.editors],
        "issued": {"date-parts": [date]},
        "container-title": mark(journal, "container"),
        "collection-title": mark(record.series, "series"),
        "volume": record.volume,
        "issue": record.issue,
        "page": f"{record.first}-{record.last}" if record.last else record.first,
        "publisher": mark(record.publisher, "publisher"),
        "publisher-place": mark(record.place, "place"),
        "edition": record.edition or "",
        "genre": mark(record.report, "report"),
        "number": mark(record.number, "report"),
        "DOI": mark(record.doi, "doi"),
        "URL": mark(record.url, "url"),
        "note": mark(record.note, "note") if rng.random() < 0.5 else "",
    }
    return {key: value for key, value in out.items() if value}


def list_styles(collection: Path, count: int, rng: random.Random) -> list[Path]:
    """Some of the independent styles that set a bibliography."""
    styles = sorted(path for path in collection.glob("*.csl") if b"<bibliography" in path.read_bytes())
    return rng.sample(styles, min(count, len(styles)))


def render_styles(styles: list[Path], each: int, seed: int, pandoc: str) -> Iterator[tuple[str, list[str]]]:
    """References in each of the styles: the text, and the field of each of its signs."""
    with TemporaryDirectory() as scratch, ThreadPoolExecutor(2) as pool:

        def one(numbered: tuple[int, Path]) -> list[tuple[str, list[str]]]:
            number, style = numbered
            rng = random.Random(seed + number)  # noqa: S311 - a sample
            return _render(style, each, rng, pandoc, Path(scratch) / f"{number}.json")

        for found in pool.map(one, enumerate(styles)):
            yield from found


def _distinct(record: Record) -> bool:
    """Whether no number of the record stands in two of its fields."""
    numbers = [
        record.volume,
        record.issue,
        record.first,
        record.last,
        str(record.year),
        str(record.edition or "x"),
        str(record.day or "y"),
    ]
    said = [one for one in numbers if one]
    return len(set(said)) == len(said)


def _render(style: Path, each: int, rng: random.Random, pandoc: str, scratch: Path) -> list[tuple[str, list[str]]]:
    records: dict[str, Record] = {}
    while len(records) < each:
        record = make_record(rng)
        if _distinct(record):
            records[f"r{len(records)}"] = record
    scratch.write_text(json.dumps([to_csl(record, id_, rng) for id_, record in records.items()]), encoding="utf-8")
    done = subprocess.run(
        [pandoc, "-f", "markdown", "-t", "json", "--citeproc", f"--csl={style}", f"--bibliography={scratch}"],
        input="---\nnocite: '@*'\n---\n",
        capture_output=True,
        check=False,
        encoding="utf-8",
        timeout=60,
    )
    if done.returncode:
        return []
    out = []
    for id_, text in _entries(json.loads(done.stdout)["blocks"]):
        found = label(text, records[id_])
        if found:
            out.append(found)
    return out


def _entries(blocks: list[dict[str, object]]) -> Iterator[tuple[str, str]]:
    for block in blocks:
        if block.get("t") == "Div":
            (name, _, _), inner = block["c"]  # type: ignore[misc]
            if str(name).startswith("ref-"):
                yield str(name)[4:], " ".join(_text(inner).split())
            else:
                yield from _entries(inner)


def _text(node: object) -> str:
    """The words of a piece of pandoc's tree."""
    if isinstance(node, list):
        return "".join(map(_text, node))
    if not isinstance(node, dict):
        return ""
    kind, content = node.get("t"), node.get("c")
    if kind == "Str":
        return str(content)
    if kind in {"Space", "SoftBreak", "LineBreak"}:
        return " "
    if kind == "Quoted":
        marks = "‘’" if content[0]["t"] == "SingleQuote" else "“”"
        return marks[0] + _text(content[1]) + marks[1]
    if kind in {"Span", "Link", "Div"}:
        inner = _text(content[1])
        return f" {inner} " if "csl-left-margin" in str(content[0]) or kind == "Div" else inner
    if kind in {"Para", "Plain"}:
        return _text(content) + " "
    return _text(content) if isinstance(content, list) else ""


def label(text: str, record: Record) -> tuple[str, list[str]] | None:
    """The text without its signs, and the field of each letter; None where nothing of the record stands in it."""
    plain: list[str] = []
    fields: list[str] = []
    now = ""
    for letter in text:
        code = ord(letter)
        if OPEN <= code < OPEN + len(MARKED):
            now = MARKED[code - OPEN]
        elif CLOSE <= code < CLOSE + len(MARKED):
            now = ""
        else:
            plain.append(letter)
            fields.append(now)
    words = "".join(plain)
    if not any(fields):
        return None
    for field, people in (("author", record.authors), ("editor", record.editors)):
        _join_names(words, fields, field, people)
    _find_number(words, fields, _pages_pattern(record), "pages")
    _find_number(words, fields, re.escape(record.volume), "volume")
    _find_number(words, fields, re.escape(record.issue), "issue")
    _find_date(words, fields, record)
    if record.edition:
        _find_number(words, fields, rf"{record.edition}(?:st|nd|rd|th)?\.?(?:\s(?:ed|edn|edition)\b\.?)?", "edition")
    _join(words, fields)
    for found in re.finditer(r"https?://doi\.org/(?=1)", words):
        if fields[found.end()] == "doi":
            fields[found.start() : found.end()] = ["doi"] * (found.end() - found.start())
    begin = re.match(r"\s*(?:\[\d{1,3}\]|\(\d{1,3}\)|\d{1,3}[.)]?(?=\s))\s*", words)
    if begin and not any(fields[: begin.end()]):
        words, fields = words[begin.end() :], fields[begin.end() :]
    return words, fields


def _pages_pattern(record: Record) -> str:
    if not record.last:
        return re.escape(record.first)
    tails = "|".join(re.escape(record.last[n:]) for n in range(len(record.last)))
    return rf"{re.escape(record.first)}(?:{_DASH}(?:{tails}))?"


def _find_number(words: str, fields: list[str], pattern: str, field: str) -> None:
    if not pattern:
        return
    for found in re.finditer(rf"(?<![\w]){pattern}(?![\w])", words):
        if not any(fields[found.start() : found.end()]):
            fields[found.start() : found.end()] = [field] * len(found[0])
            return


def _find_date(words: str, fields: list[str], record: Record) -> None:
    month = rf"(?:{record.month[:3]}[a-zé]*\.?|{MONTHS.index(record.month) + 1:02d})" if record.month else "(?!)"
    day = rf"{record.day}(?:st|nd|rd|th)?" if record.day else "(?!)"
    piece = rf"(?:{month}|{day}|{record.year}[a-z]?)"
    for found in re.finditer(rf"(?<!\w){piece}(?:[\s,./-]{{1,2}}{piece})*(?!\w)", words, re.IGNORECASE):
        if str(record.year) in found[0] and not any(fields[found.start() : found.end()]):
            fields[found.start() : found.end()] = ["date"] * len(found[0])


def _join_names(words: str, fields: list[str], field: str, people: list[Person]) -> None:
    """A list of names is one field, its initials, given names and *et al.* with it."""
    if field not in fields:
        return
    given = {part for one in people for name in one.given for part in (name, *name.split("-"), name[:1])}
    given |= {"".join(name[0] for name in one.given) for one in people}
    given |= {"".join(part[0] for name in one.given for part in name.split("-")) for one in people}
    forms = "|".join(sorted(map(re.escape, filter(None, given)), key=len, reverse=True))
    runs = [found.span() for found in re.finditer(r"x+", "".join("x" if one == field else "." for one in fields))]
    merged = [runs[0]]
    for start, end in runs[1:]:
        if not any(fields[merged[-1][1] : start]) and start - merged[-1][1] < 90:
            merged[-1] = (merged[-1][0], end)
        else:
            merged.append((start, end))
    for start, end in merged:
        first, last = start, end
        if forms:
            before = re.search(rf"(?:(?:{forms})[.\s-]*)+$", words[:start])
            first = before.start() if before and not any(fields[before.start() : start]) else start
            after = re.match(rf"(?:,?\s?(?:(?:{forms})(?![^\W\d_])\.?-?)+)+", words[end:])
            last += after.end() if after else 0
        more = re.match(r",?\s(?:et\.?\sal\b\.?|and others|& al\.)", words[last:])
        last += more.end() if more else 0
        fields[first:last] = [field] * (last - first)


def _join(words: str, fields: list[str]) -> None:
    """Two runs of one field with only signs between them are one."""
    for found in re.finditer(r"(?<=\w)[^\w]{1,3}(?=\w)", words):
        before, after = fields[found.start() - 1], fields[found.end()]
        if before and before == after and not any(fields[found.start() : found.end()]) and before != "pages":
            fields[found.start() : found.end()] = [before] * len(found[0])
