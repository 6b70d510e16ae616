"""The desk on disk: the only room, with its neighbours at the edge, that touches files, SQLite and the clock."""

from fairhand.desk.clock import find_zone, now
from fairhand.desk.decoding import Decoded, decode_text
from fairhand.desk.paper_files import PaperFiles, read_paper
from fairhand.desk.places import OWN_FILES, find_desk, find_paper, is_paper, list_papers
from fairhand.desk.seen import FileSeen, hash_bytes, see_file, tell_problem

__all__ = [
    "OWN_FILES",
    "Decoded",
    "FileSeen",
    "PaperFiles",
    "decode_text",
    "find_desk",
    "find_paper",
    "find_zone",
    "hash_bytes",
    "is_paper",
    "list_papers",
    "now",
    "read_paper",
    "see_file",
    "tell_problem",
]
