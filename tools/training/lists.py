"""Whole lists of references, wrapped into lines as a page has them, each line with whether a reference begins on it."""

from __future__ import annotations

import random
from itertools import pairwise

from training.layouts import draw_layout, set_reference
from training.noise import label_words, spoil
from training.records import Record, make_record

Wrapped = tuple[list[str], list[bool]]


def wrap(texts: list[str], rng: random.Random) -> Wrapped:
    """The references in lines of one width, a few words broken at a line's end."""
    width = rng.randrange(38, 112)
    lines, begins = [], []
    hyphens = rng.random() < 0.6
    ragged = rng.random() < 0.3
    for text in texts:
        line = ""
        first = True
        for word in text.split():
            limit = width - (rng.randrange(0, 8) if ragged else rng.randrange(0, 3))
            if line and len(line) + 1 + len(word) > limit:
                cut = limit - len(line) - 2
                broken = hyphens and word.isalpha() and len(word) > 6 and 2 < cut < len(word) - 2 and rng.random() < 0.5
                if broken:
                    line += f" {word[:cut]}-" if rng.random() < 0.4 else ""
                joined = broken and not line.endswith("-")
                lines.append(f"{line} {word}" if joined else line)  # as joined again by the reader of pages
                begins.append(first)
                first = False
                line = "" if joined else word[cut:] if broken else word
                continue
            line = f"{line} {word}".strip()
        if line:
            lines.append(line)
            begins.append(first)
    return lines, begins


def order_key(record: Record) -> str:
    """What a list is put in order by."""
    people = record.authors or record.editors
    return (people[0].body or people[0].family).casefold() if people else record.title.casefold()


def make_list(rng: random.Random) -> Wrapped:
    """One list in one layout: mostly in the order of letters, a name that comes again now and then a dash."""
    layout = draw_layout(rng)
    records = [make_record(rng) for _ in range(rng.randrange(6, 50))]
    for one, other in pairwise(records):
        if rng.random() < 0.12:
            other.authors = list(one.authors)
    if (rng.random() < 0.75 and layout.names != "given-family") or rng.random() < 0.4:
        records.sort(key=lambda one: (order_key(one), one.year))
    dash = rng.choice(("———", "---", "———.", "_____", "——— ", "———", "———,")) if rng.random() < 0.25 else ""
    texts = []
    for number, record in enumerate(records):
        pieces = set_reference(record, layout, rng)
        if (
            dash
            and number
            and record.authors
            and record.authors == records[number - 1].authors
            and pieces[0][1] == "author"
        ):
            pieces = [(dash, "author"), *pieces[1:]]
        texts.append(label_words(spoil(pieces, rng))[0])
    return wrap([text.strip() for text in texts if text.strip()], rng)
