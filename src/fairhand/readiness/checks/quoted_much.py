"""``quoted-much``: a paper of which much is others' words."""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import Remark
from fairhand.revision.quoted_share import MUCH, share_quoted


def find(analysis: Analysis) -> Iterator[Remark]:
    """One remark with the share, where it is large."""
    share = share_quoted(analysis.argument.body, analysis.manuscript.text)
    if share >= MUCH:
        yield Remark(
            None, f"{share:.0%} of the words of the paper are quoted. Which of them could you say in your own words?"
        )
