"""Offcuts brought back into drafts that their writers revised meanwhile.

Source: ArgRewrite V.2 (Kashefi et al. 2022, Language Resources and Evaluation), CC BY 4.0: students' revisions of
argumentative essays, whose sentences annotators aligned. A passage is cut from the earlier draft; the later draft,
without what became of that passage, is what the writer made of the rest; there it is brought back. It is right where it
stands exactly where the passage stood in the later draft. What is wrong stands, nearly always, on the other side of
something that the writer added beside it.
"""

from __future__ import annotations

import importlib.util
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

from fairhand.manuscript.draft import read_manuscript
from fairhand.model.span import Span
from fairhand.proof.passages import list_passages
from fairhand.revision.offcuts import find_cut, take_offcut
from fairhand.revision.returning import find_return

FLOOR_PARAGRAPHS = 0.93
FLOOR_SENTENCES = 0.90
EVERY = 7
"""Each seventh sentence is tried, so that the check does not take long."""


def load_reader() -> Any:
    """The reader of the data set, which another outside check has."""
    path = Path(__file__).with_name("test_two_drafts.py")
    spec = importlib.util.spec_from_file_location("two_drafts", path)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def aligned(folder: Path) -> Iterator[tuple[list[list[str]], list[list[str]], dict[tuple[int, int], tuple[int, int]]]]:
    """The sentences of two drafts by paragraph, and where each that was aligned with one other alone came to stand."""
    reader = load_reader()
    for file in sorted(folder.glob("annotations/*/*/[!~]*.xlsx")):
        with reader.zipfile.ZipFile(file) as archive:
            old_rows, new_rows = reader.rows_of(archive, 1), reader.rows_of(archive, 2)
        old, new = reader.sentences_of(old_rows, "E"), reader.sentences_of(new_rows, "F")
        pairs = {
            (one, other) for row in old_rows for one in reader.numbers(row["A"]) for other in reader.numbers(row["C"])
        }
        before, places_before = by_place(old)
        after, places_after = by_place(new)
        firsts, seconds = [one for one, _ in pairs], [other for _, other in pairs]
        yield (
            before,
            after,
            {
                places_before[one]: places_after[other]
                for one, other in sorted(pairs)
                if one in places_before and other in places_after
                if firsts.count(one) == 1 and seconds.count(other) == 1
            },
        )


def by_place(sentences: dict[int, tuple[int, str]]) -> tuple[list[list[str]], dict[int, tuple[int, int]]]:
    """The sentences by paragraph, and each one's place among them; those that say nothing are left out."""
    found: dict[int, list[str]] = {}
    places: dict[int, tuple[int, int]] = {}
    order = {name: at for at, name in enumerate(dict.fromkeys(sentences[one][0] for one in sorted(sentences)))}
    for number in sorted(sentences):
        paragraph, words = sentences[number]
        own = found.setdefault(paragraph, [])
        places[number] = (order[paragraph], len(own))
        own.append(" ".join(words.split()).lstrip("#>-*+0123456789.) \t") or "x")
    return list(found.values()), places


def written(paragraphs: list[list[str]]) -> str:
    """The paragraphs as a draft."""
    return "\n\n".join(" ".join(sentences) for sentences in paragraphs if sentences) + "\n"


def brought_back(before: str, words: str, at: int, after: str) -> str:
    """The later draft with a passage of the earlier one brought back."""
    cut = find_cut(before, Span(at, at + len(words)))
    one = take_offcut(before, cut, list_passages(read_manuscript(before)))
    back = find_return(after, one, list_passages(read_manuscript(after)))
    return after[: back.at] + back.words + after[back.at :]


def test_paragraphs_come_back_into_revised_drafts(outside_data: Callable[[str], Path]) -> None:
    """A paragraph stands again between those between which its revised form stood."""
    tried = right = 0
    for before, after, places in aligned(outside_data("data/student-drafts")):
        kinds: dict[int, set[int]] = {}
        for (one, _), (other, _) in places.items():
            kinds.setdefault(one, set()).add(other)
        whole = [next(iter(others)) if len(others) == 1 else None for _, others in sorted(kinds.items())]
        for one, others in kinds.items():
            other = next(iter(others))
            if len(others) > 1 or whole.count(other) != 1 or min(len(before), len(after)) < 2:
                continue
            words, text = " ".join(before[one]), written(before)
            at = sum(len(" ".join(each)) + 2 for each in before[:one])
            back = brought_back(text, words, at, written([*after[:other], *after[other + 1 :]]))
            tried += 1
            right += back.split() == written([*after[:other], [words], *after[other + 1 :]]).split()
    print(f"\nparagraphs brought back to where their revised form stood: {right} of {tried}, {right / tried:.3f}")
    assert right / tried >= FLOOR_PARAGRAPHS


def test_sentences_come_back_into_revised_drafts(outside_data: Callable[[str], Path]) -> None:
    """A sentence stands again between those between which its revised form stood, in the same paragraph."""
    tried = right = number = 0
    for before, after, places in aligned(outside_data("data/student-drafts")):
        for (one, first), (other, second) in places.items():
            number += 1
            if number % EVERY or len(before[one]) < 3 or len(after[other]) < 3:
                continue
            words, text = before[one][first], written(before)
            at = sum(len(" ".join(each)) + 2 for each in before[:one]) + sum(len(s) + 1 for s in before[one][:first])
            without = [list(each) for each in after]
            del without[other][second]
            wanted = [list(each) for each in after]
            wanted[other][second] = words
            back = brought_back(text, words, at, written(without))
            tried += 1
            right += back.split() == written(wanted).split()
    print(f"\nsentences brought back to where their revised form stood: {right} of {tried}, {right / tried:.3f}")
    assert right / tried >= FLOOR_SENTENCES
