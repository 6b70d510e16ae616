"""The MEDLINE format read into records."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from fairhand.citing.entry_files import read_entries
from fairhand.citing.nbib import read_nbib

RECORD = """PMID- 10000001
OWN - NLM
DP  - 2014 Mar-Apr
TI  - Fever in the salt marshes: a parish
      register study.
PG  - 1201-9
LID - 10.5555/fever.3 [doi]
LID - S0000-1 [pii]
FAU - Ame, Ana B
AU  - Ame AB
FAU - de Vries, Jan
AU  - de Vries J
CN  - Marsh Fever Group
LA  - eng
PT  - Journal Article
JT  - Journal of marsh medicine
TA  - J Marsh Med
VI  - 12
IP  - 3
IS  - 1234-5678 (Print)

PMID- 10000002
BTI - Fenland physicians
DP  - 20010503
FED - Dun, Eva
PB  - Estuary Press
PT  - Book
"""


def test_a_record_is_read_whole() -> None:
    """Names in full before short ones, bodies after them, a title over two lines, a page range cut short."""
    (first, second), problems = read_entries(RECORD.encode(), "a.nbib")
    assert not problems
    assert first.csl == {
        "id": "ame-2014", "type": "article-journal", "title": "Fever in the salt marshes: a parish register study",
        "container-title": "Journal of marsh medicine", "volume": "12", "issue": "3", "page": "1201-1209",
        "author": [{"family": "Ame", "given": "Ana B"}, {"family": "de Vries", "given": "Jan"},
                   {"literal": "Marsh Fever Group"}],
        "issued": {"date-parts": [[2014, 3]]}, "DOI": "10.5555/fever.3", "ISSN": "1234-5678", "language": "eng",
        "PMID": "10000001",
    }  # fmt: skip
    assert (second.type, second.title, second.publisher) == ("book", "Fenland physicians", "Estuary Press")
    assert second.issued is not None
    assert (second.issued.year, second.issued.month, second.issued.day) == (2001, 5, 3)


def test_what_is_no_record_is_told() -> None:
    """A text without tags gives nothing but a word on it."""
    assert "no record" in str(read_nbib("Salt.", "a.nbib")[1][0])


@given(st.text(alphabet=st.sampled_from("PMID- TI AU\n 12\x0b\x85é"), max_size=200) | st.text(max_size=200))
def test_no_text_crashes_it(text: str) -> None:
    """Whatever is handed in, entries and problems come out."""
    read_nbib(text, "a.nbib")
