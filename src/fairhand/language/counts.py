"""Numbers with their nouns, and times as one says them."""

from __future__ import annotations


def count_of(number: int, singular: str, plural: str = "") -> str:
    """A number with its noun.

    >>> count_of(1, "source"), count_of(1200, "word")
    ('1 source', '1,200 words')
    """
    return f"{number:,} {singular if number == 1 else plural or singular + 's'}"


_IN_WORDS = ("No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine", "Ten")


def open_with(number: int, singular: str, plural: str = "") -> str:
    """A number with its noun, as a sentence opens with it: in words up to ten.

    >>> open_with(1, "point rests", "points rest"), open_with(2, "point rests", "points rest")
    ('One point rests', 'Two points rest')
    """
    told = count_of(number, singular, plural)
    return f"{_IN_WORDS[number]} {told.partition(' ')[2]}" if 0 <= number < len(_IN_WORDS) else told


def say_minutes(minutes: int) -> str:
    """A length of time in hours and minutes.

    >>> say_minutes(45), say_minutes(120), say_minutes(95)
    ('45 minutes', '2 hours', '1 hour 35 minutes')
    """
    hours, rest = divmod(max(0, minutes), 60)
    told = [count_of(hours, "hour")] if hours else []
    return " ".join(told + ([count_of(rest, "minute")] if rest or not hours else []))
