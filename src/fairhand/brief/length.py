"""Length: how many words or pages, of what, and what is left out of the count."""

from __future__ import annotations

import re
from functools import lru_cache

from fairhand.brief.layout import Sentence, Sheet
from fairhand.brief.length_counts import NOTHING_SAID, find_counts, list_excludes
from fairhand.brief.numbers import NUMBER, Quantity, find_quantities, find_tolerance, number_value
from fairhand.brief.terms import make_terms
from fairhand.brief.wording import READING, TOLD, ask, force_of, join
from fairhand.model.requirement import Requirement

_UNIT = (
    r"(?:(?:double[- ]spaced|single[- ]spaced|typed|typewritten|full|complete|manuscript|written|A4|printed)[ -]){0,3}"
    r"(?:words?(?! (?:documents?|files?|format|doc\b))|pages?|pgs?\.?|sides?(?: of A4)?|pp\.?)"
)

_PARTS: tuple[tuple[str, str], ...] = (
    ("annotated-bibliography", r"annotated bibliograph\w+"),
    ("abstract", r"abstracts?"),
    (
        "proposal",
        r"proposals?|prospectus|synops[ie]s|(?:topic|project) (?:statement|summary)|statement of (?:topic|intent)",
    ),
    ("reflection", r"reflections?|reflective (?:statement|note|account|commentary|paragraph)|self-reflection"),
    (
        "other",
        (
            r"outlines?|plans?|letters?|extracts?|passages?|chapters?|articles?|presentations?|introductions?"
            r"|paragraphs?"
            r"|captions?|notes?|cards?|examples?|"
            r"e-?mails?|responses? posts?|posts?|replies|reply|summary|summaries|slides?|posters?|bios?|biograph\w+"
            r"|statements?|peer reviews?|critiques?|"
            r"conclusions?|readings?|stor(?:y|ies)|handouts?|journals? entr\w+|cover letters?|sections?(?! \d)"
            r"|sentences?"
            r"|quotations?"
            r"|quotes?|entry|entries|drafts?|letter|poems?"
        ),
    ),
)
_PART = make_terms(_PARTS)
_PAPER = re.compile(
    r"\b(?:papers?|essays?|reports?|reviews?|assignments?|submissions?|dissertation|coursework|portfolio|commentary"
    r"|analysis|study|project|piece|"
    r"text|work|answers?|scripts?|manuscripts?|write-?up|case stud(?:y|ies)|response|article|thesis|memo|brief)\b",
    re.IGNORECASE,
)
_WRITE = re.compile(
    r"\b(?:looking for|(?:I|we)(?:'m| am|'re| are) after|(?:I|we)(?:'d| would) like|hoping for"
    r"|want|expect|write|writing|length|long|limit|count|total|argue|should be|must be|shall be"
    r"|will be|aim for|run|runs"
    r"|exceed|in about|in around|in approximately"
    r"|between|maximum|minimum|target|make (?:that|it)|(?:is|are) now|instead|(?:raised|changed|cut|extended"
    r"|lowered) to|hand in|submit|produce)\b",
    re.IGNORECASE,
)
_LENGTH_KEY = re.compile(
    r"\b(?:length|how long|word limit|page limit|word count|page count|words|size|extent|limit|how much|wordage)\b",
    re.IGNORECASE,
)
_LIMIT_KEY = re.compile(r"\b(?:word|page|length) limit|maximum (?:length|word|page)|limit\b", re.IGNORECASE)

_COUNT_NAME = re.compile(
    r"\W*(?:the )?(?:(?:maximum |total |required )?(?:word|page)s?[ -](?:count|limit|length)|wordcount"
    r"|words(?::|\t)|pages(?::|\t)"
    r"|number of (?:words|pages)|length \((?:words|pages)\))(?: is| of)?:?\s*",
    re.IGNORECASE,
)
_LEEWAY = re.compile(
    r"\b(?:word|page) (?:limit|count|length)s?\b|\b(?:leeway|tolerance)\b|\blength of the (?:essay|paper)",
    re.IGNORECASE,
)
_IN_SO_MANY = re.compile(
    r"\b(?:answer|attempt|discuss|explain|respond|write|question|describe|analy[sz]e|topics?)\w*\b[^.;:]{0,80}\bin $",
    re.IGNORECASE,
)
_MARKED = re.compile(r"\b(?:mark|point|grade)s?\b", re.IGNORECASE)
_RATE = re.compile(
    rf"(?P<rate>{NUMBER}) words? (?:to the|to a|per|a|for each|for every|each|on a)[ -](?:double-spaced |typed "
    rf"|printed )?page|(?P<rate2>{NUMBER}) words?/page",
    re.IGNORECASE,
)
_NOT_TOTAL = re.compile(
    r"(?:plus or minus|give or take|(?:\+ ?/ ?-|±)|plus or minus|give or take|(?<!no )(?<!not )\b(?:longer|more"
    r"|fewer|less) than|\bover|\bon|\bby|first|last|next"
    r"|opening|final|of the"
    r"|every) $|^ (?:per|a week|a day|of reading|each|of notes|of every"
    r"|long each)|shorter than|"
    r"^[- ]?(?:extract|articles?|chapters?|letters?|survey)\b|^ (?:before|after|later|earlier)\b",
    re.IGNORECASE,
)


_ANOTHER = re.compile(
    r"^\W*(?:the|your|our) (?:first|last|previous|earlier|other|next) "
    r"(?:one|paper|essay|assignment|review|report|piece)\b.*"
    r"\b(?:is|was|comes?|goes|went|will be|are|were) (?:\w+ ){0,2}(?:back|returned|marked|over|done)\b",
    re.IGNORECASE,
)
"""A sentence about another paper, which is behind the reader."""

_PAPER_IS = re.compile(
    rf"\W*(?:the|your|this|each) (?:\w+ )?{_PAPER.pattern}.{{0,80}} (?:be|runs?(?: to)?|exceed|number"
    rf"|total) $",
    re.IGNORECASE,
)


def _part_of(sentence: Sentence, quantity: Quantity) -> str:
    """What the quantity measures: the nearest noun in its clause, else its key or heading."""
    text = sentence.text
    clause_start = max(text.rfind(mark, 0, quantity.start) for mark in (";", ":", "), ")) + 1
    before = re.sub(r"\([^()]*\)", lambda m: " " * len(m.group()), text[clause_start : quantity.start])
    after = re.split(r"[.;:,()]", text[quantity.end : quantity.end + 60])[0]
    candidates = []
    for match in _PART.finditer(before):
        distance = len(before) - match.end()
        if distance <= 45:
            candidates.append((distance, match))
    hit = _PART.search(after)
    if (
        hit
        and hit.start() <= 25
        and not re.search(
            r"\b(?:of|on|about|from|in|for|with|that|per|plus|or|not|and|includ\w+|exclud\w+)\b", after[: hit.start()]
        )
    ):
        candidates.append((hit.start(), hit))
    paper = [len(before) - m.end() for m in _PAPER.finditer(before)]
    named = _PAPER.search(after)
    if named and named.start() <= 25:
        paper.append(named.start())
    if re.match(r"[- ]+executive summary\b", after, re.IGNORECASE):
        return "paper"
    if _PAPER_IS.match(before):
        return "paper"
    labelled = not sentence.start if sentence.passage.body else sentence.start
    own = _PART.pattern.fullmatch(sentence.passage.key) if labelled else None
    if own and not (candidates and _PART.name(own) == "other"):
        return _PART.name(own)
    if candidates:
        distance, match = min(candidates, key=lambda pair: pair[0])
        if not paper or min(paper) > distance:
            return _PART.name(match)
        return "paper"
    if not paper:
        key = _PART.search(sentence.passage.key if sentence.passage.body else "")
        key = key or (
            _PART.pattern.fullmatch(sentence.passage.heading) if not _LENGTH_KEY.search(sentence.context) else None
        )
        if key:
            return _PART.name(key)
    return "paper"


def _is_asked(sentence: Sentence, quantity: Quantity, part: str) -> bool:
    text = sentence.text
    before, after = text[: quantity.start], text[quantity.end : quantity.end + 40]
    if (
        part == "other"
        or TOLD.search(text)
        or _ANOTHER.search(text)
        or _NOT_TOTAL.search(before[-20:])
        or _NOT_TOTAL.search(after)
    ):
        return False
    if re.search(r"\b(?:seen|spent|was|were|wrote|had)\b", before[-60:], re.IGNORECASE):
        return False
    if part != "paper":
        return True
    if READING.search(before[-50:]) or READING.search(after):
        return False
    if _LENGTH_KEY.search(sentence.context):
        return True
    if '"' in before and before.count('"') % 2 == 0 and after.startswith(")"):
        return False
    if re.match(r"limit\b|(?:not|never) (?:to )?exceed\b", text[quantity.start :], re.IGNORECASE) or _IN_SO_MANY.search(
        before
    ):
        return True
    opening = len(before.strip(" (\"'~").split()) <= 1 and not sentence.passage.text[
        : sentence.start
    ].rstrip().endswith('"')
    if opening and not (before.strip() and text[quantity.end :].startswith(")")):
        return True
    return bool(_PAPER.search(before[-70:]) or _PAPER.match(after.lstrip(" -")) or _PAPER.search(after[:25])) or bool(
        _WRITE.search(before[-40:])
    )


def _words_per_page(sheet: Sheet) -> int | float | None:
    """The sheet's own rate, where it states one."""
    for sentence in sheet.sentences:
        if "page" in sentence.text and not TOLD.search(sentence.text) and (match := _RATE.search(sentence.text)):
            return number_value(match["rate"] or match["rate2"])
    return None


def _most_after(sentence: Sentence, quantity: Quantity) -> tuple[float, int] | None:
    """The greatest length that a bare number after the length sets, with its end ("1,000 words; nobody over 1,200")."""
    for other in find_quantities(sentence.text[quantity.end : quantity.end + 60]):
        rest = sentence.text[quantity.end + other.end :]
        if other.low is None and other.high and quantity.high and re.match(r"[.;,)]|$", rest):
            return (other.high, quantity.end + other.end) if other.high > quantity.high else None
    return None


@lru_cache(maxsize=4)
def _leeway_said(sheet: Sheet) -> str:
    """The first sentence that plainly grants a tolerance on the length; empty where none does."""
    said = (s.text for s in sheet.sentences if _LEEWAY.search(s.text) and _grants_leeway(s.text))
    return next(said, "")


def _grants_leeway(text: str) -> bool:
    """Whether a sentence grants a tolerance, on something other than marks."""
    said = find_tolerance(text, 100)
    return bool(
        said
        and not (_MARKED.search(text) or TOLD.search(text))
        and not re.search(r"\bno\b", text[: said[2].start()], re.IGNORECASE)
    )


def _tolerance_elsewhere(sheet: Sheet, sentence: Sentence, number: float) -> tuple[float | None, float | None] | None:
    """The bounds that another sentence sets, near by in the same passage or plainly about the length."""
    near = (other.text for other in sheet.sentences_after(sentence, within=400) if _grants_leeway(other.text))
    said = find_tolerance(next(near, "") or _leeway_said(sheet), number)
    return said[:2] if said else None


def _unitless_quantity(sentence: Sentence) -> list[Quantity]:
    """A number without a unit that stands right after the words that name it ("Word count: 1,500")."""
    named = _COUNT_NAME.match(sentence.text)
    if not named:
        return []
    return [q for q in find_quantities(sentence.text)[:1] if q.start <= named.end()]


def find_length(sheet: Sheet) -> list[Requirement]:
    """The lengths that the sheet asks for. **Source**: common practice of assignment sheets."""
    found: list[Requirement] = []
    seen: set[tuple[object, ...]] = set()
    rate = _words_per_page(sheet)
    for sentence in sheet.sentences:
        rates = [m.span() for m in _RATE.finditer(sentence.text)]
        for quantity in find_quantities(sentence.text, _UNIT) or _unitless_quantity(sentence):
            if any(a <= quantity.start < b or a < quantity.end <= b for a, b in rates):
                continue
            part = _part_of(sentence, quantity)
            if part == "reflection" and "reflect" in sheet.title.lower():
                part = "paper"
            if not _is_asked(sentence, quantity, part):
                continue
            unit = "words" if "word" in (quantity.unit or sentence.text[: quantity.start].lower()) else "pages"
            low, high = quantity.low, quantity.high
            end = quantity.end
            if part == "paper" and (low is None or high is None or low == high):
                number = high if low is None else low
                label = sentence.passage.key or sentence.passage.heading
                is_limit = quantity.bare and _LIMIT_KEY.search(f"{label} {sentence.text[: quantity.start][-14:]}")
                tolerance = find_tolerance(sentence.text[quantity.end : quantity.end + 60], number or 0)
                if tolerance:
                    low, high, match = tolerance
                    end = quantity.end + match.end()
                elif quantity.bare and (most := _most_after(sentence, quantity)):
                    high, end = most
                elif (quantity.bare or low is None) and (said := _tolerance_elsewhere(sheet, sentence, number or 0)):
                    low, high = (None if low is None or is_limit else said[0]), said[1]
                elif is_limit:
                    low = None
            key = (part, unit, low, high)
            if key in seen:
                continue
            seen.add(key)
            counts = find_counts(sheet, sentence, quantity.end) if part == "paper" else NOTHING_SAID
            here = sentence.span(quantity.start, end)
            found.append(
                ask(
                    sheet,
                    "length",
                    {
                        "unit": unit,
                        "min": low,
                        "max": high,
                        "words_per_page": rate if unit == "pages" and part == "paper" else None,
                        "about": quantity.about,
                        "excludes": list_excludes(counts.uncounted),
                        "part": part,
                        "uncounted": counts.uncounted,
                        "counted": counts.counted,
                    },
                    join(here, counts.span) if counts.span and counts.span.start > here.start else here,
                    force_of(sentence.text),
                )
            )
    return _without_parts_of_it(sheet, found)


def _without_parts_of_it(sheet: Sheet, found: list[Requirement]) -> list[Requirement]:
    """The lengths less those that, in brackets, are plainly of a part of the paper: not half of its own length."""

    def size(requirement: Requirement) -> tuple[object, float]:
        return requirement.values["unit"], float(str(requirement.values["max"] or requirement.values["min"] or 0))

    def bracketed(requirement: Requirement) -> bool:
        before = sheet.text[max(0, requirement.span.start - 30) : requirement.span.start]
        return before.rfind("(") > before.rfind(")")

    papers = [r for r in found if r.values["part"] == "paper"]
    whole = [size(r) for r in papers if not bracketed(r)]
    parts = [r for r in papers if bracketed(r) and any(u == size(r)[0] and 2 * size(r)[1] <= n for u, n in whole)]
    return [r for r in found if r not in parts]
