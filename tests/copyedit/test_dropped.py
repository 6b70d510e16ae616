"""Quotations that nothing of the writer's leads into, and those that look so only."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.model.finding import Finding
from fairhand.model.paper import Paper
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.check import run_checks
from fairhand.readiness.table import CHECKS

DROPPED = (
    "The ferry ran all night. “No passenger was turned away” (Vale 12). The fares rose.",
    "Salt was dear. “A pound cost a day's wage in the hill towns” (Okoro 3). Few could pay.",
    "Bees returned slowly. “The hives stood empty for two whole summers” (Tveit, 2017, p. 44). Growers waited.",
    "The choir was small. “Nine women sang and nobody else came” (Lind, 2003). It grew later.",
    "The poem is bitter. “I have eaten the bread of clerks” (Marrow 7). It ends there.",
    'Glass changed the street. "Every shop became a stage lit from within" (Osei, 2014, p. 9). People walked more.',
    "Rents rose twice. “The tenants were given a week to find the money” (Quist 1988, 201). Many left.",
    "The court was divided. “No two of the judges read the clause alike” (Haldane 31). The case went on.",
    "Children worked too. “The youngest at the looms was six years old.” (Brandt 18) The law was silent.",
    "The map is wrong. “The river is drawn where no river ever ran” (Orr 2004, 5). Later maps copied it.",
    "Trams were new. “They ran on rails that the city had not paid for” (Vesk 7). Buses came next.",
    "The film is slow. “Nothing happens in it for twenty minutes” (Ames 2). Viewers left.",
    "Doctors disagreed. “The fever spared the houses on the hill” (Penn, 1911, p. 60). The wells were shut.",
    "Wool was counted twice. “Two clerks kept two books of the same fleece” (Ilse 14). The tax doubled.",
    "The school closed. “There were more teachers than pupils by then” (Rahm, 1990, p. 8).",
    "The law has a gap. “Nobody who sells at the door needs a licence” (Dahl, 2015, para. 3). Sellers know it.",
    "Frost came early. “The vines were black before the feast” (Toft 90). No wine was made.",
    "The strike ended. “They went back for less than they had left” (Hobb 77). The union split.",
    "Maps were secret. “A chart was worth more than the ship that carried it” (Sand 4). Spies bought them.",
    "The novel is praised. “It is the first to let the servants speak” (Ely, 2001, p. 2). Few read it now.",
)
OPENING = (
    "The ferry ran all night.\n\n“No passenger was turned away” (Vale 12). The fares rose that year.",
    "The law was new.\n\n“The judges read the clause in two ways” (Orr, 2004, p. 5). This shows a gap.",
)
LED_INTO = (
    "Vale is plain about it: “No passenger was turned away” (12). The fares rose.",
    "Vale writes, “No passenger was turned away” (12). The fares rose.",
    "The ferry ran all night, and “no passenger was turned away” (Vale 12). The fares rose.",
    "The ferry ran all night. “No passenger was turned away,” Vale writes (12). The fares rose.",
    "“No passenger was turned away” (Vale 12). With these words the report begins. It is long.",
    "The clerk spoke at last. “No passenger was turned away, not even the drunk” (Vale 12). Nobody believed him.",
    "The ferry ran all night. “No passenger was turned away” (Vale 12). So runs the entry of that day.",
    "The hall was quiet. “Who are you?” asked the clerk. “I have come about the horse that died.” He sat down.",
    "The ferry ran. “Open Seas and Closed Harbours” (Vale 12). It is a good title.",
    "> It was late. “No passenger was turned away, not one of them” (Vale 12).",
    "- It was late. “No passenger was turned away, not one of them” (Vale 12).",
    "“No passenger was turned away, not one of them” (Vale 12).\n\nThe ferry ran all night.",
    "# Ferries\n\n“No passenger was turned away” (Vale 12). The motto is false. Nobody believed it.",
    "The ferry ran all night.\n\n“No passenger was turned away, not one of them” (Vale 12).\n\nThe fares rose.",
    "The master was plain about what he had seen:\n\n“No passenger was turned away” (Vale 12). The fares rose.",
    "“It was a bad year for us” (Vale 3). They spoke.\n\n“No passenger was turned away” (Vale 12). The fares rose.",
    "# A\n\nIt ran.\n\n# B\n\n“No passenger was turned away” (Vale 12). The fares rose.",
    "The ferry ran all night. This is how Vale puts it. “No passenger was turned away” (12) is his last word.",
    "The ferry ran all night. “All aboard” (Vale 12). The fares rose.",
    "He was asked about the night. The ferryman answered. “No passenger was turned away, I swear” (Vale 12). He lied.",
    "INTERVIEWER. Who was turned away? “No passenger that I can remember now.” INTERVIEWER. Who else?",
    "Vale has a word for it. “No passenger was turned away”—that is his boast (12). The fares rose.",
    "The ferry ran all night. “No passenger was turned away” (Vale 12), though some paid double. The fares rose.",
    "The ferry ran. Vale gives the rule in one sentence. “No passenger was turned away” (12). The fares rose.",
    "It ran all night.[^1] “No passenger,” he adds, “was turned away from it” (Vale 12). The fares rose.",
)


def told(draft: str) -> list[Finding]:
    """What the check says of a draft."""
    checks = [check for check in CHECKS if check.name == "quotation-alone"]
    return list(run_checks(Analysis(Paper("p", draft, ()), lambda _: None), checks, allowed=lambda _: "must"))


@pytest.mark.parametrize("draft", [*DROPPED, *OPENING])
def test_a_quotation_that_nothing_leads_into_is_told(draft: str) -> None:
    """It stands between two stops with its citation alone."""
    (found,) = told(draft)
    assert found.span is not None
    assert found.span.of(draft)[0] in '“"'
    assert "dropped quotation" in found.says


@pytest.mark.parametrize("draft", LED_INTO)
def test_a_quotation_that_is_led_into_is_let_be(draft: str) -> None:
    """By a signal phrase, a colon, a verb of saying, a sentence that takes it up; so are mottoes, speeches, titles."""
    assert told(draft) == []


def test_a_paper_is_told_once() -> None:
    """With the lines of the others."""
    quoted = "It rained. “The mill stood still for a week” (Vale 3). Then it ran."
    draft = f"{quoted}\n\n{quoted}"
    (found,) = told(draft)
    assert found.says.endswith("The same in line 3.")


@given(st.text(alphabet='“”". ab(3)?!\n>*', max_size=80))
def test_any_text_is_read(draft: str) -> None:
    """Whatever is told lies within the draft."""
    for found in told(draft):
        assert found.span is not None
        assert found.span.end <= len(draft)
