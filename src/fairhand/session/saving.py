"""The record kept up with the folder: what another program changed is kept too."""

from __future__ import annotations

from fairhand.desk.paper_files import PaperFiles
from fairhand.desk.record import notice_changes
from fairhand.model.problem import Problem


def keep_record(files: PaperFiles) -> tuple[Problem, ...]:
    """Every present state of the writer's own files is in the record; where it cannot be kept, that is said."""
    return notice_changes(files)
