"""The rows of ``measured.toml``: of what a check said of made papers and of found prose, the stricter."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import partial

from fairhand.readiness.measure import FEWEST_ALARMS
from measuring.argument import measure_points, measure_repeating, measure_straying
from measuring.citation_faults import CITED, measure_citation_forms
from measuring.citations import measure_citations
from measuring.claims import measure_claims
from measuring.copying import measure_copying
from measuring.form_faults import measure_form
from measuring.form_papers import measure_papers
from measuring.found_prose import measure_doubled_words, measure_found_prose
from measuring.grammar_faults import measure_grammar
from measuring.hard_arguments import measure_headings, measure_kindred_strays, measure_retellings
from measuring.mark_faults import measure_marks
from measuring.quotations import measure_quotations, measure_uncited
from measuring.sentence_faults import measure_shifts
from measuring.speeches import measure_speeches
from measuring.tally import ARGUING, FORMING, MEASURED, PAPERS, PARSING, QUOTED, Tally
from measuring.whole_papers import measure_whole_papers
from measuring.witnesses import measure_witnesses

QUOTING, CITING, POINTS, SPEAKING, COPYING = 600, 600, 400, 100, 100
"""Papers made of each sort."""
UNCITED = 240
"""The same, in which quotations stand without a citation."""
CLAIMING, ARGUED = 116, 300
"""The same for the checks of the argument."""
FEWEST_ARGUED = 0.5
"""The share of them that is made in any case: each has few alarms to go by."""
SEEDS = (21, 22, 23, 24, 25, 26)
"""Other seeds than those of the papers on which the checks were mended."""
SEEDS_OF_ARGUMENT = (51, 52, 53, 54, 55, 56, 57)


@dataclass(frozen=True, slots=True)
class Row:
    """How far one check can be trusted."""

    check: str
    right: int
    alarms: int
    on: str

    def toml(self) -> str:
        """As it stands in ``measured.toml``."""
        return f'[{self.check}]\nright = {self.right}\nalarms = {self.alarms}\non = "{self.on}"\n'


def measure_all(share: float = 1.0) -> tuple[Tally, ...]:
    """What the checks say of made and whole papers, of found prose, of that with slips, of broken speeches, of copies.

    Args:
        share: The share of the made papers that are made.
    """
    made = Tally("made papers, a tenth of the places spoiled, and eight whole papers")
    quoting, citing, doubling, tying, speaking, copying = SEEDS
    measure_quotations(made, round(QUOTING * share), quoting)
    measure_uncited(made, UNCITED, quoting)  # all: they are quickly judged, and one in ten of what is spoiled is told
    measure_citations(made, round(CITING * share), citing)
    measure_witnesses(made, round(POINTS * share), tying)
    measure_whole_papers(made)
    found = Tally("published and student prose, each alarm read")
    measure_found_prose(found)
    slips = Tally("published and student prose, each alarm read, and a word in 15,000 doubled at random")
    measure_doubled_words(slips, doubling)
    spoken = Tally("broken speeches of a novel, one in ten run together")
    measure_speeches(spoken, round(SPEAKING * share), speaking)
    copied = Tally("100 papers of found prose with six passages of their sources copied into each")
    measure_copying(copied, round(COPYING * share), copying)
    argued = Tally("published and student texts, spoiled in their argument")
    claiming, straying, repeating, missing, kindred, retelling, heading = SEEDS_OF_ARGUMENT
    at_least = max(share, FEWEST_ARGUED)
    measure_claims(argued, round(CLAIMING * at_least), claiming)
    measure_straying(argued, round(ARGUED * at_least), straying)
    measure_repeating(argued, round(ARGUED * at_least), repeating)
    measure_points(argued, round(ARGUED * at_least), missing)
    measure_kindred_strays(argued, round(ARGUED * at_least), kindred)
    measure_retellings(argued, round(ARGUED * at_least), retelling)
    measure_headings(argued, round(ARGUED * at_least), heading)
    formed = Tally("published and student prose, each alarm read, and faults of form set into it")
    measure_form(formed, share)
    measure_papers(formed, max(share, FEWEST_ARGUED))
    parsed = Tally("published and student prose, each alarm read, and faults of grammar set into it")
    measure_grammar(parsed)
    measure_shifts(parsed)
    cited = Tally("18,000 citations in 600 made papers, some in a form that the style has not")
    measure_citation_forms(cited, round(CITING * at_least))
    marked = Tally("6,000 quotations in 300 made papers, the marks of some out of place; 4 alarms in found prose right")
    measure_marks(marked, round(CITING / 2 * at_least))
    return made, found, slips, spoken, copied, argued, formed, parsed, cited, marked


def rows_of(tallies: Iterable[Tally]) -> Iterator[Row]:
    """The row of each check: of the tallies with alarms enough, the one that trusts it least."""
    tallies = list(tallies)
    for check in (*MEASURED, *PARSING, *ARGUING, *FORMING, *PAPERS, *CITED, *QUOTED):
        enough = [tally for tally in tallies if tally.alarms[check] >= FEWEST_ALARMS]
        tally = min(enough or tallies, key=partial(Tally.bound, check=check))
        yield Row(check, tally.right[check], tally.alarms[check], ON.get((check, tallies.index(tally)), tally.on))


_QUOTED = "12,000 quotations of a novel and of 59 articles in 600 made papers, one in ten spoiled; 8 whole papers"
_CITED = "18,000 citations in 600 made papers and 12,000 in papers that quote, one in ten spoiled; 8 whole papers"
_TIED = "2,400 points on two published articles each, one in ten tied, one in ten merely citing; 6 whole papers"
_PROSE = "498,000 words of found prose"
_READ = "498,000 words of published, student and learners' prose, each alarm read"
_FORMED = "484,000 words of published and student prose, each alarm read"
ON = {
    ("point-dependent", 0): _TIED,
    **{(check, 0): _QUOTED for check in MEASURED if check.startswith("quotation")},
    ("citation-page-missing", 0): _QUOTED,
    ("quotation-uncited", 0): "240 made papers of 20 quotations each, one in ten without any citation; 8 whole papers",
    **{(check, 0): _CITED for check in ("citation-unknown", "citation-ambiguous", "citation-year")},
    ("citation-unknown", 1): "498,000 words of published and student prose, each alarm read or held against its list",
    (
        "claim-unsupported",
        5,
    ): "116 papers of published prose with 24 facts of other articles each, one in ten uncited; the rest was read",
    (
        "point-missing",
        5,
    ): "300 student essays with points in their writers' own words, 300 sections with their headings, some left out",
    ("off-focus", 5): (
        "600 published and student texts, half of them with a paragraph of another, in half of these of kindred words"
    ),
    ("repeated-argument", 5): (
        "600 student and published texts, half with a paragraph's own earlier version or another's account put in"
    ),
    **{(check, 6): _FORMED for check in FORMING},
    (
        "exhibit-mention",
        6,
    ): "59 published articles with 404 tables and figures, one in five dropped or spoken of no more",
    ("heading-form", 6): (
        "59 published articles, one heading of each capitalised otherwise and one with a stop; their own 11 alarms read"
    ),
    ("abbreviation", 6): "314,000 words in 59 published articles, each alarm read",
    **{
        (check, 1): _READ
        for check in ("plural-missing", "agreement", "comma-splice", "article", "comma-opening", "comma-compound")
    },
    (
        "fragment",
        7,
    ): "498,000 words of published and student prose, one in 10,000 words cut off as a sentence, the rest read",
    (
        "verb-form",
        7,
    ): "498,000 words of published and student prose, one verb in 10,000 words put into another form, the rest read",
    ("pronoun-case", 7): f"{_PROSE}, one pronoun in 10,000 words put into another case, the rest read",
    ("pronoun-agreement", 7): f"{_PROSE}, one pronoun in 10,000 words put into another number, the rest read",
    ("mixed-construction", 7): f"{_PROSE}, one sentence in 10,000 words mixed, the rest read",
    ("paired-words", 7): f"{_PROSE}, one pair in 10,000 words mismatched, the rest read",
    ("parallel-series", 7): f"{_PROSE}, eleven series mismatched, the rest read",
    (
        "dangling-opening",
        7,
    ): f"{_PROSE}, one in 10,000 words set before a subject that cannot do it, the rest read",
    ("tense-shift", 7): f"{_PROSE} and a novel, 47 deeds put into the present, the rest read",
    (
        "quotation-alone",
        7,
    ): "498,000 words of published and student prose, 42 quotations cut off from what leads into them, the rest read",
    (
        "fused-sentence",
        7,
    ): "498,000 words of published and student prose, one stop in 10,000 words taken out, the rest read",
    (
        "comma-unneeded",
        7,
    ): "498,000 words of published and student prose, one comma in 10,000 words put where none belongs, the rest read",
    (
        "comma-nonrestrictive",
        7,
    ): "498,000 words of published and student prose, one comma of a pair in 10,000 words taken out, the rest read",
    (
        "semicolon",
        7,
    ): "498,000 words of published and student prose, one mark in 10,000 words put in a comma's place, the rest read",
    **{(check, 1): _READ for check in ("spelling", "spelling-mixed", "confused-words")},
    ("doubled-word", 2): "498,000 words of published and student prose, one in 15,000 doubled at random, the rest read",
}
"""What each figure was measured on, by check and tally."""
