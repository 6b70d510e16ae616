"""What readers wrote into a copy comes in with its place, its author and its time; and changes are settled."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fairhand.errors import FairhandError
from fairhand.model.remark import Returned
from fairhand.reading.returned_docx import read_returned_docx
from fairhand.reading.returned_odt import read_returned_odt
from fairhand.reading.tracked import settle_changes
from fairhand.reading.tracked_odt import refuse_odt
from fairhand.reading.word_files import read_docx, read_odt

BY = 'w:id="7" w:author="Ines Mora" w:date="2027-02-03T10:00:00Z"'
INFO = (
    '<office:change-info xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:creator>Ines Mora</dc:creator>'
    "<dc:date>2027-02-03T10:00:00</dc:date></office:change-info>"
)


def run(text: str, kind: str = "t") -> str:
    """A run of a DOCX."""
    return f'<w:r><w:{kind} xml:space="preserve">{text}</w:{kind}></w:r>'


def told(returned: Returned) -> list[tuple[str, str, str]]:
    """Kind, the words as sent, and what is said."""
    return [(one.kind, one.span.of(returned.text), one.said) for one in returned.remarks]


def texts(data: bytes) -> tuple[str, str]:
    """The text with all changes accepted, and with all refused."""
    settled = (settle_changes(data, "x.docx", accept=accept) for accept in (True, False))
    accepted, refused = (read_docx(one, "x.docx").texts[0] for one in settled)
    return accepted, refused


def test_changes_of_words_are_read_and_settled(docx: Callable[..., bytes]) -> None:
    """What was put in was not sent; what was taken out was; each names its author and time."""
    data = docx(
        f"<w:p>{run('The tide ')}<w:del {BY}>{run('ran', 'delText')}</w:del><w:ins {BY}>{run('turned')}</w:ins>"
        f"{run(' early.')}</w:p>"
    )
    returned = read_returned_docx(data, "x.docx")
    assert returned.text == "The tide ran early.\n"
    assert told(returned) == [("deletion", "ran", "ran"), ("insertion", "", "turned")]
    assert {(one.by, one.when) for one in returned.remarks} == {("Ines Mora", "2027-02-03T10:00:00Z")}
    assert texts(data) == ("The tide turned early.", "The tide ran early.")


def test_paragraphs_that_were_joined_or_parted_are_settled(docx: Callable[..., bytes]) -> None:
    """A paragraph whose mark went is one with the next where that is accepted, and stays apart where it is not."""
    mark = f"<w:pPr><w:rPr><w:del {BY}/></w:rPr></w:pPr>"
    data = docx(f"<w:p>{mark}{run('One. ')}</w:p><w:p>{run('Two.')}</w:p>")
    assert texts(data) == ("One. Two.", "One.\nTwo.")
    parted = docx(f"<w:p>{mark.replace('w:del', 'w:ins')}{run('One. ')}</w:p><w:p>{run('Two.')}</w:p>")
    assert texts(parted) == ("One.\nTwo.", "One. Two.")
    assert read_returned_docx(parted, "x.docx").text == "One. Two.\n"


def test_rows_and_moves_are_settled(docx: Callable[..., bytes]) -> None:
    """A row that was put in goes when refused; what was moved stands where it stood."""
    row = f"<w:tr><w:trPr><w:ins {BY}/></w:trPr><w:tc><w:p>{run('new')}</w:p></w:tc></w:tr>"
    data = docx(
        f"<w:tbl><w:tr><w:tc><w:p>{run('old')}</w:p></w:tc></w:tr>{row}</w:tbl>"
        f"<w:p><w:moveFrom {BY}>{run('first ')}</w:moveFrom>{run('second')}"
        f"<w:moveTo {BY}>{run(' first')}</w:moveTo></w:p>"
    )
    assert texts(data) == ("old\nnew\nsecond first", "old\nfirst second")


def test_comments_keep_anchor_author_time_and_answers(docx: Callable[..., bytes]) -> None:
    """Over a stretch of words, or at a point; an answer names what it answers."""
    para = 'xmlns:w14="http://schemas.microsoft.com/office/word/2010/wordml" w14:paraId="{}"'
    extended = (
        '<w15:x xmlns:w15="http://schemas.microsoft.com/office/word/2012/wordml"><w15:commentEx w15:paraId="AA"/>'
        '<w15:commentEx w15:paraId="BB" w15:paraIdParent="AA"/></w15:x>'
    )
    data = docx(
        f'<w:p>{run("The ")}<w:commentRangeStart w:id="0"/>{run("tide")}<w:commentRangeEnd w:id="0"/>'
        f'<w:r><w:commentReference w:id="0"/></w:r>{run(" ran.")}<w:r><w:commentReference w:id="1"/></w:r></w:p>',
        comments=(
            f'<w:comment w:id="0" w:author="Ines Mora" w:date="2027-02-03T10:00:00Z"><w:p {para.format("AA")}>'
            f"{run('Which tide?')}</w:p><w:p>{run('And when?')}</w:p></w:comment>"
            f'<w:comment w:id="1" w:author="Tom Reed"><w:p {para.format("BB")}>'
            f"{run('The spring one.')}</w:p></w:comment>"
        ),
        commentsExtended=extended,
    )
    returned = read_returned_docx(data, "x.docx")
    assert told(returned) == [("comment", "tide", "Which tide?\nAnd when?"), ("comment", "", "The spring one.")]
    assert [one.by for one in returned.remarks] == ["Ines Mora", "Tom Reed"]


def test_an_odt_is_read_alike(odt: Callable[[str], bytes]) -> None:
    """Comments, insertions and deletions of an ODT, in one text."""
    dc = 'xmlns:dc="http://purl.org/dc/elements/1.1/"'
    data = odt(
        f'<text:tracked-changes><text:changed-region text:id="a"><text:insertion>{INFO}</text:insertion>'
        f'</text:changed-region><text:changed-region text:id="b"><text:deletion>{INFO}<text:p>ran</text:p>'
        "</text:deletion></text:changed-region></text:tracked-changes>"
        '<text:p>The <office:annotation office:name="n">'
        f"<dc:creator {dc}>Tom Reed</dc:creator><dc:date {dc}>2027-02-04T09:00:00</dc:date><text:p>Which?</text:p>"
        '</office:annotation>tide<office:annotation-end office:name="n"/> <text:change text:change-id="b"/>'
        '<text:change-start text:change-id="a"/>turned<text:change-end text:change-id="a"/> early.</text:p>'
    )
    returned = read_returned_odt(data, "x.odt")
    assert returned.text == "The tide ran early.\n"
    assert told(returned) == [("comment", "tide", "Which?"), ("deletion", "ran", "ran"), ("insertion", "", "turned")]
    assert [one.by for one in returned.remarks] == ["Tom Reed", "Ines Mora", "Ines Mora"]


def regions(*changes: tuple[str, str]) -> str:
    """The list of changes of an ODT: each a name, and the paragraphs taken out, or none where something was put in."""
    told = (
        f'<text:changed-region text:id="{name}"><text:{"deletion" if gone else "insertion"}>{INFO}{gone}'
        f"</text:{'deletion' if gone else 'insertion'}></text:changed-region>"
        for name, gone in changes
    )
    return f"<text:tracked-changes>{''.join(told)}</text:tracked-changes>"


@pytest.mark.parametrize(
    ("changes", "body", "sent"),
    [
        ((("a", ""), ("b", "<text:p>ran</text:p>")),
         ('<text:p>The tide <text:change text:change-id="b"/><text:change-start text:change-id="a"/>turned'
         '<text:s/><text:change-end text:change-id="a"/> early.</text:p>'), "The tide ran early."),
        ((("a", ""),),
         ('<text:p>One. <text:change-start text:change-id="a"/></text:p><text:p>New.</text:p><text:p>'
         '<text:change-end text:change-id="a"/>Two.</text:p><text:p>Three.</text:p>'), "One. Two.\nThree."),
        ((("b", "<text:p>end.</text:p><text:p>Whole.</text:p><text:p>Be</text:p>"),),
         '<text:p>The <text:change text:change-id="b"/>gin <text:span>so</text:span>.</text:p>',
         "The end.\nWhole.\nBegin so."),
        ((("a", ""),),
         ('<text:p>Kept <text:change-start text:change-id="a"/>and <text:span>more</text:span> so'
         '<text:change-end text:change-id="a"/>.</text:p>'), "Kept ."),
    ],
)  # fmt: skip
def test_changes_of_an_odt_are_refused(
    odt: Callable[[str], bytes], changes: tuple[tuple[str, str], ...], body: str, sent: str
) -> None:
    """Words, ends of paragraphs and whole paragraphs, put in or taken out, are as they were."""
    data = odt(regions(*changes) + body)
    assert read_odt(refuse_odt(data, "x.odt"), "x.odt").texts[0] == sent
    assert "".join(read_returned_odt(data, "x.odt").text.split()) == "".join(sent.split())
    assert read_returned_odt(refuse_odt(data, "x.odt"), "x.odt").remarks == ()


@pytest.mark.parametrize("read", [read_returned_docx, read_returned_odt])
def test_what_is_no_document_is_refused(read: Callable[[bytes, str], Returned]) -> None:
    """One line says what is wrong, and what to do."""
    for data in (b"", b"PK\x03\x04", b"%PDF-1.7"):
        with pytest.raises(FairhandError) as refused:
            read(data, "x")
        assert "\n" not in str(refused.value)


PIECES = st.lists(st.tuples(st.sampled_from(["", "ins", "del"]), st.text("abc ", min_size=1, max_size=4)), max_size=6)


@given(st.lists(st.tuples(st.sampled_from(["", "ins", "del"]), PIECES), min_size=1, max_size=5))
def test_the_text_as_sent_is_the_text_with_all_refused(
    docx: Callable[..., bytes], paragraphs: list[tuple[str, list[tuple[str, str]]]]
) -> None:
    """Two readers of one file agree, and every place lies within the text."""
    body = ""
    for mark, pieces in paragraphs:
        marked = f"<w:pPr><w:rPr><w:{mark} {BY}/></w:rPr></w:pPr>" if mark else ""
        runs = (
            f"<w:{kind} {BY}>{run(text, 'delText' if kind == 'del' else 't')}</w:{kind}>" if kind else run(text)
            for kind, text in pieces
        )
        body += f"<w:p>{marked}{''.join(runs)}</w:p>"
    data = docx(f"{body}<w:p>{run('end')}</w:p>")
    returned = read_returned_docx(data, "x.docx")
    again = read_returned_docx(settle_changes(data, "x.docx", accept=False), "x.docx")
    assert again.text.split() == returned.text.split()
    assert again.remarks == ()
    assert all(0 <= one.span.start <= one.span.end <= len(returned.text) for one in returned.remarks)
