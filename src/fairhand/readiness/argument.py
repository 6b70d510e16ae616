"""What a draft argues, worked out: each part when it is first asked for, and once."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cached_property

from fairhand.citing.mention import Mention, Resolved
from fairhand.manuscript.parts import Manuscript
from fairhand.model.paper import Paper
from fairhand.readiness.settled import take_by_page
from fairhand.revision.arguing import Argued, Nearness, find_argued, measure_nearness
from fairhand.revision.body import BodyParagraph, read_body
from fairhand.revision.claims import Unsupported, find_unsupported
from fairhand.revision.holding import Holdings
from fairhand.revision.opening import open_until_thesis
from fairhand.revision.outline import Outlined, outline
from fairhand.revision.repeats import Repeats, find_repeats
from fairhand.revision.straying import Strays, find_strays


class Argument:
    """A lazy view of the paragraphs that argue; it never changes.

    Args:
        paper: The paper as it was read.
        title: Its title.
        manuscript: Its draft, taken apart.
        mentions: The draft's citations.
        resolved: What each of them means.
    """

    def __init__(
        self,
        paper: Paper,
        title: str,
        manuscript: Manuscript,
        mentions: Sequence[Mention],
        resolved: Sequence[Resolved],
    ) -> None:
        """Nothing is worked out yet."""
        self.paper = paper
        self.title = title
        self.manuscript = manuscript
        self._mentions = mentions
        self._resolved = resolved

    @cached_property
    def body(self) -> tuple[BodyParagraph, ...]:
        """The paragraphs that argue, each sentence with what it cites."""
        resolved = [take_by_page(one, self.paper.texts) for one in self._resolved]
        body = read_body(self.manuscript, self._mentions, resolved, self.paper.entries)
        return open_until_thesis(body, self.paper.points.thesis)

    @cached_property
    def texts(self) -> tuple[str, ...]:
        """The words of each of them, quotations included."""
        return tuple(paragraph.span.of(self.manuscript.text) for paragraph in self.body)

    @cached_property
    def aims(self) -> str:
        """What the paper is about, as far as the writer has set it down."""
        points, focus = self.paper.points, self.paper.focus
        said = (self.title, focus.focus, points.thesis, *(point.text for point in points.points))
        return "\n".join((*said, *(question.text for question in focus.questions)))

    @cached_property
    def strays(self) -> tuple[Strays, ...]:
        """The paragraphs that may be off the focus."""
        return tuple(find_strays(self.body, self.texts, self.aims))

    @cached_property
    def repeats(self) -> tuple[Repeats, ...]:
        """The paragraphs that may make an earlier one's argument again."""
        return tuple(find_repeats(self.body, self.texts))

    @cached_property
    def argued(self) -> tuple[Argued, ...]:
        """Where each point is argued."""
        return find_argued(self.paper.points.points, self.near)

    @cached_property
    def near(self) -> Mapping[tuple[int, int], Nearness]:
        """How near each paragraph is to each point, by their places."""
        return measure_nearness(self.paper.points.points, self.body, self.texts, self.paper.texts)

    @cached_property
    def outline(self) -> tuple[Outlined, ...]:
        """The reverse outline, as far as it can be told."""
        strays = [one.paragraph for one in self.strays]
        points, questions = self.paper.points.points, self.paper.focus.questions
        return outline(self.body, self.texts, self.near, points, questions, strays, self.aims)

    @cached_property
    def unsupported(self) -> tuple[Unsupported, ...]:
        """The claims that want a source."""
        return tuple(find_unsupported(self.body, Holdings(self.paper.texts)))
