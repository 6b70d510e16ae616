"""The sources made ready to be searched, as long work that is watched."""

from __future__ import annotations

from pathlib import Path

from fairhand.session.job import Job
from fairhand.session.opened import OpenPaper
from fairhand.session.research.searching import open_search

MANY = 12
"""From so many sources to index on it is watched; fewer are done before anybody wonders."""


def index_sources(folder: Path, job: Job[int]) -> int:
    """Every source that is new or has changed is in the index, or as many as there were before it was stopped.

    Args:
        folder: The paper's folder.
        job: Counts the sources, and says when to stop; what is indexed stays so.

    Returns:
        How many were indexed.
    """

    def told(done: int, total: int) -> None:
        job.done, job.total = done, total

    with open_search(OpenPaper(folder).source_texts, told, lambda: job.cancelled):
        return job.done
