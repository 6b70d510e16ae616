"""``quotation-alone``: a quotation that stands as a sentence of its own, with nothing that leads into it."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.form.dropped import find_dropped
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """The first of them, with the lines of the others: who does it once mostly does it often."""
    cited = [mention.span for mention in analysis.mentions]
    text = analysis.manuscript.text
    found = [one.span for one in find_dropped(analysis.manuscript, cited, analysis.title_quotations)]
    if found:
        lines = [str(text.count("\n", 0, span.start) + 1) for span in found[1:]]
        plural = (
            f"lines {', '.join(lines[:-1])} and {lines[-1]}" if len(lines) > 1 else f"line {lines[0]}" if lines else ""
        )
        others = f" The same in {plural}." if plural else ""
        yield Remark(
            found[0],
            "A dropped quotation: it is a sentence by itself, and no words of yours lead into it. Should a signal"
            f" phrase, or a colon after the sentence before, tie it to your own?{others}",
        )
