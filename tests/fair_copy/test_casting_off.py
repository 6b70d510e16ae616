"""Pages are counted with their fraction, and without what the sheet leaves out."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from fairhand.fair_copy.casting_off import body_pages, pages_of
from fairhand.fair_copy.document import FairCopy, FrontMatter
from fairhand.fair_copy.layout import layout_for, lines_per_page
from fairhand.fair_copy.typesetting import to_typst
from fairhand.manuscript.parts import SetBlock
from fairhand.model.inline import Break, Inline, Text
from fairhand.press.typst_press import typeset


def of_lines(count: int, style: str = "mla-9") -> FairCopy:
    """A paper of so many lines."""
    inlines: list[Inline] = []
    for number in range(count):
        inlines += [Text(f"line {number}"), Break(hard=True)]
    layout = replace(layout_for(style), first_page="none", title_again=False)
    return FairCopy(FrontMatter(), (SetBlock("paragraph", inlines=tuple(inlines[:-1])),), (), layout)


@pytest.mark.parametrize("style", ["mla-9", "harvard"])
def test_a_full_page_is_one_page(style: str) -> None:
    """As many lines as a page holds are exactly one page, and half of them half a page."""
    layout = of_lines(1, style).layout
    full = lines_per_page(layout)
    for lines in (1, full // 2, full, 2 * full):
        done = typeset(to_typst(of_lines(lines, style)))
        assert body_pages(done, layout) == pytest.approx(lines / full, abs=0.002)
        assert done.pages == -(-lines // full)


def test_excluded_parts_are_left_out(make_paper: Callable[..., FairCopy]) -> None:
    """Each part that the sheet excludes makes the body shorter, by about what it fills."""
    copy = make_paper("mla-9")
    done = typeset(to_typst(copy))
    whole = body_pages(done, copy.layout)
    for part, lines in (("headings", 2), ("block-quotes", 3)):
        assert whole - body_pages(done, copy.layout, [part]) == pytest.approx(lines / 23, abs=0.03)
    assert body_pages(done, copy.layout, ["figures"]) < whole
    everything = ["headings", "block-quotes", "figures", "footnotes", "appendices", "references", "title-page"]
    assert 0 < body_pages(done, copy.layout, everything) < whole


def test_front_and_list_are_not_the_body(make_paper: Callable[..., FairCopy]) -> None:
    """A title page and a list of references do not lengthen the body."""
    copy = make_paper("apa-7")
    bare = replace(copy, references=(), layout=replace(copy.layout, first_page="none", title_again=False))
    long, short = (typeset(to_typst(each)) for each in (copy, replace(bare, front=FrontMatter())))
    assert long.pages >= short.pages + 2
    assert body_pages(long, copy.layout) == pytest.approx(body_pages(short, copy.layout), abs=1 / 23)
    assert pages_of(long, copy.layout, "references") == pytest.approx(3 / 23, abs=0.01)
    assert pages_of(short, copy.layout, "references") == 0
