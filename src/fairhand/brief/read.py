"""From the text of one or several sheets to the brief."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Mapping, Sequence
from dataclasses import replace

from fairhand.brief.assignments import keep_one_paper
from fairhand.brief.dates import find_dates, writes_day_first
from fairhand.brief.doubts import ask_contradictions, ask_weeks
from fairhand.brief.due import read_dates_due
from fairhand.brief.kinds import KINDS, ROW_OF, base_id, number_ids
from fairhand.brief.layout import Sentence, Sheet, read_sheet
from fairhand.brief.spelling import find_spelling
from fairhand.brief.wording import TOLD
from fairhand.model.requirement import Brief, Requirement, Value
from fairhand.model.settings import Answer

_GIVEN = re.compile(
    r"\b(?:issued|handed out|given out|set(?: on)?|distributed|date(?:d| of issue| set| given)?|posted|circulated"
    r"|released|assigned|published|sent)\b[: ]*(?:on |out )?$",
    re.IGNORECASE,
)
_DEMAND = re.compile(
    r"\b(?:must|should|shall|have to|has to|need to|needs to|required?|expected|may not|cannot|do not|don't|never"
    r"|no (?:more|fewer|less) than|at least|at most|maximum|minimum|is to|are to|make sure|be sure|remember to"
    r"|(?:is|are) the (?:floor|ceiling|minimum|maximum|limit)|would(?:n't| not) hurt)\b"
    r"|\d ?(?:words|pages|pt|cm|sources|per ?cent|%|marks|points)\b",
    re.IGNORECASE,
)
_CLAUSE = re.compile(r"[^;\s][^;]*")
"""A sentence's parts that could stand alone: of several, one may be understood and another not."""
_ASKING = re.compile(
    r"(?:required |paper |essay )?(?:sections?|structure|headings|parts|length|word (?:count|limit|length)|sources?"
    r"|references?|referencing|citations?|style|citation style|format(?:ting)?|layout|spacing|font|margins"
    r"|due(?: date)?|deadline|submission|hand(?:ing)?[- ]in|late (?:work|papers|submissions?|penalt(?:y|ies)|policy)"
    r"|tools|ai)",
    re.IGNORECASE,
)
"""Labels under which a sheet asks something, in whatever words."""
_ORDER = re.compile(
    r"^(?:please |always |also |then )?(?:use|write|include|give|put|state|submit|upload|print|bring|number|add"
    r"|attach|cite|quote|avoid|follow|answer|choose|pick|select|describe|show|identify|examine|explore|consider"
    r"|provide|begin|end|open|close|"
    r"name|save|send|email|read|hand|turn|keep|draw|define|justify|illustrate|refer|label|caption|proofread|sign"
    r"|staple|list|present|prepare|investigate|outline|focus|apply|demonstrate|make|take|find|consult|incorporate"
    r"|support|review)\b",
    re.IGNORECASE,
)


def given_day(sheets: Sequence[tuple[str, str]]) -> dt.date | None:
    """The day on which the sheet says that it was given out; None where it names none, or no year for it.

    >>> given_day([("sheet.txt", "Issued: Monday 20 January 2025")])
    datetime.date(2025, 1, 20)
    """
    for _, text in sheets:
        sheet = read_sheet("", text)
        years = [int(y) for y in re.findall(r"\b(?:20)\d\d\b", " ".join(p.text for p in sheet.passages[:6]))]
        around = dt.date(years[0], 1, 1) if years and years[0] > 0 else None
        for passage in sheet.passages[:12]:
            for dated in find_dates(passage.text, around, day_first=writes_day_first(text)):
                before = passage.text[max(0, dated.start - 25) : dated.start]
                if dated.on and _GIVEN.search(before) and not re.search(r"\b(?:by|due|must|will)\b", before):
                    return dated.on
    return None


def _guess_day(text: str) -> dt.date | None:
    """The first of January of the year that most of the sheet's own dates and terms name; None where none is named."""
    years = re.findall(
        r"\b(?:(?:spring|summer|autumn|fall|winter|term|semester|michaelmas|hilary|trinity|lent|easter|january"
        r"|february|march|april|may|june|july|august|september|october|november|december"
        r"|,)[ ,]{1,2}(?:\d{1,2},? )?(?:term )?)(20\d\d)\b",
        text,
        re.IGNORECASE,
    )
    return dt.date(int(min(years, key=lambda y: (-years.count(y), y))), 1, 1) if years else None


def _read_one(sheet: Sheet) -> tuple[list[Requirement], list[str]]:
    _, questions = read_dates_due(sheet)
    found = [requirement for row in KINDS for requirement in row.read(sheet)]
    sections = {str(r.values["name"]) for r in found if r.kind == "section"}
    # A part that is asked for as a section is not asked for again as an element; nor is its length the paper's.
    spans = [r.span for r in found if r.kind == "section"]

    def repeats(r: Requirement) -> bool:
        within = any(r.span.overlaps(s) for s in spans)
        if r.kind == "element":
            return within or str(r.values["what"]).replace("-", " ") in sections
        return r.kind == "length" and r.values["part"] == "paper" and within

    kept = [r for r in found if not repeats(r)]
    return kept, [*questions, *ask_weeks(sheet), *ask_contradictions(kept)]


def _unread(sheet: Sheet, found: list[Requirement]) -> list[str]:
    spans = sorted(r.span for r in found)
    out = []
    for sentence in sheet.sentences:
        text = sentence.text.strip()
        if len(text) < 12 or TOLD.search(text) or find_spelling(text):
            continue
        if _asks_by_label(sentence) and not any(sentence.span(0, len(sentence.text)).overlaps(span) for span in spans):
            out.append(" ".join(text.split()))
            continue
        if not (_DEMAND.search(text) or _ORDER.search(text)):
            continue
        for clause in _CLAUSE.finditer(sentence.text):
            here = sentence.span(*clause.span())
            understood = any(here.overlaps(span) for span in spans)
            if not understood and (_DEMAND.search(clause.group()) or _ORDER.search(clause.group())):
                out.append(" ".join(here.of(sheet.text).split()))
    return list(dict.fromkeys(out))


def _asks_by_label(sentence: Sentence) -> bool:
    """Whether a sentence begins with a label under which a sheet asks something: *Sections: …*."""
    label = sentence.passage.key.strip()
    return bool(_ASKING.fullmatch(label)) and sentence.text.lstrip().startswith(label)


def _same(first: Requirement, second: Requirement) -> bool:
    return first.kind == second.kind and first.values == second.values


def _quoted(requirement: Requirement) -> str:
    return f"“{' '.join(requirement.evidence.split())}” ({requirement.sheet})"


def _overrule(earlier: list[Requirement], later: list[Requirement]) -> tuple[list[Requirement], list[str]]:
    """What stands when a later sheet speaks: its word wins, and each contradiction is said."""
    conflicts: list[str] = []
    kept: list[Requirement] = []
    fresh = [r for r in later if not any(_same(r, e) for e in earlier)]
    for requirement in earlier:
        name = base_id(requirement)
        against = [r for r in fresh if base_id(r) == name]
        if requirement.kind == "sources_banned" or not against:
            kept.append(requirement)
            continue
        conflicts.append(f"{name}: {_quoted(requirement)}, but later {_quoted(against[0])}; the later word is kept")
    return kept + fresh, conflicts


def read_brief(sheets: Sequence[tuple[str, str]], given: dt.date | None = None, assignment: str = "") -> Brief:
    """Everything that the sheets ask, each with the words that ask it.

    Args:
        sheets: file name and text of each, oldest first; where two set the same thing, the later word stands.
        given: the day on which they were given out, from which years and "two weeks from today" are counted; where it
            is None the sheets' own day is taken, else the first day of the year that they name.
        assignment: title or number of one of the papers, where a sheet asks for several; else the one that the sheet
            says is being written, else the first.

    >>> [r.id for r in read_brief([("a.txt", "Write 2,000 words in MLA style.")]).requirements]
    ['length.paper', 'style']
    """
    standing: list[Requirement] = []
    unread: list[str] = []
    titles: tuple[str, ...] = ()
    conflicts: list[str] = []
    questions: list[str] = []
    for name, text in sheets:
        day = given or given_day([(name, text)]) or given_day(sheets) or _guess_day(text)
        sheet, papers = keep_one_paper(read_sheet(name, text, day), assignment)
        titles = titles or papers
        found, asked = _read_one(sheet)
        questions += [q for q in asked if q not in questions]
        unread += _unread(sheet, found)
        standing, against = _overrule(standing, found)
        conflicts += against
    order = {row.kind: i for i, row in enumerate(KINDS)}
    standing.sort(key=lambda r: order[r.kind])
    return Brief(
        requirements=number_ids(standing),
        unread=tuple(dict.fromkeys(unread)),
        assignments=titles,
        texts=dict(sheets),
        conflicts=tuple(conflicts),
        questions=tuple(questions),
    )


def to_json(brief: Brief) -> dict[str, object]:
    """The brief as plain values: keys and types as ``docs/requirements.md`` has them."""
    return {
        "requirements": [
            {
                "kind": r.kind,
                **{name: _plain(r.values.get(name)) for name in ROW_OF[r.kind].names},
                "evidence": r.evidence,
                "id": r.id,
                "force": r.force,
                "start": r.span.start,
                "end": r.span.end,
                "sheet": r.sheet,
            }
            for r in brief.requirements
        ],
        "unread": list(brief.unread),
        "assignments": list(brief.assignments),
        "conflicts": list(brief.conflicts),
        "questions": list(brief.questions),
    }


def _plain(value: Value) -> object:
    return list(value) if isinstance(value, tuple) else value


def apply_answers(brief: Brief, answers: Mapping[str, Answer]) -> tuple[Requirement, ...]:
    """The brief's requirements with the writer's corrections; ids stay, and waived ones stay too.

    >>> brief = read_brief([("a.txt", "Write 2,000 words.")])
    >>> apply_answers(brief, {"length.paper": Answer(values={"max": 2500})})[0].values["max"]
    2500
    """
    out = []
    for requirement in brief.requirements:
        answer = answers.get(requirement.id)
        known = ROW_OF[requirement.kind].names
        values = {k: v for k, v in answer.values.items() if k in known} if answer else {}
        out.append(replace(requirement, values={**requirement.values, **values}) if values else requirement)
    return tuple(out)
