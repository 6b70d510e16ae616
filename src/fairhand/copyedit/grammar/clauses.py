"""A sentence of the writer's own prose, parsed, with what the rules of grammar ask of it."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import pairwise

from fairhand.copyedit.own_prose import OwnParagraph
from fairhand.language.parsing import Parsed, parse_sentences
from fairhand.language.parsing import Sentence as Words
from fairhand.manuscript.bare import OPAQUE
from fairhand.model.span import Span

FINITE = frozenset({"VBZ", "VBP", "VBD", "MD"})
PAST_ONLY = frozenset(
    "ate began blew broke chose drank drew drove fell flew forgave forgot froze gave grew knew lay ran rang rode"
    " rose sang sank saw shook spoke stole swam took threw tore went woke wore wrote undertook withdrew arose"
    " overcame became came shrank sprang strove swore wove foresaw".split()
)
"""Past forms that are no participles, so that they are finite whatever the tagger says."""
WH = frozenset({"WDT", "WP", "WP$", "WRB"})
NOUNS = frozenset({"NN", "NNS", "NNP", "NNPS"})
_AUXILIARIES = frozenset("do does did is are was were has have had can could will would may might must should".split())
SUBJECTS = frozenset({"nsubj", "nsubjpass", "expl"})
_CHIEF = frozenset({"ROOT", "ccomp", "conj", "parataxis"})
STAND_IN = "Xx"
"""What the parser is given for words that are not the writer's own: a name, as it were."""
_HIDDEN = re.compile(rf"{OPAQUE}(?:[\s{OPAQUE}]*{OPAQUE})?")
_BRACKETED = re.compile(rf"\s*\([\s{OPAQUE},;]*\)|[“\"‘']?{OPAQUE}[”\"’']?")


@dataclass(frozen=True)
class Clause:
    """One sentence, parsed."""

    text: str
    """As the parser saw it: what is not the writer's own is a stand-in, of the same length."""
    start: int
    """Where it begins in the draft."""
    words: Words
    paragraph: int = 0
    """Number of its paragraph among the writer's own."""

    @cached_property
    def children(self) -> tuple[tuple[int, ...], ...]:
        """By index of a word: those that hang on it."""
        out: list[list[int]] = [[] for _ in self.words]
        for number, word in enumerate(self.words):
            if word.head != number:
                out[word.head].append(number)
        return tuple(map(tuple, out))

    def of_role(self, head: int, *roles: str) -> tuple[int, ...]:
        """The words that hang on one in these roles."""
        return tuple(each for each in self.children[head] if self.words[each].role in roles)

    def below(self, head: int) -> tuple[int, ...]:
        """A word with all that hangs on it, in order."""
        out, waiting = {head}, [head]
        while waiting:
            for each in self.children[waiting.pop()]:
                if each not in out:
                    out.add(each)
                    waiting.append(each)
        return tuple(sorted(out))

    def place(self, first: int, last: int | None = None) -> Span:
        """The place in the draft from one word to another."""
        end = self.words[first if last is None else last].span.end
        return Span(self.words[first].span.start, end).shifted(self.start)

    def hides(self, numbers: Sequence[int]) -> bool:
        """Whether one of these words stands in for what is not the writer's own."""
        return any(self.words[number].text.startswith(STAND_IN) for number in numbers)

    def is_finite(self, number: int) -> bool:
        """Whether a word is a finite verb."""
        word = self.words[number]
        return word.tag in FINITE or (word.key in PAST_ONLY and word.tag.startswith("VB"))

    def finite_of(self, head: int) -> int | None:
        """The finite verb of the clause whose chief word is ``head``: itself or one of its auxiliaries."""
        if self.is_finite(head):
            return head
        helping = self.of_role(head, "aux", "auxpass")
        if (
            not helping
            and self.words[head].tag == "VBN"
            and self.words[head].role in _CHIEF
            and self.of_role(head, "nsubj")
        ):
            return head  # a past form taken for a participle: the editor printed
        return next((a for a in helping if self.words[a].tag in FINITE), None)

    def subject_of(self, head: int) -> int | None:
        """The subject of the clause whose chief word is ``head``."""
        return next(iter(self.of_role(head, *SUBJECTS)), None)


@dataclass(frozen=True, slots=True)
class Shown:
    """One sentence as the parser is to see it."""

    text: str
    start: int
    """Where it begins in the draft."""
    paragraph: int
    """Number of its paragraph among the writer's own."""


def blank_brackets(paragraph: OwnParagraph, brackets: Sequence[Span]) -> OwnParagraph:
    """A paragraph with blanks for its citations in brackets, which are no words of their sentences.

    Args:
        paragraph: The writer's own prose.
        brackets: Places of the draft in brackets, that are opaque in it.

    >>> own = OwnParagraph("a rule \ufffc\ufffc\ufffc.", 10, ())
    >>> blank_brackets(own, [Span(17, 20)]).text
    'a rule    .'
    """
    text, start = paragraph.text, paragraph.start
    for each in brackets:
        if start <= each.start and each.end <= start + len(text):
            at, end = each.start - start, each.end - start
            text = text[:at] + text[at:end].replace(OPAQUE, " ") + text[end:]
    return paragraph if text is paragraph.text else replace(paragraph, text=text)


def show_sentences(paragraphs: Sequence[OwnParagraph]) -> tuple[Shown, ...]:
    """The sentences of the writer's own prose as the parser is to see them."""
    return tuple(
        Shown(show(span.of(each.text)), each.start + span.start, number)
        for number, each in enumerate(paragraphs)
        for span in each.sentences
    )


def read_clauses(
    paragraphs: Sequence[OwnParagraph], parse: Callable[[Sequence[str]], Sequence[Words]] = parse_sentences
) -> Iterator[Clause]:
    """The sentences of the writer's own prose, parsed.

    Args:
        paragraphs: The writer's own prose.
        parse: Parses sentences; another where they were parsed ahead.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> from fairhand.copyedit.own_prose import own_prose
    >>> [clause.text for clause in read_clauses(own_prose(read_manuscript("*Emma* sold. So did this."), ()))]
    ['XxXxXx sold.', 'So did this.']
    """
    sentences = show_sentences(paragraphs)
    for shown, words in zip(sentences, parse([each.text for each in sentences]), strict=True):
        if words:
            yield Clause(shown.text, shown.start, close(words), shown.paragraph)


def close(words: Words) -> Words:
    """The words of a sentence, with a mark that is no stop at its end where it has none: rules look one word ahead.

    >>> [each.text for each in close(parse_sentences(["They rowed"])[0])]
    ['They', 'rowed', '¶']
    """
    last = words[-1]
    if not last.text[-1].isalnum():
        return words
    top = next((n for n, each in enumerate(words) if each.head == n), 0)
    return (*words, Parsed("¶", Span(last.span.end, last.span.end), ".", "punct", top))


def show(text: str) -> str:
    """A sentence with stand-ins of the same length for what is opaque in it.

    >>> show("He read \ufffc\ufffc\ufffc\ufffc twice.")
    'He read XxXx twice.'
    """
    text = re.sub(rf"\(([\s{OPAQUE},;]*)\)", lambda found: " " * len(found[0]), text)
    return _HIDDEN.sub(lambda found: (STAND_IN * len(found[0]))[: len(found[0])], text)


def word_at(words: Words, number: int) -> Parsed | None:
    """The word at an index, or None beyond the ends."""
    return words[number] if 0 <= number < len(words) else None


def is_inverted(clause: Clause) -> bool:
    """Whether a sentence opens with *only*, *not* or *nor*, and an auxiliary stands before its subject for it.

    >>> from fairhand.language.parsing import parse_sentences
    >>> text = "Only when it rose above 2 m did the nests fail."
    >>> is_inverted(Clause(text, 0, parse_sentences([text])[0]))
    True
    """
    words = clause.words
    if words[0].key not in ("only", "not", "nor", "rarely", "seldom", "never"):
        return False
    return any(
        one.key in _AUXILIARIES and other.tag in ("DT", "PRP", "PRP$", "EX", "NNP", "NNS")
        for one, other in pairwise(words[2:])
    )
