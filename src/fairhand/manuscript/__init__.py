"""The draft: read into parts with exact places, matched across edits, counted, and turned into set text."""

from fairhand.manuscript.counting import WordCount, count_words
from fairhand.manuscript.draft import quotation_offsets, read_manuscript
from fairhand.manuscript.matching import ParagraphMatch, match_paragraphs
from fairhand.manuscript.setting import set_blocks

__all__ = [
    "ParagraphMatch",
    "WordCount",
    "count_words",
    "match_paragraphs",
    "quotation_offsets",
    "read_manuscript",
    "set_blocks",
]
