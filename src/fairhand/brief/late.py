"""Lateness: what a late paper loses, and after how many days it is refused."""

from __future__ import annotations

import datetime as dt
import re

from fairhand.brief.dates import find_dates
from fairhand.brief.due import find_due
from fairhand.brief.late_terms import read_multipliers, read_terms, read_tiers
from fairhand.brief.layout import Sentence, Sheet
from fairhand.brief.numbers import COUNT, NUMBER, number_value
from fairhand.brief.wording import TOLD, ask, join
from fairhand.model.requirement import Requirement, Value
from fairhand.model.span import Span

_CONTEXT = re.compile(
    r"\b(?:late(?:ness)?|overdue|later than|after the (?:deadline|due date)|past (?:the )?(?:due|deadline)"
    r"|penalt(?:y|ies)"
    r"|penali[sz]ed"
    r"|tardy)\b",
    re.IGNORECASE,
)
_EACH = (
    r"(?P<per>(?:per|a|an|each|every|for each|for every|each additional|for any"
    r"|for the first)(?: of the first \w+)?(?: (?:calendar"
    r"|working|week"
    r"|business|school|full|part|extra|late|additional|started))? ?-?(?P<span>days?|weekdays?|hours?|24 hours"
    r"|24 ?h(?:rs?)?\b"
    r"|24-hour period|weeks?))"
)
_AMOUNT = (
    rf"(?P<n>{NUMBER}) ?(?P<unit>%|per ?cent(?:age)?(?: points?)?|percent(?:age)?(?: points?)?|marks?|points?|pts?\.?)"
)
_GRADE = (
    r"(?P<grade>(?:(?:one|a|1)[- ]third|half|1/3|one-half|(?:one|a|1)(?: full)?|two"
    r"|⅓)(?: of)?(?: an?)?(?: full)?(?: letter)?[ -](?:grade[- ]steps?|grade points?"
    r"|grades?|notch(?:es)?|letter grades?|steps?))"
)
_RATE = re.compile(rf"(?:{_AMOUNT}|{_GRADE})(?P<between>[^.;]{{0,45}}?)\b{_EACH}\b", re.IGNORECASE)
_TURNED = re.compile(
    rf"\b(?P<per>(?:(?:for )?each|(?:for )?every|an?|per) (?:calendar |working |school |extra |late "
    rf"|week)?(?P<span>days?|hours?|24 hours|24-hour period|weeks?)(?:,? \(?or part (?:of \w+|thereof)"
    rf"(?: \w+)?\)?| \(or part\))?(?: late| of lateness)?)(?P<between>[^.;]{{0,45}}?)\b(?:{_AMOUNT}|{_GRADE})",
    re.IGNORECASE,
)
_ONCE = re.compile(rf"(?:{_AMOUNT}|{_GRADE})(?! (?:off )?(?:for )?(?:each|every|per)\b)", re.IGNORECASE)
_LOSS = re.compile(
    r"\b(?:los(?:e|es|t)|off|deduct\w*|minus|taken|penal\w*|drop(?:s|ped)?|reduc\w*|cost(?:s|ing)?|subtract\w*"
    r"|down|late|-)\b|-\d",
    re.IGNORECASE,
)
_ONCE_WORD = re.compile(r"\b(?:once|flat|one-off|same \d|regardless of|however (?:many|late))\b", re.IGNORECASE)
_REFUSED = re.compile(
    r"\b(?:no(?:thing(?= after (?!that|this|which))| (?:papers?|essays?|work|submissions?|reports?|reviews?)) after\b"
    r"|not (?:be "
    r"|to )?(?:accept|read|mark|grade|take|accepted|marked|graded|read|taken|considered|received)"
    r"|no(?:thing|ne| \w+(?: \w+)?)\b[^.;]{0,30}"
    r"\b(?:accepted|taken|marked)|won't (?:take|accept|mark|read|grade|be (?:accepted"
    r"|marked|graded|read))"
    r"|will not (?:take|accept|mark|read|grade)|(?<!not )accepted (?:for )?(?:up to|until)|can(?:not|'t) (?:accept"
    r"|take|be accepted|be marked)|(?:don't"
    r"|do not) (?:accept|take|read|mark|grade)|(?:is|are|be|as|at|a|of|score|mark is|recorded as|marked at"
    r"|receives?|gets?|scores?) (?:recorded as |a |marked at )?(?:zero|nought|0\b|F\b)|: ?0\b(?!%|[.,:]\d)|fails?\b"
    r"|refused|after which (?:it is |the mark is )?(?:0|zero|nothing)\b|(?:stop|no longer) (?:accept|tak"
    r"|mark)(?:ing)?\b|no (?:credit"
    r"|marks?\b(?! are)|points will be)|zero)|(?<= )= ?(?:zero|nought|0)\b",
    re.IGNORECASE,
)
_DAYS = re.compile(
    rf"\b(?:(?:more|later|longer) than|after|over|beyond|exceeding|up to|within|for|to) (?:a |the )?(?:first "
    rf"|maximum of |expiry of |end of )?(?P<n>{COUNT}|a|an) (?:calendar |working |school |full "
    rf"|late )?(?P<unit>days?|weeks?|hours?)"
    rf"|(?P<n2>{COUNT}) (?:or more )?(?P<unit2>days?|weeks?) (?:late|after|past|or more)"
    rf"|after (?P<n3>{COUNT})(?=[.,;]|$)"
    rf"|(?:after|from) the (?P<ordinal>\w+)(?:st|nd|rd|th) day",
    re.IGNORECASE,
)
_THEREAFTER = re.compile(
    r"\b(?:thereafter|after (?:that|this|which)|beyond (?:that|this)|later (?:work|papers|essays)"
    r"|later than (?:this|that))\b",
    re.IGNORECASE,
)
_LIMIT_DAYS = re.compile(
    rf"\b(?:up to|within|for) (?:the first )?(?:(?P<n>{COUNT}) )?(?:calendar |working |school )?(?P<unit>days?"
    rf"|weeks?)\b",
    re.IGNORECASE,
)
_DAY_OF_MONTH = re.compile(r"\bafter the (?P<day>\d{1,2})(?:st|nd|rd|th)\b(?! day)", re.IGNORECASE)
_NO_LATE = re.compile(
    r"\b(?:(?:do(?:es)? not|don't|doesn't|will not|won't|cannot|never) accept (?:any )?late"
    r"|no late (?:work|papers?|essays?"
    r"|submissions?|assignments?)|late (?:work|papers?|essays?|submissions?"
    r"|assignments?)(?: (?:will|is|are|can|be))* not"
    r"|(?:received|submitted|handed in|arriving|turned in|sent) (?:late|after (?:the|this"
    r"|that) (?:last date|deadline|due"
    r" date|date|time|hour))(?: (?:is|are|will|be|get|receive))* (?:not (?:be )?(?:accepted|evaluated|marked|graded"
    r"|considered|read|assessed)|(?:graded|marked|recorded|treated|counted) as (?:an? )?(?:fail\w*|zero|0|F)))\b",
    re.IGNORECASE,
)
_CAPPED = re.compile(r"\b(?:capped|maximum|at most)\b", re.IGNORECASE)
_HOURS = re.compile(
    rf"\b(?:after|beyond|more than|over|later than|up to|within) (?:the first )?(?P<n>{COUNT}) hours?\b", re.IGNORECASE
)
_ORDINALS = "first second third fourth fifth sixth seventh eighth ninth tenth".split()
_BONUS = re.compile(
    r"\b(?:early|bonus|extra credit|of the (?:module|course)|counts? for|makes? up|word limit|(?:exceed\w*|over"
    r"|beyond) (?:the|this) (?:length|limit)|over(?:-| )length"
    r"|over the (?:limit|word))\b",
    re.IGNORECASE,
)


def _values(match: re.Match[str], per: str | None) -> dict[str, Value]:
    groups = match.groupdict()
    if groups.get("grade"):
        words = groups["grade"].lower()
        # One third of a letter is one step of a scale that has plus and minus.
        steps: int | float = (
            1 if "third" in words or "1/3" in words or "step" in words or "notch" in words or "⅓" in words else 3
        )
        steps = 1.5 if words.startswith(("half", "one-half")) else steps * (2 if words.startswith("two") else 1)
        return {"penalty": steps, "unit": "grade-step", "per": per}
    unit = groups["unit"].lower()
    return {
        "penalty": number_value(groups["n"]),
        "unit": "percent" if unit[0] == "%" or unit.startswith("per") else "points",
        "per": per,
    }


def _per(match: re.Match[str]) -> str | None:
    """For each of what; None for what the sheets' own list has no word for, weeks."""
    if match["span"].lower().startswith("week") and "day" not in match["span"].lower():
        return None
    return "hour" if "hour" in match["span"].lower() and "24" not in match["span"] else "day"


def _refused_days(sentence: Sentence, given: dt.date | None, final: dt.date | None) -> tuple[int, int, int] | None:
    """After how many days a late paper is refused, with the stretch that says so."""
    text = sentence.text
    refused = _REFUSED.search(text)
    if not refused:
        return None
    best: tuple[int, int, int] | None = None
    for match in _DAYS.finditer(text):
        if match["ordinal"]:
            word = match["ordinal"].lower()
            stem = next(
                (i for i, o in enumerate(_ORDINALS, 1) if o.startswith(word)),
                int(word) if word.isdigit() and len(word) < 4 else 0,
            )
            days = stem
        else:
            number = match["n"] or match["n2"] or match["n3"]
            unit = (match["unit"] or match["unit2"] or "days").lower()
            count = 1 if number.lower() in {"a", "an"} else int(number_value(number))
            days = count * 7 if unit.startswith("week") else count // 24 if unit.startswith("hour") else count
        if days and (best is None or abs(match.start() - refused.start()) < abs(best[1] - refused.start())):
            best = (days, match.start(), match.end())
    if best is None and (after := _THEREAFTER.search(text)):
        # "Up to five days late … . Thereafter zero": the days stand before, in this sentence or the last.
        at = sentence.start + after.start()
        for match in _LIMIT_DAYS.finditer(sentence.passage.text[max(0, at - 160) : at]):
            weeks = 7 if match["unit"].lower().startswith("week") else 1
            best = (int(number_value(match["n"] or "1")) * weeks, 0, max(refused.end(), after.end()))
        earlier = find_dates(sentence.passage.text[max(0, at - 160) : at], final) if final and not best else []
        if earlier and earlier[-1].on and final and 0 <= (days := (earlier[-1].on - final).days) < 60:
            best = (days, 0, max(refused.end(), after.end()))
    if best:
        return best[0], min(best[1], refused.start()), max(best[2], refused.end())
    if final and (named := _DAY_OF_MONTH.search(text)) and 1 <= int(named["day"]) <= 31:
        last = next((d for n in range(62) if (d := final + dt.timedelta(days=n)).day == int(named["day"])), final)
        return (last - final).days, min(named.start(), refused.start()), max(named.end(), refused.end())
    if final:
        for dated in find_dates(text, given):
            if dated.on and 0 <= (dated.on - final).days < 120:
                return (dated.on - final).days, min(dated.start, refused.start()), max(dated.end, refused.end())
    return None


def _penalty(sentence: Sentence, *, context: bool) -> tuple[dict[str, Value], int, int] | None:
    """What a sentence takes off a late paper, with the stretch that says so."""
    text = sentence.text
    if rate := _RATE.search(text) or _TURNED.search(text):
        return (_values(rate, _per(rate)), rate.start(), rate.end()) if context or _LOSS.search(text) else None
    if not context or _CAPPED.search(text):
        return None
    if multiplied := read_multipliers(text):
        percent, listed, compound = multiplied
        values: dict[str, Value] = {"penalty": percent, "unit": "percent", "per": "day", "of": "mark"}
        if compound:
            values["compound"] = True
        elif listed and _REFUSED.search(text):
            values["refused_after_days"] = listed
        return values, 0, len(text)
    once = _ONCE.search(text)
    lost = once and (_ONCE_WORD.search(text) or _LOSS.search(re.sub(r"(?i)\blate\b", "", text)))
    tiers = read_tiers(sentence.on, "day")
    if once and (lost or tiers):
        return (
            _values(once, "day" if tiers and not any(tier.in_all for tier in tiers) else "once"),
            once.start(),
            once.end(),
        )
    return None


def _taken_none(sentence: Sentence) -> tuple[int, int] | None:
    """The stretch that says that late work is not taken at all."""
    match = _NO_LATE.search(sentence.text)
    if not match or _DAYS.search(sentence.text):
        return None
    plain = re.match(r"no late|.*accept|.*(?:not (?:be )?\w+|as .+)$", match.group(), re.IGNORECASE)
    rest = re.match(r" (?:be )?(?:accepted|marked|graded|read|taken)", sentence.text[match.end() :])
    return (match.start(), len(sentence.text)) if plain or rest else None


def find_late(sheet: Sheet) -> list[Requirement]:
    """The rule on late papers; where it names a last day, the days are counted from the final paper's."""
    finals = (r.values["on"] for r in find_due(sheet) if r.values["what"] == "final")
    final = next((dt.date.fromisoformat(str(on)) for on in finals if on), None)
    values: dict[str, Value] = {"penalty": None, "unit": None, "per": None, "refused_after_days": None}
    span: Span | None = None
    place: Sentence | None = None
    said: list[str] = []
    for sentence in sheet.sentences:
        text = sentence.text
        if TOLD.search(text) or _BONUS.search(text):
            continue
        near = place is not None and place.passage is sentence.passage
        context = bool(_CONTEXT.search(text) or _CONTEXT.search(sentence.context))
        if values["penalty"] is None and (hit := _penalty(sentence, context=context)):
            values |= hit[0]
            span, place = sentence.span(*hit[1:]), sentence
        elif values["penalty"] is None and (none := _taken_none(sentence)):
            values["refused_after_days"] = 0
            return [ask(sheet, "late", values, sentence.span(*none))]
        here = place is not None and place.passage is sentence.passage
        if context or near or here:
            said.append(text)
            if values["refused_after_days"] is None and (days := _refused_days(sentence, sheet.given, final)):
                values["refused_after_days"] = days[0]
                stretch = sentence.span(days[1], days[2])
                span = join(span, stretch) if span and here else span or stretch
                place = place or sentence
            elif (hours := _HOURS.search(text)) and _REFUSED.search(text):
                values["refused_after_hours"] = int(number_value(hours["n"]))
                span = span or sentence.span(0, len(text))
            elif span is None and context and (cap := _CAPPED.search(text)):
                span, place = sentence.span(cap.start(), len(text)), sentence
    if span is None:
        return []
    per = values["per"]
    return [ask(sheet, "late", {**values, **read_terms(said, per if isinstance(per, str) else None)}, span)]
