"""``number-form``: a number run on to its unit, with sign and word, with the wrong ending, or in two forms."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.form.number_form import NumberForm, find_mixed_numbers, find_number_forms
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark

_SAYS = {
    "run on": "A blank belongs between a number and its unit: “{instead}”.",
    "sign and word": "“{written}” has the sign and the word for one thing: one of them goes.",
    "ending": "“{written}” is said as “{instead}”.",
    "mixed": "“{written}” is in figures here; the same number stands in words elsewhere, as “{instead}”.",
}


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each such number of the writer's own prose; two forms of one number are asked about."""
    for own in analysis.own_prose:
        for found in find_number_forms(own):
            yield _remark(found)
    for found in find_mixed_numbers(analysis.own_prose):
        yield _remark(found)


def _remark(found: NumberForm) -> Remark:
    says = _SAYS[found.kind].format(written=found.written, instead=found.instead)
    return Remark(
        found.span,
        says,
        weight="query" if found.kind == "mixed" else None,
        instead=(Instead(found.place, found.instead),),
    )
