"""Sentences to learn from of packages that may be learnt from, each word with its part of speech."""

from __future__ import annotations

import bz2
import html
import json
import lzma
import random
import re
import zlib
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from fairhand.copyedit.around import Token, read_tokens

PARTS = "NN NNS JJ CMP RB VB VBZ VBD VBN VBG IN TO PRP$ EX W W$ CON DT CC PRP MD".split()
"""Parts of speech told apart; ``CON`` is a pronoun with its verb (*it's*)."""
TOLD = 18
"""As many of them as the shipped model tells: the words in question are none of the others."""
_SAME = {"NNP": "NN", "NNPS": "NNS", "JJR": "CMP", "RBR": "CMP", "JJS": "JJ", "RBS": "RB", "VBP": "VB", "PDT": "DT"}
_SAME |= {"WDT": "W", "WP": "W", "WRB": "W", "WP$": "W$", "RP": "RB"}
CONTRACTIONS = frozenset("it's they're you're who's we're there's that's i'm he's she's".split())
_SENTENCE = re.compile(r"(?<=[.?!])[\"”)]?\s+(?=[A-Z“\"(])")
_MOST = {"postgresql": 25_000, "python": 30_000, "sqlite": 15_000}
"""Sentences of documentation that are taken, so that it does not outweigh prose."""

FOLDS, BLOCK = 5, 200
"""Parts that the text is cut into, of which each in turn is held out, and the sentences in a row that stay together."""


@dataclass(frozen=True, slots=True)
class Tagged:
    """A sentence to learn from."""

    tokens: tuple[Token, ...]
    labels: tuple[str | None, ...]
    """The part of speech of each; None for what has none of ``PARTS``."""
    fold: int
    """The part of the text that it belongs to: neighbours in a book mostly belong to the same."""


def read_sentences(folder: Path) -> list[tuple[str, int]]:
    """The sentences of the packages that were unpacked into a folder, each with its fold, in an order from a seed."""
    texts = {
        "book": _facts(folder),
        "novels": _novels(next(folder.glob("**/janeaustenr/data/Rdata.rdb"))),
        "glosses": _glosses(next(folder.glob("**/wordnet"))),
        "postgresql": _pages(folder.glob("**/postgresql-doc-*/html/*.html")),
        "python": _pages(folder.glob("**/doc/python3*/html/**/*.html")),
        "sqlite": _pages(folder.glob("**/doc/sqlite3/**/*.html")),
        "addresses": _lines(folder.glob("**/sotu/data/*.txt")),
        "whales": _lines(folder.glob("**/moby-dick/data/*.txt")),
    }
    out: list[tuple[str, int]] = []
    seen: set[str] = set()
    for name, paragraphs in texts.items():
        of_text = [each for each in dict.fromkeys(_sentences(paragraphs)) if each not in seen]
        seen.update(of_text)
        new = [(each, at // BLOCK % FOLDS) for at, each in enumerate(of_text)]
        random.Random(1).shuffle(new)  # noqa: S311 -- no secret
        out += new[: _MOST.get(name)]
    random.Random(2).shuffle(out)  # noqa: S311 -- no secret
    return out


def tag_sentences(sentences: Iterable[tuple[str, int]], tagger: Any) -> Iterator[Tagged]:
    """The words of each sentence with their parts of speech."""
    for document, fold in tagger.pipe(sentences, as_tuples=True, batch_size=256):
        tags = {word.idx: (len(word.text), word.tag_) for word in document}
        tokens = read_tokens(document.text)
        labels: list[str | None] = []
        for token in tokens:
            length, tag = tags.get(token.span.start, (0, ""))
            part = _SAME.get(tag, tag)
            whole = length == token.span.end - token.span.start and part in PARTS
            labels.append("CON" if token.text in CONTRACTIONS else part if whole else None)
        yield Tagged(tokens, tuple(labels), fold)


def _sentences(paragraphs: Iterable[str]) -> Iterator[str]:
    for paragraph in paragraphs:
        for sentence in map(str.strip, _SENTENCE.split(paragraph)):
            plain = sum(sign.isalpha() or sign == " " for sign in sentence)
            if 5 <= len(sentence.split()) <= 60 and plain > 0.9 * len(sentence):
                yield sentence


def _novels(data: Path) -> Iterator[str]:
    """Paragraphs of a package of R, which keeps its texts as packed lists of lines."""
    raw = data.read_bytes()
    at = 0
    while at < len(raw):
        kind = raw[at + 4 : at + 5]
        unpack = {b"Z": lzma.LZMADecompressor, b"2": bz2.BZ2Decompressor}.get(kind, zlib.decompressobj)()
        at += 5 if kind in (b"Z", b"2") else 4
        lines = unpack.decompress(raw[at:])
        at = len(raw) - len(unpack.unused_data)
        paragraph: list[str] = []
        for found in re.finditer(rb"\x00[\x00-\x08]\x00\x09", lines):
            length = int.from_bytes(lines[found.end() : found.end() + 4], "big", signed=True)
            text = lines[found.end() + 4 : found.end() + 4 + length].decode("utf-8", "ignore") if length > 0 else ""
            if text and length < 300:
                paragraph.append(text)
            elif paragraph:
                yield " ".join(paragraph)
                paragraph = []


def _glosses(folder: Path) -> Iterator[str]:
    for part in ("noun", "verb", "adj", "adv"):
        for line in (folder / f"data.{part}").read_text("utf-8", "ignore").splitlines():
            gloss = "" if line.startswith("  ") else line.partition(" | ")[2]
            for example in re.findall(r'"([^"]+)"', gloss):
                yield example[0].upper() + example[1:] + ("" if example[-1] in ".?!" else ".")
            said = re.sub(r'"[^"]*"', "", gloss).strip(" ;")
            said = re.sub(r"\([^)]*\)", "", said).strip()
            if said:
                yield f"{said[0].upper()}{said[1:]}."


def _pages(pages: Iterable[Path]) -> Iterator[str]:
    for page in sorted(pages):
        for found in re.finditer(r"<p[^>]*>(.*?)</p>", page.read_text("utf-8", "ignore"), re.DOTALL):
            yield " ".join(html.unescape(re.sub(r"<[^>]+>", "", found.group(1))).split())


def _lines(files: Iterable[Path]) -> Iterator[str]:
    for file in sorted(files):
        yield from (" ".join(line.split()) for line in file.read_text("utf-8", "ignore").splitlines())


def _facts(folder: Path) -> Iterator[str]:
    for file in sorted(folder.glob("package/*/*.json")):
        yield from _texts(json.loads(file.read_text("utf-8")))


def _texts(value: object) -> Iterator[str]:
    if isinstance(value, dict):
        for each in value.values():
            yield from _texts(each)
    elif isinstance(value, str):
        yield value
