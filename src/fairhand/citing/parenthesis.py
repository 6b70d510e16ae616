"""What a parenthesis cites: prefix, names or title, year, place, works one after another.

**Source**: MLA Handbook 9, 6.1–6.30; Publication Manual of the APA 7, 8.10–8.36; Chicago Manual of Style 17,
15.21–15.31.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import islice

from fairhand.citing.dates import read_letter, read_year
from fairhand.citing.grading import SECOND_HAND, Grade, Tail, grade_citation
from fairhand.citing.known import Known
from fairhand.citing.locators import read_places
from fairhand.citing.mention import Cite
from fairhand.citing.names import Who, read_who
from fairhand.citing.page_or_year import read_pages
from fairhand.model.span import Span

PREFIX = re.compile(
    r"(?:(?:but|and)\s+)?(?:for\s+(?:example|instance|a\s+review|(?:more|further)(?:\s\w+){0,3}|(?:an?|the)\s(?:\w+\s){1,4}view)|see(?:,?\s+(?:also|especially|esp\.|generally|e\.g\.|for\s+(?:example|instance)))?"
    r"|cf\.?|compare|contra|e\.\s?g\.|i\.\s?e\.|also|especially|esp\.|notably|discussed\s+in|reviewed\s+in|reprinted\s+in|as\s+in|in|from|by|per|adapted\s+from|based\s+on|data\s+from|source:|after)"
    r"[,:]?\s+",
    re.IGNORECASE,
)
_SIGNAL = re.compile(
    r"(?<!\w)(?P<sure>see(?:\s+also)?|cf\.|compare|e\.g\.,?)[,:]?\s+|(?<!\w)(?:in|by|from|and|but|than|as|after|following|also)\s+",
    re.IGNORECASE,
)
TITLE = re.compile(
    r"\*{1,2}(?P<star>[^*\n]{1,240})\*{1,2}|(?<!\w)_(?P<low>[^_\n]{1,240})_(?!\w)|[“\"](?P<double>[^”\"]{1,240})[”\"]"
    r"|[‘'](?P<single>(?:[^’'\n]|['’](?=\w)){1,240})[’'](?!\w)|[«„](?P<other>[^»“]{1,240})[»“]"
)
_TAIL_AT = re.compile(r"(?<![^\s,:;\[\]”\"’'*_)(])(?=\[?\d|[A-Z]{1,2}\d|[pPcCnNlvV¶§sSfFtTmMAaibxcdju]|[IVXLJD])")
_AFTER_WHO = re.compile(r"\s*[,:]?\s*")
_INSIDE = re.compile(r"\s+in\s+")
_BETWEEN = re.compile(r"\s*(?:,|:|;)?\s*(?:(?:and|at|here)\s+|&\s*)?")
_MORE_WORKS = re.compile(r"\s*(?:,\s*(?:and\s+|&\s*)?|\s+(?:and|&)\s+)(?=[^\W\d_]|[\"“*])")
_LEVEL = re.compile(
    r"\n[ \t]{0,3}(?:>[ \t]?){1,6}|[*_]{1,2}(?=(?:et\.? al|ibid|op\. cit|see|cf\.|passim)\b)"
    r"|(?<=\bibid\.)[*_]{1,2}|(?<= al\.)[*_]{1,2}|(?<= al)[*_]{1,2}|[(\[](?:eds?|trans|comp)\.[)\]]"
    r"|&amp;|\\(?=[&*_\[\]#])"
)
_ABBREVIATED = re.compile(r"(?:\bal|n\.\s?d|\bff?|\b[A-Z]|Jr|Sr)\.\Z")
_INITIALS = re.compile(r"(?:[^\W\d_]\.[ -]?){1,3}")
_END = re.compile(r"[\s.,]*")


@dataclass(frozen=True, slots=True)
class Read:
    """One work cited, and how surely."""

    cite: Cite
    grade: Grade


def level(text: str) -> str:
    """``text`` with block-quotation markers, escapes and the italics of *et al.* made spaces; every place is kept.

    >>> level("(Grady *et al.*, 2019)")
    '(Grady  et al. , 2019)'
    """
    return _LEVEL.sub(lambda found: "&    " if found[0] == "&amp;" else " " * len(found[0]), text)


def read_parenthesis(text: str, inner: Span, known: Known) -> tuple[Read, ...]:
    """The works that the inside of a parenthesis cites; nothing where it is no citation.

    Args:
        text: A paragraph, levelled.
        inner: The inside of the parenthesis.
        known: The list of sources.
    """
    reads: list[Read] = []
    for start, end in _parts(text, inner):
        before = reads[-1] if reads else None
        if before is not None and (placed := _read_place_apart(text, start, end, before.cite)):
            reads[-1] = replace(before, cite=placed)
            continue
        reads += _read_part(text, start, end, known, before) or _read_after_signal(text, start, end, known)
    return tuple(reads)


def read_tails(text: str, at: int, end: int) -> tuple[tuple[Tail, ...], int]:
    """The years and places from ``at`` on, one for each work, and the code point after the last.

    >>> tails, _ = read_tails("2019, p. 3, 2021", 0, 16)
    >>> [(tail.year, tail.place and tail.place.locator.text) for tail in tails]
    [('2019', '3'), ('2021', None)]
    """
    tails: list[Tail] = []
    after = at
    while after < end:
        gap = _BETWEEN.match(text, after, end)
        start = gap.end() if gap and tails else after
        if year := read_year(text, start, end):
            tails.append(Tail(year[1], year[0], year[2]))
            after = year[1].end
        elif tails and tails[-1].year[-1:].isalpha() and (letter := read_letter(text, after, end)):
            tails.append(Tail(Span(letter[1] - 1, letter[1]), tails[-1].year[:-1] + letter[0]))
            after = letter[1]
        else:
            place, past = read_places(text, start, end)
            if place is None or (tails and tails[-1].place is not None):
                break
            if tails:
                last = tails[-1]
                tails[-1] = replace(last, span=Span(last.span.start, past), place=place)
            else:
                tails.append(Tail(Span(start, past), place=place))
            after = past
    return tuple(tails), after


def ends_there(text: str, at: int, end: int) -> bool:
    """Whether nothing but stops and spaces stands between ``at`` and ``end``."""
    found = _END.match(text, at, end)
    return found is not None and found.end() >= end


def _read_place_apart(text: str, start: int, end: int, before: Cite) -> Cite | None:
    """The work before with its place, where a semicolon parts the two: *(Reyes 2018; p. 3)*."""
    if before.locator is not None or not before.year:
        return None
    while start < end and text[start] in " \t\r\n":
        start += 1
    place, past = read_places(text, start, end)
    if place is None or not place.labelled or not ends_there(text, past, end):
        return None
    return replace(before, span=Span(before.span.start, past), locator=place.locator)


def _parts(text: str, inner: Span) -> Iterator[tuple[int, int]]:
    """The parts between semicolons; one within a title parts nothing."""
    start = inner.start
    titles = [found.span() for found in TITLE.finditer(text, inner.start, inner.end)]
    for at in range(inner.start, inner.end):
        if text[at] == ";" and not any(low < at < high for low, high in titles):
            yield start, at
            start = at + 1
    yield start, inner.end


def _read_after_signal(text: str, start: int, end: int, known: Known) -> list[Read]:
    """The works cited at the end of a remark: *(a view since disputed; see Reyes 2018)*."""
    for count, signal in enumerate(_SIGNAL.finditer(text, start, end)):
        if count > 7:
            break
        found = _read_part(text, signal.end(), end, known, None)
        if found and (found[0].grade == "known" or (signal["sure"] and found[0].grade == "plain")):
            cite = found[0].cite
            if cite.suffix and "[" in text[start:end]:
                return []
            prefix = text[start : signal.end()].strip()
            found[0] = replace(found[0], cite=replace(cite, prefix=prefix, span=Span(start, cite.span.end)))
            return found
    return []


def _read_part(text: str, start: int, end: int, known: Known, before: Read | None, room: int = 20) -> list[Read]:
    """The works cited in one part of a parenthesis, the same author's in several years among them."""
    while start < end and text[start] in " \t\n\r":
        start += 1
    while end > start and text[end - 1] in " \t\n\r.," and not _ABBREVIATED.search(text, max(start, end - 8), end):
        end -= 1
    at, prefix = start, ""
    while found := PREFIX.match(text, at, end):
        at = found.end()
    prefix = text[start:at].strip()
    secondary = ""
    if hand := SECOND_HAND.search(text, at, min(end, at + 200)):
        secondary = text[at : hand.start()].strip(" ,;:\n")
        prefix = " ".join(filter(None, (prefix, hand[0].strip(" ,;:\n"))))
        at = hand.end()
    base = Cite(Span(start, end), secondary=secondary, prefix=prefix)
    if before is not None and not prefix:
        same = before.cite
        tails, past = read_tails(text, at, end)
        if tails and ends_there(text, past, end) and (tails[0].year or same.names or same.title):
            other = _read_work(text, at, end, known, base, room) if tails[0].dated else []
            if other and other[0].grade == "known":
                return other
            year = "" if tails[0].year else same.year
            inherited = replace(
                base, names=same.names, initials=same.initials, et_al=same.et_al, title=same.title, year=year
            )
            return [Read(_with_tail(inherited, tail, first=n == 0), before.grade) for n, tail in enumerate(tails)]
    return _read_work(text, at, end, known, base, room)


def _read_work(text: str, at: int, end: int, known: Known, base: Cite, room: int) -> list[Read]:
    """Names, title, years and places from ``at`` on, and up to ``room`` further works after *and* or a comma."""
    found = TITLE.search(text, at, end)
    if found and (reads := _read_titled(text, at, end, known, base, found, room)) is not None:
        return reads
    whole = read_who(text[at:end], known.given, known.whole)
    whole_known = whole is not None and known.knows_name(whole.names[0])
    for place in islice(_TAIL_AT.finditer(text, at, end), 12):
        tails, past = read_tails(text, place.start(), end) if place.start() > at else ((), at)
        if not tails:
            continue
        head = text[at : place.start()].strip(" ,")
        who = read_who(head, known.given, known.whole)
        who_known = who is not None and known.knows_name(who.names[0])
        if head[:1].isupper() and not who_known and known.titled(head):
            return _settle(text, end, past, known, replace(base, title=head), None, tails, room)
        if who is None or _INITIALS.fullmatch(head):
            continue
        if room and who.body and not who_known and (inside := _INSIDE.search(who.names[0])):
            second = replace(base, secondary=who.names[0][: inside.start()])
            return _read_work(text, at + inside.end(), end, known, second, room - 1)
        if not tails[0].year and whole_known and not who_known:
            break
        return _settle(text, end, past, known, _with_who(base, who), who, tails, room)
    return _settle(text, end, end, known, _with_who(base, whole), whole, (), room) if whole else []


def _read_titled(
    text: str, at: int, end: int, known: Known, base: Cite, found: re.Match[str], room: int
) -> list[Read] | None:
    """A work cited by its title, after its author or alone; None where what stands before the title is no author."""
    title = next(group for group in found.groups() if group is not None).strip().rstrip(",.")
    if found.end() < end and (text[found.end()].isalnum() or text[found.end()] in "*_"):
        return []  # a sign, as in *R*2
    head = text[at : found.start()].strip(" ,")
    who = read_who(head, known.given, known.whole) if head else None
    if head and who is None:
        return None
    if not head and not known.knows_title(title):
        named = read_who(title, known.given, known.whole)
        if named is not None and known.knows_name(named.names[0]):
            who, title = named, ""
    gap = _AFTER_WHO.match(text, found.end(), end)
    tails, past = read_tails(text, gap.end() if gap else found.end(), end)
    cite = _with_who(replace(base, title=title), who)
    return _settle(text, end, past if tails else found.end(), known, cite, who, tails, room)


def _with_who(cite: Cite, who: Who | None) -> Cite:
    return replace(cite, names=who.names, initials=who.initials, et_al=who.et_al) if who else cite


def _with_tail(cite: Cite, tail: Tail, first: bool) -> Cite:
    span = cite.span if first else tail.span
    return replace(
        cite,
        span=span,
        year=tail.year or cite.year,
        locator=tail.place.locator if tail.place else None,
        prefix=cite.prefix if first else "",
    )


def _settle(
    text: str, end: int, past: int, known: Known, cite: Cite, who: Who | None, tails: tuple[Tail, ...], room: int
) -> list[Read]:
    """The works read so far, graded, with what follows them; nothing where they are no citation."""
    if tails:
        named = known.works_by(cite.names[0]) if cite.names else known.titled(cite.title) if cite.title else ()
        tails = read_pages(tails, [known.works[at] for at in named])
    rest = text[past:end].strip(" ,.:\n")
    further: list[Read] = []
    if rest and room and (more := _MORE_WORKS.match(text, past, end)):
        further = [
            read
            for read in _read_part(text, more.end(), end, known, None, room - 1)
            if read.cite.year or read.grade == "known"
        ]
        if further and further[0].grade != "likely":
            rest = ""
            end = past
        else:
            further = []
    grade = grade_citation(cite, who, tails, known, rest)
    if grade is None:
        return []
    cite = replace(
        cite, span=Span(cite.span.start, min(max(past, cite.span.start), end) if further else end), suffix=rest
    )
    if not tails:
        return [Read(cite, grade), *further]
    reads = [Read(_with_tail(cite, tail, first=n == 0), grade) for n, tail in enumerate(tails)]
    if len(reads) > 1:
        reads = _parted(reads, tails, end if not further else past)
    return [*reads, *further]


def _parted(reads: list[Read], tails: tuple[Tail, ...], end: int) -> list[Read]:
    """Several years of one author, each with its own part of the parenthesis."""
    out = []
    for n, read in enumerate(reads):
        start = read.cite.span.start if n == 0 else tails[n].span.start
        stop = tails[n].span.end if n + 1 < len(tails) else max(end, tails[n].span.end)
        out.append(
            replace(
                read,
                cite=replace(read.cite, span=Span(start, stop), suffix=read.cite.suffix if n + 1 == len(tails) else ""),
            )
        )
    return out
