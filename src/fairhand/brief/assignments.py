"""The several papers that one sheet may ask for, and what on a sheet is not about this paper."""

from __future__ import annotations

import re
from dataclasses import replace

from fairhand.brief.layout import Sheet

_TITLE = re.compile(
    r"(?P<noun>paper|essay|assignment|project|report|task|coursework|exercise|memo"
    r"|review)\s+(?:no\.? ?)?(?P<number>\d{1,2}|one|two|three|four|five|six|[A-F]|[IVX]{1,4})\b\s*(?:[:.(–—-]|$)",
    re.IGNORECASE,
)
_WEIGHED = re.compile(
    r"(?P<title>(?:[A-Z][\w'-]* )?(?:[\w'-]+ ){0,3}(?P<noun>papers?|essays?|reports?|projects?|assignments?|journals?"
    r"|presentations?|exams?|examinations?|quiz(?:zes)?|tests?|homework|participation|attendance|portfolios?"
    r"|reviews?|responses?)) \(\d{1,3} ?(?:%|per ?cent|points|marks)[^)]{0,30}\)(?=[.:,]|$)",
    re.IGNORECASE,
)
"""A piece of a course's work with its weight, as a syllabus lists them ("Concert report (10%).")."""
_ALL = re.compile(
    r"\b(?:all|both|every|each|general|exam(?:ination)?|policies|participation|schedule|late(?:ness)?|grading"
    r"|honesty|integrity|conduct|submission|formatting)\b",
    re.IGNORECASE,
)
_NOW = re.compile(
    r"\b(?:(?:you are|we are|you're|we're) (?:now )?(?:writing|doing|working on)(?: now)?|this (?:sheet|time)|now"
    r"|current(?:ly)?|next) (?:is |on )?(?:for )?(?P<title>(?:paper|essay|assignment|project|report"
    r"|task)\s+[\w]{1,5})\b",
    re.IGNORECASE,
)
_ELSEWHERE = re.compile(
    r"\b(?:not part of (?:this|the)|other (?:assignments|papers|work|coursework)|^(?:the )?(?:final "
    r"|mid-?term )?exam(?:ination)?s?(?: \([^)]*\))?$|(?:coming|later) (?:in the|this) (?:term|semester)"
    r"|(?:next|previous) (?:assignment|paper|activity)|last year|will there be (?:an?|any) (?:second|other|more"
    r"|further)"
    r"|^(?:tips?|hints?|reminders?|fyi)$)",
    re.IGNORECASE,
)
_INSTEAD = re.compile(
    r"^(?:Another [A-Z]\w+(?: \d+)?|Alternative(?:ly)?(?: [\w-]+)?(?: \d+)?|Extension|Optional(?: \w+)?"
    r"|Going further|For (?:advanced|honou?rs) students)[.:]"
)


def _normal(title: str) -> str:
    return re.sub(r"\W+", " ", title).strip().lower()


def find_assignments(sheet: Sheet) -> list[tuple[int, str]]:
    """The headings that open a paper of its own: index of the passage and title; none where the sheet asks for one."""
    hits = [
        (i, m, p)
        for i, p in enumerate(sheet.passages)
        if (p.kind == "heading" or len(p.text) < 90) and (m := _TITLE.match(p.text))
    ]
    nouns = [m["noun"].lower() for _, m, _ in hits]
    several = [
        (i, m, p)
        for i, m, p in hits
        if nouns.count(m["noun"].lower()) >= 2
        and p.kind in {"heading", "prose"}
        and not re.search(r"\bdue\b|\d%$", p.text[m.end() :])
    ]
    if len({m["number"].lower() for _, m, _ in several}) < 2:
        several = [(i, m, p) for i, m, p in hits if nouns.count(m["noun"].lower()) >= 2 and p.kind == "heading"]
    if len({m["number"].lower() for _, m, _ in several}) < 2:
        return []
    return [(i, re.sub(r"\s*\([^)]*\)\s*$", "", p.text).strip(" :")) for i, _, p in several]


def _weighed_assignments(sheet: Sheet) -> list[tuple[int, str]]:
    """The passages of a syllabus that open with a piece of the course's work and its weight."""
    hits = [(i, m["title"]) for i, p in enumerate(sheet.passages) if (m := _WEIGHED.match(p.text))]
    return hits if len(hits) >= 2 else []


def _chosen(sheet: Sheet, titles: list[str], wanted: str) -> int:
    """Which of the papers is meant: by title or number, else as the sheet says, else the first."""
    want = _normal(wanted)
    if want:
        for i, title in enumerate(titles):
            if want in _normal(title) or (want.isdigit() and f" {want} " in f" {_normal(title)} "):
                return i
    for passage in sheet.passages:
        if match := _NOW.search(passage.text):
            for i, title in enumerate(titles):
                if _normal(title).startswith(_normal(match["title"])):
                    return i
    return 0


def keep_one_paper(sheet: Sheet, wanted: str = "") -> tuple[Sheet, tuple[str, ...]]:
    """The sheet without the passages that are about something else, and the titles of its several papers."""
    papers = find_assignments(sheet)
    weighed = [] if papers else _weighed_assignments(sheet)
    titles = [title for _, title in papers]
    apart: set[int] = set()
    if papers:
        chosen = _chosen(sheet, titles, wanted)
        starts = [i for i, _ in papers]
        indent = sheet.passages[starts[0]].indent
        for k, start in enumerate(starts):
            stop = starts[k + 1] if k + 1 < len(starts) else len(sheet.passages)
            for j in range(start + 1, stop):
                passage = sheet.passages[j]
                if (
                    passage.kind == "heading"
                    and passage.indent <= indent
                    and (_ALL.search(passage.text) or passage.text.isupper())
                ):
                    stop = j
                    break
            if k != chosen:
                apart |= set(range(start, stop))
    if weighed:
        # What stands after the last word on a piece of work may be about all: only where it is described at length,
        # the piece that is asked for here is known.
        ends = [i for i, _ in weighed[1:]] + [len(sheet.passages)]
        here = max(range(len(weighed)), key=lambda k: ends[k] - weighed[k][0])
        apart |= {i for k, (i, _) in enumerate(weighed) if k != here}
        titles = [title for _, title in weighed]
    instead = ""
    for i, passage in enumerate(sheet.passages):
        if _ELSEWHERE.search(passage.text if passage.kind == "heading" else passage.heading) or _ELSEWHERE.search(
            passage.key
        ):
            apart.add(i)
        if _INSTEAD.match(passage.text):
            instead = passage.heading or " "
        elif instead and passage.kind == "heading":
            instead = ""
        if instead:
            apart.add(i)
    if not apart:
        return sheet, tuple(titles)
    kept = tuple(p for i, p in enumerate(sheet.passages) if i not in apart)
    keep: set[int] = {id(p) for p in kept}
    return replace(sheet, passages=kept, sentences=tuple(s for s in sheet.sentences if id(s.passage) in keep)), tuple(
        titles
    )
