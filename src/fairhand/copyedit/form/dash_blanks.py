"""The blanks beside dashes: on one side alone, and unlike from one dash of the paper to the next."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from fairhand.copyedit.own_prose import OwnParagraph
from fairhand.manuscript.bare import OPAQUE
from fairhand.model.finding import Instead
from fairhand.model.span import Span

_DASH = r"(?:—|–|---?)"
_LED = rf"[a-z,;)\]”\"’'%*{OPAQUE}]"
_AFTER = rf"[a-z(“\"{OPAQUE}]"
_ONE_SIDED = re.compile(
    rf"(?<={_LED})(?P<before>[ \u00a0]){_DASH}(?=[a-z])(?![\w-]+ ?[=\d])"
    r"|(?<=[^\W\d_]{2})(?:—|---|(?:–|--)(?!.(?:and|or|to|through|und|vs)\b))(?P<after>[ \u00a0])(?=[a-z])"
)
_CLAUSE = (
    r"(?:a|an|and|as|at|because|but|by|for|he|if|in|it|not|of|or|she|so|that|the|they|this|we|which|who|with|yet)\b"
)
_KINDS = {
    "an em dash without blanks": re.compile(rf"(?<={_LED})(?:—|---)(?={_AFTER})"),
    "an em dash with blanks": re.compile(rf"(?<={_LED}) (?:—|---) (?={_AFTER})"),
    "an en dash with blanks": re.compile(rf"(?<={_LED}) (?:–|--) (?={_AFTER})"),
    "an en dash without blanks": re.compile(rf"(?:(?<=[a-z]{{2}})|(?<=[,)”’]))(?:–|--)(?={_CLAUSE}\s)"),
}


@dataclass(frozen=True, slots=True)
class Mixture:
    """Dashes of several kinds in one paper."""

    counts: tuple[tuple[str, int], ...]
    """Each kind and how often it stands, the most frequent first."""
    first_odd: Span
    """The first that is not of the most frequent kind."""


def find_one_sided(own: OwnParagraph, *, spaced: bool = False) -> Iterator[tuple[Span, Instead]]:
    """The dashes between words with a blank on one side alone, each with the blank to take out, or to put in.

    A dash that stands for the rest of a compound (*pre– and post-war*) is let be, and so are one before a name and
    the marks of a command (*–k 3*).

    **Source**: common practice; Chicago 17, 6.85; New Hart's Rules 4.11 (from memory): two blanks or none.

    Args:
        own: A paragraph.
        spaced: Whether the paper's dashes have blanks.

    >>> [s.start for s, _ in find_one_sided(OwnParagraph("The tide —so they said— fell.", 0, ()))]
    [4, 18]
    """
    for hit in _ONE_SIDED.finditer(own.text):
        whole = Span(*hit.span()).shifted(own.start)
        blank = Span(*hit.span("before" if hit["before"] else "after")).shifted(own.start)
        other = whole.end if hit["before"] else whole.start
        words = Span(own.text.rfind(" ", 0, hit.start()) + 1, hit.end())
        yield words.shifted(own.start), Instead(Span(other, other), " ") if spaced else Instead(blank)


def has_blanks(paragraphs: Sequence[OwnParagraph], *, british: bool) -> bool:
    """Whether most dashes of a paper have blanks; where it has none that tells, by the custom of the country.

    >>> has_blanks([OwnParagraph("It fell – so he said – again.", 0, ())], british=False)
    True
    """
    counts = {kind: sum(len(pattern.findall(own.text)) for own in paragraphs) for kind, pattern in _KINDS.items()}
    spaced = sum(many for kind, many in counts.items() if kind.endswith("with blanks"))
    close = sum(counts.values()) - spaced
    return british if spaced == close else spaced > close


def find_mixture(paragraphs: Sequence[OwnParagraph]) -> Mixture | None:
    """The kinds of dash in the writer's own sentences, where there are several; ranges and pairs of names let be.

    **Source**: common practice: one kind throughout (New Hart's Rules 4.11; Chicago 17, 6.85, from memory).

    >>> found = find_mixture([OwnParagraph("It fell—so he said. It rose – so she said – again.", 0, ())])
    >>> found.counts
    (('an en dash with blanks', 2), ('an em dash without blanks', 1))
    """
    places = {
        kind: [Span(*hit.span()).shifted(own.start) for own in paragraphs for hit in pattern.finditer(own.text)]
        for kind, pattern in _KINDS.items()
    }
    there = sorted(((kind, found) for kind, found in places.items() if found), key=lambda one: -len(one[1]))
    if len(there) < 2:
        return None
    odd = min(span for _, found in there[1:] for span in found)
    return Mixture(tuple((kind, len(found)) for kind, found in there), odd)
