"""Shifts of tense between the sentences of a narrative, and the present that is lawful beside the past."""

from __future__ import annotations

import pytest

from fairhand.model.paper import Paper
from fairhand.readiness.analysis import Analysis
from fairhand.readiness.checks import tense_shift

SHIFTS = (
    "The men marched to the gate at dawn. The guards [open] it without a word. Nobody spoke for an hour.",
    "She packed the letters in a box. She [carries] it to the attic. Her brother never learned of it.",
    "The nurses lit the lamps. They [walk] from bed to bed until morning. Two patients died that night.",
    "The miners laid down their tools. They [gather] at the chapel. The owner refused to meet them.",
    "The king heard the news at supper. He [orders] the ships to sail. They left on the next tide.",
    "The farmers lost the harvest. They [sell] their horses to pay the rent. The bank took the rest.",
    "The editor burned the proofs. He [leaves] the country within a week. His wife stayed behind.",
    "The council met in March. In April 1911 the tenants [stop] paying rent. The landlords sued them.",
    "The dispute began over the rate. On 22 April 1924 the dockers [walk] out. Coal lay on the quay.",
    "The sailors saw a light. They [steer] towards it. It was the harbour of another island.",
    "The officer questioned the boy for hours. The boy [gives] no answer. He was released at noon.",
    "The workers built the dam in two years. They [receive] no pay for the last month. Many went home.",
    "The women formed a choir. They [sing] at the gates of the mill. The police broke it up.",
    "The teacher closed the school. The children [return] to the fields. Nobody protested.",
    "The prisoners dug a tunnel. They [escape] in the first snow. All but one were caught.",
    "Prices doubled in a year. In 1923 the city [prints] its own money. Nobody trusted it.",
)
LAWFUL = (
    "The men marched to the gate at dawn. The law still forbids it. Nobody spoke for an hour.",
    "Orwell went to Spain. He argues that the war was lost at home. The book sold badly.",
    "Hamlet was written about 1600. Hamlet kills Polonius by mistake. The scene shocked its audience.",
    "The house was built in 1800. It stands on a hill. A storm took its roof.",
    "The author moved to Leeds. She opens the novel with a storm. Critics praised it.",
    "We measured the depth. We then compute the mean. The result was stable.",
    "The strike was lost. The lesson matters. Historians ignored it for years.",
    "The narrator lost his brother. He walks through the city at night. The city was rebuilt.",
    "The town was poor. Today the tourists come by ship. The mill closed long ago.",
    "The survey was done in May. Farmers often sell early. The price was low.",
    "The sample was small. Table 2 gives the means. They were close to zero.",
    "The clerk said nothing. Who opens a letter without a stamp? It was returned.",
    "The critic hated the play. She calls it a long yawn. It ran for a year.",
    "She knew the rule. Water boils at a hundred degrees. The kettle was empty.",
    "The teachers were tired. Each teacher brings a lunch. The hall was cold.",
    "The workers put down their tools. They put on their coats. The whistle blew.",
)


def told(text: str) -> list[str]:
    """The words that are told."""
    return [r.span.of(text) for r in tense_shift.find(Analysis(Paper("p", text, ()), lambda _: None)) if r.span]


def test_a_sentence_that_leaves_the_past_of_its_neighbours_is_told() -> None:
    """Where persons act in it, or a year of the past stands in it."""
    missed = [
        text
        for text in SHIFTS
        if told(text.replace("[", "").replace("]", "")) != [text[text.index("[") + 1 : text.index("]")]]
    ]
    print(f"\n{len(SHIFTS) - len(missed)} of {len(SHIFTS)}; not told:", *missed, sep="\n")
    assert len(missed) <= 3


@pytest.mark.parametrize("text", LAWFUL)
def test_the_present_of_what_holds_and_of_literature_is_let_be(text: str) -> None:
    """So are reports, habits, the writer's own doing, and verbs that have one form for both."""
    assert told(text) == []
