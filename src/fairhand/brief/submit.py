"""Submission: by what way, and where."""

from __future__ import annotations

import re
from collections.abc import Iterator

from fairhand.brief.layout import Sentence, Sheet
from fairhand.brief.printing import find_printed_copy
from fairhand.brief.wording import TOLD, ask, force_of
from fairhand.model.requirement import Requirement

Way = tuple[str, str, int, int]
"""By what, where (or empty), and the stretch of the sentence that says so."""

_STOP = (
    r"(?= (?:as|by|on|at|before|no later|in|and|with|from|for|under|where|when|which|using|after|of the|if|not|the"
    r"|outside|inside|near|behind|next)\b| ?[,;:()\t?!—>]| ?\.(?!\w)|$)"
)
_PLACE = (
    rf"(?:the |our |my |your |this |its )?(?P<where>[\w\"'&/-]+(?: (?!(?:as|by|on|to|at|before|no|in|and|with|from|for"
    rf"|under|where|when|which|using|after|of|if|not|the|outside|inside|near|behind"
    rf"|next)\b)[\w\"'&/-]+){{0,4}}){_STOP}"
)
_NOT_FORM = r"(?!(?:an? )?(?:pdf|word|docx|class|time|order|full|person|advance|format)\b)"
_UPLOAD = re.compile(
    rf"\b(?:upload(?:ed|ing)?|due|electronically|post (?:it|your \w+|the \w+)|submit(?:ted)?|submission"
    rf"|hand(?:ed)? (?:it )?in"
    rf"|turn(?:ed)? (?:it )?in|deposit(?:ed)?|placed?|drop(?:ped)?)\b(?P<gap>(?:[^.;?!]|\.(?=[\w,])"
    rf"|(?<=\b[A-Z]..)\.){{0,60}}?) (?:to"
    rf"|through|via|on|in|into|using) {_NOT_FORM}{_PLACE}",
    re.IGNORECASE,
)
_STRAIGHT = re.compile(
    r"(?: (?:it|them|online|electronically|(?:your|the|all) (?:\w+ )?(?:work|papers?|essays?|reports?)"
    r"|as (?:an? )?(?:\w+ )?(?:document|file|pdf)))*|[^.;]{0,50}(?:[ap]\.?m\.?|noon|midnight|\d),",
    re.IGNORECASE,
)
"""Between "submit" and "on Northweb" what leaves no doubt that a system is named."""
_VIA = re.compile(rf"(?:\bsubmit(?:ted)? \(?(?:via|through|by)|\b(?:via|through)) (?:an? )?{_PLACE}", re.IGNORECASE)
_ON_PAGE = re.compile(r"\b(?:page|post) on your (?P<where>portfolio|website|site|blog)\b", re.IGNORECASE)
_NETWORK = re.compile(
    r"\b(?:site|page|folder|portal|tab|link|drop ?box|drop-?box|box|system|platform|drive|online|website|webpage"
    r"|repository|request|portfolio|environment|VLE|LMS|area|module|forum|space|hub|server|locker|tool|inbox|point"
    r"|canvas|course|dropbox|upload)s?$",
    re.IGNORECASE,
)
_ONLINE = re.compile(
    r"\b(?:submit(?:ted)?|hand(?:ed)? in|turn(?:ed)? in) (?:\w+ ){0,3}(?:online|electronically)\b"
    r"|\bonline submission\b|\buploaded?\b",
    re.IGNORECASE,
)
_ADDRESS = r"(?P<address>[\w.+-]{1,64}@[\w-]{1,63}(?:\.[\w-]{1,63}){1,5})"
_EMAIL = re.compile(
    rf"\b(?:(?:e-?)?mail(?:ed)?|in my in-?box|send|sent|submit(?:ted)?|forward(?:ed)?)\b(?:[^.;?!]"
    rf"|\.(?=\w)){{0,60}}?(?:\bat |\bto "
    rf"|: ?|<|\(){_ADDRESS}|\b(?:(?:e-?mail|send) (?:it|them|(?:the|your|a) (?:[\w-]+ ){{0,3}}(?:paper|essay|report"
    rf"|file|copy|draft|version|review))|(?:sent|submitted) by e-?mail|(?:must|should"
    rf"|shall|to) (?:also )?be (?:e-?)?mailed) (?:as (?:an? )?[\w. ]{{1,20}} )?(?:by e-?mail )?to {_PLACE}",
    re.IGNORECASE,
)
_HANDED = re.compile(
    r"\b(?:submi\w+|hand(?: it| them|s|ed|ing)?[- ]in|turn\w* in|due|deadline|upload\w*|electronic\w*|deliver\w*"
    r"|essays?|papers?"
    r"|reports?) ?\b",
    re.IGNORECASE,
)
_BRING = re.compile(r"\bbring (?:\w+ ){0,3}(?:printed |hard |paper )?(?:copy|copies|print-?out)\b", re.IGNORECASE)
_AS_FILE = re.compile(
    rf"\bas (?:an? |one )?(?:\w+ )?(?:PDF|file|document|\.?docx) (?:in|on|to|via|through) {_PLACE}", re.IGNORECASE
)
_USE = re.compile(rf"(?:\buse|^(?:submit|submission|hand[- ]in|upload|where):?) {_PLACE}", re.IGNORECASE)
_ANSWER = re.compile(rf"^(?:(?:in|to|on|via|through|by|at) )?{_PLACE}", re.IGNORECASE)
"""What is left of a sentence that answers where ("Where do I upload it? In the essays folder.")."""
_ELECTRONIC = re.compile(rf"\b(?:electronic|PDF|digital)\b[^.;]{{0,50}}\bsent to {_PLACE}", re.IGNORECASE)
_MAILED = re.compile(
    r"\b(?:e-?mail(?:ed)? (?:it|your (?:paper|essay|report|file))|(?:submit\w*|sen[dt]"
    r"|hand\w* in)\b[^.;]{0,30}\bby e-?mail)\b",
    re.IGNORECASE,
)
_LEFT = re.compile(
    rf"\b(?:hand (?:it |in |them )?|in (?:paper|printed|hard) form|(?:cop(?:y|ies)"
    rf"|on paper)(?=,? (?:to|at|in) (?:the|my|our)\b)"
    rf"|slide|leave|left|post|posted|put|due(?= in my\b)"
    rf"|placed?"
    rf"|deliver(?:ed)?|drop(?:ped)?|deposit(?:ed)?"
    rf"|hand(?:ed)? in|turn(?:ed)? (?:it )?in|submit(?:ted)?)\b[^.;?!]{{0,40}}? (?:in|at|to|into|under|outside"
    rf"|with) {_PLACE}",
    re.IGNORECASE,
)
_AT_ROOM = re.compile(rf"\b(?:to|at) {_PLACE}", re.IGNORECASE)
_IN_CLASS = re.compile(
    r"\b(?:bring|hand (?:it|in|them)?|turn (?:it )?in|due|submit\w*|collected)\b[^.;?!]{0,50}\b(?:to|in"
    r"|at the (?:start|beginning|end) of) (?:the )?(?:class|lecture|seminar|tutorial|section|lab)\b"
    r"|\bdue\b[^.;?!]{0,50}\b(?:start|beginning|end) of (?:class|lecture|seminar|tutorial|section|lab)\b",
    re.IGNORECASE,
)
_TO_ROOM = re.compile(
    r"[^.;,]{0,25}\bto (?:my|the|our) (?:\w+ ){0,2}(?:mail ?box|pigeon-?hole|tray|door|office|desk|drawer)\b",
    re.IGNORECASE,
)
_NOT = re.compile(r"\b(?:not|n't|no|nor|never|neither|without|are not read|instead of)\b", re.IGNORECASE)
_BY_THEN = re.compile(r"\b(?:not|no) later than\b", re.IGNORECASE)
_ROOM = re.compile(
    r"\b(?:mail ?box|pigeon-?hole|tray|door|office|desk|slot|drawer|essay box|letter ?box|in-tray|reception)$",
    re.IGNORECASE,
)
_WHERE = re.compile(r"\b(?:where|upload|submi\w+|hand(?:ed|ing)? (?:it )?in|turn (?:it )?in)\b", re.IGNORECASE)
_TIMED = re.compile(r"(?:[ap]\.?m\.?|noon|midnight|\d:\d\d),? (?P<in>(?:in|to|on|via|through) )", re.IGNORECASE)
_DUE_ROW = re.compile(r"\b(?:final|essay|paper|report)\b.*\d", re.IGNORECASE)
_QUESTIONS = re.compile(r"\bquestions?\b", re.IGNORECASE)
_COPY = re.compile(r"\b(?:paper|essay|cop(?:y|ies)|report|it|due)\b", re.IGNORECASE)
_HANDED_OVER = re.compile(r"\b(?:hand|submit|turn|bring|leave|deliver|post|give|must be)\b", re.IGNORECASE)
_OTHER = re.compile(
    r"\b(?:podcast|questions|proposal|outline|(?<!final )draft|review forms?|extension|reading|slides|forum posts?"
    r"|discussion"
    r"|working thesis|data|consent|another (?:course|class|module)|other (?:course|class)|anytime|late|comment)\b",
    re.IGNORECASE,
)
_NOT_PLACE = re.compile(
    r"^(?:me|it|them|you|us|class|time|word|pdf|docx|this|that|date|midnight|noon|your|another|advance|person|full"
    r"|order|comment|\d.*|(?:mon|tues|wednes|thurs|fri|satur|sun)day.*|(?:jan|feb|mar|apr|may|june?|july?|aug"
    r"|sept?|oct|nov|dec)\.? \d.*|january|february|march|april|may|june|july"
    r"|august|september|october|november|december)$",
    re.IGNORECASE,
)


def _trim(where: str) -> str:
    where = where.replace('"', "")
    return re.sub(r"^(?:the|our|my|your|this|its|a|an) ", "", where.strip(" '\""), flags=re.IGNORECASE)


def _email(text: str) -> tuple[str, int, int] | None:
    match = _EMAIL.search(text) or _ELECTRONIC.search(text)
    if not match:
        return None
    if match.groupdict().get("address"):
        return match["address"].rstrip("."), match.start(), match.end()
    where = _trim(match["where"])
    return ("" if _NOT_PLACE.match(where) else where), match.start(), match.end()


def _upload(text: str, context: str) -> tuple[str, int, int] | None:
    if match := _ON_PAGE.search(text):
        return match["where"], match.start(), match.end()
    patterns = (_UPLOAD, _AS_FILE, _VIA, _USE) if _HANDED.search(f"{text} {context}") else (_UPLOAD,)
    for pattern in patterns:
        for match in pattern.finditer(text):
            where = _trim(match["where"])
            verb = match.group().lower()
            if _NOT_PLACE.match(where) or re.search(r"\bprint", match.group(), re.IGNORECASE):
                continue
            if pattern is not _UPLOAD and re.search(r"s$", where) and not where.lower().endswith("canvas"):
                continue
            if _NETWORK.search(where) and (
                re.match(r"upload|submi|post|.*(?:upload|electronic)", verb)
                or not re.search(
                    r"\b(?:my|essay|mail|pigeon|office|letter|wooden|blue) ?box", match.group(), re.IGNORECASE
                )
            ):
                if re.search(r"\b(?:essay|mail|letter) ?box\b", where, re.IGNORECASE):
                    continue
                return where, match.start(), match.end()
            named = pattern is not _USE and re.search(
                r"\b(?:through|via|using) $", match.group()[: match.start("where") - match.start()]
            )
            on = pattern is _UPLOAD and _STRAIGHT.fullmatch(match["gap"]) and re.fullmatch(r"[A-Z][\w-]+", where)
            if re.search(r"upload|electronic", verb) or (named and where[:1].isupper()) or on:
                return where, match.start(), match.end()
    return None


def _answered(sentence: Sentence) -> tuple[str, int, int] | None:
    """A place on the network that stands alone under a question or label asking where, or last in a line of dates."""
    passage, text = sentence.passage, sentence.text
    asked = _WHERE.search(passage.key or (passage.heading if passage.heading.endswith("?") else ""))
    begin = max(0, passage.body - sentence.start) if passage.body else 0
    match = _ANSWER.match(text[begin:]) if asked else None
    if match is None and (timed := _TIMED.search(text)):
        begin, match = timed.start("in"), _ANSWER.match(text[timed.start("in") :])
    if match is None and passage.kind == "row" and _DUE_ROW.search(text):
        begin = text.rfind(", ") + 2
        match = _ANSWER.match(text[begin:])
    if match is None or not _NETWORK.search(where := _trim(match["where"])) or _NOT_PLACE.match(where):
        return None
    return where, begin + match.start(), begin + match.end()


def _in_class(text: str, *, printed: bool) -> tuple[str, int, int] | None:
    match = _IN_CLASS.search(text) or _BRING.search(text)
    if not match or _OTHER.search(text[max(0, match.start() - 60) : match.end()]):
        return None
    if _TO_ROOM.match(text, match.end()):
        return None
    return ("", match.start(), match.end()) if printed or _COPY.search(match.group()) else None


def _print(text: str, copy: re.Match[str] | None) -> tuple[str, int, int] | None:
    left = _LEFT.search(text)
    left = left or (_AT_ROOM.search(text) if copy else None)
    where = _trim(left["where"]) if left else ""
    if copy is None:
        # What is left in a box or under a door is paper, whether or not the sheet says so.
        plain = _BY_THEN.sub("", text)
        paper = left and _ROOM.search(where) and not _OTHER.search(text) and not _NOT.search(plain)
        return (where, left.start(), left.end()) if left and paper else None
    if not left and not _HANDED_OVER.search(text):
        return None
    end = max(copy.end(), left.end() if left else 0)
    return ("" if _NOT_PLACE.match(where) else where), min(copy.start(), left.start() if left else copy.start()), end


def _ways(sentence: Sentence) -> Iterator[Way]:
    """The ways that one sentence names: by what, where, and the stretch that names it."""
    text = sentence.text
    if (hit := _email(text)) and not _NOT.search(text[: hit[1]]) and not _QUESTIONS.search(text):
        yield ("email", *hit)
    elif (
        (hit := _upload(text, sentence.context))
        and not _NOT.search(re.split(r"[,;)]", text[max(0, hit[1] - 25) : hit[1]])[-1])
        and not _OTHER.search(text[max(0, hit[1] - 40) : hit[2]])
    ) or (hit := _answered(sentence)):
        yield ("upload", *hit)
    copy = find_printed_copy(text)
    if hit := _in_class(text, printed=copy is not None):
        yield ("in-class", *hit)
    elif hit := _print(text, copy):
        yield ("print", *hit)


def _ways_without_place(sheet: Sheet) -> Iterator[tuple[Sentence, Way]]:
    """What a sheet that names no place still says: online, by mail, or in print."""
    for sentence in sheet.sentences:
        text = sentence.text
        if TOLD.search(text):
            continue
        if (match := _ONLINE.search(text) or _MAILED.search(text)) and not _NOT.search(text):
            yield sentence, ("email" if "mail" in match.group().lower() else "upload", "", match.start(), match.end())
        elif copy := find_printed_copy(text):
            yield sentence, ("print", "", copy.start(), copy.end())


def find_submit(sheet: Sheet) -> list[Requirement]:
    """How and where the paper is handed in, each way once."""
    ways = [(s, way) for s in sheet.sentences if not TOLD.search(s.text) for way in _ways(s)]
    found: dict[str, Requirement] = {}
    for sentence, (by, where, start, end) in ways or _ways_without_place(sheet):
        if by not in found:
            values = {"by": by, "where": where or None}
            found[by] = ask(sheet, "submit", values, sentence.span(start, end), force_of(sentence.text))
    return list(found.values())
