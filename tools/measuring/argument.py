"""Papers whose argument is spoiled: paragraphs of another paper, arguments made twice, points left out.

They are made of what others wrote. A paragraph is made twice, and a point is put in other words, by the writers
themselves: the student drafts have each essay before and after its revision.
"""

from __future__ import annotations

import random
import re
from collections.abc import Sequence
from functools import cache

from fairhand.manuscript.matching import match_texts
from fairhand.model.entry import Entry, Issued, Name
from fairhand.model.paper import Paper
from fairhand.model.point import Point, Points, Support
from fairhand.model.span import Span
from measuring.corpora import DATA, prose
from measuring.tally import Spoiled, Tally, judge_paper

ONE_IN = 2
"""One paper in so many has a paragraph that strays or repeats."""
STUDENT_PAPERS = ("m00062", "m00072", "m00092", "m00118", "m00134", "m00170")
"""The student papers that are papers; the others are advice with examples."""
LEFT_OUT = 4
"""One point in so many is left out."""
_FEWEST = 40
"""Words of a paragraph that argues something."""
_MOST_PARAGRAPHS = 14
_NAMES = "Vale Okoro Tveit Marrow Quill Penhale Sund Abara Reyes Lind Holt Osei Ferris Mossman Thorne Devlin".split()


@cache
def essays() -> tuple[tuple[tuple[str, ...], tuple[str, ...]], ...]:
    """Each student's first and last draft, by paragraph."""
    out = []
    for path in sorted((DATA / "data/student-drafts/draft1").glob("*.txt")):
        last = DATA / "data/student-drafts/draft3" / path.name.removeprefix("draft1_")
        if last.exists():
            out.append(
                (_paragraphs(path.read_text("utf-8", "replace")), _paragraphs(last.read_text("utf-8", "replace")))
            )
    return tuple(out)


def _paragraphs(text: str) -> tuple[str, ...]:
    return tuple(" ".join(line.split()) for line in re.split(r"\n", text) if len(line.split()) >= _FEWEST)


@cache
def documents() -> tuple[tuple[str, tuple[str, ...]], ...]:
    """Academic prose, textbooks and articles by name, the first paragraphs of each."""
    out = []
    for found in prose():
        if found.corpus not in ("GUM", "articles") and found.name not in STUDENT_PAPERS:
            continue
        long = tuple(p for p in found.paragraphs if len(p.split()) >= _FEWEST)[:_MOST_PARAGRAPHS]
        if len(long) >= 6:
            out.append((found.name, long))
    return tuple(out)


def measure_straying(tally: Tally, papers: int, seed: int) -> None:
    """What is said of documents into half of which a paragraph of another has been put."""
    rng = random.Random(seed)  # noqa: S311 - a sample
    for number in range(papers):
        name, own = rng.choice(documents())
        paragraphs = list(own)
        put = None
        if rng.random() * ONE_IN < 1:
            put = rng.choice(rng.choice([one for one in documents() if one[0] != name])[1])
            paragraphs.insert(rng.randrange(1, len(paragraphs)), put)
        draft = draft_of(paragraphs)
        spoiled = [Spoiled("off-focus", place_of(draft, put))] if put else []
        judge_paper(
            tally, f"straying {seed}.{number} {name}", Paper(name, draft, style="apa-7"), spoiled, ("off-focus",)
        )


def measure_repeating(tally: Tally, papers: int, seed: int) -> None:
    """What is said of essays into half of which a paragraph's own first version has been put, before the closing."""
    rng = random.Random(seed)  # noqa: S311 - a sample
    for number in range(papers):
        before, after = rng.choice([one for one in essays() if len(one[1]) >= 4])
        paragraphs = list(after)
        matches = [m for m in match_texts(before, after) if m.fate == "edited" and 0 < m.new[0] < len(after) - 1]
        put = None
        if rng.random() * ONE_IN < 1 and matches:
            put = before[rng.choice(matches).old[0]]
            paragraphs.insert(len(paragraphs) - 1, put)
        draft = draft_of(paragraphs)
        spoiled = [Spoiled("repeated-argument", place_of(draft, put))] if put else []
        judge_paper(
            tally, f"repeating {seed}.{number}", Paper("made", draft, style="apa-7"), spoiled, ("repeated-argument",)
        )


def measure_points(tally: Tally, papers: int, seed: int) -> None:
    """What is said of essays whose points are sentences of their first version, each with a source of its own.

    The last version cites the source in the paragraph that the sentence's became. Of a point that is left out that
    paragraph is gone, and its source is cited in another one.
    """
    rng = random.Random(seed)  # noqa: S311 - a sample
    for number in range(papers):
        before, after = rng.choice(essays())
        matches = [
            m for m in match_texts(before, after) if m.fate in ("edited", "moved") and 0 < m.new[0] < len(after) - 1
        ]
        if len(matches) < 2:
            continue
        paper, spoiled = _with_points(before, after, [(m.old[0], m.new[0]) for m in matches], rng)
        judge_paper(tally, f"points {seed}.{number}", paper, spoiled, ("point-missing",))


def _with_points(
    before: Sequence[str], after: Sequence[str], pairs: Sequence[tuple[int, int]], rng: random.Random
) -> tuple[Paper, list[Spoiled]]:
    cites: dict[int, list[str]] = {}
    entries, points, gone, spoiled = [], [], set(), []
    names = rng.sample(_NAMES, len(pairs))
    left_out = rng.randrange(len(pairs)) if rng.random() * LEFT_OUT < len(pairs) else None
    for at, ((old, new), name) in enumerate(zip(pairs, names, strict=True)):
        entries.append(
            Entry(name.lower(), "webpage", f"On {name}", authors=(Name(name, "A."),), issued=Issued(2001 + at))
        )
        sentences = [s for s in re.split(r"(?<=[.?!]) ", before[old]) if len(s.split()) >= 8]
        said = max(sentences or [before[old]], key=lambda s: (s not in after[new], len(s)))
        points.append(Point(f"p{at}", said, support=(Support(name.lower()),)))
        place = new
        if at == left_out:
            gone.add(new)
            place = next(n for o, n in pairs if n != new)
            spoiled.append(Spoiled("point-missing", None, f"p{at}"))
        cites.setdefault(place, []).append(f"{name}, {2001 + at}")
    paragraphs = [
        text if at not in cites else f"{text.rstrip('. ')} ({'; '.join(cites[at])})."
        for at, text in enumerate(after)
        if at not in gone
    ]
    paper = Paper("made", draft_of(paragraphs), tuple(entries), points=Points(points=tuple(points)), style="apa-7")
    return paper, spoiled


def draft_of(paragraphs: Sequence[str], title: str = "A Paper") -> str:
    """The text of a draft."""
    return f"# {title}\n\n" + "\n\n".join(paragraphs) + "\n"


def place_of(draft: str, words: str) -> Span:
    """Where words first stand in a draft."""
    at = draft.index(words)
    return Span(at, at + len(words))
