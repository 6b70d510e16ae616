"""What printing, typing and the reading of PDFs do to references."""

from __future__ import annotations

import random
import re

from training.layouts import Piece

_LIGATURES = {"ffi": "ﬃ", "ffl": "ﬄ", "fi": "ﬁ", "fl": "ﬂ", "ff": "ﬀ"}


def spoil(pieces: list[Piece], rng: random.Random) -> list[Piece]:
    """The pieces as they may come out of a page: now and then a sign lost, a space too many, a ligature, an accent."""
    roll = rng.random()
    if roll < 0.03:
        pieces = [(_each(text, _LIGATURES), field) for text, field in pieces]
    elif roll < 0.08:
        pieces = [
            (_break_word(text, rng) if field in {"title", "container"} else text, field) for text, field in pieces
        ]
    elif roll < 0.12:
        pieces = [
            (text.replace("–", "").replace("--", "") if field == "pages" else text, field) for text, field in pieces
        ]
    elif roll < 0.17:
        pieces = [
            (
                re.sub(r"([.,:;])(?=\w)", r" \1 " if rng.random() < 0.5 else r"\1 ", text)
                if field in {"author", "container"}
                else text,
                field,
            )
            for text, field in pieces
        ]
    elif roll < 0.21:
        pieces = [
            (
                re.sub(
                    r" ?([.,:;]) ", lambda found: rng.choice((f"{found[1]}", f" {found[1]} ", f"{found[1]} ")), text
                ),
                field,
            )
            for text, field in pieces
        ]
    elif roll < 0.23:
        pieces = [(text.replace("é", "e").replace("ü", "u").replace("ö", "¨o"), field) for text, field in pieces]
    if rng.random() < 0.03:
        pieces = [(_loosen(text, rng), field) for text, field in pieces]
    if rng.random() < 0.05:
        pieces = [(text, field) for text, field in pieces if field or not text.strip() or rng.random() > 0.3]
    if rng.random() < 0.04:
        pieces = [*pieces[:1], *(p for p in pieces[1:] if p[1] != "title" or rng.random() > 0.5)]
    if rng.random() < 0.02 and len(pieces) > 4:
        pieces = pieces[2:] if rng.random() < 0.5 else pieces[:-2]
    return pieces


def _loosen(text: str, rng: random.Random) -> str:
    """The text with spaces before signs and none after, as pages in small type often come out."""
    text = re.sub(
        r"([.,:(])\s?", lambda found: rng.choice((f" {found[1]}", f" {found[1]} ", found[1], f"{found[1]} ")), text
    )
    return re.sub(r"\s([)\]])", lambda found: rng.choice((found[1], f" {found[1]} ")), text)


def _each(text: str, table: dict[str, str]) -> str:
    for old, new in table.items():
        text = text.replace(old, new)
    return text


def _break_word(text: str, rng: random.Random) -> str:
    words = text.split(" ")
    long = [n for n, word in enumerate(words) if len(word) > 7]
    if long:
        at = rng.choice(long)
        cut = rng.randrange(3, len(words[at]) - 2)
        words[at] = words[at][:cut] + rng.choice(("-", "- ", "", " ")) + words[at][cut:]
    return " ".join(words)


def label_words(pieces: list[Piece]) -> tuple[str, list[str]]:
    """The whole text, and the field of each of its signs."""
    text = "".join(words for words, _ in pieces)
    fields = [field for words, field in pieces for _ in words]
    return text, fields
