"""``point-missing``: a main point that no passage of the body argues."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.model.span import line_at
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.revision.opening import find_promise


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each main point that names sources, and that no passage citing one of them at its page comes close to."""
    if not analysis.asks_for_sources or not analysis.paper.draft.strip():
        return
    for argued in analysis.argument.argued:
        if argued.is_argued or argued.point.weight != "main":
            continue
        said = f"The main point “{argued.point.text}” ({argued.point.id}) is not argued: "
        if argued.paragraph is None:
            said += "no paragraph between the introduction and the conclusion cites its sources at their pages."
        else:
            said += "no passage that cites its sources at their pages is close to what it says."
        promised = find_promise(argued.point.text, analysis.argument.body, analysis.argument.texts)
        if promised is not None:
            at = line_at(analysis.manuscript.text, analysis.argument.body[promised].span.start)
            said += f" The introduction promises it (line {at})."
        sources = (support.source for support in argued.point.support)
        yield Remark(None, said, concerns=(argued.point.id, *dict.fromkeys(sources)))
