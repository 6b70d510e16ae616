from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.citing.attach import attach
from fairhand.citing.mention import QuotationCited
from fairhand.citing.recognise import recognise
from fairhand.citing.resolve import resolve
from fairhand.citing.titles import titles_quoted
from fairhand.manuscript.draft import read_manuscript
from fairhand.model.entry import Entry, Issued, Name

ENTRIES = (
    Entry("ferro", "book", "The Patient Bridge", authors=(Name("Ferro", "Lucia"),), issued=Issued(2018)),
    Entry("sands", "book", "Silt and Care", authors=(Name("Sands", "Odile"),), issued=Issued(2021)),
    Entry("news", "article-newspaper", "Boats lost: A night of fog", "Boats lost", issued=Issued(1924)),
)
LONG = "a bridge is a promise made to a river"


def attached(draft: str) -> list[tuple[str | None, str | None, bool]]:
    """Source, locator and certainty of each quotation of a draft."""
    manuscript = read_manuscript(draft + "\n")
    mentions = recognise(manuscript, ENTRIES)
    resolved = resolve(manuscript, mentions, ENTRIES)
    found = attach(manuscript, mentions, resolved, ENTRIES)
    assert [one.quotation for one in found] == list(range(len(manuscript.quotations)))
    for one in found:
        assert one.resolved is None or resolved[one.resolved].entry == one.entry
    return [(one.entry, one.locator.text if one.locator else None, one.sure) for one in found]


@pytest.mark.parametrize(
    ("draft", "entry", "locator"),
    [
        (f"She says that “{LONG}” (Ferro, 2018, p. 4).", "ferro", "4"),
        (f"She says that “{LONG}” in her first chapter, on rivers (Ferro, 2018, p. 4).", "ferro", "4"),
        (f"“{LONG}.” (Ferro, 2018, p. 4) It stands.", "ferro", "4"),
        (f"Ferro (2018) says that “{LONG}” (p. 4).", "ferro", "4"),
        (f"Ferro (2018, p. 4) says that “{LONG}.” Others agree (Sands, 2021).", "ferro", "4"),
        (f"Ferro (2018) says that “{LONG}.”", "ferro", None),
        (f"“{LONG},” writes Ferro (2018, p. 4).", "ferro", "4"),
        (f"As Ferro puts it, “{LONG}” (2018, 4).", "ferro", "4"),
        (f"Ferro (2018, p. 4) says that “{LONG},” and Sands (2021) agrees.", "ferro", "4"),
        ("It was “slow” work (Ferro, 2018, p. 4).", "ferro", "4"),
        (f"They say (as cited in Ferro, 2018, p. 4) that “{LONG}.”", "ferro", "4"),
        (f"Ferro (2018) is plain:\n\n> {LONG}. (p. 57)", "ferro", "57"),
        (f"It is plain:\n\n> {LONG} (Ferro 57).", "ferro", "57"),
        (f"Ferro (2018, p. 57) is plain:\n\n> {LONG}.", "ferro", "57"),
        (f"“{LONG},” she writes, “and {LONG}” (Ferro, 2018, p. 4).", "ferro", "4"),
    ],
)
def test_a_quotation_belongs_to_the_citation_of_its_sentence(draft: str, entry: str, locator: str | None) -> None:
    """After it or before it, in its sentence or at its block's end: source and place are those of that citation."""
    assert {(found, place) for found, place, _ in attached(draft)} == {(entry, locator)}


def test_each_quotation_of_a_sentence_has_the_citation_that_follows_it() -> None:
    """Two quotations with a citation each are not mixed up, nor is a voice taken for the next one's."""
    draft = f"Ferro calls it “{LONG}” (p. 4), and Sands (2021) says “{LONG} at night” (p. 9)."
    assert attached(draft) == [("ferro", "4", True), ("sands", "9", True)]
    draft = f"Ferro (2018) says “{LONG},” but Sands (2021) says “{LONG} at night” (p. 9)."
    assert [found for found, _, _ in attached(draft)][1] == "sands"


@pytest.mark.parametrize(
    ("draft", "found"),
    [
        (f"Ferro (2018, 4) says, “{LONG}.” Sands (2021, 9) adds more.", [("ferro", "4")]),
        (f"Ferro (2018, 4) asks, “{LONG}?” Sands (2021, 9) says “{LONG} too.”", [("ferro", "4"), ("sands", "9")]),
        (f"All is said (Ferro, 2018, p. 4). “Ah, {LONG}!” writes Sands (2021, p. 9).", [("sands", "9")]),
        (f"Ferro (2018, 4) says, “{LONG}.” “{LONG},” Sands (2021) adds, “{LONG}” (9).",
            [("ferro", "4"), ("sands", "9"), ("sands", "9")]),
        (f"“{LONG}?” Sands (2021, 9) asks.", [("sands", "9")]),
        (f"“{LONG},” says Sands (2021). “{LONG}” (p. 9).", [("sands", None), ("sands", "9")]),
        (f"Ferro calls it so (4). “{LONG},” Sands says, “{LONG}. So be it!” (9).",
            [("sands", "9"), ("sands", "9")]),
        (f"“{LONG},” Sands (2021) says, “{LONG}. So be it!” (p. 9).", [("sands", "9"), ("sands", "9")]),
        (f"Ferro (2018) says:\n\n> {LONG}.\n\nSands (2021, 9) disagrees.", [("ferro", None)]),
        (f"Ferro (2018, 4) says “{LONG},” but Sands (2021, 9) says “{LONG} too.”", [("ferro", "4"), ("sands", "9")]),
    ],
)  # fmt: skip
def test_an_author_named_after_a_quotation_speaks_it_only_in_its_own_sentence(
    draft: str, found: list[tuple[str, str]]
) -> None:
    """The next sentence may begin with another author; *says Sands* after the words is theirs, broken or not."""
    assert [(entry, place) for entry, place, _ in attached(draft)] == found


def test_a_sentence_without_a_citation_takes_the_work_named_before_weakly() -> None:
    """What was cited in the sentence before, or named in this one, is a guess and told as one."""
    assert attached(f"It stood for years (Ferro, 2018, p. 3). It shows that “{LONG}.”") == [("ferro", None, False)]
    assert attached(f"Ferro insists that “{LONG}.”") == [("ferro", None, False)]


@pytest.mark.parametrize(
    "draft",
    [
        "The so-called “slow boats” came in.",
        "It stood (Ferro, 2018, p. 3). The “slow boats” came in.",
        "The poem “Ode to a Slow Boat” is older (Sands, 2021, p. 3).",
        "The report (“Boats Lost” 1924) is short.",
        "“Boats Lost” is a short report (Ferro, 2018, p. 3).",
        f"Nobody said that “{LONG}.”",
    ],
)
def test_titles_and_words_quoted_in_passing_belong_to_no_citation(draft: str) -> None:
    """Scare quotes, titles and quotations of nobody are not looked for in a source."""
    assert attached(draft) == [(None, None, True)]


def test_a_quotation_within_another_is_its_speakers_own() -> None:
    """Only the outer quotation is compared with the source."""
    found = attached("She writes: “he said ‘it will hold for a hundred years’ and left” (Ferro, 2018, p. 4).")
    assert found[0] == ("ferro", "4", True)
    assert all(entry is None for entry, _, _ in found[1:])


def test_titles_are_told_by_the_list_of_sources_or_their_capitals() -> None:
    """A sentence-case title is a title where a source has it; quoted prose is none."""
    manuscript = read_manuscript(
        "“Boats lost” and “A Night of Fog at Sea” differ from “boats lost” and “The sea came.”\n"
    )
    assert titles_quoted(manuscript, ENTRIES) == {0, 1}


@given(st.text(alphabet="“”\"'() .>\nFerro,2018p4", max_size=120))
def test_any_draft_has_one_attachment_for_each_quotation(text: str) -> None:
    """Whatever the marks, nothing is left out and nothing points beyond the citations."""
    manuscript = read_manuscript(text)
    mentions = recognise(manuscript, ENTRIES)
    resolved = resolve(manuscript, mentions, ENTRIES)
    found: tuple[QuotationCited, ...] = attach(manuscript, mentions, resolved, ENTRIES)
    assert len(found) == len(manuscript.quotations)
    assert all(one.resolved is None or one.resolved < len(resolved) for one in found)


@pytest.mark.parametrize(
    ("before", "note", "told"),
    [
        (f"She says that “{LONG}.”[^1]", "Lucia Ferro, *The Patient Bridge* (2018), 4.", ("ferro", "4", True)),
        (f"She says that “{LONG}” in her first chapter.[^1]", "Ferro, *The Patient Bridge*, 4.", ("ferro", "4", True)),
        (f"She says so:\n\n> {LONG}.[^1]", "Ferro, *The Patient Bridge*, 4.", ("ferro", "4", True)),
        (f"So “{LONG}.”[^1]", "Ferro, *The Patient Bridge*, 4; Sands, *Silt and Care*, 9.", ("ferro", "4", False)),
        (f"So “{LONG}.” It stands.[^1]", "Ferro, *The Patient Bridge*, 4.", (None, None, True)),
        (f"So “{LONG}” (Sands 2021, 9).[^1]", "Ferro, *The Patient Bridge*, 4.", ("sands", "9", True)),
    ],
    ids=["at once", "at the sentence's end", "a block", "several", "another sentence's", "a parenthesis first"],
)
def test_the_footnote_of_a_sentence_cites_its_quotation(
    before: str, note: str, told: tuple[str | None, str | None, bool]
) -> None:
    """Its number stands after the words, at once or where their sentence ends; with several works it is not sure."""
    assert attached(f"{before}\n\n[^1]: {note}")[0] == told
