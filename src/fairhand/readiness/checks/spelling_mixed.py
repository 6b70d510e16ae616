"""``spelling-mixed``: a word spelled as the other country has it, in a paper that keeps to one."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.readiness.spelling import country_asked, other_country, spelling_of


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each word of the other country's spelling, once, where the draft itself tells which it keeps.

    Where desk or sheet says which, such a word is a slip of spelling, and told as one.
    """
    against = spelling_of(analysis)
    if against.keeps_to_one and country_asked(analysis) is None:
        yield from other_country(analysis, against, "paper keeps to")
