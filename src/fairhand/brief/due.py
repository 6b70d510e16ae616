"""Due dates: what is handed in when, and at what hour."""

from __future__ import annotations

import re
from functools import lru_cache

from fairhand.brief.dates import Dated, find_dates, find_times, seems_british, writes_day_first
from fairhand.brief.layout import Passage, Sheet, split_sentences
from fairhand.brief.terms import make_terms
from fairhand.brief.wording import TOLD, ask
from fairhand.model.requirement import Requirement

_THINGS: tuple[tuple[str, str], ...] = (
    (
        "final",
        (
            r"final (?:draft|version|paper|essay|report|submission|copy|copies|piece|project|product|portfolio"
            r"|manuscript)|finished (?:paper|essay|report|thing|piece|article|version|work)"
        ),
    ),
    ("annotated-bibliography", r"annotated bib(?:liograph(?:y|ies))?|annotated (?:source )?list"),
    (
        "peer-review",
        (
            r"peer[- ](?:review|evaluation|response|feedback|critique|comment|edit)\w*|(?:reviews?|responses?|feedback"
            r"|comments?) (?:of|on|to|for) (?:a |your )?(?:partner|peer|classmate)\w*"
        ),
    ),
    ("presentation", r"presentations?|demos?\b|demonstrations?|oral report|in-class talk|poster session"),
    (
        "reflection",
        (
            r"reflections?\b|reflective (?:statement|note|account|commentary|essay)|self-(?:assessment|evaluation"
            r"|reflection)"
        ),
    ),
    (
        "proposal",
        (
            r"proposals?|expos[eé]s?|prospectus|pitch(?:es)?|synops[ie]s|(?:topic"
            r"|project) (?:statement|proposal|summary)"
            r"|statement of (?:topic"
            r"|intent)"
        ),
    ),
    ("outline", r"outlines?|essay plan|plan of (?:the|your) (?:essay|paper)|detailed plan"),
    ("draft", r"(?:\w+ )?drafts?"),
    ("final", r"final\b"),
)
_THING = make_terms(_THINGS)
_WORK = re.compile(
    r"\b(?:papers?|essays?|reports?|reviews?|assignment|submission|coursework|project|work|dissertation|portfolio"
    r"|article|it|commentary|case study|case studies|analysis|response|piece)\b",
    re.IGNORECASE,
)
_HANDING = re.compile(
    r"\b(?:due|deadlines?|hand(?:ed|ing)?[- ](?:it "
    r"|this |them )?in|turn(?:ed|ing)? (?:it |this |them )?in"
    r"|submi(?:t|tted|ssion)\w*|upload(?:ed)?|post(?:ed)? (?:it|to)|(?:e-?)?mail(?:ed)? (?:it|to|me|your|the)"
    r"|sent|send|deliver(?:ed)?|bring|wanted (?:by|on)|no later than|must reach|reach(?:es)? me"
    r"|comes? (?:in )?(?:to me|to class)"
    r"|(?:with me|on my desk|in my (?:in-?box|in-?tray|mail-?box|pigeonhole)) (?:by|on|before)"
    r"|essay for|paper for|leave it|when\b"
    r"|(?:trade|swap|exchange) |(?:like|want|need|expect) (?:it|them|your \w+|the \w+)"
    r"|print(?:ed)?)\b",
    re.IGNORECASE,
)
_OTHER = re.compile(
    r"\b(?:(?:no|not?) (?:class(?:es)?|lab|lecture|tutorial|seminar|meeting)s?|does not meet|quiz(?:zes)?"
    r"|mid-?terms?|exam(?:ination)?s?\b(?! (?:office|hall|number|board))|break\b|holiday|office hours?|my hours"
    r"|extensions?|workshops?|results?|released|returned|hand (?:them|it|these) back|back to you|approved|approval"
    r"|permission|library|conference|librarian|lectures?|tutorials?|seminars?"
    r"|issued|handed out|given out|distributed|added in class|circulated|visit|practice|practise|reading week"
    r"|resume|begins?|starts?|opens?|ends?|chapters?|weather|revised|updated|accepted after|after (?:that|this)"
    r"|late work|not accepted|sign up|working thesis|topics? (?:must|should|due)|titles? must"
    r"|questions? to me|meet(?:ing)?s?"
    r"|discuss(?:ion)?|read\b|supervis\w+|register|withdraw)\b",
    re.IGNORECASE,
)
_HARD_OTHER = re.compile(
    r"\b(?:extensions?|no class|issued|handed out|given out|distributed|added in class|results|returned"
    r"|accepted after|exam(?:ination)?s?\b(?! (?:office|hall|number|board))|mid-?terms?|quiz(?:zes)?|approved"
    r"|does not meet|hand (?:them|it) back|late (?:work|papers?|essays?) (?:until|up to)|permission)\b",
    re.IGNORECASE,
)
_DUE_CONTEXT = re.compile(
    r"\b(?:due|deadlines?|dates?|calendar|timetable|schedule|milestones?|timeline|when|handing in|submission|submit"
    r"|stages?|steps?|turning it in|key dates|hand-in|checkpoints?|how we get there)\b",
    re.IGNORECASE,
)
_NOT_DATES_TO_NOTE = re.compile(r"dates? to note|publication|dated", re.IGNORECASE)
_ALL_AT = re.compile(
    r"\b(?:all|each|every|everything)\b[^.;]{0,60}\b(?:due|deadlines?|submitted|uploaded|handed in|times?)\b"
    r"|\bby default\b|\ball (?:two|three|four|five|of (?:them|these))? ?(?:are )?(?:due )?(?:by|at) \d",
    re.IGNORECASE,
)


_WHATEVER = frozenset({"it", "assignment", "submission", "work", "piece"})
"""Words for whatever the sheet is about."""
_SINCE = re.compile(
    r"\b(?:after|since|from|(?<!later )than|week of)(?: the)?(?: (?:first|second|third|next|following) \w+)? ?\(?$"
    r"|\b(?:stop|cease|no longer) (?:accept|tak)\w*[^.;]{0,40}$",
    re.IGNORECASE,
)
"""Before a date that is no hour of hand-in, but the end or the start of something."""


_CLAUSE_END = re.compile(r";|(?:(?<=[a-z]{3})|(?<=\d))\. (?=[A-Z])")
_PART_OF = re.compile(rf"(?:{_THING.pattern.pattern}) (?:of|for) (?:the |your |an? )?$", re.IGNORECASE)


def _thing(words: str) -> tuple[str, bool]:
    """What ``words`` say is handed in, and whether they name it plainly."""
    match = _THING.search(words)
    if match:
        return _THING.name(match), True
    return ("final", True) if _WORK.search(re.sub(r"\([^()]*\)", "", words)) else ("", False)


def _only_when(words: str) -> bool:
    """Whether ``words`` say nothing but when: hours, prepositions, marks."""
    for time in reversed(find_times(words)):
        words = words[: time.start] + words[time.end :]
    return not re.sub(r"\b(?:by|on|at|of|before|the|no later than)\b|\W", "", words, flags=re.IGNORECASE)


def _subject_is_other(before: str) -> bool:
    """Whether what "is due" is something else than the paper or a stage of it (cards, readings, forms)."""
    match = re.search(r"([\w'#-]+(?: [\w'#-]+)?) (?:(?:is|are) (?:also )?|\()due\b", before)
    return bool(
        match
        and not _thing(match[1])[1]
        and not _PART_OF.search(before[: match.start()])
        and not re.search(r"\b(?:it|this|that|these|they|everything|all|which|both)$", match[1], re.IGNORECASE)
    )


def _title_thing(sheet: Sheet) -> str:
    """What the sheet as a whole asks to hand in: its title's thing, where no paper is named."""
    lines = sheet.title.split(" / ")
    if named := next((match for line in lines if (match := _THING.pattern.fullmatch(line.strip()))), None):
        return _THING.name(named)
    thing, _ = _thing(lines[0])
    paper = re.search(r"\b(?:papers?|essays?|reports?)\b", sheet.title, re.IGNORECASE)
    return thing if thing and not paper else "final"


def _read(sheet: Sheet, passage: Passage, dates: list[Dated], i: int) -> tuple[str, int] | None:
    """What is due on the ``i``-th date of a passage, and where the words that say so begin; None where nothing is."""
    text = passage.text
    dated = dates[i]
    start, stop = next(((a, b) for a, b in split_sentences(text) if a <= dated.start < b), (0, len(text)))
    listed = passage.kind in {"item", "row"} or passage.key or len(text) < 90
    left = max(dates[i - 1].end if i else 0, 0 if listed and i == 0 else start)
    right = min(dates[i + 1].start if i + 1 < len(dates) else len(text), len(text) if listed else stop)
    before, after = text[left : dated.start], text[dated.end : right]
    if ";" in before and not listed:
        left += before.rfind(";") + 1
        before = text[left : dated.start]
    if ";" in after:
        after = after[: after.index(";")]
    # The date may have taken the point that ends its sentence; that of "Feb." ends none.
    ended = re.search(r"[a-z]{4}\.$", text[: dated.end]) and after[:2].strip().isupper()
    after_sentence = "" if ended else re.split(r"(?<=[.!?]) ", after)[0]
    around = before + " # " + after_sentence
    if _SINCE.search(before) or _subject_is_other(before):
        return None
    if _HARD_OTHER.search(before) or (TOLD.search(around) and not listed):
        return None
    # "The draft is due on 5 October, the paper on 16 November": one verb for both.
    handing = bool(_HANDING.search(around) or (i and _HANDING.search(text, start, dated.start)))
    in_list = bool(_DUE_CONTEXT.search(passage.context)) and not _NOT_DATES_TO_NOTE.search(passage.context)
    thing, named = _thing(before)
    handing = handing or bool(named and re.search(r"\bto me (?:by|on|before)\b", before, re.IGNORECASE))
    hit = _THING.search(before) or _WORK.search(before)
    plain = named and hit and (handing or in_list)
    if _OTHER.search(before) and not plain and not (handing and (named or _HANDING.search(before[-30:]))):
        return None
    if not named or (thing == "final" and not _THING.search(before) and passage.kind == "row"):
        later, later_named = _thing(after_sentence)
        if later_named and (passage.kind == "row" or not before.strip(" \t-:,") or handing):
            thing, named = later, True
    if thing == "final" and hit and hit.group().lower() in _WHATEVER and not _THING.search(before):
        thing = _title_thing(sheet)
    if not named:
        if not (handing or (in_list and _only_when(before))):
            return None
        thing = _title_thing(sheet)
    elif not handing and not in_list and not listed:
        return None
    elif not handing and not in_list and listed:
        # A bare row or line counts where the thing is what it opens with.
        if not (hit and hit.start() < 12) and not (passage.kind == "row" and _thing(after_sentence)[1]):
            return None
        if (
            re.search(r"[.?!] \w", text)
            and passage.kind == "prose"
            and not passage.key
            and not re.search(r"\b(?:by|on|:) ?$", before)
        ):
            return None
    begin = left + (hit.start() if hit and listed else len(before) - len(before.lstrip()))
    handing_hit = _HANDING.search(before)
    if not listed:
        begin = left + (min(m.start() for m in (hit, handing_hit) if m) if (hit or handing_hit) else len(before))
    return thing, min(begin, dated.start)


def _hour(text: str, dates: list[Dated], i: int) -> tuple[str | None, int, int, str]:
    """The hour that belongs to the ``i``-th date: after it, else before it in the same clause."""
    dated = dates[i]
    right = dates[i + 1].start if i + 1 < len(dates) else len(text)
    limit = min(right, dated.end + 80)
    stop = _CLAUSE_END.search(text, dated.end, limit)
    after = text[dated.end : stop.start() if stop else limit]
    if times := find_times(after):
        return times[0].at, dated.end + times[0].start, dated.end + times[0].end, times[0].doubt
    left = max(dates[i - 1].end if i else 0, dated.start - 50)
    before = text[left : dated.start]
    sentence_start = next((a for a, b in split_sentences(text) if a <= dated.start < b), 0)
    cut = max(before.rfind("; "), sentence_start - left - 1)
    times = [t for t in find_times(before) if t.start > cut]
    if times:
        return times[-1].at, left + times[-1].start, left + times[-1].end, times[-1].doubt
    return None, dated.end, dated.end, ""


@lru_cache(maxsize=4)
def read_dates_due(sheet: Sheet) -> tuple[tuple[Requirement, ...], tuple[str, ...]]:
    """What is due when, and the questions that a date or hour leaves open."""
    given = sheet.given
    found: list[Requirement] = []
    questions: list[str] = []
    rejected = -1
    seen: set[tuple[str, str | None]] = set()
    day_first = writes_day_first(sheet.text)
    british = seems_british(sheet.text)
    common = None
    for sentence in sheet.sentences:
        if (
            _ALL_AT.search(sentence.text)
            and not find_dates(sentence.text, given)
            and (times := find_times(sentence.text))
        ):
            common = times[0].at
    for passage in sheet.passages:
        dates = find_dates(passage.text, given, day_first=day_first, british=british)
        rejected = -1
        for i, dated in enumerate(dates):
            if dated.on and given and dated.on <= given:
                continue
            # "1/14, 1/22 and 2/11": what is refused of the first of several dates is refused of all.
            carried = (
                i > 0
                and rejected == i - 1
                and re.fullmatch(r"[\s,]*(?:and|or|to|-)?\s*", passage.text[dates[i - 1].end : dated.start])
            )
            reading = None if carried else _read(sheet, passage, dates, i)
            if reading is None:
                rejected = i
                continue
            thing, start = reading
            at, time_start, time_end, doubt = _hour(passage.text, dates, i)
            key = (thing, dated.on.isoformat() if dated.on else None)
            if key in seen:
                continue
            seen.add(key)
            questions += [q for q in (dated.doubt, doubt) if q and q not in questions]
            start = min(start, time_start)
            end = max(dated.end, time_end)
            if not _thing(passage.text[start : dated.start])[1]:
                stop = dates[i + 1].start if i + 1 < len(dates) else end + 60
                hit = _THING.search(passage.text, end, stop) or _WORK.search(passage.text, end, stop)
                end = hit.end() if (hit and passage.kind != "prose") or (hit and passage.body) else end
            values = {"what": thing, "on": key[1], "at": at or common}
            found.append(ask(sheet, "due", values, passage.span(start, end)))
    return tuple(found), tuple(questions)


def find_due(sheet: Sheet) -> list[Requirement]:
    """What is due when."""
    return list(read_dates_due(sheet)[0])
