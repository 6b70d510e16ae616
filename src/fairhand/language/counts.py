"""Numbers with their nouns, and times as one says them."""

from __future__ import annotations


def count_of(number: int, singular: str, plural: str = "") -> str:
    """A number with its noun.

    >>> count_of(1, "source"), count_of(1200, "word")
    ('1 source', '1,200 words')
    """
    return f"{number:,} {singular if number == 1 else plural or singular + 's'}"


def say_minutes(minutes: int) -> str:
    """A length of time in hours and minutes.

    >>> say_minutes(45), say_minutes(120), say_minutes(95)
    ('45 minutes', '2 hours', '1 hour 35 minutes')
    """
    hours, rest = divmod(max(0, minutes), 60)
    told = [count_of(hours, "hour")] if hours else []
    return " ".join(told + ([count_of(rest, "minute")] if rest or not hours else []))
