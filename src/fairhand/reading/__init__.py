"""Sources and sheets as text: pages, their labels, the words on them."""

from fairhand.reading.decoding import decode_text
from fairhand.reading.labels import expand_range, labels_in, page_key, parse_label
from fairhand.reading.sheet import read_sheet_text
from fairhand.reading.source import read_source

__all__ = ["decode_text", "expand_range", "labels_in", "page_key", "parse_label", "read_sheet_text", "read_source"]
