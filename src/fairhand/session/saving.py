"""The record kept up with the folder: what another program changed is kept too."""

from __future__ import annotations

from fairhand.desk import PaperFiles, is_writable, notice_changes
from fairhand.model.problem import Problem


def keep_record(files: PaperFiles) -> tuple[Problem, ...]:
    """Every present state of the writer's own files is in the record; where it cannot be kept, that is said."""
    if not is_writable(files.folder):
        return (Problem(files.folder.name, "the folder is read-only, so no states are kept", "copy it to keep a record"),)
    return notice_changes(files)
