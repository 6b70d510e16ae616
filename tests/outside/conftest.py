"""Prose that nobody here wrote, by paragraph, for the checks that ought to let it be."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest


@pytest.fixture(scope="session")
def published_paragraphs(outside_data: Callable[[str], Path]) -> list[str]:
    """The plain paragraphs of GUM's academic prose and textbooks."""
    texts = []
    for file in sorted(outside_data("data/sentences").glob("GUM_*.conllu")):
        blocks = file.read_text("utf-8").split("# newpar_block")[1:]
        texts += [
            " ".join(re.findall(r"^# text = (.*)$", block, re.MULTILINE))
            for block in blocks
            if " p " in f"{block.partition('=')[2].partition(chr(10))[0]} "
        ]
    return texts


@pytest.fixture(scope="session")
def student_paragraphs(outside_data: Callable[[str], Path]) -> list[str]:
    """The annotated student papers of the OpenStax handbook, its own words about them included."""
    from lxml import etree

    texts = []
    for file in sorted(outside_data("data/student-papers").glob("*.cnxml")):
        texts += [" ".join("".join(map(str, each.itertext())).split()) for each in etree.parse(file).iter("{*}para")]
    return texts
