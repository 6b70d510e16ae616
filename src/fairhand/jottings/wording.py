"""What a jotting says of its own certainty: a question, not known yet, doubtful, or known.

Only its wording is looked at; whether it is true is the writer's to find out.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Literal

Wording = Literal["question", "unknown", "doubtful", "known"]

WORDINGS: dict[Wording, str] = {
    "question": "Questions",
    "unknown": "To find out",
    "doubtful": "Doubtful",
    "known": "Put down as known",
}
"""Each with its heading, in the order of what there is still to do."""

_ASKED = re.compile(
    r"\?[\s!?)\]\"”’'.]{0,20}$|\?\s{1,9}(?:if|because|for|since|they|i|he|she|it|we|no|yes|surely)\b", re.IGNORECASE
)
_TAGGED = re.compile(r"(?:(?<=\w)\?{2,9}|\(\?{1,9}\)|, right\?|, no\?)[\s!?)]{0,20}$")
_OPENS_QUESTION = re.compile(
    r"\W*(?:(?:and|but|so|ok|then) )?(?:"
    r"(?:who|whom|whose|what|which|when|where|why|how)(?:'s|’s)? ?(?:\w+ ){0,3}?"
    r"(?:is|are|was|were|do|does|did|can|could|will|would|should|has|have|had|if|about)\b"
    r"|how (?:much|many|long|often|far|old|big|fast|soon|come)\b|why (?:not|no|only|one|this|that|the)\b"
    r"|what (?:if|about|for|else)\b|who \w+(?:ed|t|s)\b"
    r"|(?:is|are|was|were|do|does|did|can|could|will|would|should|has|have|had)(?:n't|n’t)? "
    r"(?:it|they|there|this|that|these|those|the|a|an|one|he|she|we|i|you|any|anyone|anybody|all|both)\b"
    r"|(?:would|does) (?!be\b|have\b|like\b|not\b|need\b)\w)",
    re.IGNORECASE,
)
_ORDERS = re.compile(
    r"\W*(?:(?:i )?(?:must|should|need to|have to|still|also|then|please|remember|todo|to do)[: ]+(?:to )?)?"
    r"(?:find(?: out)?|look (?:up|for|into|at)|ask|check|chase|get(?: hold)?|google|search|order|borrow|remember|need"
    r"|read|see (?:if|whether)|compare|track down|e-?mail|ring|go to|todo|to do|tbc|tk)\b",
    re.IGNORECASE,
)
_NOT_KNOWN = re.compile(
    r"\b(?:(?:do|does|did|have|has)(?: not|n['’]?t) (?:know|found|understand|looked|read|seen)"
    r"|dunno|no (?:idea|clue)|unclear|unknown|nobody (?:knows|says)|(?:can|could)(?: not|n['’]?t|not) (?:find|tell)"
    r"|i wonder|wondering|tbc|still missing|not (?:yet )?(?:found|clear|known)"
    r"|need(?:s)? (?:to |a |an |some |someone |more )"
    r"|look up|find out|must (?:read|check|find|ask|look|get|see))",
    re.IGNORECASE,
)
_DOUBTS = re.compile(
    r"\b(?:maybe|perhaps|probably|possibly|presumably|supposedly|allegedly|apparently|arguably|surely|seem(?:s|ed|ingly)?"
    r"|might|may(?= [a-z]{2,}\b)"
    r"|could(?= (?:be|have|just|also|well))|(?:i|we) (?:think|guess|suppose|suspect|believe|bet|feel|doubt)|imo"
    r"|not (?:so |too |really |very |entirely |quite )?(?:sure|certain|convinced)|unsure|uncertain|doubtful|dubious"
    r"|rumou?rs?|they say|people say|everybody says|everyone says|it is said|said to be|somehow|sort of|kind of"
    r"|likely|unlikely|hard to believe|too (?:good|quick|neat|simple) to be|can['’]?t be (?:right|true)|if i remember"
    r"|as far as i|afaik|iirc|guess|must have (?:been|had))\b",
    re.IGNORECASE,
)


@lru_cache(maxsize=8192)
def tell_wording(text: str) -> Wording:
    """What the jotting is by its wording.

    A mark of asking after a doubt ("maybe the mill owner??") leaves it a doubt; what is to be looked up is not known.

    **Source**: known, wanted and learned as the three heads of a first list: Ogle 1986, *The Reading Teacher* 39 (from
    memory); words of doubt: the hedges of Hyland 2005, *Metadiscourse* (from memory); the rest is common practice.

    >>> [tell_wording(one) for one in ("who counted", "find the timetable", "maybe it was the war", "12 boxes, 1919")]
    ['question', 'unknown', 'doubtful', 'known']
    """
    doubts = _DOUBTS.search(text) is not None
    if _ASKED.search(text) and not _ORDERS.match(text):
        opens = _OPENS_QUESTION.match(text) is not None
        return "question" if opens or not (doubts or _TAGGED.search(text)) else "doubtful"
    if _ORDERS.match(text) or _NOT_KNOWN.search(text):
        return "unknown"
    if _OPENS_QUESTION.match(text):
        return "question"
    return "doubtful" if doubts else "known"
