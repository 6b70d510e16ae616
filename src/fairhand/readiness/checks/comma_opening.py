"""``comma-opening``: an opening part of a sentence without the comma that ends it."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.commas.opening import find_opening
from fairhand.model.finding import Instead
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark

_WHY = {
    "adverb": "“{opens}” opens the sentence and is no part of its main clause",
    "phrase": "“{opens}” opens the sentence and is no part of its main clause",
    "verbal": "what “{opens}” opens ends here, and the main clause begins",
    "clause": "the clause that “{opens}” opens ends here, and the main clause begins",
}


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each sentence of the writer's own prose whose opening runs into its main clause.

    Of an opening that some handbooks let flow on it asks only, and of a paper in British English not even that.
    """
    for clause in analysis.clauses:
        found = find_opening(clause)
        if found is None or (found.may_flow_on and analysis.is_british):
            continue
        mark = (Instead(found.comma, ","),)
        if found.may_flow_on:
            after = "a long phrase" if found.kind == "long" else f"“{found.opens}”"
            says = f"Is the comma missing after an introductory element? After {after} most handbooks want one."
            yield Remark(found.span, says, weight="query", instead=mark)
        else:
            why = _WHY[found.kind].format(opens=found.opens)
            says = f"The comma after an introductory element is missing: {why}."
            yield Remark(found.span, says, instead=mark)
