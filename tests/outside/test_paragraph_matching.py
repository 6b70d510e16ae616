"""Paragraphs matched across drafts against revisions that annotators aligned sentence by sentence."""

from __future__ import annotations

import re
import zipfile
from collections import Counter
from collections.abc import Callable, Iterator
from pathlib import Path

from lxml import etree

from fairhand.manuscript.draft import read_manuscript
from fairhand.manuscript.matching import match_paragraphs

SHEET = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
Row = dict[str, str]
Sentences = dict[int, tuple[int, str]]
"""Each sentence's paragraph and words, by its number."""


def rows_of(archive: zipfile.ZipFile, number: int) -> list[Row]:
    """The cells of one sheet by their column."""
    shared = ["".join(map(str, item.itertext())) for item in etree.fromstring(archive.read("xl/sharedStrings.xml"))]
    rows = []
    for row in etree.fromstring(archive.read(f"xl/worksheets/sheet{number}.xml")).iter(f"{SHEET}row"):
        cells = dict.fromkeys("ABCEF", "")
        for cell in row:
            value = cell.findtext(f"{SHEET}v") or ""
            column = re.match("[A-Z]+", cell.get("r", ""))
            if column:
                cells[column.group()] = shared[int(value)] if cell.get("t") == "s" else value
        rows.append(cells)
    return rows[1:]


def numbers(text: str) -> list[int]:
    """The whole numbers of a cell: ``"3.0"``, ``"3,4"``."""
    return [int(float(piece)) for piece in text.split(",") if re.fullmatch(r"\s*\d+(?:\.0)?\s*", piece)]


def sentences_of(rows: list[Row], paragraph: str) -> Sentences:
    """The sentences of a draft that stand in a paragraph."""
    return {
        numbers(row["A"])[0]: (numbers(row[paragraph])[0], row.get("B", ""))
        for row in rows
        if numbers(row.get("A", "")) and numbers(row.get(paragraph, ""))
    }


def paragraphs_of(sentences: Sentences) -> dict[int, list[str]]:
    """The sentences by paragraph, in order."""
    paragraphs: dict[int, list[str]] = {}
    for number in sorted(sentences):
        paragraphs.setdefault(sentences[number][0], []).append(sentences[number][1])
    return paragraphs


def draft_of(paragraphs: dict[int, list[str]]) -> str:
    """The paragraphs as a draft; nothing at their beginning makes them anything else."""
    bare = (" ".join(" ".join(sentences).split()).lstrip("#>-*+0123456789. \t") for sentences in paragraphs.values())
    return "\n\n".join(words or "x" for words in bare)


def revisions(folder: Path) -> Iterator[tuple[str, str, set[tuple[int, int]]]]:
    """Two drafts, and which of their paragraphs share at least half the sentences of the smaller one."""
    for file in sorted(folder.glob("annotations/*/*/[!~]*.xlsx")):
        with zipfile.ZipFile(file) as archive:
            old_rows, new_rows = rows_of(archive, 1), rows_of(archive, 2)
        old, new = sentences_of(old_rows, "E"), sentences_of(new_rows, "F")
        if not old or not new:
            continue
        aligned = {(one, other) for row in old_rows for one in numbers(row["A"]) for other in numbers(row["C"])}
        aligned |= {
            (one, other) for row in new_rows for other in numbers(row["A"]) for one in numbers(row.get("C", ""))
        }
        before, after = paragraphs_of(old), paragraphs_of(new)
        shared = Counter((old[one][0], new[other][0]) for one, other in aligned if one in old and other in new)
        places = [{name: index for index, name in enumerate(paragraphs)} for paragraphs in (before, after)]
        links = {
            (places[0][one], places[1][other])
            for (one, other), count in shared.items()
            if 2 * count >= min(len(before[one]), len(after[other]))
        }
        yield draft_of(before), draft_of(after), links


def test_paragraphs_of_student_revisions_are_matched(outside_data: Callable[[str], Path]) -> None:
    """Pairs of paragraphs that we hold to be one are those whose sentences the annotators aligned.

    Source: ArgRewrite V.2 (Kashefi et al. 2022, Language Resources and Evaluation), CC BY 4.0: students' revisions of
    argumentative essays, aligned by sentence. A pair is one that shares half of the smaller paragraph's sentences.
    The two thresholds of the matcher were chosen on these revisions.
    """
    right = found = gold = drafts = 0
    for old, new, links in revisions(outside_data("data/student-drafts")):
        matches = match_paragraphs(read_manuscript(old), read_manuscript(new))
        ours = {(one, other) for match in matches for one in match.old for other in match.new}
        right, found, gold, drafts = right + len(ours & links), found + len(ours), gold + len(links), drafts + 1
    score = 2 * right / (found + gold)
    print(
        f"\nparagraphs matched in {drafts} revisions, {gold} pairs: "
        f"precision {right / found:.3f}, recall {right / gold:.3f}, F1 {score:.3f}"
    )
    assert score >= 0.95
    assert right / found >= 0.98
