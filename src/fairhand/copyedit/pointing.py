"""*This* with a verb and no noun beside it, after a sentence in which it could stand for several things.

**Source**: "vague pronoun reference" in A. A. Lunsford and K. J. Lunsford 2008. Mostly it is clear what is meant, so
that it is a place to look at and no fault.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from fairhand.model.span import Span

MOST_CLEAR = 12
"""Words of the sentence before up to which there is not much that *this* could stand for."""
_THIS = re.compile(
    r"(?:This|That|These|Those) (?:also |then |thus |only |not )?(?:is|was|are|were|has|have|had|does|did|do|can|could"
    r"|may|might|will|would|must|should|means?|meant|shows?|showed|suggests?|suggested|leads?|led|makes?|made|gives?|gave"
    r"|explains?|explained|proves?|proved|allows?|allowed|causes|caused|creates?|created|reflects?|reflected|raises?"
    r"|helps?|helped|implies|implied|indicates?|indicated|demonstrates?|reveals?|revealed|happens|happened|became"
    r"|becomes?|seems?|seemed|remains?|remained|comes?|came|brings?|brought)\b"
)


def find_pointing(text: str, sentences: Sequence[Span], lengths: Sequence[int]) -> Iterator[Span]:
    """Each *this* that stands alone, with its verb.

    Args:
        text: A paragraph.
        sentences: Its sentences.
        lengths: The words of each.

    >>> text = "The price fell. This shows it."
    >>> [span.of(text) for span in find_pointing(text, [Span(0, 15), Span(16, 30)], [20, 3])]
    ['This shows']
    """
    for number, span in enumerate(sentences[1:], 1):
        found = _THIS.match(span.of(text))
        if found is not None and lengths[number - 1] > MOST_CLEAR:
            yield Span(span.start, span.start + found.end())
