"""A predicate that does not fit its subject, or that has none: *the reason is because*, *by raising the rent makes*.

**Source**: "faulty predication" and "mixed construction" in handbooks of usage.
"""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.clauses import WH, Clause
from fairhand.copyedit.grammar.constructions.construction import Mixed, mixed_at
from fairhand.language.lexicon import find_word

REASONS = frozenset("reason reasons".split())
OPENING = frozenset("by with through without".split())
"""Before a word in *-ing* they open a phrase that can be no subject."""
WORKS = frozenset(
    "article book essay poem novel report study text paper story letter play editorial textbook bible constitution"
    " document website".split()
)
_PARTS = frozenset(
    "chapter passage paragraph table figure graph survey scene quotation quote excerpt experiment".split()
)
_BE = frozenset("is was are were".split())
_HEDGES = frozenset(
    "simply only mainly partly largely perhaps probably just mostly chiefly merely primarily precisely not also".split()
)
_SHOWS = frozenset(
    "says said states stated explains explained shows showed tells told mentions mentioned talks describes described"
    " argues argued claims suggests proves demonstrates illustrates discusses say state explain show tell mention"
    " talk".split()
)
_TIMES = frozenset(
    "time times day days moment moments year years night hour spring summer autumn fall winter morning evening"
    " season stage point period date age childhood adulthood january february march april may june july august"
    " september october november december christmas tide water dusk dawn noon midnight sunset sunrise lunch dinner"
    " breakfast graduation harvest adolescence infancy puberty pregnancy retirement weekend holiday break peak"
    " term semester bedtime situation case example problem question".split()
)
_NO_PLACE = ("ism", "ization", "isation")
_NOWHERE = frozenset(
    "irony metaphor simile alliteration personification democracy inflation recession photosynthesis osmosis evolution"
    " segregation discrimination censorship propaganda bias satire allegory foreshadowing hyperbole consent monopoly"
    " deflation mitosis diffusion addiction empathy justice revenge jealousy anxiety stress".split()
)
"""What is no place, so that *where* does not tell where."""
_DEFINED = tuple("tion sion ness ity ism ment ance ence sis ing cy phor ony".split())
"""Endings of what is defined with no article before it."""
_NOMINAL = frozenset("DT PRP$ JJ NN NNS NNP CD".split())
_TURNED = frozenset(
    "comes came goes lies lay stands stood arises arose emerges emerged grows grew flows begins".split()
)
"""Verbs that may stand before their subject: *through training comes mastery*."""
_POINTING = frozenset("the this that these those".split())
_ONE_OF_ALL = frozenset("best only first last ideal worst".split())
_SUBJECTS = frozenset("that there it he she we they i you one".split())


def find_reason(clause: Clause) -> Iterator[Mixed]:
    """*The reason … is because*, *the reason … is due to*."""
    words = clause.words
    for at, word in enumerate(words):
        verb = word.head
        if word.key not in REASONS or word.role not in ("nsubj", "attr", "npadvmod", "dep"):
            continue
        if words[verb].key not in _BE or verb < at or any(words[n].text in ";:" for n in range(at, verb)):
            continue
        after = verb + 1
        while after < len(words) and words[after].key in _HEDGES:
            after += 1
        two = [each.key for each in words[after : after + 2]]
        if two[:1] == ["because"] and two[1:] != ["of"]:
            yield mixed_at(clause, verb, after, "reason because", "that")
        elif two == ["due", "to"]:
            yield mixed_at(clause, verb, after, "reason due")


def find_is_when(clause: Clause) -> Iterator[Mixed]:
    """*A sonnet is when*, *irony is where*: a definition by a clause of time or place."""
    words = clause.words
    verb = next((n for n in range(1, min(6, len(words) - 2)) if words[n].key in ("is", "are")), None)
    if verb is None or words[verb + 1].key not in ("when", "where") or words[-1].text == "?":
        return
    head, before = words[verb - 1], words[:verb]
    named = verb == 1 and head.tag == "NNP" and find_word(head.key) is not None  # a noun with the capital of its place
    plain = all(each.tag in ("DT", "JJ", "NN", "NNS", "VBG") and each.key not in _POINTING for each in before)
    if (
        not (named or (plain and head.tag in ("NN", "NNS")))
        or clause.subject_of(verb) != verb - 1
        or head.key in _TIMES
    ):
        return
    if any(each.key in _ONE_OF_ALL for each in before):
        return
    if words[verb + 1].key == "when":
        placeless = before[0].key in ("a", "an") or head.key.endswith(_DEFINED)
    else:
        placeless = head.key in _NOWHERE or head.key.endswith(_NO_PLACE)
    if placeless and any(clause.is_finite(n) for n in range(verb + 2, len(words))):
        yield mixed_at(clause, verb, verb + 1, "is when")


def find_no_subject(clause: Clause) -> Iterator[Mixed]:
    """*By raising the rent makes it harder*: a phrase with a preposition in the place of the subject."""
    words = clause.words
    if words[0].key not in OPENING or words[1].tag != "VBG" or words[1].key == "being":
        return
    verb = next((n for n in range(2, len(words)) if clause.is_finite(n)), None)
    if verb is None or any(each.text in ",;:—" or each.tag in WH or each.key in _SUBJECTS for each in words[2:verb]):
        return
    if (
        words[verb].tag not in ("VBZ", "MD", "VBD")
        or words[verb].key in _TURNED
        or (words[0].key == "with" and words[verb].key in _BE)
    ):
        return
    chief = words[verb].head if words[verb].role in ("aux", "auxpass") else verb
    subject = clause.subject_of(chief)
    if words[chief].head != chief:
        return
    taken = (
        subject is not None
        and 0 < subject < verb
        and words[verb].tag == "VBZ"
        and words[subject].tag in ("NNS", "NNPS")
    )
    if subject is None or subject == 0 or taken:  # a plural taken for the subject of a verb in -s
        yield mixed_at(clause, 0, verb, "no subject")


def find_work_shows(clause: Clause) -> Iterator[Mixed]:
    """*In the first chapter shows*, *in the article it says*."""
    words = clause.words
    if words[0].key != "in" or words[1].tag not in _NOMINAL or words[1].key in ("that", "another"):
        return
    end = 1
    while end < len(words) - 2 and words[end].tag in _NOMINAL | {"IN"} and words[end].key not in ("it", "they"):
        end += 1
    last = words[end - 1].key
    if words[end].key in _SHOWS and last in WORKS | _PARTS and words[end].tag in ("VBZ", "VBD"):
        if words[end].head == end and (words[end + 1].tag in ("DT", "WRB", "PRP$") or words[end + 1].key == "that"):
            yield mixed_at(clause, 0, end, "no subject")
        return
    named = any(word.key in WORKS for word in words[1:end])
    it = end + 1 if words[end].text == "," else end
    if named and words[it].key in ("it", "they") and words[it + 1].key in _SHOWS and clause.is_finite(it + 1):
        if words[it + 2].tag not in ("IN", "DT", "WRB", "PRP$", "WP") or it + 3 >= len(words):
            return  # in the story it tells, the hero dies
        yield mixed_at(clause, 0, it, "it says")
