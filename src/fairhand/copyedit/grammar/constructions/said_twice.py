"""One part of a sentence said twice, or a question's order in a statement: *the author he*, *although …, but*.

**Source**: "double subject", "double conjunction" and "indirect question" in handbooks of usage for writers of English.
"""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.clauses import NOUNS, SUBJECTS, WH, Clause
from fairhand.copyedit.grammar.constructions.construction import Mixed, mixed_at
from fairhand.copyedit.grammar.counted import PERSONS

PRONOUNS = frozenset("he she they".split())
JOINING = {
    "although": ("but",),
    "though": ("but",),
    "because": ("so", "therefore"),
    "since": ("so", "therefore"),
}
"""What opens a sentence, and what would join its second part a second time."""
ASKED = frozenset("why how where when".split())
_KIN = frozenset(
    "grandmother grandfather sister aunt uncle cousin parents grandparents people men women children king queen"
    " president narrator protagonist".split()
)
_EACH = frozenset("that this each every all no any".split())
_NEEDS = ("dobj", "ccomp", "attr", "acomp", "auxpass", "xcomp", "oprd")
_ASKING = frozenset(
    "ask asks asked asking wonder wonders wondered wondering know knows knew known understand understands understood"
    " explain explains explained see sees question unclear show shows showed tell tells told investigate discuss"
    " discusses examine examines is was explore explores reason reasons".split()
)
_NO_CLAUSE = frozenset("that also only not far to too called rather".split())
"""After *but* and *so* they go on with the first part."""
_PHRASE = frozenset("DT PRP$ JJ NN NNS NNP PRP RB EX CD VBG".split())
_PREPOSITIONS = frozenset("in to for with on of from at about by".split())
_WITH_PARTICLE = frozenset(
    "set sets come comes came go goes went move moves moved check checked break breaks broke give gives gave hand"
    " handed turn turns turned take takes took bring brings brought kick kicked sink sank join joined pitch cave"
    " caved step stepped walk walked look looked carry carried hold held pass passed stand stood close closed call"
    " called".split()
)
_ENDS = frozenset(".,;:)")
_FINITE = frozenset("had has was were is are did does will would can could".split())


def find_subject_twice(clause: Clause) -> Iterator[Mixed]:
    """*The author he argues*: a pronoun that names the subject again."""
    words = clause.words
    at = next((n for n in range(1, min(8, len(words) - 2)) if words[n].key in PRONOUNS and words[n].tag == "PRP"), None)
    if at is None or not clause.is_finite(at + 1):
        return
    before, verb = words[:at], at + 1
    if before[0].tag not in ("DT", "PRP$") or before[0].key in _EACH or not _is_person(before[-1].key):
        return
    if any(each.tag not in ("DT", "PRP$", "JJ", "NN", "NNS", "NNP", "POS") for each in before):
        return
    chief = words[verb].head if words[verb].role in ("aux", "auxpass") else verb
    finite = [n for n in range(verb + 1, len(words)) if clause.is_finite(n) and words[n].head != chief]
    if words[chief].role == "relcl" and words[chief].head == at - 1 and words[at - 1].head == at - 1:
        if not finite and (clause.of_role(chief, *_NEEDS) or verb != chief):
            yield mixed_at(clause, 0, at, "subject twice")
        return
    if words[chief].head != chief or any(clause.of_role(n, "relcl") for n in range(at)):
        return
    loose = [n for n in finite if clause.subject_of(n) is None and words[n].role not in ("conj", "aux", "auxpass")]
    if not loose and clause.of_role(chief, *_NEEDS, "prep", "advmod"):
        yield mixed_at(clause, 0, at, "subject twice")


def _is_person(noun: str) -> bool:
    return noun in PERSONS or noun.removesuffix("s") in PERSONS or noun in _KIN


def find_joined_twice(clause: Clause) -> Iterator[Mixed]:
    """*Although …, but*; *because …, so*: two words that join where one is enough."""
    words = clause.words
    first = 1 if words[0].key == "even" and words[1].key == "though" else 0
    seconds = JOINING.get(words[first].key)
    comma = next((n for n, each in enumerate(words[:-2]) if each.text == ","), None)
    if seconds is None or comma is None or words[comma + 1].key not in seconds:
        return
    link = comma + 1
    if words[link + 1].key in _NO_CLAUSE or not _opens_clause(clause, link + 1):
        return
    chief = next(n for n, each in enumerate(words) if each.head == n)
    later = next((n for n in range(link + 1, len(words)) if words[n].text == ","), len(words))
    goes_on = "but" in seconds and chief > later  # although it froze, but not for long, the ship left
    if not goes_on and any(clause.is_finite(n) for n in range(first + 1, link)):
        yield mixed_at(clause, link, link, "joined twice")


def _opens_clause(clause: Clause, at: int) -> bool:
    """Whether a subject and its finite verb follow here."""
    words = clause.words
    while at < len(words) and words[at].tag in _PHRASE:
        at += 1
        if at < len(words) and clause.is_finite(at) and words[at - 1].tag in NOUNS | {"PRP", "EX", "DT", "RB"}:
            return any(each.tag in NOUNS | {"PRP", "EX", "DT"} for each in words[max(0, at - 3) : at])
    return False


def find_question_order(clause: Clause) -> Iterator[Mixed]:
    """*Nobody knows why did the strike fail*: the order of a question in a statement."""
    words = clause.words
    if words[-1].text != ".":
        return
    for at in range(1, len(words) - 3):
        if words[at].key not in ASKED or words[at - 1].key not in _ASKING:
            continue
        verb = words[at + 1].head
        helped = words[at + 1].key in ("do", "does", "did") and words[at + 1].role == "aux"
        asks = (
            helped
            and words[verb].tag in ("VB", "VBP")
            and any(at + 1 < n < verb for n in clause.of_role(verb, *SUBJECTS))
        )
        turned = (
            words[at].key in ("why", "how")
            and words[at + 1].key in ("is", "are", "was", "were", "can", "could", "will", "would", "should")
            and words[at + 2].key in ("it", "he", "she", "they", "we", "i", "there")
        )
        if asks or turned:
            yield mixed_at(clause, at, at + 1, "question order")


def find_preposition_twice(clause: Clause) -> Iterator[Mixed]:
    """*The house in which they lived in*."""
    words = clause.words
    for at in range(len(words) - 3):
        here = words[at].key
        if here not in _PREPOSITIONS or words[at + 1].key not in ("which", "whom"):
            continue
        last = next((n - 1 for n in range(at + 4, len(words)) if _ends(clause, n, here)), len(words) - 2)
        if words[last - 1].key in _WITH_PARTICLE and here in ("in", "on", "by", "about"):
            continue  # in which the cold set in
        between = range(at + 2, last)
        if words[last].key != here or words[last].tag not in ("IN", "TO") or clause.of_role(last, "pobj", "pcomp"):
            continue
        if any(clause.is_finite(n) for n in between) and not any(words[n].tag in WH for n in between):
            yield mixed_at(clause, at, at + 1, "preposition twice")


def _ends(clause: Clause, number: int, preposition: str) -> bool:
    """Whether the clause of *which* ends before a word: a mark, or the verb of the sentence after the preposition."""
    word = clause.words[number]
    finite = clause.is_finite(number) or word.key in _FINITE
    return word.text in _ENDS or (finite and clause.words[number - 1].key == preposition)
