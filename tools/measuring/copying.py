"""Papers that copy: found prose with sentences of its sources set into it, word for word or some words changed."""

from __future__ import annotations

import random
import re

from fairhand.fidelity.prepared import words_of
from fairhand.model.paper import Paper
from fairhand.model.span import Span
from measuring.corpora import Shelved, prose
from measuring.quotations import choose_piece, choose_shelf
from measuring.tally import Spoiled, Tally, judge_paper

KINDS = {"word for word": "copied-unmarked", "a word changed": "copied-unmarked", "one in six changed": "close-wording"}
A_PAPER = 6
"""Passages copied into a paper."""
PARAGRAPHS = 12
FEWEST = 18
"""Words of a passage that is copied."""
_QUOTED = re.compile(r"[\"“”()\[\]]")


def measure_copying(tally: Tally, papers: int, seed: int = 1) -> None:
    """What the checks say of so many papers, made from the seed alone."""
    rng = random.Random(seed)  # noqa: S311 - a sample
    written = [p for found in prose() if found.corpus in ("GUM", "student papers") for p in found.paragraphs]
    plain = [p for p in written if len(p.split()) > FEWEST and not _QUOTED.search(p)]
    for number in range(papers):
        paper, spoiled = make_paper(rng, plain)
        judge_paper(tally, f"copying {seed}.{number}", paper, spoiled)


def make_paper(rng: random.Random, plain: list[str]) -> tuple[Paper, list[Spoiled]]:
    """A paper of found paragraphs, after half of which stands a passage of one of four sources."""
    shelf = choose_shelf(rng)
    text, spoiled = "# A Paper\n\n", []
    for number, paragraph in enumerate(rng.sample(plain, PARAGRAPHS)):
        text += paragraph.strip()
        if number < A_PAPER:
            kind = rng.choice(list(KINDS))
            copied = _copy(rng, kind, shelf)
            text += " "
            spoiled.append(Spoiled(KINDS[kind], Span(len(text), len(text) + len(copied))))
            text += copied
        text += "\n\n"
    texts = {one.entry.id: one.source() for one in shelf}
    return Paper("made", text, tuple(one.entry for one in shelf), texts, style="apa-7"), spoiled


def _copy(rng: random.Random, kind: str, shelf: list[Shelved]) -> str:
    """A passage of a source, as a writer may copy it."""
    while True:
        words = choose_piece(rng, rng.choice(shelf), fewest=FEWEST).words.split()
        if not _QUOTED.search(" ".join(words)):
            break
    strange = words_of(rng.choice(shelf).text[5000:15000])
    first = rng.randrange(6)
    places = {"word for word": (), "a word changed": (len(words) // 2,)}.get(kind, range(first, len(words), 6))
    for at in places:
        words[at] = rng.choice(strange)
    return " ".join([words[0][:1].upper() + words[0][1:], *words[1:]]) + "."
