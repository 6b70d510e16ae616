"""An opening whose doer is not the subject of its sentence: *Walking down the quay, the warehouses seemed endless*.

**Source**: "dangling modifier" in handbooks of usage; APA Manual, 7th ed., 4.23 (from memory). Participles that have
become prepositions (*considering*, *given*, *using*) are let be, as are turns of the writer's own; it is told only
where the subject cannot do what the opening says: *it* or *there* that stands for nothing, or a thing.
"""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.copyedit.grammar.clauses import NOUNS, Clause
from fairhand.copyedit.grammar.counted import PERSONS
from fairhand.copyedit.grammar.number import number_of
from fairhand.copyedit.grammar.slip import Slip

_LET_BE = frozenset(
    "considering regarding concerning following according including excluding given judging depending assuming"
    " supposing granting granted owing pending barring during notwithstanding speaking starting beginning using based"
    " relating touching generally taking putting setting leaving allowing provided providing seeing failing going"
    " counting adding turning moving strictly broadly building drawing extending applying being becoming summarizing"
    " summarising interestingly compared comparing".split()
)
"""Openings that have become prepositions, or speak for the writer."""
_BEFORE_ING = frozenset("after before while when upon on since".split())
_DEEDS = frozenset(
    "walking looking reading crossing driving arriving entering hearing seeing watching sitting standing riding"
    " sailing travelling traveling visiting thinking remembering hoping wishing fearing wanting trying searching"
    " studying examining comparing reviewing analyzing analysing finishing writing speaking talking listening"
    " realizing realising knowing believing learning discovering meeting leaving returning waking running climbing"
    " swimming flying lying worrying expecting deciding choosing asking eating drinking working playing growing"
    " interviewing observing considering researching exploring reflecting having".split()
)
"""What only a person does, in the form that opens a sentence."""
_HAVING = frozenset(
    "read seen heard visited studied examined finished written lost failed arrived entered met left returned learned"
    " learnt discovered walked spent eaten worked tried decided chosen compared reviewed analysed analyzed considered"
    " looked listened spoken lived grown".split()
)
_ROLES = PERSONS | frozenset(
    "child boy girl teenager parent mother father immigrant teacher nurse student reader writer citizen historian"
    " scholar woman man young adult veteran widow orphan freshman feminist american".split()
)
_UNDERGONE = frozenset(
    "born raised educated trained orphaned widowed appointed elected exiled imprisoned wounded hired employed arrested"
    " promoted adopted".split()
)
"""What only a person undergoes, in the form that opens a sentence."""
_KIN = frozenset(
    "parents brother sister brothers sisters family grandmother grandfather aunt uncle wife husband".split()
)
_OF_THE_BODY = frozenset(
    "eyes eye mind hands hand feet foot heart legs leg gaze voice thoughts face arms head back body ears mouth lips"
    " fingers shoulders ancestors followers team crew colleagues friends friend army men troops".split()
)
"""What may stand for the person, or does as persons do."""
_OWNERS = {"his": "him", "her": "her", "my": "me", "our": "us", "their": "them"}
_ABSTRACT = ("tion", "sion", "ness", "ity", "ism", "ment", "ance", "ence", "ship", "hood", "dom")
_THINGS = frozenset(
    "law rent war road river tunnel bell fire water door warehouse warehouses house houses building buildings"
    " street streets book books poem novel story essay article letter letters word words result results data"
    " figure figures fact facts problem problems question questions answer answers difference differences"
    " similarity similarities theme themes view sky sun moon rain snow wind storm night day morning evening year"
    " years time hours minutes life price prices cost costs rate rates idea ideas theory evidence language english"
    " history memory text film movie music song painting picture image map maps world country city town village"
    " school car train bus ship food dinner breakfast money job work health disease chapel chapels tree trees"
    " mountain mountains field fields sea bridge harbour harbor factory museum garden church hospital poetry prose"
    " style tone imagery structure ending chapter setting plot statistics numbers changes effects consequences"
    " benefits dangers risks trends patterns walls window windows room shoes clothes policy policies rule rules"
    " tax taxes system technology internet trip journey closure pattern transcript transcripts future past"
    " symbolism attention approach importance beauty power violence poverty hunger strike riot reform treaty"
    " contract agreement budget experiment sample samples survey surveys interview interviews table chart graph"
    " paragraph sentence metaphor images symbol symbols irony message moral lesson meaning voice plotline dialogue"
    " narrative landscape scenery gardens cathedral castle tower monument statue ruins mill mine station airport"
    " highway traffic engine machine machines computer phone television radio newspaper headline advertisement"
    " website app software diet meal meals coffee bread weather heat cold flood drought earthquake virus infection"
    " symptom symptoms medicine drug drugs treatment surgery therapy pain fear anger joy grief memories dream"
    " dreams hope doubt trust shame pride project projects campaign event events crisis debate argument arguments"
    " claim claims point points topic subject issue issues reason reasons cause causes solution solutions impact"
    " role value values culture society economy market trade industry tradition religion faith science art"
    " literature design fashion gender race".split()
)
"""Nouns that neither read, walk nor hope."""


def find_dangling(clause: Clause) -> Iterator[Slip]:
    """The opening of a sentence, where its doer is nowhere in the sentence's first part.

    Args:
        clause: The sentence.

    >>> from fairhand.language.parsing import parse_sentences
    >>> said = "Having read the letters, the war looks different."
    >>> [one.instead for one in find_dangling(Clause(said, 0, parse_sentences([said])[0]))]
    ['war']
    """
    words = clause.words
    comma = next((n for n, each in enumerate(words[:25]) if each.text == ","), None)
    if comma is None or comma < 2 or comma + 2 >= len(words) or words[0].text[0].islower():
        return
    kind = _opening(clause, comma)
    if kind is None:
        return
    subject = comma + 1
    while subject < len(words) and words[subject].tag in ("DT", "PRP$", "JJ", "CD", "VBN", "JJR", "JJS", "PDT"):
        subject += 1
    while subject + 1 < len(words) and words[subject].tag in NOUNS and words[subject + 1].tag in NOUNS:
        subject += 1
    if subject >= len(words) - 1:
        return
    many = kind == "as" and words[subject].tag == "NNS" and number_of(clause, subject) == "many"
    if not (many or _cannot_do(clause, comma + 1, subject) or _is_owned(clause, comma + 1, subject, kind)):
        return
    verb = words[subject].head
    if words[subject].role not in ("nsubj", "nsubjpass", "expl") or words[verb].head != verb:
        return
    finite = clause.finite_of(verb)
    if finite is None or finite < subject or any(words[n].text == "," for n in range(subject, finite)):
        return
    yield Slip(clause.place(0, comma - 1), words[0].text, words[subject].text, kind)


def _opening(clause: Clause, comma: int) -> str | None:
    """Of what kind the opening is: a participle, or *as a* with a person; None where it is neither, or may be."""
    words = clause.words
    if any(clause.is_finite(n) for n in range(comma)) or any(words[n].tag in ("WP", "WDT") for n in range(comma)):
        return None
    at = 1 if words[0].key in _BEFORE_ING else 0
    if words[0].key == "as" and words[1].key in ("a", "an") and words[comma - 1].key in _ROLES and comma <= 5:
        return "as"
    if words[0].key == "being" and words[1].key in ("a", "an") and words[comma - 1].key in _ROLES and comma <= 5:
        return "as"
    first = words[at]
    if at == 0 and first.key in _UNDERGONE and words[at + 1].tag in ("IN", "TO"):
        return "undergone"
    if at == 0 and first.key in _LET_BE:
        return None
    if first.key == "having" and words[at + 1].key in _HAVING:
        return "participle"
    if first.key in _DEEDS - {"having"} and first.tag in ("VBG", "NN", "NNP") and comma > at + 1:
        return "participle"
    return None


def _is_owned(clause: Clause, first: int, subject: int, kind: str) -> bool:
    """Whether the doer is hidden in a possessive: *born in Leeds, his books*; *as a child, my father took me*."""
    words = clause.words
    owner, owned = words[first], words[subject]
    if owner.key not in _OWNERS or clause.of_role(subject, "conj", "appos") or owned.tag not in ("NN", "NNS"):
        return False
    if owned.key in PERSONS or owned.key in _ROLES or owned.key in _KIN:
        return kind == "as" and any(word.key == _OWNERS[owner.key] for word in words[subject + 1 : subject + 6])
    return owned.key not in _OF_THE_BODY


def _cannot_do(clause: Clause, first: int, subject: int) -> bool:
    """Whether the subject is no person: a word that stands for nothing, or a thing."""
    words = clause.words
    word = words[subject]
    if subject == first and word.key in ("it", "there"):
        return _stands_for_nothing(clause, subject)
    if clause.hides(range(first, subject + 1)) or clause.of_role(subject, "cc", "conj", "appos"):
        return False
    if word.tag not in ("NN", "NNS") or word.key in PERSONS:
        return False
    return word.key in _THINGS or word.key.removesuffix("s").endswith(_ABSTRACT)


_NOTHING = frozenset("clear evident obvious apparent plain noticeable".split())
_NOTHING_THAT = frozenset(
    "possible likely unlikely probable true striking interesting suggested shown found argued reported assumed seen"
    " noted concluded said thought believed".split()
)
"""What a thing is to somebody: *it is clear that*; not *it is important to*, whose doer may be the opening's."""


def _stands_for_nothing(clause: Clause, at: int) -> bool:
    """Whether *there* or *it* is a mere beginning: *there is*, *it is clear that*, *it became clear*."""
    words = clause.words
    verb = words[at].head
    if words[at].key == "there":
        return words[at + 1].key in ("is", "are", "was", "were", "seems", "seemed", "appears")
    if any(words[n].key in _NOTHING for n in clause.of_role(verb, "acomp", "oprd", "attr")):
        return True
    near = range(at + 1, min(len(words) - 1, at + 6))
    return any(words[n].key in _NOTHING_THAT and words[n + 1].key == "that" for n in near)
