"""``citation-names``: authors named in a sentence otherwise than the style names them."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.form.author_names import find_misnamed
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark


def find(analysis: Analysis) -> Iterator[Remark]:
    """Each of them, since the fair copy prints the writer's sentence as it stands."""
    found = find_misnamed(
        analysis.manuscript, analysis.mentions, analysis.resolved, analysis.entries, analysis.style_rules
    )
    for one in found:
        yield Remark(one.span, one.says, instead=(one.instead,))
