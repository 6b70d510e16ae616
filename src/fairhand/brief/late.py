"""Lateness: what a late paper loses, and after how many days it is refused."""

from __future__ import annotations

import datetime as dt
import re

from fairhand.brief.dates import find_dates
from fairhand.brief.due import find_due
from fairhand.brief.layout import Sentence, Sheet
from fairhand.brief.numbers import COUNT, NUMBER, number_value
from fairhand.brief.wording import TOLD, ask, join
from fairhand.model.requirement import Requirement
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
    r"|24-hour period))"
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
    rf"|week)?(?P<span>days?|hours?)(?: or part (?:of a \w+|thereof))?(?: late"
    rf"| of lateness)?)(?P<between>[^.;]{{0,45}}?)\b(?:{_AMOUNT}|{_GRADE})",
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
    r"\b(?:not (?:be |to )?(?:accept|read|mark|grade|take|accepted|marked|graded|read|taken|considered|received)"
    r"|no(?:thing| \w+(?: \w+)?)\b[^.;]{0,30}"
    r"\b(?:accepted|taken|marked)|won't (?:take|accept|mark|read|grade|be (?:accepted"
    r"|marked|graded|read))"
    r"|will not (?:take|accept|mark|read|grade)|(?<!not )accepted (?:for )?(?:up to|until)|can(?:not|'t) (?:accept"
    r"|take|be accepted|be marked)|(?:don't"
    r"|do not) (?:accept|take|read|mark|grade)|(?:is|are|be|as|at|a|of|score|mark is|recorded as|marked at"
    r"|receives?|gets?|scores?) (?:recorded as |a |marked at )?(?:zero|nought|0\b|F\b)|fails?\b|refused|no (?:credit"
    r"|marks?\b(?! are)|points will be)|zero)",
    re.IGNORECASE,
)
_DAYS = re.compile(
    rf"\b(?:(?:more|later|longer) than|after|over|beyond|exceeding|up to|within|for|to) (?:a |the )?(?:first "
    rf"|maximum of )?(?P<n>{COUNT}|a|an) (?:calendar |working |school |full |late )?(?P<unit>days?|weeks?|hours?)"
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
    r"\b(?:(?:do not|don't|will not|won't|cannot|never) accept (?:any )?late|no late (?:work|papers?|essays?"
    r"|submissions?|assignments?)|late (?:work|papers?|essays?|submissions?"
    r"|assignments?)(?: (?:will|is|are|can|be))* not)\b",
    re.IGNORECASE,
)
_ORDINALS = "first second third fourth fifth sixth seventh eighth ninth tenth".split()
_BONUS = re.compile(
    r"\b(?:early|bonus|extra credit|of the (?:module|course)|counts? for|makes? up|word limit|over(?:-| )length"
    r"|over the (?:limit|word))\b",
    re.IGNORECASE,
)


def _values(match: re.Match[str], per: str) -> dict[str, str | int | float | None]:
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


def _per(match: re.Match[str]) -> str:
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


def find_late(sheet: Sheet) -> list[Requirement]:
    """The rule on late papers; where it names a last day, the days are counted from the final paper's."""
    finals = (r.values["on"] for r in find_due(sheet) if r.values["what"] == "final")
    final = next((dt.date.fromisoformat(str(on)) for on in finals if on), None)
    penalty: dict[str, str | int | float | None] | None = None
    span: Span | None = None
    refused: int | None = None
    place: Sentence | None = None
    for sentence in sheet.sentences:
        text = sentence.text
        near = place is not None and place.passage is sentence.passage
        context = bool(_CONTEXT.search(text) or _CONTEXT.search(sentence.context))
        if TOLD.search(text) or _BONUS.search(text):
            continue
        rate = _RATE.search(text) or _TURNED.search(text)
        if (
            penalty is None
            and rate
            and (context or (_LOSS.search(text) and rate.groupdict().get("grade") is not None) or _LOSS.search(text))
        ):
            if not context and not re.search(r"\b(?:day|hour)", rate["span"]):
                continue
            penalty = _values(rate, _per(rate))
            span, place = sentence.span(rate.start(), rate.end()), sentence
        elif (
            penalty is None
            and context
            and (once := _ONCE.search(text))
            and (_ONCE_WORD.search(text) or _LOSS.search(re.sub(r"(?i)\blate\b", "", text)))
            and not re.search(r"\bcapped|maximum|at most", text)
        ):
            penalty = _values(once, "once")
            span, place = sentence.span(once.start(), once.end()), sentence
        elif penalty is None and _NO_LATE.search(text) and not rate:
            match = _NO_LATE.search(text)
            if (
                match
                and (
                    re.match(r"no late|.*accept", match.group(), re.IGNORECASE)
                    or re.match(r" (?:be )?(?:accepted|marked|graded|read|taken)", text[match.end() :])
                )
                and not _DAYS.search(text)
            ):
                return [
                    ask(
                        sheet,
                        "late",
                        {"penalty": None, "unit": None, "per": None, "refused_after_days": 0},
                        sentence.span(match.start(), len(text)),
                    )
                ]
        if refused is None and (context or near) and (days := _refused_days(sentence, sheet.given, final)):
            refused = days[0]
            here = sentence.span(days[1], days[2])
            near_span = span if place and place.passage is sentence.passage else None
            span = join(near_span, here) if near_span else span or here
            place = place or sentence
    if span is None:
        return []
    values: dict[str, str | int | float | None] = penalty or {"penalty": None, "unit": None, "per": None}
    return [ask(sheet, "late", {**values, "refused_after_days": refused}, span)]
