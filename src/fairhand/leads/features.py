"""What the model sees of each token: its form, its place, and the words of the apparatus, never who or what is named.

**Source**: Councill, Giles and Kan 2008 (the kinds of features; theirs draw on lists of names, ours do not).
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from fairhand.leads.lexicon import MONTHS, PLACES, PLAIN, STATES, STRUCTURE
from fairhand.leads.tokens import Token

ADDRESSES = frozenset({"url", "doi", "eprint"})
"""Kinds of token that tell a place on the web or a number of a registry whole."""

_YEAR = re.compile(r"(?:1[5-9]|20)\d\d[a-z]?")
_ROMAN = re.compile(r"[IVXLC]{1,6}|[ivxlc]{2,6}")
_ORDINAL = re.compile(r"\d{1,3}(?:st|nd|rd|th)", re.IGNORECASE)
_OPENING = "([{<“‘«„"
_CLOSING = ")]}>”’»"
_TELLING: tuple[tuple[str, frozenset[str]], ...] = (
    ("T", frozenset("thesis dissertation report memo paper preprint manuscript tr".split())),
    ("P", frozenset("proceedings proc conference conf symposium symp workshop congress colloquium meeting".split())),
    ("J", frozenset("journal j rev review annals ann letters lett acta bull bulletin trans transactions arch".split())),
    ("H", frozenset("press verlag publishers publishing books editions éditions inc ltd sons publications".split())),
    ("U", frozenset("university univ universität université department dept institute college laboratory".split())),
    ("E", frozenset("eds ed editors editor edited hrsg".split())),
    ("V", frozenset("vol volume no number pp pages p issue bd".split())),
    ("M", MONTHS),
    ("L", PLACES),
)
_ENDINGS = (
    "tions tion sion ing ity ies ment ness ance ence ism ics ical ous ive ary ory logy graphy eur ung keit heit ción "
    "ique aux age ure ship ship ed ly al ic es er or an s"
).split()


def shape_of(text: str) -> str:
    """The form of a word or number: its letters' case, or how many digits it has.

    >>> [shape_of(one) for one in ("Lind", "IEEE", "J", "de", "McKay", "2001", "128", "e0123", "2nd")]
    ['Xx', 'XX', 'X', 'xx', 'XxX', 'year', 'd3', 'xd', 'ordinal']
    """
    if text.isdigit():
        return "year" if _YEAR.fullmatch(text) else f"d{min(len(text), 7)}"
    if _YEAR.fullmatch(text):
        return "year"
    if any(letter.isdigit() for letter in text):
        if _ORDINAL.fullmatch(text):
            return "ordinal"
        return "Xd" if text[0].isupper() else "xd" if text[0].isalpha() else "dx"
    if len(text) == 1:
        return "X" if text.isupper() else "x"
    if text.isupper():
        return "XX" if len(text) > 3 else "XX3"
    if text[0].isupper():
        return "Xx" if text[1:].islower() else "XxX"
    return "xx"


def _lasting(text: str) -> str:
    lowered = text.lower()
    return next((end for end in _ENDINGS if len(lowered) > len(end) + 2 and lowered.endswith(end)), "")


def _own(token: Token) -> list[str]:
    """What a token is by itself."""
    if token.kind in ADDRESSES:
        return [f"k={token.kind}"]
    if token.kind == "sign":
        return [f"w={token.text}", "k=sign"]
    lowered = token.text.lower()
    shape = shape_of(token.text)
    out = [f"s={shape}"]
    if lowered in MONTHS:
        out.append("month")
    if lowered in PLAIN:
        out += [f"w={lowered}", "plain"]
    if lowered in STRUCTURE:
        out.append(f"w={lowered}")
    if lowered in PLACES:
        out.append("place")
    if token.text in STATES:
        out.append("state")
    if _ROMAN.fullmatch(token.text):
        out.append("roman")
    if token.kind == "word":
        out.append(f"n={min(len(token.text), 9) // 2}")
        ending = _lasting(token.text) if len(token.text) > 4 else ""
        if ending and lowered not in STRUCTURE:
            out.append(f"e={ending}")
        if shape in {"XX", "XX3", "XxX"} and lowered not in STRUCTURE:
            out.append("odd")
    return out


def describe_tokens(tokens: Sequence[Token]) -> list[list[str]]:
    """The features of each token, with those of its neighbours.

    >>> from fairhand.leads.tokens import cut_reference
    >>> "0:s=Xx" in describe_tokens(cut_reference("Lind, A. (2001)."))[0]
    True
    """
    own = [_own(token) for token in tokens]
    brief = [_brief(token) for token in tokens]
    within = _brackets(tokens)
    quoted = _quotes(tokens)
    years = [n for n, token in enumerate(tokens) if shape_of(token.text) == "year"]
    stops = _stops(tokens)
    stretches = _stretches(tokens)
    ahead = _numbers_ahead(tokens)
    count = len(tokens)
    out = []
    for n, token in enumerate(tokens):
        row = [f"0:{one}" for one in own[n]]
        row += [f"{by}:{one}" for by in (-1, 1) if 0 <= n + by < count for one in own[n + by]]
        row += [f"{by}:{one}" for by in (-2, 2) if 0 <= n + by < count for one in own[n + by][:2]]
        row += [f"{by}:{brief[n + by]}" for by in (-3, 3) if 0 <= n + by < count]
        for first, last in ((-1, 0), (0, 1), (-1, 1), (-2, 0), (0, 2), (-3, 0), (0, 3)):
            if n + first >= 0 and n + last < count:
                row.append(f"{first}..{last}:" + "|".join(brief[n + first : n + last + 1]))
        if n == 0:
            row.append("first")
        if n == count - 1:
            row.append("last")
        row.append(f"at={n * 10 // count}")
        row.append(f"from={min(n, 6)}")
        row.append(f"to={min(count - 1 - n, 6)}")
        row.append(f"stops={min(stops[n], 5)}")
        row += stretches[n]
        row.append(ahead[n])
        if within[n]:
            row.append(f"in{within[n]}")
        if quoted[n]:
            row.append(f"quoted={quoted[n]}")
        before = sum(1 for at in years if at < n)
        row.append(f"years={min(before, 2)},{min(len(years) - before, 2)}")
        if not token.spaced and n:
            row.append("close")
            if token.kind == "sign" and n + 1 < count and not tokens[n + 1].spaced:
                row.append("tight")
        out.append(row)
    return out


def _brief(token: Token) -> str:
    """A token in one word."""
    if token.kind == "sign":
        return token.text
    if token.kind in ADDRESSES:
        return token.kind
    lowered = token.text.lower()
    if lowered in {"and", "et", "al", "in", "eds", "ed", "editors", "editor", "pp", "p", "vol", "no", "pages", "und"}:
        return lowered
    if lowered in MONTHS:
        return "month"
    return "plain" if lowered in PLAIN else shape_of(token.text)


def _brackets(tokens: Sequence[Token]) -> list[str]:
    """Whether each token stands in brackets, and in which."""
    out: list[str] = []
    open_: list[str] = []
    for token in tokens:
        if token.kind == "sign" and token.text in "([":
            open_.append(token.text)
        out.append(open_[-1] if open_ else "")
        if token.kind == "sign" and token.text in ")]" and open_:
            open_.pop()
    return out


def _quotes(tokens: Sequence[Token]) -> list[str]:
    """Whether each token stands in quotation marks, comes before any, or after them."""
    marks = [n for n, token in enumerate(tokens) if token.text in {"“", "”", '"', "„", "«", "»", "‘", "’", "'", "`"}]
    pairs = [n for n in marks if tokens[n].text not in "’'`" or tokens[n].spaced or _closes(tokens, n)]
    if len(pairs) < 2:
        return [""] * len(tokens)
    first, last = pairs[0], pairs[-1]
    second = next((n for n in pairs if n > first + 1), last)
    return ["before" if n < first else "in" if n <= second else "after" for n in range(len(tokens))]


def _closes(tokens: Sequence[Token], n: int) -> bool:
    """Whether a mark that could be an apostrophe closes a quotation: no letter follows it at once."""
    return n + 1 == len(tokens) or tokens[n + 1].spaced or tokens[n + 1].kind == "sign"


def _stretches(tokens: Sequence[Token]) -> list[list[str]]:
    """What each token's stretch between two separators is like, and what stands before and after it."""
    parts: list[list[int]] = [[]]
    for n, token in enumerate(tokens):
        parts[-1].append(n)
        if token.kind == "sign" and _separates(tokens, n):
            parts.append([])
    told = [_tell_stretch([tokens[n] for n in part]) for part in parts]
    out: list[list[str]] = []
    for number, part in enumerate(parts):
        before = told[number - 1] if number else "none"
        after = told[number + 1] if number + 1 < len(told) else "none"
        row = [f"here={told[number]}", f"here={told[number]}|{after}", f"before={before}|{told[number]}"]
        out += [row for _ in part]
    return out


def _separates(tokens: Sequence[Token], n: int) -> bool:
    """Whether a sign parts one field from another, it may be: a stop after an abbreviation or an initial does not."""
    if tokens[n].text in {",", ";", ":", "(", ")", "[", "]", '"', "“", "”", "?"}:
        return True
    before = tokens[n - 1].text if n else ""
    return tokens[n].text == "." and (len(before) > 4 or before.isdigit() or before.islower())


def _tell_stretch(tokens: Sequence[Token]) -> str:
    """A stretch in a few letters: how long, in what case, and whether words of the apparatus stand in it."""
    words = [token.text for token in tokens if token.kind == "word"]
    if not words:
        numbers = [token.text for token in tokens if token.kind != "sign"]
        return f"n{shape_of(numbers[0])}" if numbers else "sign"
    long = (
        "1"
        if len(words) == 1
        else "2"
        if len(words) == 2
        else "3"
        if len(words) < 5
        else "5"
        if len(words) < 9
        else "9"
    )
    plain = sum(1 for word in words if word.islower() and word not in PLAIN)
    initials = sum(1 for word in words if len(word) == 1 or (len(word) < 4 and word.isupper()))
    case = "i" if 2 * initials >= len(words) else "l" if plain > 1 else "s" if plain else "c"
    lowered = {word.lower() for word in words}
    told = next((name for name, of in _TELLING if lowered & of), "")
    digits = "d" if any(token.kind == "mixed" for token in tokens) else ""
    return f"{long}{case}{told}{digits}"


def _numbers_ahead(tokens: Sequence[Token]) -> list[str]:
    """How many words stand between each token and the next number, and what that looks like."""
    out = [""] * len(tokens)
    words, shape = 9, "none"
    for n in range(len(tokens) - 1, -1, -1):
        out[n] = f"ahead={min(words, 9)},{shape}"
        if tokens[n].kind == "mixed":
            words, shape = 0, shape_of(tokens[n].text)
        elif tokens[n].kind == "word":
            words += 1
    return out


def _stops(tokens: Sequence[Token]) -> list[int]:
    """How many full stops that are no abbreviation's stand before each token."""
    out = []
    seen = 0
    for n, token in enumerate(tokens):
        out.append(seen)
        if token.text in {".", "?", "!"} and n and (len(tokens[n - 1].text) > 3 or tokens[n - 1].kind == "sign"):
            seen += 1
    return out
