"""How the names of people and bodies are written in citations, and made comparable.

**Source**: MLA Handbook 9, 6.5; Publication Manual of the APA 7, 8.17–8.21; Chicago Manual of Style 17, 15.21–15.29.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from fairhand.language.folding import fold

PARTICLES = frozenset(
    "al af av ap bin bint d da das de degli dei del dela della den der des di dos du el ibn l la las le les lo los "
    "ten ter van vom von y zu zum zur".split()
)
"""Particles that may stand before a surname, folded; a comparison may leave them out."""

JOINERS = PARTICLES | frozenset("and at by for in of on the to und upon with s a an".split())
"""Words that stand in lower case within the name of a body."""

BODIES = frozenset(
    "academy administration agency alliance archive archives assembly association authority bank board branch "
    "bureau cabinet center centre church coalition college collective commission commissioners committee company "
    "confederation congress consortium corporation council court department directorate division federation forum "
    "foundation fund government group guild house initiative institute institution laboratory league library "
    "ministry museum network observatory office organisation organization parliament party police press programme "
    "program project registry school secretariat senate service services society survey team trust union unit "
    "university workshop".split()
)
"""Nouns that show a name to be a body's."""

_LETTERS = re.compile(r"[^\W\d_]+|\d+")
_SUFFIX = re.compile(r"(?:,\s*|\s+)(?:Jr|Sr|II|III|IV)\b\.?$")
_INITIALS = re.compile(r"(?:[^\W\d_]{1,2}\.(?:\s*-\s*|\s*))+")
_WORD = re.compile(r"[^\W\d_](?:[^\W\d_]|['’.‐-](?=[^\W\d_])){0,40}['’]?\.?")
_ET_AL = re.compile(
    r"(?:,?\s+(?:and|&))?,?\s*\b(?:et\.?\s+al\b|and\s+(?:others|colleagues)\b|&\s*(?:others|colleagues)\b)\s*\.?\s*$"
)
_ABBREVIATION = re.compile(r"\s*\[\s*([A-Z][\w&.-]{1,14})\s*(?:,[^\[\]]{0,30})?\]\s*$")
_BETWEEN = re.compile(r"\s*,?\s+(?:and|&)\s+|\s*,\s*(?:&\s*)?|\s*&\s*")
_ROLE = re.compile(r"(?:eds?|trans|tr|comps?|editors?|translators?|dir)\.?$", re.IGNORECASE)
_FIRM = re.compile(r"(?:Inc|Ltd|LLC|PLC|Co|Corp)\.?$")


@lru_cache(maxsize=4096)
def name_key(name: str) -> str:
    """A name without case, accents, punctuation and spaces.

    >>> name_key("van der Kuïle, Jr.")
    'vanderkuilejr'
    """
    return "".join(_LETTERS.findall(fold(name)))


@lru_cache(maxsize=4096)
def name_words(name: str) -> tuple[str, ...]:
    """The words of a name or title, folded, possessive endings gone.

    >>> name_words("The Quaymen’s Executive")
    ('the', 'quaymen', 'executive')
    """
    return tuple(_LETTERS.findall(re.sub(r"'s\b", "", fold(name))))


def bare_surname(name: str) -> str:
    """A surname without suffix or particles, as a key.

    >>> bare_surname("van der Kuile Jr.")
    'kuile'
    """
    words = list(name_words(_SUFFIX.sub("", name)))
    while len(words) > 1 and words[0] in PARTICLES:
        del words[0]
    return "".join(words)


def acronyms(body: str) -> frozenset[str]:
    """The short forms that a body's name gives: its own in brackets, and its initials.

    >>> sorted(acronyms("World Health Organization"))
    ['who']
    """
    found = {name_key(short) for short in re.findall(r"[(\[]([A-Z][\w&.-]{1,14})[)\]]", body)}
    words = [word for word in name_words(re.sub(r"[(\[][^()\[\]]*[)\]]", "", body)) if word not in JOINERS]
    if len(words) > 1:
        found.add("".join(word[0] for word in words))
    every = [word for word in name_words(body) if word != "the"]
    if len(every) > 1:
        found.add("".join(word[0] for word in every))
    return frozenset(found)


@dataclass(frozen=True, slots=True)
class Who:
    """The names in a citation."""

    names: tuple[str, ...]
    """Surnames, or a body's name, as written."""
    initials: str = ""
    """Initials or given name before the first."""
    et_al: bool = False
    abbreviation: str = ""
    """A body's short form, introduced in square brackets."""
    body: bool = False
    """Whether the name is plainly a body's."""


def read_who(text: str, given: frozenset[str] = frozenset(), whole: frozenset[str] = frozenset()) -> Who | None:
    """The names that ``text`` consists of, or None where it is not a list of names.

    Args:
        text: What stands before the year or page in a citation.
        given: Keys of given name and surname together that are known; such a pair is parted.
        whole: Keys of whole names (of bodies, and of surnames of several words) that are known.

    >>> read_who("O. Marsh & van der Kuile")
    Who(names=('Marsh', 'van der Kuile'), initials='O.', et_al=False, abbreviation='', body=False)
    >>> read_who("World Health Organization [WHO]").abbreviation
    'WHO'
    >>> read_who("compared to nine in") is None
    True
    """
    text = text.strip(" \t\r\n,;")
    if not text or len(text) > 300:
        return None
    abbreviation = ""
    if short := _ABBREVIATION.search(text):
        abbreviation = short[1]
        text = text[: short.start()].rstrip(" ,")
    if _without_article(name_key(text)) in whole:
        return Who((text,), abbreviation=abbreviation, body=not _is_person(text))
    if ":" in text:
        return None
    shorter = _ET_AL.sub("", text)
    et_al = shorter != text
    pieces = [piece for piece in _BETWEEN.split(shorter) if piece.strip()]
    people, initials = _read_people(pieces, given, whole)
    if people and not abbreviation and not (len(people) > 1 and name_words(people[-1])[-1:] and is_body(people[-1])):
        body = len(people) == 1 and (is_body(people[0]) or len(people[0].split()) > 2)
        return Who(people, initials, et_al, body=body)
    if _is_capitalised(text):
        return Who((text,), abbreviation=abbreviation, body=True)
    return None


def _read_people(pieces: list[str], given: frozenset[str], whole: frozenset[str]) -> tuple[tuple[str, ...], str]:
    """The surnames in a list's pieces and the first one's initials; nothing where a piece is no person's name."""
    names: list[str] = []
    first_initials = ""
    for raw in pieces:
        piece = raw.strip()
        if names and (_SUFFIX.fullmatch(" " + piece) or _FIRM.fullmatch(piece)):
            names[-1] += ", " + piece
            continue
        if names and _ROLE.fullmatch(piece):
            continue
        if names and (_INITIALS.fullmatch(piece) or name_key(piece + names[0]) in given):
            first_initials = first_initials or (piece if len(names) == 1 else "")
            continue
        surname, initials = part_name(piece, given, whole)
        if name_key(surname) not in whole and not _is_person(surname):
            return (), ""
        names.append(surname)
        if len(names) == 1:
            first_initials = initials
    return tuple(names), first_initials


def part_name(name: str, given: frozenset[str] = frozenset(), whole: frozenset[str] = frozenset()) -> tuple[str, str]:
    """A person's surname, and the initials or given name before it.

    Two words are parted only where the pair is known, since *Sierra Club* and *García Márquez* look like *Odile Marsh*.

    >>> part_name("J. R. Okafor")
    ('Okafor', 'J. R.')
    >>> part_name("Odile Marsh", frozenset({"odilemarsh"}))
    ('Marsh', 'Odile')
    """
    if (initials := _INITIALS.match(name)) and initials.end() < len(name):
        return name[initials.end() :], initials[0].strip()
    if name_key(name) in whole:
        return name, ""
    for gap in re.finditer(r"\s+", name):
        first = name[: gap.start()]
        rest = name[gap.end() :]
        if name_words(first)[:1] and name_words(first)[0] + bare_surname(rest) in given:
            return rest, first
    return name, ""


def _without_article(key: str) -> str:
    return key.removeprefix("the")


def is_body(name: str) -> bool:
    """Whether a name of several words has one that only a body's has, first or last.

    >>> is_body("Union of Concerned Scientists"), is_body("Hannah Arendt")
    (True, False)
    """
    words = name_words(name)
    return len(words) > 1 and (words[-1] in BODIES or words[0] in BODIES)


def _is_person(name: str) -> bool:
    """Whether ``name`` could be a surname: one to three capitalised words, particles before them."""
    words = _SUFFIX.sub("", name).split()
    while len(words) > 1 and name_key(words[0]) in PARTICLES:
        del words[0]
    while words and words[0].lower().startswith(("al-", "el-", "d'", "d’", "l'", "l’")):
        words[0] = words[0][2:].lstrip("-'’")
        if not words[0]:
            return False
        break
    return 1 <= len(words) <= 3 and all(
        (_WORD.fullmatch(word) and not word[0].islower()) or (name_key(word) in PARTICLES and at)
        for at, word in enumerate(words)
    )


def _is_capitalised(name: str) -> bool:
    """Whether ``name`` could be a body's: capitalised words with joining words between them."""
    words = [word.strip(",()&.:'’\"“”") for word in name.split()]
    words = [word for word in words if word]
    return (
        1 < len(words) <= 16
        and not words[0][0].islower()
        and not words[-1][0].islower()
        and all(_WORD.fullmatch(word) and (not word[0].islower() or name_key(word) in JOINERS) for word in words)
    )
