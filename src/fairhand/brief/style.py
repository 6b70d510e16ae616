"""Style: which manner of citing the sheet asks for, and which edition."""

from __future__ import annotations

import re

from fairhand.brief.layout import Sentence, Sheet
from fairhand.brief.terms import make_terms
from fairhand.brief.wording import ask, force_of
from fairhand.model.requirement import Requirement

_NAMES: tuple[tuple[str, str], ...] = (
    ("mla", r"MLA|Modern Language Association"),
    ("apa", r"APA|American Psychological Association"),
    ("chicago-notes", r"Chicago|Turabian|CMOS|CMS"),
    ("harvard", r"Harvard"),
    ("ieee", r"IEEE"),
    ("ama", r"AMA|American Medical Association"),
    ("vancouver", r"Vancouver"),
    ("asa", r"ASA|American Sociological Association"),
)
_NAME = make_terms(_NAMES, flags=0)
_CITING = re.compile(
    r"\b(?:styles?|format(?:ted|ting)?|referenc\w+|cit(?:e|ed|ing|ations?)|edition|ed\.|documentation|guidelines"
    r"|manual|notes?|footnotes?|endnotes?|author-date"
    r"|bibliograph\w+|conventions?|system|rules|handbook|works cited)\b",
    re.IGNORECASE,
)
_KEY = re.compile(
    r"\b(?:style|referenc\w+|citations?|cit(?:e|ing)|documentation|format|sources?|presentation|bibliography)\b",
    re.IGNORECASE,
)
_AUTHOR_DATE = re.compile(r"author[-–/ ]date|name[- ]year|parenthetical|in-text", re.IGNORECASE)
_NOT_AUTHOR_DATE = re.compile(r"\b(?:not|rather than|instead of) (?:the )?author[-–/ ]date\b", re.IGNORECASE)
_NOTES = re.compile(r"\b(?:notes?|footnotes?|endnotes?|full note)\b", re.IGNORECASE)
_ORDINALS = "first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth".split()
_EDITION = re.compile(
    rf"(?P<n>\d{{1,2}})(?:st|nd|rd|th)?[ -](?:edition|ed\b\.?)|(?P<word>{'|'.join(_ORDINALS)}|seventeenth"
    rf"|eighteenth|sixteenth) edition|edition (?P<m>\d{{1,2}})\b",
    re.IGNORECASE,
)
_LATE_ORDINALS = {"sixteenth": 16, "seventeenth": 17, "eighteenth": 18}
_ANY = re.compile(
    r"\b(?:don't|do not|not) (?:mind|care|fussed)\b[^.!?]{0,60}\bconsisten\w+|"
    r"\bany consistent (?:[\w-]+ ){0,3}(?:styles?|systems?|formats?|conventions?|method)\b"
    r"|\b(?:styles?|systems?) (?:is|are) (?:free|open|up to you|your (?:own )?choice"
    r"|yours)\b[^.!?]{0,80}\b(?:consisten|uniform)\w*"
    r"|\b(?:any|whatever|whichever|which|a|one|your (?:own|preferred)|no (?:particular|specific"
    r"|required))\b[^.;:!?]{0,60}?\b(?:styles?|systems?|formats?|conventions?|method)\b"
    r"[^.!?]{0,90}?\b(?:consisten\w+|uniform\w*|stick (?:to|with)|(?:as|so) long as|provided|do(?:n't"
    r"| not) mix|the same)",
    re.IGNORECASE,
)
_CITED = re.compile(
    r"\b(?:quot\w+|cit\w+|referenc\w+|documentation|bibliograph\w+|foot|endnote|sources?|style)\b", re.IGNORECASE
)
_OWN_TASTE = re.compile(
    r"\b(?:I (?:tend to|usually|often|personally|like to)|sample|for example|last year|not (?:in )?(?:MLA|APA"
    r"|Chicago|Harvard))\b",
    re.IGNORECASE,
)
_EITHER = re.compile(r"\W*[A-Z][A-Za-z]+ or [A-Z][A-Za-z]+\b(?: is| are|,|\.)")
_TURN = re.compile(
    r"\b(?:not|rather than|instead of|no longer|isn't|don't use|do not use|never)\b(?: \w+){0,2} ?$", re.IGNORECASE
)


def _edition(text: str, start: int, end: int) -> tuple[int | None, int]:
    """The edition named beside a style's name, with the end of the words that name it."""
    if near := re.match(r" (\d{1,2})\b(?! ?(?:pt|point|percent|%|in\b|pages|words|sources))", text[end : end + 5]):
        return int(near[1]), end + near.end()
    if bracketed := re.match(r" ?\((\d{1,2})(?:st|nd|rd|th)\)", text[end : end + 8]):
        return int(bracketed[1]), end + bracketed.end()
    after = re.split(r"[.;](?!\d)(?! ed)", text[end : end + 70])[0]
    match = _EDITION.search(after)
    if match:
        stop = end + match.end()
    else:
        match = _EDITION.search(text[max(0, start - 35) : start])
        stop = end
        if match and not re.fullmatch(r"(?: of| of the)?[ (]*", text[max(0, start - 35) + match.end() : start]):
            match = None
    if not match:
        return None, end
    word = (match["word"] or "").lower()
    if word:
        return _LATE_ORDINALS.get(word) or _ORDINALS.index(word) + 1, stop
    return int(match["n"] or match["m"]), stop


def _chicago(sentence: Sentence, start: int, end: int) -> str:
    near = _NOT_AUTHOR_DATE.sub("", sentence.text[max(0, start - 60) : end + 70])
    if _AUTHOR_DATE.search(near) and not re.search(r"notes?[- ]and[- ]bibliography|footnotes", near, re.IGNORECASE):
        return "chicago-author-date"
    return "chicago-notes"


def find_style(sheet: Sheet) -> list[Requirement]:
    """The styles that the sheet names, or its leave to use any one consistently."""
    found: list[Requirement] = []
    seen: set[str] = set()

    def add(style: str, edition: int | None, sentence: Sentence, start: int, end: int) -> None:
        if style not in seen:
            seen.add(style)
            found.append(
                ask(
                    sheet,
                    "style",
                    {"style": style, "edition": edition},
                    sentence.span(start, end),
                    force_of(sentence.text),
                )
            )

    for sentence in sheet.sentences:
        text = sentence.text
        if _OWN_TASTE.search(text) or (
            re.search(r"\d+ ?(?:%|points?|marks?)?\)?$", text)
            and sentence.passage.kind == "row"
            and not _KEY.search(sentence.passage.key)
        ):
            continue
        free = _ANY.search(text)
        if free and (_CITED.search(text) or _KEY.search(sentence.context)):
            add("any-consistent", None, sentence, free.start(), free.end())
            continue
        for match in _NAME.finditer(text):
            name = _NAME.name(match)
            near = text[max(0, match.start() - 50) : match.end() + 40]
            if _TURN.search(text[max(0, match.start() - 25) : match.start()]):
                continue
            if re.search(
                r"\b(?:Press|University|Business School|newspaper|Tribune)\b", text[match.end() : match.end() + 25]
            ):
                continue
            if not (
                _CITING.search(near)
                or _KEY.search(sentence.context)
                or len(text) < 30
                or _EITHER.match(text)
                or re.search(r"\b(?:use|follow)\b", near, re.IGNORECASE)
            ):
                continue
            if re.search(r"\(\d+ ?(?:%|points|marks)\)", near):
                continue
            edition, end = _edition(text, match.start(), match.end())
            if name == "chicago-notes":
                name = _chicago(sentence, match.start(), match.end())
            tail = re.match(r"[- ](?:style|format|referencing|notes?|author-date|footnotes)\b", text[end:])
            add(name, edition, sentence, match.start(), end + tail.end() if tail else end)
    return found
