"""What a manual lets a writer change within a quotation without a mark.

**Source**: APA *Publication Manual*, 7th ed., 8.30-8.31 (read on the style's public page); *MLA Handbook*, 9th ed.,
6.54-6.67 (from memory); *The Chicago Manual of Style*, 17th ed., 13.7-13.8, 13.18-13.19 and 13.50-13.58 (from memory).
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class QuotationRules:
    """The silent changes of one manual; every other change is marked by brackets or an ellipsis."""

    name: str
    """The manual and edition, as a finding names it."""
    first_letter_silent: bool
    """Whether the first letter may become a capital or a small letter."""
    closing_point_silent: bool = True
    """Whether the last comma or full stop may be changed to suit the sentence around it."""
    callouts_silent: bool = True
    """Whether the source's note numbers, and what else a page has among its words, may be left out."""


_RULES = {
    "apa": QuotationRules("APA Publication Manual, 7th ed., 8.30-8.31", first_letter_silent=True),
    "mla": QuotationRules("MLA Handbook, 9th ed., 6.54-6.67", first_letter_silent=False),
    "chicago": QuotationRules("Chicago Manual of Style, 17th ed., 13.7-13.8", first_letter_silent=True),
    "turabian": QuotationRules("Turabian, A Manual for Writers, 9th ed., 25.3", first_letter_silent=True),
}
_OTHERS = QuotationRules("common practice", first_letter_silent=True)


def rules_for(style: str) -> QuotationRules:
    """The silent changes of the manual whose name begins ``style``; of any other style, the common practice.

    >>> rules_for("MLA 9").first_letter_silent
    False
    >>> rules_for("harvard").name
    'common practice'
    """
    lowered = style.lower()
    return next((rules for name, rules in _RULES.items() if name in lowered), _OTHERS)
