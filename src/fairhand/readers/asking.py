"""What a reader may be asked at which stage, and what speaks against asking one now.

**Source**: common practice of writers' handbooks: a fresh eye is fresh once; a reader of the argument comes after the
revision and before the copy-edit; questions are about the reader's own reading, not about the verdict.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Mapping, Sequence

from fairhand.language.counts import count_of
from fairhand.readers.register import Reader, plain_name

QUESTIONS: Mapping[str, tuple[str, ...]] = {
    "argument": (
        "Where did you read a sentence twice?",
        "Where did you want to skip?",
        "What would you not accept?",
        "Where would you want to see the evidence?",
        "What is the paper saying, in one sentence of yours?",
    ),
    "language": (
        "Where did you read a sentence twice?",
        "Which word or phrase made you stop?",
        "Where did one sentence not follow from the one before?",
    ),
    "whole": (
        "Where did you read a sentence twice?",
        "Where did you want to skip?",
        "What would you not accept?",
        "Where would you want to see the evidence?",
        "Which word or phrase made you stop?",
    ),
}
"""The questions offered for each stage."""
OF_EXPERTS = ("What is wrong, or has been overtaken?", "Which work of others is missing?")
OF_NEWCOMERS = ("Which word did you not know, and was it explained when you needed it?",)
"""What is asked besides of one who knows the matter, and of one who does not."""
NOT_TO_MIND: Mapping[str, tuple[str, ...]] = {
    "argument": ("spelling and commas", "the form of the references"),
    "language": ("the order of the sections", "the form of the references"),
    "whole": ("the form of the references",),
}
"""What a reader need not look at."""

NO_POLICY = "The sheet says nothing of help from readers: ask the instructor before a draft goes out."
"""What is said first, where the sheet has no word on it."""


def say_policy(rules: Sequence[str]) -> tuple[str, ...]:
    """What the sheet says of help from others, or that it says nothing.

    >>> say_policy(["working together: allowed"])
    ('The sheet, on help from others: working together: allowed.',)
    """
    return tuple(f"The sheet, on help from others: {one}." for one in rules) or (NO_POLICY,)


def offer_questions(stage: str, *, expert: bool) -> tuple[str, ...]:
    """The questions that fit a stage and a reader; the writer takes what is wanted.

    >>> offer_questions("language", expert=False)[-1]
    'Which word did you not know, and was it explained when you needed it?'
    """
    return QUESTIONS.get(stage, QUESTIONS["whole"]) + (OF_EXPERTS if expert else OF_NEWCOMERS)


def find_reading(readers: Iterable[Reader], name: str, draft: str = "") -> Reader | None:
    """The last reading of that name; of that version alone, where one is given."""
    found = [one for one in readers if one.key == plain_name(name) and (not draft or one.draft == draft)]
    return found[-1] if found else None


def say_cautions(
    readers: Sequence[Reader],
    name: str,
    draft: str,
    stage: str,
    *,
    unruled: Mapping[str, int] | None = None,
    revised: bool | None = None,
    copy_edited: bool = False,
    elsewhere: Mapping[str, Sequence[str]] | None = None,
) -> tuple[str, ...]:
    """What speaks against giving the draft to that reader now, the weightiest first; none of it forbids.

    Args:
        readers: The register.
        name: Whom the writer wants to ask.
        draft: The hash of the present draft.
        stage: What the reader is to look at.
        unruled: For each reader's name as told apart, how many remarks wait for the writer's word.
        revised: Whether the revision of the argument is done; None where that is not known.
        copy_edited: Whether the copy-edit is done.
        elsewhere: For each reader's name as told apart, the titles of other papers that the reader has now.

    >>> out = Reader("Ines Mora", draft="a", sent=dt.date(2027, 2, 3), due=dt.date(2027, 2, 8))
    >>> say_cautions([out], "Tom Reed", "a", "argument")[0]
    'Ines Mora is reading now, until 8 February. Two at once stumble at the same places: wait for what comes back.'
    """
    who = plain_name(name)
    told = []
    for one in readers:
        if one.is_out and one.key != who:
            until = f", until {say_day(one.due)}" if one.due else ""
            told.append(
                f"{one.name} is reading now{until}. Two at once stumble at the same places: wait for what comes back."
            )
    for one in readers:
        if (waiting := (unruled or {}).get(one.key, 0)) and one.key != who:
            remarks = count_of(waiting, "remark")
            told.append(
                f"Of what {one.name} wrote, {remarks} still {'waits' if waiting == 1 else 'wait'} for your word."
            )
    if any(one.draft == draft and one.back for one in readers if one.key != who):
        told.append("The draft stands as the last reader had it: change what is to be changed first.")
    if any(one.key == who and one.draft != draft for one in readers):
        told.append(f"{name} has read this paper before, and no longer reads it for the first time.")
    if revised is False and stage in ("argument", "whole"):
        told.append("The revision is not called done: what you would change yourself costs a reader.")
    if copy_edited and stage == "argument":
        told.append("The copy-edit is done: what a reader of the argument upsets will have to be edited again.")
    if papers := (elsewhere or {}).get(who, ()):
        told.append(f"{name} has {' and '.join(f'“{one}”' for one in papers)} of yours to read as well.")
    return tuple(dict.fromkeys(told))


def say_day(day: dt.date) -> str:
    """A day as one says it.

    >>> say_day(dt.date(2027, 2, 8))
    '8 February'
    """
    return f"{day.day} {day:%B}"
