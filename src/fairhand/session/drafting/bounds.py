"""How a paper stands to the length that its sheet asks, reckoned in words."""

from __future__ import annotations

import math
from dataclasses import dataclass

from fairhand.language.counts import count_of
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.verdicts.length import allowed_range


@dataclass(frozen=True, slots=True)
class Bounds:
    """How a paper stands to the length that the sheet asks, in words."""

    says: str
    over: int = 0
    """Words over the most that is asked, or, below nought, short of the least."""
    least: float = 0.0
    """The fewest words that are asked."""
    pages: float | None = None
    """The most pages that are asked, where what counts is the page as it is set."""
    words_a_page: float = 1.0


def find_bounds(known: Analysis) -> Bounds:
    """By how many words the paper is too long or too short.

    A length in pages is reckoned in words by the sheet's own rate, or by what a page of this paper holds in type.
    """
    rule = known.length_rule
    if rule is None or known.is_waived(rule) or not known.paper.draft.strip():
        return Bounds("The sheet asks for no length." if known.paper.draft.strip() else "There is no draft yet.")
    low, high = allowed_range(rule)
    has, rate, unit, how, set_in_type = float(known.words.counted), 1.0, "words", "", False
    if rule.values.get("unit") != "words":
        unit = "pages"
        given, measured = rule.values.get("words_per_page"), known.measured
        if isinstance(given, int | float) and given:
            rate, how = float(given), f", reckoned at the sheet’s {given:g} words a page"
        elif measured is not None and measured.body_pages > 0:
            rate, set_in_type = has / measured.body_pages, True
            how = f", reckoned at the {rate:.0f} words that a page of it holds in type"
        else:
            return Bounds("The pages could not be measured.")
    least = (low or 0.0) * rate
    if high is not None and has > high * rate:
        over = math.ceil(has - high * rate)
        says = f"It is {count_of(over, 'word')} too long: the sheet allows {high:,g} {unit}{how}."
        return Bounds(says, over, least, high if set_in_type else None, rate)
    if has < least:
        short = math.ceil(least - has)
        asked = f"the sheet asks for {low:,g} {unit} at least{how}"
        return Bounds(f"It is {count_of(short, 'word')} too short: {asked}.", -short, least)
    return Bounds(f"Its {count_of(round(has), 'word')} are within what the sheet asks{how}.")
