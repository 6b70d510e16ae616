"""Papers that give figures: sentences of published articles with their sources, and one in ten without.

The prose between them is that of other articles' introductions, each of their own citations written out by author and
year. Whatever the check says of that prose counts as wrong, unless it was read and found right.
"""

from __future__ import annotations

import copy
import hashlib
import random
import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Any

from fairhand.language.sentences import split_sentences
from fairhand.model.entry import Entry, Issued, Name
from fairhand.model.finding import Finding
from fairhand.model.paper import Paper
from fairhand.model.span import Span
from fairhand.revision.claims import LOUD, OWN
from fairhand.revision.figures import list_figures
from measuring.corpora import DATA, Shelved
from measuring.found_prose import alarms_read
from measuring.quotations import choose_shelf
from measuring.tally import Spoiled, Tally, judge_paper

CHECK = ("claim-unsupported",)
ONE_IN = 10
"""One fact in so many has no citation."""
A_PAPER = 12
"""Paragraphs with facts in each paper."""
OPENINGS = ("introduction", "background")
_ONE = "\ue000[^\ue001]*\ue001"
_GROUP = re.compile(rf"\s*[\[(]?\s*{_ONE}(?:\s*(?:,|;|–|-|and)?\s*{_ONE})*\s*[\])]?")
_PLAIN = re.compile(r"[*_`#>\\∘]|[\[\]]")
_TANGLED = re.compile(r"[*_`#>\\\\∘\[\]()|=<>≥≤±]|\. |^\W*[\da-z]|https?:")
_LINKS = (
    "The evidence is not all of one kind.",
    "So much is agreed by everybody who has looked into it.",
    "It would be rash to build more than this upon it.",
    "The other side of the matter is less often told.",
    "Much depends on how the question is put.",
)


@dataclass(frozen=True, slots=True)
class Opening:
    """An article's introduction, its citations by author and year."""

    name: str
    paragraphs: tuple[str, ...]
    entries: tuple[Entry, ...]


@cache
def openings() -> tuple[Opening, ...]:
    """The introductions of the articles, and the essays among them whole."""
    from lxml import etree

    found = []
    for path in sorted((DATA / "data/articles-jats").glob("*.xml")):
        root: Any = etree.parse(path).getroot()
        heads = [(s, (s.findtext("title") or "").strip().lower()) for s in root.iterfind(".//body/sec")]
        parts = [section for section, head in heads if head in OPENINGS]
        if not any(head.startswith(("method", "material", "result", "introduction")) for _, head in heads):
            parts = [root.find(".//body")]
        refs = dict(_references(root))
        paragraphs = tuple(p for part in parts for p in _prose(part, refs))
        if paragraphs:
            found.append(Opening(path.stem.removeprefix("journal."), paragraphs, tuple(refs.values())))
    return tuple(found)


def _references(root: Any) -> Iterator[tuple[str, Entry]]:
    for number, ref in enumerate(root.iterfind(".//ref-list//ref")):
        names = tuple(Name(n.findtext("surname")) for n in ref.iter("name") if n.findtext("surname"))
        body = ref.findtext(".//collab")
        year = re.search(r"\d{4}", ref.findtext(".//year") or "")
        title = ref.find(".//article-title")
        words = "" if title is None else " ".join("".join(title.itertext()).split())
        if year and (names or body):
            who = names or (Name(literal=body),)
            entry = Entry(f"r{number}", "article-journal", words or "A Work", authors=who, issued=Issued(int(year[0])))
            yield ref.get("id"), entry


def _prose(part: Any, refs: dict[str, Entry]) -> Iterator[str]:
    """The paragraphs of a section, without what stands in figures and boxes."""
    outside = {"fig", "table-wrap", "supplementary-material", "boxed-text", "caption"}
    for found in part.iter("p"):
        if any(around.tag in outside for around in found.iterancestors()):
            continue
        paragraph = copy.deepcopy(found)
        for figure in [one for tag in outside for one in paragraph.iter(tag)]:
            figure.clear(keep_tail=True)
        for xref in paragraph.iter("xref"):
            if xref.get("ref-type") == "bibr":
                rid, tail = xref.get("rid") or "", xref.tail
                xref.clear()
                xref.text, xref.tail = f"\ue000{rid}\ue001", tail
        text = " ".join("".join(paragraph.itertext()).split())
        yield _PLAIN.sub(" ", _GROUP.sub(lambda group: _written(group[0], refs), text)).strip()


def _written(group: str, refs: dict[str, Entry]) -> str:
    ids = [one for rid in re.findall("\ue000(.*?)\ue001", group) for one in rid.split()]
    cites = dict.fromkeys(cite(refs[one]) for one in ids if one in refs)
    return f" ({'; '.join(cites)})" if cites else " (Anonymous, 1999)"


def cite(entry: Entry) -> str:
    """A work as it is cited in parentheses."""
    names = [name.surname for name in entry.authors]
    who = names[0] if len(names) == 1 else " & ".join(names) if len(names) == 2 else f"{names[0]} et al."
    return f"{who}, {entry.issued.year if entry.issued else 'n.d.'}"


def measure_claims(tally: Tally, papers: int, seed: int) -> None:
    """What the check says of so many papers, made from the seed alone."""
    rng = random.Random(seed)  # noqa: S311 - a sample
    around = rng.sample(openings(), len(openings()))
    for number in range(papers):
        paper, spoiled = _make_paper(rng, around[number % len(around)])
        judge_paper(tally, f"claims {seed}.{number}", paper, spoiled, CHECK, read=_read_right)


def _read_right(finding: Finding, draft: str) -> bool:
    """Whether an alarm in the prose between was read and found right."""
    words = finding.span.of(draft) if finding.span else ""
    return alarms_read().get(f"{finding.check} opening {hashlib.sha256(words.encode()).hexdigest()[:8]}", False)


def _make_paper(rng: random.Random, opening: Opening) -> tuple[Paper, list[Spoiled]]:
    """An introduction with twelve paragraphs of facts of three articles set between its own."""
    shelf = [one for one in choose_shelf(rng) if one.entry.id != "novel"]
    text, spoiled = "# A Paper\n\n", []
    own = list(opening.paragraphs[:A_PAPER])
    met: set[str] = set()
    for _ in range(A_PAPER):
        text += f"{own.pop(0)}\n\n" if own else ""
        text += rng.choice(_LINKS)
        for source in rng.sample(shelf, 2):
            sentence = _fact(rng, source)
            if sentence is None or sentence.words in met:
                continue
            met.add(sentence.words)
            where = f"{cite(source.entry)}, p. {sentence.page}"
            text += " "
            if rng.random() * ONE_IN < 1:
                spoiled.append(Spoiled(CHECK[0], Span(len(text), len(text) + len(sentence.words))))
                text += f"{sentence.words}."
            else:
                text += f"{sentence.words} ({where})."
        text += "\n\n"
    entries = (*opening.entries, *(one.entry for one in shelf))
    return Paper("made", text, entries, {one.entry.id: one.source() for one in shelf}, style="apa-7"), spoiled


@dataclass(frozen=True, slots=True)
class _Sentence:
    words: str
    page: int


def _fact(rng: random.Random, shelved: Shelved) -> _Sentence | None:
    """A sentence of a source with a figure, not of its own counting, such as a student may take; None where few are."""
    while True:
        at = rng.randrange(max(1, len(shelved.text) - 1500))
        spans = [span.shifted(at) for span in split_sentences(shelved.text[at : at + 1500])][1:-1]
        for span in spans:
            words = " ".join(span.of(shelved.text).split()).strip(" .")
            loud = [figure for figure in list_figures(words) if figure.kind in LOUD]
            fits = 8 < len(words.split()) < 50 and not _TANGLED.search(words)
            if loud and fits and not OWN.search(words):
                return _Sentence(words, shelved.pages_of(span.start, span.end)[0])
        if rng.random() < 0.02:
            return None
