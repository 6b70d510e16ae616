"""Papers whose argument is spoiled in ways that are hard to see, of what others wrote.

A stray paragraph has the paper's nouns, an argument is made again in another writer's plainer words, and the page of a
point that is left out is cited elsewhere, where its words recur.
"""

from __future__ import annotations

import csv
import random
import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

from fairhand.language.lexicon import find_word
from fairhand.manuscript.matching import match_texts
from fairhand.model.entry import Entry, Issued, Name
from fairhand.model.paper import Paper
from fairhand.model.point import Point, Points, Support
from fairhand.model.source import Page, SourceText
from fairhand.revision.likeness import count_stems
from measuring.argument import STUDENT_PAPERS, documents, draft_of, essays, place_of
from measuring.corpora import DATA, prose, written
from measuring.tally import Spoiled, Tally, judge_paper

KINDRED = 20
"""Paragraphs of others, those that have most of a document's words, of which one is put into it."""
SHARED_PAGE = 0.5
"""Share of paragraphs that rest on the page of the one before."""
FEWEST_HEADED = 2
"""Subsections whose headings are sentences, of a section that is taken."""
_CITED = re.compile(r"\s*\((?:[^()]*?\b(?:18|19|20)\d\d[a-z]?[^()]*)\)|\s*\[\d[\d,–-]*\]")
_BARE = re.compile(r"[^a-z]")
_NAMES = "Vale Okoro Tveit Marrow Quill Penhale Sund Abara Reyes Lind Holt Osei Ferris Mossman Thorne Devlin".split()
_OPENS = "This paper sets out what is known of the matter, and takes its points one after the other in the order given."
_CLOSES = (
    "So much may be said of the matter here, and whoever wants more of it will have to go on from where this ends."
)


@cache
def _abstracts() -> dict[str, tuple[str, str]]:
    """Title and abstract of each article, by its name."""
    out = {}
    for path, root in _trees():
        title = " ".join("".join(root.find(".//article-title").itertext()).split())
        abstract = root.find(".//abstract")
        said = "" if abstract is None else " ".join("".join(abstract.itertext()).split())
        out[path] = title, said
    return out


def _trees() -> Iterator[tuple[str, Any]]:
    from lxml import etree

    for path in sorted((DATA / "data/articles-jats").glob("*.xml")):
        yield path.stem.removeprefix("journal."), etree.parse(path).getroot()


@cache
def _kindred(name: str) -> tuple[str, ...]:
    """Of the paragraphs of others that cite nothing, those that have most of a document's words."""
    own = {stem for paragraph in dict(documents())[name] for stem in count_stems(paragraph)}
    others = [
        (len(own & set(stems)) / len(stems), paragraph)
        for other, paragraphs in documents()
        for paragraph in paragraphs
        if other != name and not _CITED.search(paragraph) and len(paragraph.split()) <= 250
        for stems in [count_stems(paragraph)]
    ]
    return tuple(paragraph for _, paragraph in sorted(others, reverse=True)[:KINDRED])


def measure_kindred_strays(tally: Tally, papers: int, seed: int) -> None:
    """What is said of documents into half of which a paragraph of another has been put that has most of their words."""
    rng = random.Random(seed)  # noqa: S311 - a sample
    for number in range(papers):
        name, own = rng.choice(documents())
        title, abstract = _abstracts().get(name, ("A Paper", ""))
        paragraphs, put = list(own), None
        if rng.random() < 0.5:
            put = rng.choice(_kindred(name))
            paragraphs.insert(rng.randrange(1, len(paragraphs)), put)
        draft = draft_of(paragraphs, title)
        paper = Paper(name, draft, points=Points(thesis=abstract), style="apa-7")
        spoiled = [Spoiled("off-focus", place_of(draft, put))] if put else []
        judge_paper(tally, f"kindred {seed}.{number} {name}", paper, spoiled, ("off-focus",))


@cache
def _retold() -> tuple[tuple[str, str], ...]:
    """A passage of an encyclopedia, and a student's own short answer that says the same or is reworded from it."""
    folder = DATA / "data/near-copies"
    with (folder / "file_information.csv").open(encoding="utf-8-sig", newline="") as file:
        kinds = {row["File"]: row["Category"] for row in csv.DictReader(file)}
    out = []
    for path in sorted(folder.glob("g*.txt")):
        if kinds[path.name] != "cut":
            told = folder / f"orig_{path.stem.rpartition('_')[2]}.txt"
            out.append(tuple(" ".join(one.read_text("utf-8", "replace").split()) for one in (told, path)))
    return tuple((told, again) for told, again in out)


@cache
def _hosts() -> tuple[tuple[str, ...], ...]:
    """Academic prose and student papers without their citations."""
    corpora = {found.name: found.corpus for found in prose()}
    return tuple(
        tuple(_CITED.sub("", paragraph) for paragraph in paragraphs)
        for name, paragraphs in documents()
        if corpora[name] == "GUM" or name in STUDENT_PAPERS
    )


def measure_retellings(tally: Tally, papers: int, seed: int) -> None:
    """What is said of texts that cite, half of their paragraphs the page of the one before, when one is told again.

    Half are students' essays with a paragraph's own earlier version; the others documents with a passage of an
    encyclopedia, and another's answer that says the same. What is told again cites the page that was cited for it.
    """
    rng = random.Random(seed)  # noqa: S311 - a sample
    for number in range(papers):
        paragraphs, told, put = _retell_essay(rng) if rng.random() < 0.5 else _retell_answer(rng)
        places: list[tuple[int, int]] = []
        for _ in paragraphs:
            fresh = not places or rng.random() >= SHARED_PAGE
            places.append((rng.randrange(4), rng.randrange(1, 80)) if fresh else places[-1])
        if told is not None and put is not None:
            places[put] = places[told]
        texts = [_citing(text, [place]) for text, place in zip(paragraphs, places, strict=True)]
        draft = draft_of(texts)
        spoiled = [Spoiled("repeated-argument", place_of(draft, texts[put]))] if put is not None else []
        paper = Paper("made", draft, _entries(dict.fromkeys(at for at, _ in places)), style="apa-7")
        judge_paper(tally, f"retelling {seed}.{number}", paper, spoiled, ("repeated-argument",))


def _retell_essay(rng: random.Random) -> tuple[list[str], int | None, int | None]:
    """An essay; the place of a paragraph that is told again, and the place where; None where none is."""
    before, after = rng.choice([one for one in essays() if len(one[1]) >= 4])
    matches = [m for m in match_texts(before, after) if m.fate == "edited" and 0 < m.new[0] < len(after) - 1]
    paragraphs = list(after)
    if not matches or rng.random() < 0.5:
        return paragraphs, None, None
    match = rng.choice(matches)
    paragraphs.insert(len(paragraphs) - 1, before[match.old[0]])
    return paragraphs, match.new[0], len(paragraphs) - 2


def _retell_answer(rng: random.Random) -> tuple[list[str], int | None, int | None]:
    paragraphs = list(rng.choice([one for one in _hosts() if len(one) >= 8]))[:10]
    if rng.random() < 0.5:
        return paragraphs, None, None
    told, again = rng.choice(_retold())
    put, first = rng.randrange(6, len(paragraphs)), rng.randrange(1, 4)
    paragraphs.insert(put, again)
    paragraphs.insert(first, told)
    return paragraphs, first, put + 1


@dataclass(frozen=True, slots=True)
class _Headed:
    """A subsection: its heading, its paragraphs, and what the captions of its tables and figures say."""

    heading: str
    paragraphs: tuple[str, ...]
    captions: str

    @property
    def states(self) -> bool:
        """Whether its heading is a sentence, and the captions say something."""
        verbs = (_BARE.sub("", word) for word in self.heading.lower().split()[1:])
        return len(self.captions.split()) >= 12 and any(map(_is_finite, verbs))


def _is_finite(word: str) -> bool:
    """Whether a word is the verb of a sentence, and no noun's plural."""
    bases = (find_word(base) for base in (word.removesuffix("s"), word.removesuffix("es"), word[:-3] + "y"))
    verb = word.endswith("s") and any(one is not None and "v" in one.kinds and "n" not in one.kinds for one in bases)
    return verb or word in ("is", "are", "was", "were", "can", "has", "have", "do", "does")


@cache
def _sections() -> tuple[tuple[_Headed, ...], ...]:
    """Sections of articles whose subsections are headed by what they say."""
    out = []
    for _, root in _trees():
        captions = {
            one.get("id"): " ".join(filter(None, map(written, one.iterfind("caption/*")))).replace("*", "")
            for one in root.iter("fig", "table-wrap")
        }
        for section in root.iterfind(".//body/sec"):
            headed = []
            for part in section.iterfind("sec"):
                long = [text for text in map(written, part.iterfind("p")) if len(text.split()) >= 40][:3]
                shown = [ref for xref in part.iter("xref") for ref in (xref.get("rid") or "").split()]
                told = " ".join(captions[ref] for ref in dict.fromkeys(shown) if ref in captions)
                if long:
                    headed.append(_Headed(" ".join((part.findtext("title") or "").split()), tuple(long), told))
            if len(headed) > FEWEST_HEADED and sum(one.states for one in headed[:9]) >= FEWEST_HEADED:
                out.append(tuple(headed[:9]))
    return tuple(out)


def measure_headings(tally: Tally, papers: int, seed: int) -> None:
    """What is said of sections whose points are their headings, and whose sources are the captions of their figures.

    Of a point that is left out the subsection is gone, and its page is cited in another one.
    """
    rng = random.Random(seed)  # noqa: S311 - a sample
    for number in range(papers):
        section = rng.choice(_sections())
        pointed = [at for at, one in enumerate(section) if one.states]
        gone = rng.choice(pointed) if rng.random() < 0.5 else None
        left = [at for at in range(len(section)) if at != gone]
        cites: dict[int, list[tuple[int, int]]] = {}
        points, texts = [], {}
        for which, at in enumerate(pointed):
            source = _NAMES[which].lower()
            cites.setdefault(rng.choice(left) if at == gone else at, []).append((which, 20))
            points.append(Point(f"p{at}", section[at].heading, support=(Support(source, "20"),)))
            pages = (Page("19", ""), Page("20", section[at].captions), Page("21", ""))
            texts[source] = SourceText(source, pages, paged=True)
        paragraphs = [_OPENS]
        for at in left:
            first, *rest = section[at].paragraphs
            paragraphs += [_citing(first, cites.get(at, ())), *rest]
        draft = draft_of([*paragraphs, _CLOSES])
        paper = Paper("made", draft, _entries(range(len(pointed))), texts, Points(points=tuple(points)), style="apa-7")
        spoiled = [] if gone is None else [Spoiled("point-missing", None, f"p{gone}")]
        judge_paper(tally, f"headings {seed}.{number}", paper, spoiled, ("point-missing",))


def _citing(text: str, places: Sequence[tuple[int, int]]) -> str:
    """A paragraph that closes with citations, each by the number of its source and its page."""
    cites = "; ".join(f"{_NAMES[which]}, {2001 + which}, p. {page}" for which, page in places)
    return f"{text.rstrip('. ')} ({cites})." if cites else text


def _entries(numbers: Iterable[int]) -> tuple[Entry, ...]:
    return tuple(
        Entry(
            _NAMES[at].lower(), "book", f"On {_NAMES[at]}", authors=(Name(_NAMES[at], "A."),), issued=Issued(2001 + at),
            page="1-90",
        )
        for at in numbers
    )  # fmt: skip
