"""What the shell is told: the one table of exit codes."""

from __future__ import annotations

from collections.abc import Mapping

from fairhand import errors

READY = 0
NOT_READY = 1
COULD_NOT = 2

EXIT_CODES: Mapping[type[errors.FairhandError], int] = {
    errors.FairhandError: COULD_NOT,
    errors.DeskError: COULD_NOT,
    errors.NoPaperHere: COULD_NOT,
    errors.PaperExistsAlready: COULD_NOT,
    errors.DraftChangedOnDisk: COULD_NOT,
    errors.FolderNotWritable: COULD_NOT,
    errors.NoSuchState: COULD_NOT,
    errors.NoSuchStep: COULD_NOT,
    errors.RecordDamaged: COULD_NOT,
    errors.InputError: COULD_NOT,
    errors.FileUnreadable: COULD_NOT,
    errors.FileEncrypted: COULD_NOT,
    errors.FileTooLarge: COULD_NOT,
    errors.UnknownFormat: COULD_NOT,
    errors.NotAllowedOutside: COULD_NOT,
    errors.NotReached: COULD_NOT,
    errors.StyleUnknown: COULD_NOT,
    errors.MatterLeft: NOT_READY,
    errors.NameLeft: NOT_READY,
    errors.NothingToPrint: COULD_NOT,
    errors.EngineFailed: COULD_NOT,
}
"""The exit code of each exception."""


def exit_code_of(error: errors.FairhandError) -> int:
    """The exit code of an exception, by the nearest class that the table names."""
    return next(EXIT_CODES[kind] for kind in type(error).__mro__ if kind in EXIT_CODES)
