"""What stands on the pages beside the text: page numbers, heads, title page, line numbers, numbered headings."""

from __future__ import annotations

import re
from collections.abc import Iterator

from fairhand.brief.hit import Hit
from fairhand.brief.layout import Sentence

_PAGE_NUMBERS = re.compile(
    r"\b(?:page[- ]numbers?(?:ing|ed)?|number(?:ed)? (?:the |all |your |every |each )?(?:of the )?pages?"
    r"|(?<!\d )pages?:? (?:(?:are|is|must|should|shall|will|to|be|all) ){0,3}numbered|pagination|paginated?)\b",
    re.IGNORECASE,
)
_CITED_PAGES = re.compile(
    r"\b(?:specific|referencing|give page|cit(?:e|es|ed|ing|ation|ations)|quot\w+|sources?|lacks?|author|card"
    r"|reference to|references?"
    r"|just put|when quoting|for each)\b",
    re.IGNORECASE,
)
_OF_THE_PAGE = re.compile(r"\b(?:margins?|spac(?:ed|ing)|font|title page)\b", re.IGNORECASE)
_VERTICAL = re.compile(r"\b(?P<v>top|upper|bottom|lower|foot|head|footer|header)\b", re.IGNORECASE)
_SIDE = re.compile(r"\b(?P<s>right|left|centred?|centered?|center|middle)(?:-hand)?\b", re.IGNORECASE)
_RUNNING = re.compile(
    r"\b(?:running (?:heads?|headers?|title)|(?:page )?headers? (?:with|containing|that (?:has|gives|bears"
    r"|includes)|showing|on (?:each|every))"
    r"|(?:(?:sur|last |family )?name|(?:student|candidate|matriculation) number|short title)\b[^.;]{0,40}"
    r"\b(?:in|as) (?:the|a|each|every) (?:page )?header)\b",
    re.IGNORECASE,
)
_TITLE_PAGE = re.compile(r"\b(?:(?:separate )?title[- ]page|(?:cover|front) (?:page|sheet)|titlepage)\b", re.IGNORECASE)
_NO_TITLE_PAGE = re.compile(
    r"\b(?:no|without (?:a )?|(?:do not|don't) (?:include|add|use|make|attach|bother with|give) (?:a )?"
    r"|omit (?:the |a )?|leave off (?:the )?) ?(?:separate )?(?:title[- ]page|cover (?:page|sheet))",
    re.IGNORECASE,
)
_NOT_NEEDED = re.compile(r"\b(?:needed|necessary|required|need|have to|optional)\b", re.IGNORECASE)
_MUST_NOT = re.compile(r"\b(?:none should|should not|must not|do not|don't)\b", re.IGNORECASE)
_LINES = re.compile(
    r"\b(?:(?:continuous(?:ly)? )?line[- ]number(?:s|ed|ing)?|lines (?:should be |must be |are |to be )?numbered"
    r"|number (?:the|your|all) lines)\b",
    re.IGNORECASE,
)
_HEADINGS = re.compile(
    r"\b(?:number(?:ed)? (?:your |the |all )*(?:(?:sub-?)?headings|sections)|(?:sub-?)?headings?(?: (?:should be"
    r"|must be|are"
    r"|to be))? (?:\w+ )?numbered|sections? (?:should be|must be|are|to be|shall be) (?:\w+ )?numbered)\b",
    re.IGNORECASE,
)
_NEGATION = re.compile(r"\b(?:no|not|without|never|optional|unnecessary|instead of|neither|nor)\b|n't\b", re.IGNORECASE)


def _negated(text: str, start: int, end: int) -> bool:
    """Whether the clause round a stretch denies it."""
    left = max(text.rfind(mark, 0, start) for mark in ",;(.") + 1
    right = min((at for mark in ",;)." if (at := text.find(mark, end)) >= 0), default=len(text))
    return bool(_NEGATION.search(text[left:right]))


def find_page_numbers(sentence: Sentence) -> Iterator[Hit]:
    """Page numbers, with the place on the page where one is said."""
    text = sentence.text
    match = _PAGE_NUMBERS.search(text)
    if not match:
        return
    near = text[match.end() : match.end() + 70]
    cut = re.search(r"[;.]|, (?:and )?(?:double|one|1|single|\d|your|with your|an?\b)", near)
    near = near[: cut.start()] if cut else near
    ahead = text[max(0, match.start() - 50) : match.start()]
    vertical, side = _VERTICAL.search(near), _SIDE.search(near)
    before_it = _VERTICAL.search(ahead), _SIDE.search(ahead)
    if not (vertical or side) and all(before_it):
        vertical, side = before_it
        near = ahead
    if not (vertical or side):
        among = _OF_THE_PAGE.search(text) and re.search(r"(?:,|\band|\+) (?:with )?$", text[: match.start()])
        if _CITED_PAGES.search(text[max(0, match.start() - 90) : match.end() + 30] if among else text) or (
            len(text.split()) > 25
            and not among
            and "numbered" not in match.group().lower()
            and not match.group().lower().startswith("number")
        ):
            return
        yield "page-numbers", True, match.start(), match.end()
        return
    if _CITED_PAGES.search(text[max(0, match.start() - 30) : match.end()]):
        return
    end = match.end() + max(m.end() for m in (vertical, side) if m) if near is not ahead else match.end()
    yield "page-numbers", _place(vertical, side), match.start(), end


def _place(vertical: re.Match[str] | None, side: re.Match[str] | None) -> str:
    words = []
    if vertical:
        words.append("top" if vertical["v"].lower() in {"top", "upper", "head", "header"} else "bottom")
    if side:
        words.append(side["s"].lower() if side["s"].lower() in {"left", "right"} else "centre")
    return " ".join(words)


def find_heads(sentence: Sentence) -> Iterator[Hit]:
    """A running head."""
    text = re.sub(r"\([^()]*\)", lambda aside: " " * len(aside.group()), sentence.text)
    match = _RUNNING.search(text)
    if match and not _negated(text, match.start(), match.end()):
        yield "running-head", True, match.start(), match.end()


def find_title_pages(sentence: Sentence) -> Iterator[Hit]:
    """A title page, or that none is wanted; that none is *needed* says nothing."""
    text = sentence.text
    match = _TITLE_PAGE.search(text)
    if not match:
        return
    before, after = text[: match.start()], text[match.end() :]
    negative = _NO_TITLE_PAGE.search(text)
    if negative and re.search(r"\b(?:words|pages)\b[^.;()]{0,20}\($", text[: negative.start()]):
        return  # what the count leaves out is not forbidden
    if negative:
        rest = text[negative.end() :]
        if not _NOT_NEEDED.search(rest[:25]) or _MUST_NOT.search(rest):
            yield "no-title-page", True, negative.start(), negative.end()
        return
    if _negated(text, match.start(), match.end()):
        return
    opens = not before.strip(" -") or before.strip().lower() in {"a", "separate"}
    if (
        not opens
        and not re.match(r" (?:should|must|needs to|has to|will) ", after)
        and re.search(
            r"\b(?:on|the|each|their|from|of|count\w*|excluding|exclud\w+|excludes|including|counting) (?:the "
            r"|your |a )?$",
            before,
            re.IGNORECASE,
        )
        and not re.search(r"\b(?:include|with|add|have|need) (?:the |your |a )?$", before, re.IGNORECASE)
    ):
        return
    if (
        not opens
        and re.search(r"\b(?:exclud\w+|(?<!word )count(?:ing|ed|s)?)\b", text, re.IGNORECASE)
        and not re.search(r"\b(?:with|include|plus|add|required?) (?:\w+ )?(?:an? )?$", before, re.IGNORECASE)
    ):
        return
    article = re.search(r"\b(?:an?|separate|with|include|plus|and) $", before, re.IGNORECASE)
    carries = re.match(
        r" (?:should|must|needs to|has to|will) (?:carry|bear|include|have|give|show|state|contain)",
        after,
        re.IGNORECASE,
    )
    alone = not before.strip(" -:\t(") and (
        not after.strip(" .:\t")
        or re.match(r"[: ]*(?:required|yes|needed|with\b|w/|\.|is required|must|should|:|,)", after, re.IGNORECASE)
    )
    listed = before.rstrip().endswith((",", ".", ";")) and (not after or after[0] in ",.;")
    if article or alone or listed or carries:
        yield "title-page", True, match.start(), match.end()


def find_line_numbers(sentence: Sentence) -> Iterator[Hit]:
    """Numbered lines."""
    if match := _LINES.search(sentence.text):
        yield "line-numbers", True, match.start(), match.end()


def find_numbered_headings(sentence: Sentence) -> Iterator[Hit]:
    """Numbered headings."""
    if match := _HEADINGS.search(sentence.text):
        yield "headings", "numbered", match.start(), match.end()
