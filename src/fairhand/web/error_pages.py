"""What is shown where a request cannot be met: the one table of the page, as ``cli.exit_codes`` is the terminal's."""

from __future__ import annotations

from collections.abc import Mapping

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response

from fairhand import errors
from fairhand.web.rendering import render_page
from fairhand.web.safety import TooMuchSent, refusal

ERROR_PAGES: Mapping[type[errors.FairhandError], tuple[int, str]] = {
    errors.FairhandError: (400, "That could not be done"),
    errors.DeskError: (409, "The folder is not as it should be"),
    errors.NoPaperHere: (404, "No such paper"),
    errors.PaperExistsAlready: (409, "There is one already"),
    errors.DraftChangedOnDisk: (409, "The file was changed meanwhile"),
    errors.FolderNotWritable: (409, "Nothing can be written there"),
    errors.NoSuchState: (404, "No such state"),
    errors.NoSuchStep: (404, "No such step"),
    errors.RecordDamaged: (500, "The record cannot be opened"),
    errors.InputError: (400, "The file cannot be read"),
    errors.FileUnreadable: (400, "The file cannot be read"),
    errors.FileEncrypted: (400, "The file asks for a password"),
    errors.FileTooLarge: (413, "The file is too large"),
    errors.UnknownFormat: (415, "Nothing here reads such a file"),
    errors.NotAllowedOutside: (403, "Nothing leaves this machine yet"),
    errors.NotReached: (502, "No answer from elsewhere"),
    errors.StyleUnknown: (400, "No such style"),
    errors.MatterLeft: (409, "Something is still to be settled"),
    errors.NameLeft: (409, "Your name stands there still"),
    errors.NothingToPrint: (409, "Nothing to print yet"),
    errors.EngineFailed: (500, "The page could not be set"),
}
"""The status and the heading of each exception's page."""
STATUS_PAGES: Mapping[int, tuple[str, str]] = {
    400: ("Not understood", "What was sent could not be understood; go back, and send it again."),
    404: ("No such page", "Nothing is to be found at this address."),
    405: ("Not so", "This address is not asked in that way."),
}
"""The heading and the sentence of what has no exception of ours."""


def page_of(error: errors.FairhandError) -> tuple[int, str]:
    """The status and heading of an exception, by the nearest class that the table names."""
    return next(ERROR_PAGES[kind] for kind in type(error).__mro__ if kind in ERROR_PAGES)


def show_error(request: Request, error: Exception) -> Response:
    """The page of a request that could not be met: what was wrong, where, what to do."""
    assert isinstance(error, errors.FairhandError)  # noqa: S101 - it is registered for these alone
    status, title = page_of(error)
    return render_page(request, "error.html", status=status, title=title, says=str(error))


def show_status(request: Request, error: Exception) -> Response:
    """The page of an address that leads nowhere, or of a request that is none."""
    assert isinstance(error, HTTPException)  # noqa: S101 - it is registered for these alone
    title, says = STATUS_PAGES.get(error.status_code, STATUS_PAGES[400])
    return render_page(request, "error.html", status=error.status_code, title=title, says=says)


def show_too_much(request: Request, error: Exception) -> Response:  # noqa: ARG001 - the signature is Starlette's
    """The answer where more was sent than is read."""
    return refusal("More was sent than is read at once. Send less, or a part.", 413)


def show_fault(request: Request, error: Exception) -> Response:  # noqa: ARG001 - the signature is Starlette's
    """The page of a fault of the program itself; what it was stands in the terminal."""
    says = "A fault in Fairhand itself; the terminal tells of it. Nothing that was saved before is lost."
    return render_page(request, "error.html", status=500, title="Something broke", says=says)


HANDLERS = {
    errors.FairhandError: show_error,
    HTTPException: show_status,
    TooMuchSent: show_too_much,
    Exception: show_fault,
}
"""Who answers for which exception."""
