"""The names in a reference, taken apart: surnames, given names or initials, bodies.

**Source**: the forms of names in the lists of the style manuals, turned round or not, with full stops or without.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from fairhand.citing.names import JOINERS, PARTICLES, is_body, name_key

_ET_AL = re.compile(
    r"[,;]?\s*(?:\b(?:and|&)\s+)?\b(?:et\.?\s*al\b\.?|others\b|colleagues\b|u\.\s?a\.)\s*$", re.IGNORECASE
)
_AND = re.compile(r"\s*[,;]?\s+(?:and|&|et|und|y|e|en|og|och)\s+|\s*[,;]?\s*&\s*")
_ROLE = re.compile(
    r"[,;]?\s*[(\[]?\b(?:eds?|editors?|hrsg|trans|comps?|dirs?|coord)\b\.?[)\]]?\.?\s*$|^(?:edited\s+by|eds?\.)\s+",
    re.IGNORECASE,
)
_SUFFIX = re.compile(r"(?:Jr|Sr)\.?|II|III|IV", re.IGNORECASE)
_LETTER = r"[^\W\d_a-zß-öø-ÿ]"
_INITIALS = re.compile(rf"(?:{_LETTER}(?:[a-z]?\.)?(?:\s*[-‐–]\s*|\s*)){{1,5}}")
_BARE = re.compile(rf"(?P<family>.*[^\W\d_]{{2}}.*?)\s+(?P<given>{_LETTER}{{1,3}}(?:-{_LETTER})?)")
_TURNED = re.compile(rf"(?P<family>.*?[^\W\d_]{{2}}.*?),?\s+(?P<given>(?:{_LETTER}[a-z]?\.[\s-]*){{1,5}})")
_STRAIGHT = re.compile(rf"(?P<given>(?:{_LETTER}[a-z]?\.[\s-]*){{1,5}})\s*(?P<family>\S.*)")
_GROUP = re.compile(
    r"\b(?:collaboration|consortium|group|team|working party|task force|investigators|network)\b", re.IGNORECASE
)
_DASH = re.compile(r"[-–—―_⸺⸻\s.,]+")


@dataclass(frozen=True, slots=True)
class People:
    """The names of one field."""

    names: tuple[dict[str, str], ...]
    """Each as CSL-JSON has it."""
    et_al: bool = False
    """Whether there are more than are named."""


def read_people(text: str) -> People:
    """The names that a field of a reference gives, in order.

    >>> read_people("Lind, A. B., van der Meer, C., & Okafor, D.").names[1]
    {'family': 'van der Meer', 'given': 'C.'}
    >>> found = read_people("Lind AB, Okafor D, et al.")
    >>> [one.get("family") for one in found.names], found.et_al
    (['Lind', 'Okafor'], True)
    >>> [one["family"] for one in read_people("Gao, Y., D. Wang, L. Ba, and B. Liu").names]
    ['Gao', 'Wang', 'Ba', 'Liu']
    >>> read_people("Harbour Museum").names
    ({'literal': 'Harbour Museum'},)
    """
    text = _ROLE.sub("", " ".join(text.split())).strip(" ,;:")
    more = _ET_AL.search(text)
    text = text[: more.start()].strip(" ,;") if more else text
    if not text or _DASH.fullmatch(text):
        return People((), et_al=bool(more))
    if _is_one_body(text):
        return People(({"literal": text},), et_al=bool(more))
    if ";" in text:
        pieces = [piece for part in text.split(";") for piece in _AND.split(part)]
    else:
        pieces = _join_turned([piece.strip() for part in _AND.split(text) for piece in part.split(",")])
    names = [name for piece in pieces if (name := _read_name(piece.strip(" ,;")))]
    return People(tuple(names), et_al=bool(more))


def _is_one_body(text: str) -> bool:
    if re.search(rf"(?:^|[\s,]){_LETTER}\.", text):
        return False
    words = text.split()
    return (is_body(text) or bool(_GROUP.search(text)) or any(word in {"of", "for"} for word in words)) and (
        "," not in text or any(word.lower() in JOINERS - PARTICLES for word in words)
    )


def _join_turned(pieces: list[str]) -> list[str]:
    """The pieces between commas, with the given names back at their surnames where they were turned round."""
    pieces = [piece for piece in pieces if piece]
    joined: list[str] = []
    initials = [bool(_INITIALS.fullmatch(piece)) for piece in pieces]
    if any(initials):
        for piece, given in zip(pieces, initials, strict=True):
            if (joined and _SUFFIX.fullmatch(piece)) or (given and joined and "," not in joined[-1]):
                joined[-1] += f", {piece}"
            else:
                joined.append(piece)
        return joined
    short = [len(piece.split()) for piece in pieces]
    if len(pieces) > 1 and _is_surname(pieces[0]) and short[1] <= 3:
        if all(n >= 2 for n in short[2:]):  # only the first is turned round
            return [f"{pieces[0]}, {pieces[1]}", *pieces[2:]]
        if len(pieces) % 2 == 0 and all(map(_is_surname, pieces[::2])):
            return [f"{one}, {other}" for one, other in zip(pieces[::2], pieces[1::2], strict=True)]
    for piece in pieces:
        if joined and _SUFFIX.fullmatch(piece):
            joined[-1] += f", {piece}"
        else:
            joined.append(piece)
    return joined


def _is_surname(piece: str) -> bool:
    words = piece.split()
    while len(words) > 1 and name_key(words[0]) in PARTICLES:
        del words[0]
    return len(words) == 1


def _read_name(piece: str) -> dict[str, str] | None:
    if not piece or not re.search(r"[^\W\d_]", piece) or re.match(r"\d", piece):
        return None
    if "," in piece:
        family, given, *rest = [part.strip() for part in piece.split(",")]
        suffix = next((one for one in (given, *rest) if _SUFFIX.fullmatch(one)), "")
        given = "" if given == suffix else given
        if suffix and not given:
            plain = _read_name(family)
            return {**plain, "suffix": suffix} if plain else None
        return _name(family, given, suffix)
    for form in (_STRAIGHT, _TURNED, _BARE):
        if (found := form.fullmatch(piece)) and (form is not _BARE or not found["family"].isupper()):
            return _name(found["family"], found["given"])
    if is_body(piece) or _GROUP.search(piece):
        return {"literal": piece}
    words = piece.split()
    if len(words) == 1:
        return {"family": _cased(piece)}
    at = len(words) - 1
    while at > 1 and name_key(words[at - 1]) in PARTICLES:
        at -= 1
    return _name(" ".join(words[at:]), " ".join(words[:at]))


def _name(family: str, given: str, suffix: str = "") -> dict[str, str]:
    out = {"family": _cased(family.strip(" ,")), "given": given.strip(" ,-")}
    if suffix:
        out["suffix"] = suffix
    return {key: value for key, value in out.items() if value}


def _cased(family: str) -> str:
    """A surname in capitals as it is usually written."""
    return family.title() if family.isupper() and len(family) > 3 else family
