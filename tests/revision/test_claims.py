"""Claims that want a source."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from fairhand.readiness.analysis import Analysis
from fairhand.revision.claims import Unsupported

OPENS = "The harbour men were of two kinds, and the difference between them shaped all that was to follow in the town. "


def claims(analysis: Analysis) -> list[Unsupported]:
    """What is found."""
    return list(analysis.argument.unsupported)


def test_a_figure_that_nothing_vouches_for_is_told(analysis_of: Callable[..., Analysis]) -> None:
    """The source cited before it does not hold it; where it does stand is said."""
    analysis = analysis_of(
        OPENS + "Some 640 of the men were permanent (Lind, 2019, p. 10). The lock-out cost the harbour 38,600 pounds."
    )
    (found,) = claims(analysis)
    assert found.span.of(analysis.paper.draft) == "The lock-out cost the harbour 38,600 pounds."
    assert (found.why, found.cited, found.what) == ("not-held", "lind-2019", "38,600 pounds")
    assert found.stands is not None
    assert (found.stands.source, found.stands.label) == ("reyes-2018", "40")


@pytest.mark.parametrize(
    "rest",
    [
        "The lock-out cost the harbour 38,600 pounds (Reyes, 2018, p. 40).",
        "The lock-out cost the harbour 38,600 pounds. It never recovered (Reyes, 2018, p. 40).",
        "Reyes (2018) has the accounts. The lock-out cost the harbour 38,600 pounds.",
        "According to the town, the lock-out cost 38,600 pounds. Lind (2019) doubts it.",
        "I counted 212 names in the register, and Lind (2019) counts as many.",
        "If every man lost 12 pounds, the town lost 400,000 of them. Lind (2019) says less.",
        "Did the lock-out cost 38,600 pounds? Lind (2019) does not say.",
        "In 1924 it rained for nine days. Lind (2019) says so.",
        "What the town cheered was half of an event. Lind (2019) heard it.",
        "The thirty years after 1924 earned what the thirty before it did not. Lind (2019) is kinder.",
        "The lock-out cost 38,600 pounds.[^1]\n\n[^1]: Reyes (2018), p. 40.",
    ],
)
def test_what_is_vouched_for_or_needs_no_source_is_left_alone(analysis_of: Callable[..., Analysis], rest: str) -> None:
    """Cited in its sentence or run, attributed, the writer's own, supposed, asked, a date, in a note."""
    assert claims(analysis_of(OPENS + rest)) == []


def test_a_figure_given_again_needs_no_second_citation(analysis_of: Callable[..., Analysis]) -> None:
    """What a cited sentence has said elsewhere is said again."""
    draft = (
        OPENS + "It cost 38,600 pounds (Reyes, 2018, p. 40).\n\n" + OPENS + "A loss of 38,600 pounds is not forgotten."
    )
    assert claims(analysis_of(draft)) == []


def test_a_sum_of_what_was_given_is_the_writers_own(analysis_of: Callable[..., Analysis]) -> None:
    """Reckoning needs no source."""
    draft = OPENS + "There were 640 permanent men and 1,660 casual ones (Lind, 2019, p. 10). That makes 2,300 men."
    assert claims(analysis_of(draft)) == []


@pytest.mark.parametrize(
    ("reckoned", "told"),
    [
        ("On a crew of twenty-five men that comes to six pounds and three shillings.", 0),
        ("Over a season of forty weeks, though, it amounts to 460 pounds.", 0),
        ("At that rate a family of thirty-one would not have eaten.", 0),
        ("The bill for the new quay came to 38,600 pounds.", 1),
        ("It came to blows in the yard, and 1,420 men walked out.", 1),
    ],
)
def test_a_case_reckoned_from_the_figure_before_is_the_writers_own(
    analysis_of: Callable[..., Analysis], reckoned: str, told: int
) -> None:
    """What a given rate comes to for a case of the writer's own needs no source; what something cost does."""
    draft = OPENS + f"Of the men 640 were permanent, and earned threepence more (Lind, 2019, p. 10). {reckoned}"
    assert len(claims(analysis_of(draft))) == told


def test_research_that_nobody_did_is_told(analysis_of: Callable[..., Analysis]) -> None:
    """*Studies show* wants a study."""
    draft = (
        OPENS
        + "Studies have shown that casual men drank no more than others. That was all.\n\n"
        + OPENS
        + "So says Lind (2019)."
    )
    (found,) = claims(analysis_of(draft))
    assert (found.why, found.what) == ("finding", "Studies have shown that")


def test_without_its_text_a_source_vouches_for_the_run(analysis_of: Callable[..., Analysis]) -> None:
    """Where nothing can be looked up, a citation just before is trusted, as long as the matter is the same."""
    draft = OPENS + "Some men were permanent (Lind, 2019, p. 10). {} earned 12,000 pounds."
    assert claims(analysis_of(draft.format("These"), with_texts=False)) == []
    assert len(claims(analysis_of(draft.format("Music halls"), with_texts=False))) == 1


def test_a_paper_without_sources_is_left_alone(analysis_of: Callable[..., Analysis]) -> None:
    """A personal essay cites nothing."""
    assert claims(analysis_of(OPENS + "The lock-out cost the harbour 38,600 pounds.")) == []


def test_a_date_is_told_where_another_source_states_it_all(analysis_of: Callable[..., Analysis]) -> None:
    """A date wants no source of itself; but what a source states is that source's, which is not cited here."""
    draft = OPENS + "Some 640 men were permanent (Lind, 2019, p. 10). The pilots' guild hall burned down in 1902."
    (found,) = claims(analysis_of(draft))
    assert found.stands is not None
    assert (found.what, found.stands.source) == ("1902", "reyes-2018")
    assert claims(analysis_of(draft.replace("1902", "1903"))) == []
