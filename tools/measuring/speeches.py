"""Papers that quote the broken speeches of a novel: rightly, and one in ten run together without a mark."""

from __future__ import annotations

import random
from functools import cache
from itertools import pairwise

from fairhand.fidelity.prepared import words_of
from fairhand.model.paper import Paper
from fairhand.model.span import Span
from measuring.corpora import novel, speeches
from measuring.forms import STYLES, form_of, interrupted_sentence, quoting_sentence
from measuring.quotations import A_PAPER, ONE_IN, Piece, is_quotable
from measuring.tally import Spoiled, Tally, judge_paper

NEAREST = 1500
"""Characters between two parts of a speech beyond which nobody quotes them as one."""


def measure_speeches(tally: Tally, papers: int, seed: int) -> None:
    """What the checks say of so many papers, made from the seed alone."""
    rng = random.Random(seed)  # noqa: S311 - a sample
    for number in range(papers):
        paper, spoiled = _make_paper(rng, STYLES[number % len(STYLES)])
        judge_paper(tally, f"speeches {seed}.{number}", paper, spoiled)


@cache
def _broken() -> tuple[tuple[Piece, Piece], ...]:
    """The first two parts of each speech that the teller breaks, where a writer may quote both."""
    shelved = novel()
    out = []
    for parts in speeches():
        for (a, b), (c, d) in list(pairwise(parts))[:1]:
            bare = [shelved.text[start:end].rstrip(" .,;:-—–\n") for start, end in ((a, b), (c, d))]
            first, second = Piece(shelved, a, a + len(bare[0])), Piece(shelved, c, c + len(bare[1]))
            fit = all(4 <= len(words_of(one)) <= 40 and is_quotable(one.replace("\n", " ")) for one in bare)
            if fit and 0 < c - b < NEAREST:
                out.append((first, second))
    return tuple(out)


def _make_paper(rng: random.Random, style: str) -> tuple[Paper, list[Spoiled]]:
    """A paper of twenty speeches, and those in it that are run together."""
    shelved = novel()
    form = form_of(shelved.entry, style)
    text, spoiled = "# A Paper\n\n", []
    kinds = [n < A_PAPER // ONE_IN for n in range(A_PAPER)]
    rng.shuffle(kinds)
    for run_together in kinds:
        first, second = rng.choice(_broken())
        pages = Piece(shelved, first.start, second.end).pages
        if run_together:
            sentence = quoting_sentence(form, f"{first.words}, {second.words}", pages, rng)
            spoiled.append(Spoiled("quotation-gap", Span(len(text), len(text) + len(sentence))))
        elif rng.random() < 0.5 or style == "chicago-notes-17":
            sentence = quoting_sentence(form, f"{first.words} . . . {second.words}", pages, rng)
        else:
            sentence = interrupted_sentence(form, first.words, second.words, pages)
        text += sentence + ("\n\n" if "\n> " in sentence or rng.random() < 0.25 else " ")
    return Paper("made", text, (shelved.entry,), {shelved.entry.id: shelved.source()}, style=style), spoiled
