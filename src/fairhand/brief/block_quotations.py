"""From what length on a sheet wants a quotation set as a block."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from fairhand.brief.numbers import number_value

_ONES = "two|three|four|five|six|seven|eight|nine"
_TENS = "ten|twelve|fifteen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|(?:a|one) hundred"
_NUMBER = rf"(?P<{{0}}>\d{{{{1,3}}}}|(?:{_TENS})(?:[ -](?:{_ONES}))?|{_ONES})"
_UNIT = r"(?P<{0}>words|lines)"
_OVER = r"(?P<{0}>more than|longer than|over|exceeding|above|in excess of|at least|of)"
_RULE = re.compile(
    rf"\b(?:quotations?|quotes|passages?|extracts?)\b[^.;!?]{{0,40}}?\b{_OVER.format('over')} {_NUMBER.format('n')}"
    rf" (?:\w+ )?{_UNIT.format('unit')}\b[^.!?]{{0,80}}\b(?:block|indent\w*|set off|displayed)\b"
    rf"|\bblock (?:quotations?|quotes?)\b[^.;!?]{{0,40}}?\b{_OVER.format('over2')} {_NUMBER.format('n2')}"
    rf" (?:\w+ )?{_UNIT.format('unit2')}\b(?P<more> or (?:more|longer))?",
    re.IGNORECASE,
)
_FEWEST = 2
_INCLUSIVE = frozenset({"at least", "of"})


@dataclass(frozen=True, slots=True)
class BlockRule:
    """The sheet's own measure."""

    number: int
    """The fewest words or lines of a block."""
    unit: str
    """``words`` or ``lines``."""
    evidence: str
    """The words that ask it."""


def find_block_rule(texts: Iterable[str]) -> BlockRule | None:
    """The measure that a sheet gives, the last to give one winning; None where none does.

    A block that the paper must have somewhere ("at least one block quotation of forty words or more") gives it too.

    >>> rule = find_block_rule(["Quotations of more than forty words should be set as block quotations."])
    >>> rule.number, rule.unit
    (41, 'words')
    """
    found = None
    for text in texts:
        for hit in _RULE.finditer(" ".join(text.split())):
            number = int(number_value((hit["n"] or hit["n2"]).casefold().replace("a hundred", "one hundred")) or 0)
            if number > _FEWEST:
                over = (hit["over"] or hit["over2"]).casefold()
                least = number if over in _INCLUSIVE else number + 1
                found = BlockRule(least, (hit["unit"] or hit["unit2"]).casefold(), hit[0])
    return found
