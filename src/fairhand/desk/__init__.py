"""The desk on disk: the only room, with its neighbours at the edge, that touches files, SQLite and the clock."""

from fairhand.desk.answers import set_answer, set_setting
from fairhand.desk.cache import fingerprint, keep_cached, read_cached
from fairhand.desk.clock import find_zone, now
from fairhand.desk.copies import Copy, list_copies
from fairhand.desk.decoding import Decoded, decode_text
from fairhand.desk.disk import add_file, is_writable, put_file, writable
from fairhand.desk.making import make_course, make_desk, make_paper, name_folder
from fairhand.desk.paper_files import PICTURE_SUFFIXES, SOURCE_SUFFIXES, PaperFiles, read_paper
from fairhand.desk.places import OWN_FILES, SHEET_SUFFIXES, find_desk, find_paper, is_paper, list_papers
from fairhand.desk.record import bring_back, check_record, keep_state, list_states, notice_changes, state_bytes
from fairhand.desk.seen import FileSeen, hash_bytes, see_file, tell_problem
from fairhand.desk.state import How, State, name_state
from fairhand.desk.writing import write_file

__all__ = [
    "OWN_FILES",
    "PICTURE_SUFFIXES",
    "SHEET_SUFFIXES",
    "SOURCE_SUFFIXES",
    "Copy",
    "Decoded",
    "FileSeen",
    "How",
    "PaperFiles",
    "State",
    "add_file",
    "bring_back",
    "check_record",
    "decode_text",
    "find_desk",
    "find_paper",
    "find_zone",
    "fingerprint",
    "hash_bytes",
    "is_paper",
    "is_writable",
    "keep_cached",
    "keep_state",
    "list_copies",
    "list_papers",
    "list_states",
    "make_course",
    "make_desk",
    "make_paper",
    "name_folder",
    "name_state",
    "notice_changes",
    "now",
    "put_file",
    "read_cached",
    "read_paper",
    "see_file",
    "set_answer",
    "set_setting",
    "state_bytes",
    "tell_problem",
    "writable",
    "write_file",
]
