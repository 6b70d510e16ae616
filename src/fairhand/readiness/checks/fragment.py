"""``fragment``: a part of a sentence set as a sentence of its own."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.clauses import Clause
from fairhand.copyedit.grammar.commas.opening import find_opening
from fairhand.copyedit.grammar.joining.fragment import Kind, find_fragment
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark

_SAYS: dict[Kind, str] = {
    "subordinate": "“{opens}” makes it a part of another sentence, and that is missing",
    "relative": "“{opens}” ties it to the sentence before",
    "no verb": "it has no verb of its own",
    "no subject": "it has no subject of its own",
}


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each sentence of the writer's own prose that is only a part of one; items of a list may be parts."""
    text = analysis.manuscript.text
    before: Clause | None = None
    for clause in analysis.clauses:
        same = before if before is not None and before.paragraph == clause.paragraph else None
        before = clause
        if text[text.rfind("\n", 0, clause.start) + 1 : clause.start].strip() and same is None:
            continue  # an item of a list, a note
        found = find_fragment(clause, same)
        if found is not None and not (found.kind == "subordinate" and find_opening(clause)):  # it lacks a comma alone
            yield Remark(found.span, f"A sentence fragment: {_SAYS[found.kind].format(opens=found.opens)}.")
