"""Submission: by what way, and where."""

from __future__ import annotations

import re

from fairhand.brief.layout import Sentence, Sheet
from fairhand.brief.wording import TOLD, ask, force_of
from fairhand.model.requirement import Requirement

_STOP = (
    r"(?= (?:as|by|on|at|before|no later|in|and|with|from|for|under|where|when|which|using|after|of the|if|not|the"
    r"|outside|inside|near|behind|next)\b|[.,;:()\t?!—]|$)"
)
_PLACE = (
    rf"(?:the |our |my |your |this |its )?(?P<where>[\w'&/-]+(?: (?!(?:as|by|on|at|before|no|in|and|with|from|for"
    rf"|under|where|when|which|using|after|of|if|not|the|outside|inside|near|behind"
    rf"|next)\b)[\w'&/-]+){{0,4}}){_STOP}"
)
_UPLOAD = re.compile(
    rf"\b(?:upload(?:ed|ing)?|post (?:it|your \w+|the \w+)|submit(?:ted)?|submission|hand(?:ed)? (?:it )?in"
    rf"|turn(?:ed)? (?:it )?in|deposit(?:ed)?|placed?|drop(?:ped)?)\b(?P<gap>(?:[^.;:?!]|\.(?=\w)){{0,60}}?) (?:to"
    rf"|through|via|on|in|into|using) {_PLACE}",
    re.IGNORECASE,
)
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
    rf"\b(?:e-?mail(?:ed)?|send|sent|submit(?:ted)?|forward(?:ed)?)\b(?:[^.;?!]|\.(?=\w)){{0,60}}?(?:\bat |\bto "
    rf"|: ?|<){_ADDRESS}|\b(?:(?:e-?mail|send) (?:it|them|(?:the|your|a) (?:[\w-]+ ){{0,3}}(?:paper|essay|report"
    rf"|file|copy|draft|version|review))|(?:sent|submitted) by e-?mail|(?:must|should"
    rf"|to) be e-?mailed) (?:as (?:an? )?[\w. ]{{1,20}} )?(?:by e-?mail )?to {_PLACE}",
    re.IGNORECASE,
)
_HANDED = re.compile(
    r"\b(?:submi\w+|hand\w*[- ]in|turn\w* in|due|deadline|upload\w*|electronic\w*|deliver\w*|essays?|papers?"
    r"|reports?) ?\b",
    re.IGNORECASE,
)
_BRING = re.compile(r"\bbring (?:\w+ ){0,3}(?:printed |hard |paper )?(?:copy|copies|print-?out)\b", re.IGNORECASE)
_ELECTRONIC = re.compile(rf"\b(?:electronic|PDF|digital)\b[^.;]{{0,50}}\bsent to {_PLACE}", re.IGNORECASE)
_MAILED = re.compile(r"\b(?:e-?mail(?:ed)? (?:it|your (?:paper|essay|report|file))|by e-?mail)\b", re.IGNORECASE)
_PRINT = re.compile(
    r"\b(?:printed|paper|hard)[- ](?:copy|copies)\b|\bprint(?:ed)?\b(?: (?:it|the|your|out|two copies)\b)?"
    r"|\bhard ?copy\b",
    re.IGNORECASE,
)
_LEFT = re.compile(
    rf"\b(?:hand (?:it |in |them )?|leave|left|post|posted|put|placed?|deliver(?:ed)?|drop(?:ped)?|deposit(?:ed)?"
    rf"|hand(?:ed)? in|turn(?:ed)? (?:it )?in|submit(?:ted)?)\b[^.;?!]{{0,40}}? (?:in|at|to|into|under|outside"
    rf"|with) {_PLACE}",
    re.IGNORECASE,
)
_IN_CLASS = re.compile(
    r"\b(?:bring|hand (?:it|in|them)?|turn (?:it )?in|due|submit\w*|collected)\b[^.;?!]{0,50}\b(?:to|in"
    r"|at the (?:start|beginning|end) of) (?:the )?(?:class|lecture|seminar|tutorial|section|lab)\b",
    re.IGNORECASE,
)
_NOT = re.compile(r"\b(?:not|n't|no|nor|never|neither|without|are not read|instead of)\b", re.IGNORECASE)
_OTHER = re.compile(
    r"\b(?:podcast|questions|proposal|outline|draft|review forms?|extension|reading|slides|forum posts?|discussion"
    r"|data|consent|another (?:course|class|module)|other (?:course|class)|anytime|late|comment)\b",
    re.IGNORECASE,
)
_NOT_PLACE = re.compile(
    r"^(?:me|it|them|you|us|class|time|word|pdf|docx|this|that|date|midnight|noon|your|another|advance|person|full"
    r"|order|comment|\d.*|(?:mon|tues|wednes|thurs|fri|satur|sun)day.*|january|february|march|april|may|june|july"
    r"|august|september|october|november|december)$",
    re.IGNORECASE,
)


def _trim(where: str) -> str:
    return re.sub(r"^(?:the|our|my|your|this|its|a|an) ", "", where.strip(" '\""), flags=re.IGNORECASE)


def _email(text: str) -> tuple[str, int, int] | None:
    match = _EMAIL.search(text) or _ELECTRONIC.search(text)
    if not match:
        return None
    if match.groupdict().get("address"):
        return match["address"].rstrip("."), match.start(), match.end()
    where = _trim(match["where"])
    return ("" if _NOT_PLACE.match(where) else where), match.start(), match.end()


def _upload(text: str) -> tuple[str, int, int] | None:
    if match := _ON_PAGE.search(text):
        return match["where"], match.start(), match.end()
    patterns = (_UPLOAD, _VIA) if _HANDED.search(text) else (_UPLOAD,)
    for pattern in patterns:
        for match in pattern.finditer(text):
            where = _trim(match["where"])
            verb = match.group().lower()
            if _NOT_PLACE.match(where) or _PRINT.search(match.group()):
                continue
            if pattern is _VIA and re.search(r"s$", where) and not where.lower().endswith("canvas"):
                continue
            if _NETWORK.search(where) and (
                verb.startswith(("upload", "submi", "post"))
                or not re.search(
                    r"\b(?:my|essay|mail|pigeon|office|letter|wooden|blue) ?box", match.group(), re.IGNORECASE
                )
            ):
                if re.search(r"\b(?:essay|mail|letter) ?box\b", where, re.IGNORECASE):
                    continue
                return where, match.start(), match.end()
            if verb.startswith("upload"):
                return where, match.start(), match.end()
    return None


def find_submit(sheet: Sheet) -> list[Requirement]:
    """How and where the paper is handed in, each way once."""
    found: list[Requirement] = []
    seen: dict[str, str | None] = {}
    printed: Sentence | None = None

    def add(by: str, where: str | None, sentence: Sentence, start: int, end: int) -> None:
        if by not in seen:
            seen[by] = where
            found.append(
                ask(
                    sheet,
                    "submit",
                    {"by": by, "where": where or None},
                    sentence.span(start, end),
                    force_of(sentence.text),
                )
            )

    for sentence in sheet.sentences:
        text = sentence.text
        if TOLD.search(text):
            continue
        if (
            (hit := _email(text))
            and not _NOT.search(text[: hit[1]])
            and not re.search(r"\bquestions?\b", text, re.IGNORECASE)
        ):
            add("email", hit[0], sentence, hit[1], hit[2])
        elif (
            (hit := _upload(text))
            and not _NOT.search(text[max(0, hit[1] - 25) : hit[1]])
            and not _OTHER.search(text[max(0, hit[1] - 40) : hit[2]])
        ):
            add("upload", hit[0], sentence, hit[1], hit[2])
            continue
        print_hit = _PRINT.search(text)
        copy = (
            print_hit
            and not _NOT.search(text[max(0, print_hit.start() - 25) : print_hit.start()])
            and not re.search(
                r"only in print|online or printed|printed (?:or|and|petitions|sources|works|books|encyc)|printed in"
                r"|printed \w+ in the",
                text,
            )
        )
        if copy and re.match(r"(?:printed|print)$", print_hit.group(), re.IGNORECASE) if print_hit else False:
            copy = bool(
                re.search(
                    r"\b(?:must|should|to|will|has to) be (?:typed and )?printed|\bprint (?:the|your|it|out)\b",
                    text,
                    re.IGNORECASE,
                )
            )
        in_class = _IN_CLASS.search(text) or (_BRING.search(text) if copy else None)
        if (
            in_class
            and not _OTHER.search(text[max(0, in_class.start() - 60) : in_class.end()])
            and (copy or re.search(r"\b(?:paper|essay|copy|report|it|due)\b", in_class.group(), re.IGNORECASE))
        ):
            add("in-class", None, sentence, in_class.start(), in_class.end())
        elif copy and print_hit:
            left = _LEFT.search(text)
            where = _trim(left["where"]) if left and not _NOT_PLACE.match(_trim(left["where"])) else None
            handing = left or re.search(r"\b(?:hand|submit|turn|bring|leave|deliver|post|give)\b", text, re.IGNORECASE)
            if handing or re.search(r"\bmust be\b", text):
                add(
                    "print",
                    where,
                    sentence,
                    min(print_hit.start(), left.start() if left else print_hit.start()),
                    max(print_hit.end(), left.end() if left else 0),
                )
            printed = sentence
    if not found:
        for sentence in sheet.sentences:
            if (
                (match := _ONLINE.search(sentence.text) or _MAILED.search(sentence.text))
                and not _NOT.search(sentence.text)
                and not TOLD.search(sentence.text)
            ):
                add(
                    "email" if "mail" in match.group().lower() else "upload", None, sentence, match.start(), match.end()
                )
    if printed is not None and "print" not in seen and not found:
        add("print", None, printed, 0, len(printed.text))
    return found
