"""Papers that quote: from a novel and from published articles, rightly, and with a tenth of the quotations spoiled."""

from __future__ import annotations

import random
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from types import MappingProxyType

from fairhand.fidelity.prepared import prepare, words_of
from fairhand.language.sentences import split_sentences
from fairhand.model.paper import Paper
from fairhand.model.span import Span
from measuring.corpora import PAGE, Article, Shelved, articles, novel, speeches
from measuring.forms import STYLES, bare_sentence, form_of, interrupted_sentence, quoting_sentence
from measuring.tally import Spoiled, Tally, judge_paper

SPOILS = {
    "a word changed": "quotation-differs",
    "words dropped": "quotation-gap",
    "another page cited": "quotation-elsewhere",
    "another source cited": "quotation-elsewhere",
    "words of no source": "quotation-not-found",
    "no page cited": "citation-page-missing",
}
UNCITED = {"no citation": "quotation-uncited"}
"""What is spoiled where a quotation has nothing that says whose it is, in papers of their own."""
ONE_IN = 10
"""One quotation in so many is spoiled, as in a careful draft."""
A_PAPER = 20
"""Quotations in each paper."""
_UNQUOTABLE = re.compile(r"[*_`<>\\|=∘\n]|\]\(|://")
_BETWEEN = (
    "The evidence is not all of one kind.",
    "So much is agreed by everybody who has looked into it.",
    "It would be rash to build more than this upon it.",
    "What “progress” means in such a case is another question.",
    "The second point is less often made (see the figures in the first section).",
    "That was the state of things for some years (1990–1996).",
    "None of this was new, and it did not have to be.",
)


@dataclass(frozen=True, slots=True)
class Piece:
    """Words of a source, and where they stand in it."""

    shelved: Shelved
    start: int
    end: int

    @property
    def words(self) -> str:
        """The words on one line, marks within them made single as a quotation has them."""
        text = " ".join(self.shelved.text[self.start : self.end].split())
        for marks, single in ((("“", "”"), "‘’"), (('"', '"'), "‘’")):
            if text.count(marks[0]) * 2 == text.count(marks[0]) + text.count(marks[1]):
                text = re.sub(f"{marks[0]}([^{marks[1]}]*){marks[1]}", f"{single[0]}\\1{single[1]}", text)
        return text

    @property
    def pages(self) -> str:
        """The page, or the two, as they are cited."""
        first, last = self.shelved.pages_of(self.start, self.end)
        return str(first) if first == last else f"{first}–{last}"


def measure_quotations(tally: Tally, papers: int, seed: int = 1) -> None:
    """What the checks say of so many papers, made from the seed alone."""
    rng = random.Random(seed)  # noqa: S311 - a sample
    for number in range(papers):
        paper, spoiled = make_paper(rng, STYLES[number % len(STYLES)])
        judge_paper(tally, f"quotations {seed}.{number}", paper, spoiled)


def measure_uncited(tally: Tally, papers: int, seed: int) -> None:
    """What is said of papers in which quotations stand without a citation."""
    rng = random.Random(seed)  # noqa: S311 - a sample
    for number in range(papers):
        paper, spoiled = make_paper(rng, STYLES[number % len(STYLES)], UNCITED)
        judge_paper(tally, f"uncited {seed}.{number}", paper, spoiled, tuple(UNCITED.values()))


def make_paper(
    rng: random.Random, style: str, spoils: Mapping[str, str] = MappingProxyType(SPOILS)
) -> tuple[Paper, list[Spoiled]]:
    """A paper of twenty quotations from four sources, and what is spoiled in it."""
    shelf = choose_shelf(rng)
    stranger = rng.choice([one for one in _quotable_articles() if one.entry.id not in {s.entry.id for s in shelf}])
    text, spoiled = "# A Paper\n\n", []
    kinds = [rng.choice(list(spoils)) if n < A_PAPER // ONE_IN else "" for n in range(A_PAPER)]
    rng.shuffle(kinds)
    for kind in kinds:
        shelved = rng.choice(shelf)
        piece = choose_piece(rng, shelved)
        made = None
        while kind and made is None:
            source = stranger.shelved(1) if kind == "words of no source" else piece.shelved
            piece = choose_piece(rng, source, fewest=7)
            made = _spoil(kind, piece, shelf, style, rng)
        sentence = made or _right(piece, style, rng)
        if kind:
            spoiled.append(Spoiled(spoils[kind], Span(len(text), len(text) + len(sentence))))
        text += sentence + ("\n\n" if "\n> " in sentence or rng.random() < 0.25 else " ")
        if rng.random() < 0.5:
            text += rng.choice(_BETWEEN) + " "
    texts = {one.entry.id: one.source() for one in shelf}
    return Paper("made", text, tuple(one.entry for one in shelf), texts, style=style), spoiled


@cache
def _quotable_articles() -> tuple[Article, ...]:
    """Articles long enough to have several pages."""
    return tuple(one for one in articles() if one.entry.authors and sum(map(len, one.paragraphs)) > 4 * PAGE)


def choose_shelf(rng: random.Random) -> list[Shelved]:
    """The novel and three articles, no two of which are cited by one name."""
    shelf = [novel()]
    for article in rng.sample(_quotable_articles(), len(_quotable_articles())):
        names = {name.surname for one in shelf for name in one.entry.authors}
        if len(shelf) < 4 and not names & {name.surname for name in article.entry.authors}:
            first = rng.choice((1, 15, 97, 188, 1021))
            entry = replace(article.entry, page=f"{first}-{first + 40}")
            shelf.append(replace(article.shelved(first), entry=entry))
    return shelf


def choose_piece(rng: random.Random, shelved: Shelved, fewest: int = 4) -> Piece:
    """A speech of the novel, or a sentence or part of one, such as a writer may quote word for word."""
    while True:
        if shelved.entry.id == "novel":
            start, end = rng.choice(rng.choice(speeches()))
            most = 80
        else:
            at = rng.randrange(_body_of(shelved) - 1200)
            sentences = split_sentences(shelved.text[at : at + 1200])
            if len(sentences) < 4:
                continue
            whole = sentences[rng.randrange(1, len(sentences) - 1)].shifted(at)
            start, end = whole.start, whole.end
            most = 60
            if rng.random() < 0.6:
                words = [found.span() for found in re.finditer(r"\S+", whole.of(shelved.text))]
                if len(words) < 8:
                    continue
                first = rng.randrange(0, len(words) - 6)
                last = min(len(words) - 1, first + rng.randrange(5, 26))
                start, end = whole.start + words[first][0], whole.start + words[last][1]
        text = shelved.text[start:end]
        bare = text.rstrip(" .,;:-—–\n") if text[-1:] not in "?!" else text
        if bare.endswith(("Fig", "Figs", "et al", "e.g", "i.e")):
            continue
        piece = Piece(shelved, start, start + len(bare))
        count = len(words_of(bare))
        if fewest <= count <= most and is_quotable(bare if shelved.entry.id != "novel" else bare.replace("\n", " ")):
            return piece


@cache
def _body_of(shelved: Shelved) -> int:
    """Where the article's list of references begins."""
    return shelved.text.rindex("\nReferences\n")


def is_quotable(text: str) -> bool:
    """Whether a writer could copy the words between quotation marks as they are."""
    halves = text.count("(") == text.count(")") and text.count("[") == text.count("]")
    marks = text.count("“") == text.count("”") and text.count('"') % 2 == 0
    return halves and marks and not _UNQUOTABLE.search(text) and text[:1].isalnum()


def _right(piece: Piece, style: str, rng: random.Random) -> str:
    """A sentence that quotes rightly: word for word, or changed as the manuals let one."""
    words = piece.words.split()
    form = form_of(piece.shelved.entry, style)
    at = rng.randrange(3, len(words) - 4) if len(words) > 9 else 0
    if at and rng.random() < 0.3 and all(word.isalpha() for word in words[at : at + 3]):
        match rng.randrange(4):
            case 0:
                words[at : at + rng.randrange(1, 3)] = [rng.choice((". . .", "…", "[...]", "..."))]
            case 1:
                words[at] = "[this]"
            case 2:
                words.insert(at, "[sic]")
            case _:
                words[0] = f"[{words[0][0].swapcase()}]{words[0][1:]}"
    text = " ".join(words)
    if len(words) > 9 and style != "chicago-notes-17" and rng.random() < 0.1:
        at = rng.randrange(4, len(words) - 4)
        first = " ".join(words[:at])
        if first[-1].isalnum():
            return interrupted_sentence(form, first, " ".join(words[at:]), piece.pages)
    return quoting_sentence(form, text, piece.pages, rng)


def _spoil(kind: str, piece: Piece, shelf: Sequence[Shelved], style: str, rng: random.Random) -> str | None:
    """A sentence with one fault; None where the fault would be none."""
    words = piece.words.split()
    pages = piece.pages
    cited = piece.shelved
    line = prepare(piece.shelved.source()).line
    match kind:
        case "a word changed":
            at = rng.randrange(len(words))
            of_another = rng.choice(words_of(rng.choice(shelf).text[5000:15000]))
            if not words_of(words[at]) or words_of(words[at])[0] == of_another or "[" in words[at]:
                return None
            words[at] = of_another
        case "words dropped":
            at = rng.randrange(1, len(words) - 4)
            gone = words[at : at + rng.randrange(1, 4)]
            if not words_of(" ".join(gone)) or "[" in " ".join(words):
                return None
            del words[at : at + len(gone)]
        case "another page cited":
            numbers = [n for n in range(cited.first, cited.first + len(cited.starts)) if str(n) not in pages.split("–")]
            pages = str(rng.choice(numbers))
            if sum(1 for _ in prepare(cited.source()).occurrences(words_of(piece.words))) > 1:
                return None
        case "another source cited":
            cited = rng.choice([one for one in shelf if one.entry.id != piece.shelved.entry.id])
            pages = str(cited.first + rng.randrange(len(cited.starts)))
        case "words of no source":
            cited = rng.choice(shelf)
            pages = str(cited.first + rng.randrange(len(cited.starts)))
        case "no page cited":
            pages = ""
        case "no citation":
            return bare_sentence(piece.words, rng)
    text = " ".join(words)
    if kind in ("a word changed", "words dropped") and f" {' '.join(words_of(text))} " in line:
        return None
    return quoting_sentence(form_of(cited.entry, style), text, pages, rng)
