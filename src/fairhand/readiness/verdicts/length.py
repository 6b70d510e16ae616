"""Whether the paper, or a part of it, is as long as the sheet asks.

The sheet's own rule decides what counts. What the sheet leaves unsaid is counted, but for the list of references
(common practice); what was counted and what was not is always told. *About* is read as 10 % either way (common
practice).
"""

from __future__ import annotations

from collections.abc import Mapping

from fairhand.brief.length_counts import uncounted_parts
from fairhand.language.counts import count_of
from fairhand.manuscript.counting import WordsOf
from fairhand.model.requirement import Requirement
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.judgement import CONFIRM, Judgement

ABOUT = 0.10
"""What *about* allows either way."""


def judge(requirement: Requirement, analysis: Analysis) -> Judgement:
    """The length of the part that the requirement is about, against its range."""
    part = str(requirement.values.get("part") or "paper")
    if part != "paper":
        words = analysis.words_in(part)
        if words is None:
            asked = " ".join(requirement.evidence.split())
            return Judgement("ask", None, f"It is for a piece that does not stand in the draft: “{asked}”. {CONFIRM}")
        return _against(requirement, float(words), f"{count_of(words, 'word')} in the {part.replace('-', ' ')}")
    counted = analysis.count(uncounted_parts(requirement.values))
    told = f"counted {count_of(counted.counted, 'word')}{_told_exclusions(counted.excluded)}"
    if requirement.values.get("unit") == "words":
        return _against(requirement, float(counted.counted), told)
    rate = requirement.values.get("words_per_page")
    typeset = analysis.measured
    if isinstance(rate, int | float) and rate:
        pages = counted.counted / rate
        also = f"; typeset {typeset.body_pages:.1f} pages" if typeset else ""
        return _against(requirement, pages, f"{pages:.1f} pages at the sheet's {rate:g} words a page ({told}{also})")
    if typeset is None:
        return Judgement("ask", None, "The pages were not measured: there is no draft, or it could not be typeset.")
    return _against(requirement, typeset.body_pages, f"typeset {typeset.body_pages:.1f} pages ({told})")


def _against(requirement: Requirement, measured: float, told: str) -> Judgement:
    """A measure against the requirement's range; pages are rounded to a tenth."""
    low, high = allowed_range(requirement)
    unit = str(requirement.values.get("unit") or "words")
    value = round(measured, 1) if unit == "pages" else int(measured)
    if low is not None and value < low:
        return Judgement("unmet", value, f"{_short(low - value, unit)} short of {low:,g}: {told}.")
    if high is not None and value > high:
        return Judgement("unmet", value, f"{_short(value - high, unit)} over {high:,g}: {told}.")
    return Judgement("met", value, told[:1].upper() + told[1:] + ".")


def allowed_range(requirement: Requirement) -> tuple[float | None, float | None]:
    """The least and the most that the requirement allows, *about* taken into account; None where it sets no bound."""
    low, high = _number(requirement, "min"), _number(requirement, "max")
    if requirement.values.get("about"):
        if low is not None and high is None:
            return low * (1 - ABOUT), low * (1 + ABOUT)
        if high is not None and low is None:
            return high * (1 - ABOUT), high * (1 + ABOUT)
        if low is not None and high is not None:
            return low * (1 - ABOUT), high * (1 + ABOUT)
    return low, high


def _number(requirement: Requirement, name: str) -> float | None:
    """A bound as a number, or None."""
    value = requirement.values.get(name)
    return float(value) if isinstance(value, int | float) and not isinstance(value, bool) else None


def _told_exclusions(excluded: Mapping[WordsOf, int]) -> str:
    """``, without 12 of headings and 40 of notes``."""
    parts = [f"{number:,} of {name.replace('-', ' ')}" for name, number in excluded.items() if number]
    return f", without {' and '.join(parts)}" if parts else ""


def _short(by: float, unit: str) -> str:
    """A difference with its unit."""
    return f"{by:.1f} pages" if unit == "pages" else count_of(round(by), "word")
