"""What the revision costs: the whole argument of a draft worked out cold, and again with one paragraph changed.

Run as ``python benchmarks/revision.py [WORDS...]`` (2000, 10000 and 100000 where none are named). The draft is of
paragraphs of 120 words by a seeded generator, as common and as rare as those of prose (Zipf's law), with a citation in
every second sentence and a figure in every third; it has ten points, and twelve sources of 8,000 words whose texts are
at hand. What is worked out is all that the page of the
revision shows of the argument: the body, the outline, the claims, points, strays and repeats. All is measured in one
run, in seconds of the processor.
"""

from __future__ import annotations

import itertools
import random
import statistics
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from dataclasses import replace

from measuring import tell
from search import VOCABULARY, make_lexicon

from fairhand.cli import set_for_a_command
from fairhand.model.entry import Entry, Issued, Name
from fairhand.model.paper import Paper
from fairhand.model.point import Point, Points, Support
from fairhand.model.source import Page, SourceText
from fairhand.readiness.analysis import Analysis

A_PARAGRAPH = 120
A_SENTENCE = 20
A_PAGE, A_SOURCE = 400, 8_000
SOURCES = 12
POINTS = 10
RUNS = 3
GOAL = "under .1"


def make_paper(words: int) -> Paper:
    """A paper with so many words."""
    chance = random.Random(words)  # noqa: S311 - a sample
    lexicon = make_lexicon(chance)
    weights = list(itertools.accumulate(1 / rank for rank in range(1, VOCABULARY + 1)))
    drawn = iter(chance.choices(lexicon, cum_weights=weights, k=words + POINTS * A_SENTENCE))
    names = [f"{lexicon[-1 - n].capitalize()}" for n in range(SOURCES)]
    entries = tuple(
        Entry(f"s{n}", "book", f"On {name}", authors=(Name(name, "A."),), issued=Issued(2000 + n), page="1-90")
        for n, name in enumerate(names)
    )
    points = tuple(
        Point(f"p{n}", f"{' '.join(itertools.islice(drawn, A_SENTENCE))}.", support=(Support(f"s{n}", str(n + 1)),))
        for n in range(POINTS)
    )
    paragraphs = [make_paragraph(drawn, names, chance) for _ in range(words // A_PARAGRAPH)]
    texts = {one.id: make_source(one.id, chance.choices(lexicon, cum_weights=weights, k=A_SOURCE)) for one in entries}
    draft = "# A Draft\n\n" + "\n\n".join(paragraphs) + "\n"
    return Paper("bench", draft, entries, texts, Points(points=points))


def make_source(id_: str, words: list[str]) -> SourceText:
    """Pages of sentences, a figure in every third."""
    pages = []
    for number, at in enumerate(range(0, len(words), A_PAGE), 1):
        sentences = [words[n : n + A_SENTENCE] for n in range(at, at + A_PAGE, A_SENTENCE)]
        for said in sentences[::3]:
            said[0] = f"{100 + 37 * number + len(said[-1]):,}"
        pages.append(Page(str(number), " ".join(f"{' '.join(said).capitalize()}." for said in sentences)))
    return SourceText(id_, tuple(pages), paged=True)


def make_paragraph(drawn: Iterator[str], names: list[str], chance: random.Random) -> str:
    """Six sentences, some with a figure, some with a citation."""
    sentences = []
    for number in range(A_PARAGRAPH // A_SENTENCE):
        said = list(itertools.islice(drawn, A_SENTENCE))
        if number % 3 == 0 and said:
            said[len(said) // 2] = f"{chance.randrange(100, 9000):,}"
        source = chance.randrange(SOURCES)
        cited = f" ({names[source]}, {2000 + source}, p. {chance.randrange(1, 90)})" if number % 2 else ""
        sentences.append(f"{' '.join(said).capitalize()}{cited}.")
    return " ".join(sentences)


def work_out(paper: Paper) -> Analysis:
    """Everything of the argument."""
    known = Analysis(paper, lambda _: None)
    argument = known.argument
    _ = argument.outline, argument.unsupported, argument.argued, argument.strays, argument.repeats
    return known


def change(paper: Paper, number: int) -> Paper:
    """The paper with a sentence more in one paragraph."""
    at = paper.draft.index("\n\n", len(paper.draft) // 2)
    return replace(
        paper, draft=f"{paper.draft[:at]} Nothing of this was new to them in year {number}.{paper.draft[at:]}"
    )


def one_run(words: int) -> tuple[float, float]:
    """Seconds cold, in a new process, and with one paragraph changed."""
    paper = make_paper(words)
    set_for_a_command()
    cold = used(lambda: work_out(paper))
    changed = [change(paper, number) for number in range(RUNS)]
    again = statistics.median(used(lambda one=one: work_out(one)) for one in changed)  # type: ignore[misc]
    return cold, again


def used(what: Callable[[], object]) -> float:
    """Seconds of the processor that a call takes, whatever else the machine does meanwhile."""
    begun = time.process_time()
    what()
    return time.process_time() - begun


def main(sizes: list[str]) -> None:
    """Measures and prints; each size in a process of its own, so that nothing is remembered."""
    if sizes[:1] == ["--one"]:
        print(*one_run(int(sizes[1])))
        return
    first = 0.0
    for size in sizes or ["2000", "10000", "100000"]:
        run = subprocess.run([sys.executable, __file__, "--one", size], capture_output=True, check=True, text=True)
        cold, again = map(float, run.stdout.split())
        first = first or cold
        tell(f"revision of {int(size):,} words with one paragraph changed, over the same cold", again / cold, GOAL)
        tell(
            f"revision of {int(size):,} words cold, over that of the fewest", cold / first, "as the words grow, or less"
        )


if __name__ == "__main__":
    main(sys.argv[1:])
