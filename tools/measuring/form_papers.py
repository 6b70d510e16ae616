"""Published articles as whole drafts, their headings, tables and figures in place, and the same with faults of form.

Each article once loses a figure or table that its text speaks of, and once the text speaks of one no more: about one in
five of all that are there. One heading of each is capitalised otherwise, and another gets a stop.
"""

from __future__ import annotations

import random
import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Any

from fairhand.model.finding import Finding
from fairhand.model.paper import Paper
from measuring.corpora import DATA, written
from measuring.found_prose import alarms_read
from measuring.tally import PAPERS, Tally, findings_in

_LEVELS = "######"
LONGEST = 60
"""A title of more words gives way to a short one."""
LEAST_WORDS = 3
"""Words of a heading that is spoiled, its mark counted."""
SHORT = 4
"""Letters of words that every case may leave small."""


@dataclass(frozen=True, slots=True)
class Block:
    """One block of a draft."""

    kind: str
    """``text``, or the label of an exhibit, as ``Figure 2``."""
    text: str


@cache
def drafts() -> tuple[tuple[str, tuple[Block, ...]], ...]:
    """Each article by name, in blocks."""
    from lxml import etree

    out = []
    for path in sorted((DATA / "data/articles-jats").glob("*.xml")):
        body: Any = etree.parse(path).getroot().find(".//body")
        if body is not None:
            out.append((path.stem.removeprefix("journal."), tuple(_blocks(body, 1))))
    return tuple(out)


def _blocks(element: Any, level: int) -> Iterator[Block]:
    for child in element:
        tag = child.tag if isinstance(child.tag, str) else ""
        if tag == "sec":
            title = child.find("title")
            if title is not None and written(title):
                yield Block("text", f"{_LEVELS[:level]} {written(title)}")
            yield from _blocks(child, min(level + 1, 6))
        elif tag == "p":
            text = written(_without_floats(child))
            if text:
                yield Block("text", text)
            for inner in child.iter("fig", "table-wrap"):
                yield from _exhibit(inner)
        elif tag in ("fig", "table-wrap"):
            yield from _exhibit(child)
        elif tag in ("fig-group", "list", "list-item", "disp-quote"):
            yield from _blocks(child, level)


def _without_floats(paragraph: Any) -> Any:
    import copy

    kept = copy.deepcopy(paragraph)
    for inner in list(kept.iter("fig", "table-wrap", "supplementary-material")):
        parent = inner.getparent()
        if parent is not None:
            parent.remove(inner)
    return kept


def _exhibit(element: Any) -> Iterator[Block]:
    label = " ".join((element.findtext("label") or "").split()).rstrip(".")
    found = re.fullmatch(r"(Figure|Fig|Table)\.? (\d+)", label)
    title = element.find("caption/title")
    words = written(title) if title is not None else ""
    if not found:
        return
    kind = "Table" if found[1] == "Table" else "Figure"
    caption = f"{kind} {found[2]}. {words if 0 < len(words.split()) < LONGEST else 'What was seen'}"
    body = "| a | b |\n| --- | --- |\n| 1 | 2 |"
    pieces = (caption, body) if kind == "Table" else (f"![](f{found[2]}.png)", caption)
    yield Block(f"{kind} {found[2]}", "\n\n".join(pieces))


def measure_papers(tally: Tally, share: float = 1.0, seed: int = 62) -> None:
    """What the checks say of the articles as they are, alarm by alarm as read, and of those with a fault."""
    rng = random.Random(seed)  # noqa: S311 - a sample
    read = alarms_read()
    for name, finding, words in heard_of_papers():
        right = read.get(key_of(name, finding, words), False)
        tally.count(finding.check, right=right)
        if not right:
            tally.wrong.append((finding.check, name, words, finding.says))
    for name, blocks in drafts():
        labels = [block.kind for block in blocks if block.kind != "text"]
        if not labels or rng.random() > share:
            continue
        gone = rng.choice(labels)
        if any(re.search(rf"\b{_said(gone)}\b", block.text) for block in blocks if block.kind == "text"):
            _judge(tally, name, [block.text for block in blocks if block.kind != gone], gone)
        silent = rng.choice(labels)
        kept = [
            re.sub(rf"\b{_said(silent)}[A-Z]?\b", "what was seen", block.text) if block.kind == "text" else block.text
            for block in blocks
        ]
        _judge(tally, name, kept, silent)
    for name, blocks in drafts():
        if rng.random() <= share:
            _spoil_headings(tally, name, [block.text for block in blocks], rng)


def _spoil_headings(tally: Tally, name: str, texts: list[str], rng: random.Random) -> None:
    """One heading in the other case, and one with a stop: each is told where there is a finding more than before."""
    before = len(findings_in(Paper(name, "\n\n".join(texts)), ("heading-form",)))
    at = [n for n, text in enumerate(texts) if text.startswith("##") and len(text.split()) > LEAST_WORDS]
    for turn in (_other_case, lambda heading: f"{heading}."):
        if not at:
            return
        spoiled = list(texts)
        where = rng.choice(at)
        spoiled[where] = turn(texts[where])
        if spoiled[where] == texts[where]:
            continue
        told = len(findings_in(Paper(name, "\n\n".join(spoiled)), ("heading-form",))) > before
        tally.spoiled["heading-form"] += 1
        tally.seen["heading-form"] += told
        if told:
            tally.count("heading-form", right=True)
        else:
            tally.missed.append(("heading-form", name, spoiled[where]))


def _other_case(heading: str) -> str:
    """A heading in title case where it was in sentence case, and the other way about."""
    marks, first, *rest = heading.split(" ")
    if any(word.islower() and len(word) > SHORT for word in rest):
        return " ".join(
            [marks, first, *(word.capitalize() if word.islower() and len(word) > SHORT else word for word in rest)]
        )
    return " ".join([marks, first, *(word.lower() if word[1:].islower() else word for word in rest)])


def heard_of_papers() -> Iterator[tuple[str, Finding, str]]:
    """Every alarm in the articles as they are, with its words and their neighbours."""
    for name, blocks in drafts():
        draft = "\n\n".join(block.text for block in blocks)
        for finding in findings_in(Paper(name, draft, style="apa-7"), PAPERS):
            if finding.span is not None:
                start, end = finding.span.start, finding.span.end
                yield name, finding, f"{draft[max(0, start - 60) : start]}⟦{draft[start:end]}⟧{draft[end : end + 40]}"


def key_of(name: str, finding: Finding, words: str) -> str:
    """The check, the article, and a digest of the words with their neighbours."""
    import hashlib

    return f"{finding.check} {name} {hashlib.sha256(words.encode()).hexdigest()[:8]}"


def _said(label: str) -> str:
    kind, _, number = label.partition(" ")
    return rf"(?:Fig(?:ure|\.)?|Figs\.?|Figures) {number}" if kind == "Figure" else rf"Tables? {number}"


def _judge(tally: Tally, name: str, texts: list[str], label: str) -> None:
    """An exhibit is told where a finding names it."""
    findings = findings_in(Paper(name, "\n\n".join(texts), style="apa-7"), ("exhibit-mention",))
    tally.spoiled["exhibit-mention"] += 1
    if any(re.search(rf"\b{label}\b", finding.says) for finding in findings):
        tally.seen["exhibit-mention"] += 1
        tally.count("exhibit-mention", right=True)
    else:
        tally.missed.append(("exhibit-mention", name, label))
