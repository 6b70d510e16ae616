"""Two drafts held side by side, against revisions that annotators aligned and named sentence by sentence.

Source: ArgRewrite V.2 (Kashefi et al. 2022, Language Resources and Evaluation), CC BY 4.0: students' revisions of
argumentative essays. Its readme does not tell how far the annotators agreed with each other on the purposes.
"""

from __future__ import annotations

import re
import zipfile
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path

from lxml import etree

from fairhand.manuscript.draft import read_manuscript
from fairhand.manuscript.matching import match_paragraphs
from fairhand.manuscript.parts import Manuscript, Paragraph
from fairhand.manuscript.revising import match_sentences, tell_revision
from fairhand.manuscript.revising import sentences_of as sentences_in
from fairhand.model.span import Span

SHEET = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
Row = dict[str, str]
Sentences = dict[int, tuple[int, str]]
"""Each sentence's paragraph and words, by its number."""


def rows_of(archive: zipfile.ZipFile, number: int) -> list[Row]:
    """The cells of one sheet by their column."""
    shared = ["".join(map(str, item.itertext())) for item in etree.fromstring(archive.read("xl/sharedStrings.xml"))]
    rows = []
    for row in etree.fromstring(archive.read(f"xl/worksheets/sheet{number}.xml")).iter(f"{SHEET}row"):
        cells = dict.fromkeys("ABCEFGKO", "")
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

    A pair is one that shares half of the smaller paragraph's sentences. The two thresholds of the matcher were chosen
    on these revisions.
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


def as_manuscript(sentences: Sentences) -> tuple[Manuscript, list[int]]:
    """The sentences as a draft of which they are the sentences, and their numbers in order."""
    text, paragraphs, order = "", [], []
    for index, name in enumerate(paragraphs_of(sentences)):
        spans = []
        for number in sorted(one for one in sentences if sentences[one][0] == name):
            start = len(text)
            text += " ".join(sentences[number][1].split()) + " "
            spans.append(Span(start, len(text) - 1))
            order.append(number)
        paragraphs.append(Paragraph(index, Span(spans[0].start, spans[-1].end), tuple(spans), 0))
        text += "\n\n"
    return replace(read_manuscript(""), text=text, paragraphs=tuple(paragraphs)), order


def sentence_links(old: list[Row], new: list[Row]) -> set[tuple[int, int]]:
    """The sentences that the annotators aligned, from both sheets."""
    return {(one, other) for row in old for one in numbers(row["A"]) for other in numbers(row["C"])} | {
        (one, other) for row in new for other in numbers(row["A"]) for one in numbers(row["C"])
    }


def workbooks(folder: Path) -> Iterator[tuple[list[Row], list[Row]]]:
    """The two sheets of every revision."""
    for file in sorted(folder.glob("annotations/*/*/[!~]*.xlsx")):
        with zipfile.ZipFile(file) as archive:
            yield rows_of(archive, 1), rows_of(archive, 2)


def test_sentences_of_student_revisions_are_matched(outside_data: Callable[[str], Path]) -> None:
    """Sentences that we hold to be one are those that the annotators aligned, the unchanged set apart too."""
    counts = {name: Counter[str]() for name in ("all", "changed")}
    for old_rows, new_rows in workbooks(outside_data("data/student-drafts")):
        old, new = sentences_of(old_rows, "E"), sentences_of(new_rows, "F")
        if not old or not new:
            continue
        gold = {(a, b) for a, b in sentence_links(old_rows, new_rows) if a in old and b in new}
        (before, ours), (after, theirs) = as_manuscript(old), as_manuscript(new)
        found = {(ours[a], theirs[b]) for one in match_sentences(before, after) for a in one.old for b in one.new}
        same = {(a, b) for a, b in gold | found if old[a][1].split() == new[b][1].split()}
        for name, left_out in (("all", set[tuple[int, int]]()), ("changed", same)):
            mine, right = found - left_out, gold - left_out
            counts[name].update(right=len(mine & right), found=len(mine), gold=len(right))
    scores = {}
    for name, one in counts.items():
        scores[name] = 2 * one["right"] / (one["found"] + one["gold"])
        print(
            f"\nsentences matched, {name}, {one['gold']} pairs: precision {one['right'] / one['found']:.3f}, "
            f"recall {one['right'] / one['gold']:.3f}, F1 {scores[name]:.3f}"
        )
    assert scores["all"] >= 0.965
    assert scores["changed"] >= 0.92


def places_of(text: str, sentences: Sentences) -> dict[int, Span]:
    """Where the annotators' sentences stand in a draft."""
    places, at = {}, 0
    for number in sorted(sentences):
        words = " ".join(sentences[number][1].split())
        start = text.find(words, at)
        if start >= 0 and words:
            places[number] = Span(start, start + len(words))
            at = start + len(words)
    return places


def halves_of(span: Span, places: dict[int, Span]) -> list[int]:
    """The annotators' sentences of which half, or of our own half, lies in one of our sentences."""
    return [
        number
        for number, place in places.items()
        if min(place.end, span.end) - max(place.start, span.start) > 0.5 * min(len(place), len(span))
    ]


def test_sentences_that_we_split_ourselves_are_matched(outside_data: Callable[[str], Path]) -> None:
    """The same with the sentences that we see in the drafts, each told by the annotators' sentence that it is."""
    counted: Counter[str] = Counter()
    for old_rows, new_rows in workbooks(outside_data("data/student-drafts")):
        old, new = sentences_of(old_rows, "E"), sentences_of(new_rows, "F")
        if not old or not new:
            continue
        before, after = (read_manuscript(draft_of(paragraphs_of(each))) for each in (old, new))
        places = places_of(before.text, old), places_of(after.text, new)
        ours, theirs = sentences_in(before), sentences_in(after)
        found = {
            (a, b)
            for one in match_sentences(before, after)
            for then in one.old
            for now in one.new
            for a in halves_of(ours[then][1], places[0])
            for b in halves_of(theirs[now][1], places[1])
        }
        gold = {(a, b) for a, b in sentence_links(old_rows, new_rows) if a in places[0] and b in places[1]}
        counted.update(right=len(found & gold), found=len(found), gold=len(gold))
    score = 2 * counted["right"] / (counted["found"] + counted["gold"])
    print(f"\nsentences that we split ourselves, {counted['gold']} pairs: F1 {score:.3f}")
    assert score >= 0.955


SURFACE = {"Word-Usage/Clarity", "Conventions/Grammar/Spelling", "Organization"}
"""The purposes of the surface; all others are of the content. **Source**: the data set's own two classes."""


def revisions_named(old_rows: list[Row], new_rows: list[Row]) -> Iterator[tuple[str, str, bool]]:
    """Each sentence that annotators named the purpose of: as it was, as it is, and whether it is of the content."""
    old, new = ({n: row for row in rows for n in numbers(row["A"])[:1]} for rows in (old_rows, new_rows))
    for number, row in new.items():
        origins = [one for one in numbers(row["C"]) if one in old]
        parts = sorted({number} | {b for one in origins for b in numbers(old[one]["C"]) if b in new})
        then, now = " ".join(old[one]["B"] for one in origins), " ".join(new[one]["B"] for one in parts)
        yield from named(row, then, now)
    for row in old.values():
        if not numbers(row["C"]):
            yield from named(row, row["B"], "")


def named(row: Row, then: str, now: str) -> Iterator[tuple[str, str, bool]]:
    """The sentence, where a purpose is named."""
    purposes = {one for column in "GKO" for one in row[column].split(",") if one and one != "Unannotated"}
    if purposes:
        yield then, now, bool(purposes - SURFACE)


def kappa(told: Counter[tuple[bool, bool]]) -> float:
    """Cohen's kappa of two who judge yes or no (Cohen 1960)."""
    total = told.total()
    agreed = (told[True, True] + told[False, False]) / total
    first, second = (told[True, True] + told[True, False]) / total, (told[True, True] + told[False, True]) / total
    chance = first * second + (1 - first) * (1 - second)
    return (agreed - chance) / (1 - chance)


def test_argument_and_wording_are_told_apart(outside_data: Callable[[str], Path]) -> None:
    """Of sentences revised, ours and the annotators' judgement on content and surface are held against each other.

    Kappa takes away what chance would give. Most sentences that are new or gone are content by nature; those that were
    changed are given apart, and there ours is the weaker judge by far.
    """
    told: dict[str, Counter[tuple[bool, bool]]] = {"all": Counter(), "changed": Counter()}
    for old_rows, new_rows in workbooks(outside_data("data/student-drafts")):
        for then, now, content in revisions_named(old_rows, new_rows):
            ours = tell_revision(then, now)[0] == "argument"
            told["all"][ours, content] += 1
            if then and now:
                told["changed"][ours, content] += 1
    for name, one in told.items():
        print(
            f"\nargument or wording, {name}, {one.total()} sentences: agreed "
            f"{(one[True, True] + one[False, False]) / one.total():.3f}, kappa {kappa(one):.2f}; of argument, "
            f"precision {one[True, True] / (one[True, True] + one[True, False]):.2f}, "
            f"recall {one[True, True] / (one[True, True] + one[False, True]):.2f}"
        )
    assert kappa(told["all"]) >= 0.7
    assert kappa(told["changed"]) >= 0.4
