"""Real quotations, right and spoiled, looked for in their book.

Data: the Project Dialogism Novel Corpus (Vishnubhotla, Hammond and Hirst 2022), *Alice's Adventures in Wonderland*: the
text, and each character's words with their places in it. Likeness under noise: measured beforehand on other quotations
(absent ones at most .44, true ones with a tenth of their letters wrong at least .885).
"""

from __future__ import annotations

import ast
import csv
import functools
import os
import random
import re
from itertools import pairwise
from pathlib import Path

import pytest

from fairhand.fidelity.allowed import rules_for
from fairhand.fidelity.match import QuotationMatch
from fairhand.fidelity.prepared import PreparedSource, prepare, words_of
from fairhand.fidelity.quotation import find_quotation
from fairhand.model.source import Page, SourceText

DATA = Path(os.environ.get("FAIRHAND_DATA", Path(__file__).parents[2] / ".." / "shared"))
ALICE = DATA / "data" / "quotations" / "alice"
PAGE = 1800
"""Characters a page, about those of a printed one."""

pytestmark = pytest.mark.skipif(
    not ALICE.is_dir(), reason="the Project Dialogism Novel Corpus (Alice) is not in FAIRHAND_DATA/data/quotations"
)


@functools.cache
def book() -> tuple[PreparedSource, tuple[int, ...]]:
    """The book in pages of whole lines, and the place at which each begins."""
    text = (ALICE / "novel_text.txt").read_text(encoding="utf-8")
    starts = [0]
    while starts[-1] + PAGE < len(text):
        starts.append(text.index("\n", starts[-1] + PAGE) + 1)
    pages = [Page(str(n + 1), text[a:b]) for n, (a, b) in enumerate(zip(starts, [*starts[1:], len(text)], strict=True))]
    return prepare(SourceText("alice", tuple(pages), paged=True)), tuple(starts)


@functools.cache
def quotations() -> tuple[tuple[str, int, int], ...]:
    """Each unbroken quotation with its place in the book."""
    out: list[tuple[str, int, int]] = []
    with (ALICE / "quotation_info.csv").open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            parts = ast.literal_eval(row["subQuotationList"])
            spans = ast.literal_eval(row["quoteByteSpans"])
            out.extend((" ".join(q.split()), a, b) for q, (a, b) in zip(parts, spans, strict=True))
    return tuple(out)


def search(text: str, labels: tuple[str, ...] = ()) -> QuotationMatch:
    """What becomes of a quotation from the book."""
    return find_quotation(text, book()[0], labels, {}, rules_for("mla"))


def page_of(offset: int) -> int:
    """The index of the page that holds an offset of the book."""
    return sum(start <= offset for start in book()[1]) - 1


def test_true_quotations_are_found_at_their_place() -> None:
    """Every quotation is found word for word on the page that is cited, at its place or where it stands there again."""
    wrong = []
    for text, start, _ in quotations():
        page = page_of(start)
        match = search(text, (str(page + 1),))
        words = " ".join(span.of(book()[0].source.pages[k].text) for k, span in match.place)
        right = match.outcome in ("verbatim", "allowed") and str(page + 1) in match.pages
        if not right or words_of(words) != words_of(text):
            wrong.append((text, match.outcome, match.pages, page + 1))
    print(f"\nAlice: {len(quotations()) - len(wrong)} of {len(quotations())} true quotations found at their place")
    assert not wrong, wrong[:5]


def test_noise_is_told_from_absence() -> None:
    """With a tenth of the letters wrong a quotation is still located; words of another book are not found."""
    rng = random.Random(5)  # noqa: S311 - a sample
    long = [text for text, _, _ in quotations() if len(words_of(text)) >= 8]
    sample = rng.sample(long, 150)
    located = 0
    for text in sample:
        noisy = "".join(
            rng.choice("abcdefghijklmnopqrstuvwxyz") if c.isalpha() and rng.random() < 0.1 else c for c in text
        )
        match = search(noisy)
        located += match.outcome in ("differs", "gap") and bool(set(match.pages) & set(search(text).pages))
    vocabulary = book()[0].words
    absent = [" ".join(rng.choice(vocabulary) for _ in range(12)) for _ in range(150)]
    claimed = sum(search(text).outcome != "not-found" for text in absent)
    print(f"\nAlice: {located} of 150 noisy quotations located; {claimed} of 150 absent ones claimed")
    assert located >= 145
    assert claimed <= 1


def test_broken_speeches_are_found_with_their_ellipsis() -> None:
    """Speech that the narrator breaks into is found when an ellipsis stands for the narrator's words."""
    found = total = 0
    missed = []
    with (ALICE / "quotation_info.csv").open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            parts = [" ".join(part.split()) for part in ast.literal_eval(row["subQuotationList"])]
            spans = ast.literal_eval(row["quoteByteSpans"])
            near = all(b[0] - a[1] < 1500 and b[0] > a[1] for a, b in pairwise(spans))
            if len(parts) < 2 or not near or sum(len(words_of(part)) for part in parts) < 4:
                continue
            total += 1
            match = search(" . . . ".join(parts))
            if match.outcome in ("verbatim", "allowed"):
                found += 1
            else:
                missed.append((parts, match.outcome, match.says))
    print(f"\nAlice: {found} of {total} broken speeches found across their ellipses")
    assert found >= 0.99 * total, missed[:5]


def test_words_of_elsewhere_are_not_claimed() -> None:
    """Speech of the book's second half is claimed for the first only at near phrases: one in twenty at most."""
    pages = book()[0].source.pages
    half = prepare(SourceText("half", pages[: len(pages) // 2], paged=True))
    later = [text for text, start, _ in quotations() if page_of(start) > len(pages) // 2 and len(words_of(text)) >= 4]
    absent = [text for text in later if f" {' '.join(words_of(text))} " not in half.line]
    claimed = [
        (text, match.wordings and match.wordings.source)
        for text in absent
        if (match := find_quotation(text, half, (), {}, rules_for("mla"))).outcome != "not-found"
    ]
    print(f"\nAlice: {len(claimed)} of {len(absent)} quotations of the second half claimed for the first")
    assert len(claimed) <= 0.05 * len(absent), claimed


def change_as_allowed(words: list[str], rng: random.Random) -> str:
    """A quotation changed only as the manuals allow: words marked as left out, replaced or put in."""
    out = list(words)
    at = rng.randrange(2, len(out) - 2)
    match rng.randrange(5):
        case 0:
            out[at : at + 1] = [rng.choice([". . .", "…", "[...]"])]
        case 1:
            out[at] = "[they]"
        case 2:
            out.insert(at, "[sic]")
        case 3:
            out.insert(at, "[the Hatter]")
        case _:
            out.append("[emphasis added]")
    first = re.match(r"[A-Za-z]", out[0])
    return " ".join(out) if not first else f"[{out[0][0].swapcase()}]" + " ".join(out)[1:]


def test_changes_that_the_manuals_allow_are_no_faults() -> None:
    """Of quotations with an ellipsis, a bracket or a remark, at most one in a hundred is taken for a fault."""
    rng = random.Random(17)  # noqa: S311 - a sample
    long = [text for text, _, _ in quotations() if len(text.split()) >= 8]
    wrong = []
    sample = [change_as_allowed(text.split(), rng) for text in rng.sample(long, 300)]
    for text in sample:
        match = search(text)
        if match.outcome != "allowed":
            wrong.append((text, match.outcome, match.says))
    print(f"\nAlice: {len(sample) - len(wrong)} of {len(sample)} allowed changes let pass")
    assert len(wrong) <= 3, wrong


def spoil_by_swap(words: list[str], rng: random.Random, vocabulary: list[str]) -> str | None:
    """One word changed for another of the book's."""
    at = rng.randrange(len(words))
    if not words_of(words[at]):
        return None
    new = rng.choice(vocabulary)
    return None if new == words_of(words[at])[0] else " ".join([*words[:at], new, *words[at + 1 :]])


def spoil_by_drop(words: list[str], rng: random.Random, vocabulary: list[str]) -> str | None:
    """A word within the quotation left out without a mark."""
    at = rng.randrange(1, len(words) - 1)
    return " ".join([*words[:at], *words[at + 1 :]]) if words_of(words[at]) else None


def spoil_by_idle_ellipsis(words: list[str], rng: random.Random, vocabulary: list[str]) -> str | None:
    """An ellipsis where nothing was left out."""
    at = rng.randrange(2, len(words) - 1)
    if not words_of(words[at - 1]) or not words_of(words[at]) or not words[at - 1][-1].isalnum():
        return None
    return " ".join([*words[:at], rng.choice(["...", ". . . .", "…", "[...]"]), *words[at:]])


def spoil_by_wrong_order(words: list[str], rng: random.Random, vocabulary: list[str]) -> str | None:
    """The second half before the first, with an ellipsis between."""
    half = len(words) // 2
    return " ".join([*words[half:], ". . .", *words[:half]])


def spoil_by_foreign_part(words: list[str], rng: random.Random, vocabulary: list[str]) -> str | None:
    """After the ellipsis, words that stand nowhere in the book in that order."""
    half = len(words) // 2
    return " ".join([*words[:half], ". . .", *(rng.choice(vocabulary) for _ in range(half))])


def stands_so(spoiled: str) -> bool:
    """Whether the spoiled words happen to stand in the book as they are now (a refrain): no fault then."""
    line = book()[0].line
    before, _, after = (f" {' '.join(words_of(part))} " for part in spoiled.partition(" . . . "))
    at = line.find(before)
    while at >= 0:
        if not after.strip() or 0 <= line.find(after, at + len(before) - 1) - at - len(before) < 2500:
            return True
        at = line.find(before, at + 1)
    return False


SPOILS = {
    "a word swapped": spoil_by_swap,
    "a word dropped": spoil_by_drop,
    "an idle ellipsis": spoil_by_idle_ellipsis,
    "parts in another order": spoil_by_wrong_order,
    "a part from nowhere": spoil_by_foreign_part,
}


@pytest.mark.parametrize("spoil", SPOILS)
def test_spoiled_quotations_are_caught(spoil: str) -> None:
    """At least 99 in 100 quotations with one fault are neither verbatim nor allowed."""
    rng = random.Random(11)  # noqa: S311 - a sample
    vocabulary = sorted(set(book()[0].words))
    long = [text for text, _, _ in quotations() if len(words_of(text)) >= 6]
    caught = total = 0
    missed = []
    for text in rng.sample(long, 400):
        spoiled = SPOILS[spoil](re.sub(r"--", " -- ", text).split(), rng, vocabulary)
        if spoiled is None or ("idle" not in spoil and stands_so(spoiled)):
            continue
        total += 1
        match = search(spoiled)
        if match.outcome in ("differs", "gap", "not-found"):
            caught += 1
        else:
            missed.append((spoiled, text))
    print(f"\nAlice: {caught} of {total} quotations with {spoil} caught")
    assert total > 200
    assert caught >= 0.99 * total, missed[:5]
