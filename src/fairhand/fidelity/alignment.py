"""The words of a quotation set against the words of its source.

The cheapest pairing, by dynamic programming (Needleman and Wunsch 1970; a stretch left out costs by its opening and its
length, Gotoh 1982) with the source's ends free; long stretches are first parted at their longest common run (Ratcliff
and Metzener 1988), so that the tables stay small.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from fairhand.fidelity.quoted import Token

Pair = tuple[int | None, int | None]
"""A word of the quotation and a word of the source; None where one has no counterpart."""

_CHANGED, _ADDED = 10, 10
_DROP, _DROPPED = 6, 1
"""What it costs to drop a stretch of the source, and for each of its words: one long stretch is likelier than two."""
_DROP_BY_BRACKET = 1
_IN_BRACKETS_CHANGED, _IN_BRACKETS_ADDED = 2, 3
_SMALL_TABLE = 6000
_SHORTEST_ANCHOR = 3
_LARGEST_TABLE = 100_000
"""Stretches as long as this that share not even an anchor have nothing to do with each other."""
MOST_FOR_A_BRACKET = 15
"""How many words of the source one bracket may stand for."""


def align(tokens: Sequence[Token], words: Sequence[str]) -> tuple[Pair, ...]:
    """The pairs of the cheapest pairing, in order, without the words of the source before and after.

    >>> from fairhand.model.span import Span
    >>> align((Token("quay", Span(0, 4)), Token("sold", Span(5, 9))), ("the", "quay", "was", "sold", "off"))
    ((0, 1), (None, 2), (1, 3))
    """
    pairs: list[Pair] = []
    _align(tokens, words, (0, len(tokens)), (0, len(words)), (True, True), pairs=pairs)
    used = [k for k, (token, _) in enumerate(pairs) if token is not None]
    return tuple(pairs[used[0] : used[-1] + 1]) if used else ()


def dropped_runs(tokens: Sequence[Token], pairs: Sequence[Pair]) -> Iterator[tuple[int, int]]:
    """The stretches of the source that stand opposite nothing, not even beside a bracket: half-open intervals of pairs.

    >>> from fairhand.model.span import Span
    >>> list(dropped_runs((Token("quay", Span(0, 4)), Token("sold", Span(5, 9))), ((0, 1), (None, 2), (1, 3))))
    [(1, 2)]
    """
    begin = None
    before = -1
    for at, (token, _) in enumerate(pairs):
        if token is None:
            begin = at if begin is None else begin
            continue
        if begin is not None:
            bracketed = any(k >= 0 and tokens[k].kind == "bracketed" for k in (before, token))
            if not bracketed or at - begin > MOST_FOR_A_BRACKET:
                yield begin, at
        begin = None
        before = token


def _align(
    tokens: Sequence[Token],
    words: Sequence[str],
    of_tokens: tuple[int, int],
    of_words: tuple[int, int],
    free: tuple[bool, bool],
    *,
    pairs: list[Pair],
) -> None:
    """Add the pairs of one stretch of tokens and words; ``free`` tells which ends of the source cost nothing."""
    i, n = of_tokens
    j, m = of_words
    if i == n or j == m or (n - i) * (m - j) <= _SMALL_TABLE:
        pairs.extend(_pair_stretch(tokens, words, of_tokens, of_words, free))
        return
    from difflib import SequenceMatcher

    # A word that may stand for another (bracketed, or in part) never starts a common run.
    quoted = [token.word if token.kind == "plain" else f" {k}" for k, token in enumerate(tokens[i:n])]
    run = SequenceMatcher(None, quoted, words[j:m], autojunk=False).find_longest_match()
    if run.size < _SHORTEST_ANCHOR:
        if (n - i) * (m - j) <= _LARGEST_TABLE:
            pairs.extend(_pair_stretch(tokens, words, of_tokens, of_words, free))
        else:
            pairs.extend((k, None) for k in range(i, n))
            pairs.extend((None, k) for k in range(j, m))
        return
    a, b = i + run.a, j + run.b
    _align(tokens, words, (i, a), (j, b), (free[0], False), pairs=pairs)
    pairs.extend((a + k, b + k) for k in range(run.size))
    _align(tokens, words, (a + run.size, n), (b + run.size, m), (False, free[1]), pairs=pairs)


def _pair_stretch(
    tokens: Sequence[Token],
    words: Sequence[str],
    of_tokens: tuple[int, int],
    of_words: tuple[int, int],
    free: tuple[bool, bool],
) -> list[Pair]:
    """The cheapest pairing of one stretch, by a full table."""
    i0, n = of_tokens
    j0, m = of_words
    width = m - j0
    # For each token two rows: the least cost of all, and the least cost where the last word of the source was dropped.
    opening = _opening(tokens, i0)
    first = [0 if free[0] or not j else opening + j * _DROPPED for j in range(width + 1)]
    table = [(first, first, opening)]
    for i in range(i0, n):
        token = tokens[i]
        plain = token.kind == "plain"
        changed, added = _costs(token)
        above = table[-1][0]
        here = above[0] + added
        opening = _opening(tokens, i + 1)
        drop = here + opening
        row, drops = [here], [drop]
        for j in range(width):
            word = words[j0 + j]
            same = token.word == word if plain else token.matches(word)
            drop = min(here + opening, drop) + _DROPPED
            here = min(above[j] + (0 if same else changed), above[j + 1] + added, drop)
            row.append(here)
            drops.append(drop)
        table.append((row, drops, opening))
    j = width
    pairs: list[Pair] = []
    if free[1]:
        last = table[-1][0]
        j = min(range(width + 1), key=last.__getitem__)
        pairs.extend((None, j0 + k) for k in range(width - 1, j - 1, -1))
    i = n
    dropping = False
    while i > i0 or j > 0:
        row, drops, opening = table[i - i0]
        if i == i0 or dropping or (j > 0 and row[j] == drops[j]):
            j -= 1
            pairs.append((None, j0 + j))
            dropping = i > i0 and drops[j + 1] == drops[j] + _DROPPED and drops[j + 1] != row[j] + opening + _DROPPED
            continue
        token = tokens[i - 1]
        changed, added = _costs(token)
        above = table[i - 1 - i0][0]
        i -= 1
        if row[j] == above[j] + added and (
            j == 0 or row[j] != above[j - 1] + (0 if token.matches(words[j0 + j - 1]) else changed)
        ):
            pairs.append((i, None))
        else:
            j -= 1
            pairs.append((i, j0 + j))
    pairs.reverse()
    return pairs


def _opening(tokens: Sequence[Token], at: int) -> int:
    """What it costs to drop words before the token ``at``: little where a bracket beside them may stand for them."""
    return _DROP_BY_BRACKET if any(token.kind == "bracketed" for token in tokens[max(0, at - 1) : at + 1]) else _DROP


def _costs(token: Token) -> tuple[int, int]:
    """What it costs that a token differs from the source's word, and that it has none."""
    bracketed = token.kind == "bracketed"
    return (_IN_BRACKETS_CHANGED, _IN_BRACKETS_ADDED) if bracketed else (_CHANGED, _ADDED)
