"""A paper copy, as a sheet asks for it: a rule of form, and a way of handing in."""

from __future__ import annotations

import re

_PRINTED = re.compile(
    r"\b(?:(?:a |one |two |your )?(?:printed|paper|hard|typed and printed|typed|typewritten|physical|bound"
    r"|stapled)[- ](?:copy|copies"
    r"|version)"
    r"|print(?:-?outs?)|hard ?copy|(?:due|hand(?:ed)?|turn(?:ed)?|submit(?:ted)?|version"
    r"|like it|want it)\b[^.;]{0,40}\bon paper"
    r"|printed and bound|(?:must|should|to|will|has to|have to) be (?:typed and )?printed(?! in)"
    r"|in (?:hard|paper|printed) form"
    r"|print (?:the|your|it|out|two|one)\b(?: (?:essay|paper|report))?)\b",
    re.IGNORECASE,
)
_STAGE = re.compile(
    r"\b(?:(?:rough|first|full|complete) draft|draft for|peer review|proposal|outline)\b", re.IGNORECASE
)
_DENIED = re.compile(r"\b(?:no|not|without|neither|optional|last year|course pack|instead of)\b|n't\b", re.IGNORECASE)


def find_printed_copy(text: str) -> re.Match[str] | None:
    """Where a sentence asks for the paper itself in print; None for a stage's copy, and where it is denied.

    >>> find_printed_copy("Hand in a printed copy.").group()
    'a printed copy'
    >>> find_printed_copy("No paper copy is wanted.")
    """
    match = _PRINTED.search(text)
    if match is None or _STAGE.search(text):
        return None
    before, after = text[max(0, match.start() - 30) : match.start()], text[match.end() : match.end() + 40]
    here = before[max(before.rfind(","), 0) :] + match.group() + after.split(",")[0]
    return None if _DENIED.search(here) else match
