"""The sources of a paper searched."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Any

import pytest

from fairhand.desk.search_index import Known, SearchIndex
from fairhand.errors import FairhandError
from fairhand.language.meaning import Meanings, find_meanings
from fairhand.model.piece import Piece
from fairhand.session.job import Job
from fairhand.session.opened import OpenPaper
from fairhand.session.research.indexing import index_sources
from fairhand.session.research.meanings import read_meanings
from fairhand.session.research.searching import Found, Search, count_unindexed, find_question, open_search, read_words


def find(paper: Path, query: str) -> Found:
    """What a fresh process finds."""
    with open_search(OpenPaper(paper).source_texts) as search:
        return search.find(query)


def indexed(paper: Path) -> int:
    """How many sources are indexed now."""
    told: list[int] = []
    with open_search(OpenPaper(paper).source_texts, lambda done, _: told.append(done)):
        return len(told)


def test_words_are_found_with_their_page(demo_paper: Path) -> None:
    """In any form; the sentence is marked, and stands in the page where it says."""
    texts = OpenPaper(demo_paper).source_texts
    found = find(demo_paper, "strap readers")
    first = found.passages[0]
    assert (first.source, first.label) == ("osei-2014", "118")
    assert first.span.of(texts["osei-2014"].pages[first.page].text) == first.sentence
    assert found.all_terms
    assert found.told == ""


def test_a_phrase_is_found_as_it_stands(demo_paper: Path) -> None:
    """In its own words alone, not in other forms of them."""
    assert find(demo_paper, "“the cleaners' own tally”").passages
    assert not find(demo_paper, "“the cleaner own tally”").passages


def test_where_no_page_has_all_words_some_are_shown(demo_paper: Path) -> None:
    """And that is said."""
    found = find(demo_paper, "herring apron tally")
    assert not found.all_terms
    assert found.passages
    assert "these have some of them" in found.told


def test_a_word_that_stands_nowhere_is_taken_for_the_nearest(demo_paper: Path) -> None:
    """It is said, and searched for; one that is near to none is said alone."""
    found = find(demo_paper, "conducters")
    assert found.told == "Nothing stands for “conducters”; searched for “conductors”."
    assert found.passages
    assert find(demo_paper, "xylophonist").told == "Nothing stands for “xylophonist”."
    assert find(demo_paper, "").told == ""


def test_only_what_changed_is_read_again(demo_paper: Path) -> None:
    """One source's file or record; a file that is merely touched is not."""
    assert indexed(demo_paper) == 8
    assert indexed(demo_paper) == 0
    one = demo_paper / "sources" / "lund-1999.txt"
    one.write_text(one.read_text() + "\nThe zeppelin passed.\n")
    assert indexed(demo_paper) == 1
    assert find(demo_paper, "zeppelin").passages[0].source == "lund-1999"
    os.utime(one, (1_700_000_000, 1_700_000_000))
    assert find(demo_paper, "zeppelin").passages
    one.unlink()
    assert not find(demo_paper, "zeppelin").passages


def test_a_question_is_answered_by_the_page_that_speaks_of_it(demo_paper: Path) -> None:
    """The likeliest first; a question of joining words alone has no answer."""
    with open_search(OpenPaper(demo_paper).source_texts) as search:
        answer = search.answer("Were the conductors trained, or paid, to keep the slips?")
        assert answer.passages[0].source == "osei-2014"
        assert answer.passages[0].label == "120"
        assert search.answer("What is it that they are?").passages == ()


def test_a_question_is_known_by_its_id_or_its_number(demo_paper: Path) -> None:
    """One that is not there is told, with those that are."""
    (demo_paper / "focus.toml").write_text('[[questions]]\nid = "who"\ntext = "Who counted?"\n', "utf-8")
    assert find_question(demo_paper, "who").text == find_question(demo_paper, "1").text == "Who counted?"
    for name in ("2", "0", "whom", "9" * 5000):
        with pytest.raises(FairhandError, match="there are: who"):
            find_question(demo_paper, name)


def test_pages_are_ranked_by_meaning_once_they_are_read(tmp_path: Path) -> None:
    """Half by their words and half by their likeness; before that by their words alone."""
    np = pytest.importorskip("numpy")

    class Encoder:
        """The question is like one text, and no other."""

        def encode(self, texts: list[str], /) -> Any:
            """Two numbers for each text."""
            liked = (question, before[1].text)
            return np.array([[1, 0] if text.endswith(liked) else [0, 1] for text in texts], np.float32)

    texts = {
        "quay": "The price of a berth, a price.",
        "oven": "A loaf had its price.",
        "toll": "The price was set by the council, and the council met on Mondays after rain.",
        "sea": "It rained.",
    }
    index = SearchIndex(tmp_path, read_words)
    for name, text in texts.items():
        index.put(name, Known("", ""), "", [Piece(name, 0, "1", 0, text)])
    meanings = Meanings(Encoder())
    search = Search(index, lambda: meanings)
    question = "What was the price of bread?"
    before = search.rank(question)[0]
    assert len(before) == 4
    read_meanings(index, before, meanings)
    assert search.rank(question)[0][0] == before[1]
    assert Search(index, lambda: None).rank(question)[0] == before
    index.put("oven", Known("", ""), "", [Piece("oven", 0, "1", 0, "No price.")])
    assert len(index.meanings(before)) == len(before) - 1
    index.close()


def test_what_was_not_read_is_read_in_the_background(demo_paper: Path) -> None:
    """Where an encoder is installed; without one nothing is done, and nothing hinders."""
    with open_search(OpenPaper(demo_paper).source_texts) as search:
        search.rank("Who kept the slips?")
        thread = search.begin_reading()
    assert thread is not None
    thread.join()
    if find_meanings() is not None:
        with open_search(OpenPaper(demo_paper).source_texts) as search:
            search.rank("Who kept the slips?")
            assert search.begin_reading() is None


def test_indexing_is_counted_and_can_be_stopped(demo_paper: Path) -> None:
    """What was indexed stays so; the next time goes on from there."""
    texts = OpenPaper(demo_paper).source_texts
    waiting = count_unindexed(texts)
    assert waiting == len(texts.entries)

    def stop_soon(job: Job[int]) -> int:
        def told(_done: int, _total: int) -> None:
            job.count()

        with open_search(texts, told, lambda: job.done == 3):
            return job.done

    assert Job(stop_soon).run() == 3
    assert count_unindexed(OpenPaper(demo_paper).source_texts) == waiting - 3
    job: Job[int] = Job(lambda job: index_sources(demo_paper, job))
    assert (job.run(), job.told) == (waiting - 3, f"{waiting - 3} of {waiting - 3}")
    assert count_unindexed(OpenPaper(demo_paper).source_texts) == 0
