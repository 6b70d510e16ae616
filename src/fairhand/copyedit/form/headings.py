"""Headings under which nothing stands, and sections parted into one.

Levels left out are not looked for: the fair copy levels the headings by itself.
"""

from __future__ import annotations

from collections.abc import Iterator

from fairhand.manuscript.parts import Manuscript, Section
from fairhand.manuscript.sections import named_sections
from fairhand.model.span import Span


def find_empty_sections(manuscript: Manuscript) -> Iterator[tuple[Span, str]]:
    r"""The headings with nothing under them, not even a heading below; the title and the list of works let be.

    The fair copy makes the list of works by itself.

    **Source**: common practice.

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> draft = read_manuscript("# T\n\n## Tides\n\n## Salt\n\nIt is dear.\n\n## Works Cited\n")
    >>> [title for _, title in find_empty_sections(draft)]
    ['Tides']
    """
    lists = [section.span for _, section in named_sections(manuscript)]
    filled = [block.span for block in manuscript.blocks if block.kind not in ("heading", "note", "definition", "rule")]
    for section in manuscript.sections:
        heading = section.heading
        if heading is None or not section.title.strip() or heading.content == manuscript.title:
            continue
        if not any(section.span.contains(each) for each in filled) and not any(s.contains(section.span) for s in lists):
            yield heading.content, section.title


def find_lone_subsections(manuscript: Manuscript) -> Iterator[tuple[Span, str, str]]:
    r"""The only heading under another one, with both titles; the paper's title parts nothing.

    **Source**: MLA 9, 1.5, and APA 7, 2.27: no section has a single subsection (from memory).

    >>> from fairhand.manuscript.draft import read_manuscript
    >>> draft = read_manuscript("# T\n\n## Tides\n\nA.\n\n### Spring\n\nB.\n\n## Salt\n\nC.")
    >>> [(title, above) for _, title, above in find_lone_subsections(draft)]
    [('Spring', 'Tides')]
    """
    named = [section.span for _, section in named_sections(manuscript)]
    for above, below in _children(manuscript):
        title = above.heading is not None and above.heading.content == manuscript.title
        if len(below) == 1 and not title and not any(span.contains(below[0].span) for span in named):
            heading = below[0].heading
            if heading is not None:
                yield heading.content, below[0].title, above.title


def _children(manuscript: Manuscript) -> Iterator[tuple[Section, list[Section]]]:
    """Each section with those directly under it."""
    headed = [section for section in manuscript.sections if section.heading is not None]
    for at, above in enumerate(headed):
        below: list[Section] = []
        for section in headed[at + 1 :]:
            if section.level <= above.level:
                break
            if not below or section.level <= below[0].level:
                below.append(section)
        yield above, below
