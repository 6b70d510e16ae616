"""What readers wrote into a first draft, and marks on its proof, are found again in the second and the third.

Source: ArgRewrite V.2 (Kashefi et al. 2022, Language Resources and Evaluation), CC BY 4.0: three drafts of essays by
students, their sentences aligned by annotators. A place is right where it lies in a sentence that the annotators
aligned with the one that was marked, or in one beside it that they aligned with none: of a sentence that was split they
name one half.
"""

from __future__ import annotations

import random
import re
import zipfile
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import NamedTuple

from lxml import etree

from fairhand.model.proof_mark import ProofMark
from fairhand.model.span import Span
from fairhand.proof.placing import find_mark
from fairhand.readers.gathering import AROUND, ReaderRemark
from fairhand.readers.placing import place_remarks
from fairhand.reading.found_again import Place

SHEET = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
MARKS = 40
"""Marks set on each draft."""


class Sentence(NamedTuple):
    """One sentence of a draft as the annotators have it."""

    paragraph: int
    text: str
    aligned: tuple[int, ...]


def numbers(text: str) -> tuple[int, ...]:
    """The whole numbers of a cell: ``"3.0"``, ``"3,4"``."""
    return tuple(int(float(piece)) for piece in text.split(",") if re.fullmatch(r"\s*\d+(?:\.0)?\s*", piece))


def sentences_of(archive: zipfile.ZipFile, sheet: int, column: str) -> dict[int, Sentence]:
    """The sentences of one sheet by number."""
    shared = ["".join(map(str, item.itertext())) for item in etree.fromstring(archive.read("xl/sharedStrings.xml"))]
    out = {}
    for row in etree.fromstring(archive.read(f"xl/worksheets/sheet{sheet}.xml")).iter(f"{SHEET}row"):
        cells = {}
        for cell in row:
            value = cell.findtext(f"{SHEET}v") or ""
            cells[(cell.get("r") or "").rstrip("0123456789")] = shared[int(value)] if cell.get("t") == "s" else value
        number, paragraph = numbers(cells.get("A", "")), numbers(cells.get(column, ""))
        if number and paragraph:
            text = " ".join(cells.get("B", "").split())
            out[number[0]] = Sentence(paragraph[0], text, numbers(cells.get("C", "")))
    return out


def laid_out(sentences: dict[int, Sentence]) -> tuple[str, dict[int, Span]]:
    """The draft with a paragraph a line, and where each sentence stands in it."""
    text, spans, former = "", {}, None
    for number in sorted(sentences):
        one = sentences[number]
        text += "" if former is None else " " if one.paragraph == former else "\n"
        spans[number] = Span(len(text), len(text) + len(one.text))
        text += one.text
        former = one.paragraph
    return text, spans


def revisions(folder: Path) -> Iterator[tuple[str, tuple[dict[int, Sentence], dict[int, Sentence]]]]:
    """Every revision: the student and which draft it begins from, with the sentences of both drafts."""
    for file in sorted(folder.glob("annotations/*/*/[!~]*.xlsx")):
        with zipfile.ZipFile(file) as archive:
            old, new = sentences_of(archive, 1, "E"), sentences_of(archive, 2, "F")
        student = re.search(r"argrewrite_(\d+)", file.name)
        if old and new and student:
            yield f"{student[1]} {file.parent.name}", (old, new)


def marks_on(text: str, spans: dict[int, Span], chance: random.Random) -> Iterator[tuple[int, ReaderRemark]]:
    """Some words of some sentences, with what stands around them."""
    for _ in range(MARKS):
        number = chance.choice(sorted(spans))
        found = [
            Span(*each.span()).shifted(spans[number].start) for each in re.finditer(r"\S+", spans[number].of(text))
        ]
        if not found:
            continue
        first = chance.randrange(len(found))
        last = min(len(found) - 1, first + chance.randrange(6))
        start, end = found[first].start, found[last].end
        yield (
            number,
            ReaderRemark(
                "comment", "?", text[start:end], text[max(0, start - AROUND) : start], text[end : end + AROUND]
            ),
        )


def aligned(old: dict[int, Sentence], new: dict[int, Sentence], number: int) -> set[int]:
    """The sentences of the newer draft that the annotators aligned with one of the older."""
    return {one for one in old[number].aligned if one in new} | {n for n, one in new.items() if number in one.aligned}


def halves(homes: set[int], new: dict[int, Sentence], links: dict[int, set[int]]) -> set[int]:
    """The sentences beside some that are aligned with none."""
    taken = {one for each in links.values() for one in each}
    return {n for one in homes for n in (one - 1, one + 1) if n in new and n not in taken}


def ways_of(folder: Path) -> Iterator[tuple[str, dict[int, Sentence], dict[int, Sentence], dict[int, set[int]]]]:
    """Each way from a draft to a later one, with the sentences of both and how the annotators aligned them."""
    steps = dict(revisions(folder))
    for name, (old, new) in steps.items():
        student, _, which = name.partition(" ")
        yield f"drafts {which[0]} to {which[1]}", old, new, {n: aligned(old, new, n) for n in old}
        later = steps.get(f"{student} 23")
        if which == "12" and later and [s.text for s in later[0].values()] == [s.text for s in new.values()]:
            links = {n: {b for a in aligned(old, new, n) for b in aligned(*later, a)} for n in old}
            yield "drafts 1 to 3", old, later[1], links


def test_remarks_are_found_again(outside_data: Callable[[str], Path]) -> None:
    """Marks on words that survive are found again at the right place; what is wrong is called uncertain.

    From the first draft to the second, from the second to the third, and from the first to the third. A word survives
    where it stands in the sentence that the annotators aligned with its own.
    """
    counts: dict[str, Counter[str]] = {}
    chance = random.Random(1)  # noqa: S311 - marks are set by chance, the same each time
    for way, old, target, links in ways_of(outside_data("data/student-drafts")):
        text, spans = laid_out(old)
        marks = list(marks_on(text, spans, chance))
        after, places = laid_out(target)
        remarks = [mark for _, mark in marks]
        proof = [ProofMark("", "", "query", one.exact, one.before, one.after) for one in remarks]
        ways: dict[str, Sequence[Place | None]] = {
            "remarks, with the text as sent": place_remarks(remarks, after, text),
            "remarks, by the words alone": place_remarks(remarks, after),
            "marks on the proof": [find_mark(one, after) for one in proof],
        }
        for kind, found in ways.items():
            count = counts.setdefault(f"{way}, {kind}", Counter())
            for (number, mark), place in zip(marks, found, strict=True):
                homes = [places[one] for one in sorted(links[number])]
                beside = [places[one] for one in halves(links[number], target, links)]
                if not any(f" {mark.exact} " in f" {home.of(after)} " for home in homes):
                    count["gone"] += 1
                    count["gone, told as sure"] += bool(place and place.sure)
                    continue
                right = place is not None and any(home.overlaps(place.span) for home in homes + beside)
                count["all"] += 1
                count["right"] += right
                count["sure"] += bool(place and place.sure)
                count["wrong and sure"] += bool(place and place.sure and not right)
    for way, one in counts.items():
        print(
            f"\n{way}: {one['right']} of {one['all']} marks at the right place ({one['right'] / one['all']:.3f}), "
            f"{one['sure'] / one['all']:.3f} of them sure; wrong and sure {one['wrong and sure']}; "
            f"of {one['gone']} whose words are gone {one['gone, told as sure']} told as sure"
        )
    for one in counts.values():
        assert one["right"] / one["all"] >= 0.97
        assert one["wrong and sure"] == 0
