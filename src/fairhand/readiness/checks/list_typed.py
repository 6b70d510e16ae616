"""``list-typed``: a list of works that was typed in the draft, against the sources, the style and the text."""

from __future__ import annotations

import re
from collections.abc import Iterator

from fairhand.copyedit.form.typed_list import find_uncited, find_unsourced, first_out_of_order, read_typed_list
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark

_WIDER = re.compile(r"bibliography|consulted|annotated", re.IGNORECASE)
"""Titles of a list that may hold more than is cited."""
MOST = 4
"""Works that are named."""


def find(analysis: Analysis) -> Iterator[Remark]:
    """What of it will not be printed; where the paper has no sources, so that it is printed as typed, its form."""
    manuscript, rules = analysis.manuscript, analysis.style_rules
    typed = read_typed_list(manuscript)
    if typed is None:
        return
    if analysis.entries:
        for work in find_unsourced(manuscript.text, typed.works, analysis.paper.entries):
            says = (
                "This work is in the typed list and not among the sources, of which the fair copy makes its own list."
            )
            yield Remark(work.span, says)
        return
    title = re.sub(r"^[\dIVX]+[.)]?\s+", "", typed.title).rstrip(":.").strip()
    titles = {rules.list_title.casefold(), rules.list_title_of_one.casefold()}
    if rules.manual and analysis.paper.style_named and title.casefold() not in titles and not _WIDER.search(title):
        yield Remark(typed.heading.content, f"The style calls the list “{rules.list_title}”.", weight="query")
    misplaced = None if rules.in_text == "numeric" or typed.numbered else first_out_of_order(typed.works)
    if misplaced is not None:
        work, before = misplaced
        yield Remark(
            work.span, f"“{work.lead}” stands after “{before.lead}”; the list is in the order of the alphabet."
        )
    uncited = () if _WIDER.search(typed.title) or typed.numbered else find_uncited(manuscript, typed)
    if uncited:
        named = ", ".join(f"“{work.lead}”" for work in uncited[:MOST])
        more = f" and {len(uncited) - MOST} more" if len(uncited) > MOST else ""
        yield Remark(
            uncited[0].span, f"The text does not seem to cite {named}{more}, which the list has.", weight="query"
        )
