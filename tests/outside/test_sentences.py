"""Sentence boundaries against text that people have split by hand."""

from __future__ import annotations

import json
import os
from collections.abc import Callable, Iterator
from pathlib import Path

from fairhand.language.sentences import split_sentences

SENTENCES = "data/sentences"
Outside = Callable[[str], Path]


def paragraphs_of(file: Path) -> Iterator[list[str]]:
    """The sentences of each paragraph of running text of a file of Universal Dependencies."""
    block: list[str] = []
    prose = False
    for line in file.read_text(encoding="utf-8").splitlines():
        if line.startswith("# newpar_block"):
            if block:
                yield block
            block, prose = [], " p " in f"{line.partition('=')[2]} "
        elif line.startswith("# text = ") and prose:
            block.append(line.removeprefix("# text = ").strip())
    if block:
        yield block


def boundaries(sentences: list[str]) -> tuple[str, set[int]]:
    """The paragraph, and where its sentences end but for the last."""
    text = " ".join(sentences)
    ends, at = set(), 0
    for sentence in sentences[:-1]:
        at += len(sentence)
        ends.add(at)
        at += 1
    return text, ends


def test_sentence_boundaries_of_academic_prose(outside_data: Outside) -> None:
    """Boundaries in academic papers, essays and textbooks agree with the annotators' in at least the share held here.

    Source: Universal Dependencies, English GUM, academic and textbook documents; boundary F1.
    """
    right = found = gold = 0
    misses: list[str] = []
    for file in sorted(outside_data(SENTENCES).glob("*.conllu")):
        for sentences in paragraphs_of(file):
            text, ends = boundaries(sentences)
            ours = {span.end for span in split_sentences(text)[:-1]}
            right += len(ours & ends)
            found += len(ours)
            gold += len(ends)
            misses += [
                f"{'+' if at in ours else '-'} {text[max(0, at - 40) : at]}|{text[at : at + 30]}" for at in ours ^ ends
            ]
    score = 2 * right / (found + gold)
    print(f"\nsentence boundaries of {gold}: precision {right / found:.3f}, recall {right / gold:.3f}, F1 {score:.3f}")
    if os.environ.get("FAIRHAND_SHOW"):
        print("\n".join(misses))
    assert score >= 0.97


def test_golden_rules_of_sentence_splitting(outside_data: Outside) -> None:
    """Of the golden rules for English, at least the share held here is split as they say.

    Source: the 48 golden rules, MIT, as published with pySBD. What we miss are lists run together on one line, which a
    draft writes as list items, *P.M.* or *you and I.* before a capital, and *N°.*
    """
    rules = json.loads((outside_data(SENTENCES) / "golden-rules/golden_rules.json").read_text(encoding="utf-8"))[
        "benchmarks/english_golden_rules.py:GOLDEN_EN_RULES"
    ]
    missed = [
        text
        for text, sentences in rules
        if [span.of(text) for span in split_sentences(text)] != [sentence.strip() for sentence in sentences]
    ]
    print(f"\ngolden rules of sentences: {len(rules) - len(missed)} of {len(rules)} as they say")
    if os.environ.get("FAIRHAND_SHOW"):
        print("\n".join(missed))
    assert len(missed) <= 12
