"""What the list of sources knows: under which names and titles each work may be cited."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from fairhand.citing.names import PARTICLES, acronyms, bare_surname, name_key, name_words
from fairhand.model.entry import Entry, Name

ARTICLES = frozenset("a an the".split())
_MAIN_TITLE = re.compile(r"[:?!]\s|\s[–—]\s|\.\s")
_MARKUP = re.compile(r"</?\w[^<>]{0,40}>")


@dataclass(frozen=True, slots=True)
class Creator:
    """One author or editor, as citations may name them."""

    keys: frozenset[str]
    """Every key that is the name: with and without particles; of a body, its acronyms too."""
    loose: frozenset[str]
    """Keys that are part of the name: the second of two surnames."""
    given: tuple[str, ...]
    """Given names, folded."""
    body: tuple[str, ...] = ()
    """The words of a body's name."""

    def is_named(self, name: str) -> bool:
        """Whether ``name`` is this creator's."""
        return _without_the(name_key(name)) in self.keys or bare_surname(name) in self.keys

    def is_loosely_named(self, name: str) -> bool:
        """Whether ``name`` is part of this creator's: *Márquez* of *García Márquez*, or part of a body."""
        if bare_surname(name) in self.loose:
            return True
        words = tuple(word for word in name_words(name) if word not in ARTICLES)
        size = len(words)
        return bool(words) and any(words == self.body[at : at + size] for at in range(len(self.body) - size + 1))

    def has_given(self, initials: str) -> bool:
        """Whether the initials, or the given name, could be this creator's; where none is recorded, they could."""
        if not self.given:
            return not self.body
        wanted = name_words(initials)
        pairs = zip(wanted, self.given, strict=False)
        letters = "".join(name[0] for name in self.given)
        return all(have.startswith(want) or (len(have) == 1 and want.startswith(have)) for want, have in pairs) or (
            letters.startswith("".join(wanted))
        )


@dataclass(frozen=True, slots=True)
class Work:
    """One entry, as citations may name it."""

    entry: Entry
    creators: tuple[Creator, ...]
    """The authors; the editors where there is none; none where it is cited by its title."""
    titles: tuple[tuple[str, ...], ...]
    """Words of the title, its main part and its short form, leading articles gone."""
    containers: tuple[tuple[str, ...], ...]
    """Words of what it appeared in."""
    suffix: str = ""
    """The letter that tells it from others of the same author and year."""
    shared_year: bool = False
    """Whether it needs that letter."""

    def has_title(self, title: str) -> bool:
        """Whether ``title`` is this work's, whole or cut short after its first words."""
        words = title_words(title)
        return bool(words) and any(words == have[: len(words)] for have in self.titles)


@dataclass(frozen=True, eq=False)
class Known:
    """The whole list of sources, indexed."""

    works: tuple[Work, ...]
    whole: frozenset[str]
    """Keys of whole names: bodies, their acronyms, surnames."""
    loose: frozenset[str]
    """Keys of one surname of two."""
    given: frozenset[str]
    """Keys of a given name and a surname together."""
    by_name: Mapping[str, tuple[int, ...]]
    """Indices of works by the key of any name of any creator; of those without one, by what they appeared in."""
    naming: re.Pattern[str] | None
    """Finds, in folded text, every surname, body and title; None where there is nothing to find."""
    named: Mapping[str, tuple[int, ...]]
    """Indices of works by the words that ``naming`` finds, as a key."""
    marked: frozenset[str]
    """Keys of titles of one word, which name a work only in italics or quotation marks."""
    lower: frozenset[str]
    """Keys of names that are written without a capital."""
    short: frozenset[str]
    """Keys of acronyms, which name a body only in capitals."""
    titles: frozenset[str]
    """Keys of titles of several words, which name a work within quotation marks too."""

    def knows_name(self, name: str) -> bool:
        """Whether some work is by ``name``."""
        bare = bare_surname(name)
        return _without_the(name_key(name)) in self.whole or bare in self.whole or bare in self.loose

    def knows_title(self, title: str) -> bool:
        """Whether some work has that title, or appeared in something of that title and has no author."""
        return bool(self.titled(title)) or "".join(title_words(title)) in self.by_name

    def works_by(self, name: str) -> tuple[int, ...]:
        """Indices of the works with ``name`` among their authors, or bodies."""
        key = _without_the(name_key(name))
        return self.by_name.get(key) or self.by_name.get(bare_surname(name), ())

    def titled(self, title: str) -> tuple[int, ...]:
        """Indices of the works that have that title, whole or cut short."""
        words = title_words(title)
        whole = tuple(at for at, work in enumerate(self.works) if words in work.titles)
        return whole or tuple(at for at, work in enumerate(self.works) if work.has_title(title))


def title_words(title: str) -> tuple[str, ...]:
    """The words of a title, folded, without a leading article.

    >>> title_words("The Strike Kitchens,")
    ('strike', 'kitchens')
    """
    words = name_words(_MARKUP.sub("", title))
    return words[1:] if len(words) > 1 and words[0] in ARTICLES else words


@lru_cache(maxsize=32)
def know(entries: tuple[Entry, ...]) -> Known:
    """The list of sources, indexed by the names and titles that citations use."""
    works = _with_suffixes([_read_work(entry) for entry in entries])
    named: dict[str, set[int]] = {}
    by_name: dict[str, list[int]] = {}
    forms: set[tuple[str, ...]] = set()
    whole: set[str] = set()
    given: set[str] = set()
    marked: set[str] = set()
    lower: set[str] = set()
    short: set[str] = set()
    for at, work in enumerate(works):
        keys = [key for creator in work.creators for key in creator.keys]
        for key in dict.fromkeys(keys or ("".join(words) for words in work.containers)):
            by_name.setdefault(key, []).append(at)
        for creator, name in zip(work.creators, work.entry.authors or work.entry.editors, strict=True):
            whole |= creator.keys
            if creator.given:
                given |= {creator.given[0] + key for key in creator.keys}
            surname = name.family or name.literal
            plain = creator.body or name_words(surname)
            initials = {key for key in creator.keys if 1 < len(key) < 9} if creator.body else set[str]()
            short |= initials - {"".join(plain)}
            if surname[:1].islower():
                lower.add("".join(plain))
            for form in (plain, *((key,) for key in initials)):
                forms.add(form)
                named.setdefault("".join(form), set()).add(at)
        titles = (*work.titles, *(() if work.creators else work.containers))
        for words in titles:
            forms.add(words)
            named.setdefault("".join(words), set()).add(at)
        if not work.creators:
            whole |= {"".join(words) for words in work.containers}
        marked |= {words[0] for words in titles if len(words) == 1}
    return Known(
        tuple(works),
        frozenset(whole),
        frozenset(key for work in works for creator in work.creators for key in creator.loose),
        frozenset(given),
        {key: tuple(found) for key, found in by_name.items()},
        _naming_pattern(forms),
        {key: tuple(sorted(found)) for key, found in named.items()},
        frozenset(marked - whole),
        frozenset(lower),
        frozenset(short),
        frozenset("".join(words) for work in works for words in work.titles if len(words) > 1),
    )


def _read_work(entry: Entry) -> Work:
    creators = tuple(_read_creator(name) for name in entry.authors or entry.editors)
    main = _MAIN_TITLE.split(entry.title, maxsplit=1)[0]
    titles = dict.fromkeys(title_words(title) for title in (entry.title, main, entry.title_short))
    containers = dict.fromkeys(title_words(name) for name in (entry.container_title, entry.publisher))
    return Work(entry, creators, tuple(t for t in titles if t), tuple(c for c in containers if c))


def _read_creator(name: Name) -> Creator:
    if name.literal and not name.family:
        words = tuple(
            word for word in name_words(re.sub(r"[(\[][^()\[\]]*[)\]]", "", name.literal)) if word not in ARTICLES
        )
        keys = {_without_the(name_key(name.literal)), "".join(words)} | acronyms(name.literal)
        return Creator(frozenset(keys), frozenset(), (), words)
    surname = name_words(name.family)
    full = name_key(f"{name.particle} {name.family}")
    loose = frozenset({surname[-1], surname[0]}) - PARTICLES if len(surname) > 1 else frozenset[str]()
    return Creator(frozenset({full, "".join(surname), bare_surname(name.family)}), loose, name_words(name.given))


def _naming_pattern(forms: set[tuple[str, ...]]) -> re.Pattern[str] | None:
    """One pattern of all names and titles, longest first, that lets punctuation stand between their words."""
    known = sorted((form for form in forms if form), key=lambda form: (-len("".join(form)), form))
    if not known:
        return None
    parts = (r"(?:'s)?[^\w]{1,4}".join(map(re.escape, form)) for form in known)
    return re.compile(rf"(?<!\w)(?:{'|'.join(parts)})(?!\w)")


def _with_suffixes(works: Sequence[Work]) -> list[Work]:
    """The works with the letters of same author and year given out by title, leading articles ignored.

    **Source**: Publication Manual of the APA 7, 9.47; Chicago Manual of Style 17, 15.20.
    """
    groups: dict[object, list[int]] = {}
    for at, work in enumerate(works):
        issued = work.entry.issued
        if work.creators:
            who: object = work.entry.authors or work.entry.editors
            groups.setdefault((who, issued.year if issued else None), []).append(at)
    out = list(works)
    for group in groups.values():
        own = {at: works[at].entry.year_suffix for at in group if works[at].entry.year_suffix}
        for letter, at in zip(
            "abcdefghijklmnopqrstuvwxyz", sorted(group, key=lambda at: title_words(works[at].entry.title)), strict=False
        ):
            work = works[at]
            shared = len(group) > 1
            suffix = own.get(at, letter if shared else "")
            out[at] = Work(work.entry, work.creators, work.titles, work.containers, suffix, shared)
    return out


def _without_the(key: str) -> str:
    return key.removeprefix("the")
