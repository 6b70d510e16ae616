"""The writer's name looked for in what is handed in: in the text, in a file's name, in its properties, in its bytes."""

from __future__ import annotations

import io
import re
import unicodedata
import zipfile
import zlib
from collections.abc import Iterator

MOST_UNPACKED = 256 * 2**20
"""Bytes that are unpacked of one file at most."""
LEAST_LETTERS = 3
"""A part of a name that is shorter is not looked for alone: it is in too many words."""
_STREAM = re.compile(rb"stream\r?\n(.*?)endstream", re.DOTALL)
_HEX = re.compile(rb"<([0-9A-Fa-f\s]{8,})>")
_OCTAL = re.compile(rb"\\([0-7]{3})")


def parts_of(name: str) -> tuple[str, ...]:
    """What of a name gives its bearer away: the whole, and each part of it that is long enough.

    >>> parts_of("Ida M. Vance")
    ('Ida M. Vance', 'Ida', 'Vance')
    """
    whole = " ".join(name.split())
    parts = [part.strip(".,") for part in whole.split()]
    return tuple(dict.fromkeys(filter(None, (whole, *(part for part in parts if len(part) >= LEAST_LETTERS)))))


def find_names(text: str, name: str) -> tuple[int, ...]:
    r"""The places at which the whole name stands in a text, or its last part; as code points from its beginning.

    A first name alone is too common to be called one: it may be another's.

    >>> find_names("By Ida Vance.\nVance, I. The vances of Vancely.", "Ida Vance")
    (3, 14)
    """
    words = name.split()
    if not words:
        return ()
    last = words[-1] if len(words[-1]) >= LEAST_LETTERS else ""
    between = r"[\s_,.-]{1,3}"
    wanted = [between.join(map(re.escape, words)), *([re.escape(last)] if last else [])]
    pattern = re.compile(rf"(?<!\w)(?:{'|'.join(wanted)})(?!\w)", re.IGNORECASE)
    return tuple(found.start() for found in pattern.finditer(unicodedata.normalize("NFC", text)))


def holds_name(name: str, file: str, data: bytes) -> tuple[str, ...]:
    """Where in a file's name or bytes, unpacked, any part of the writer's name stands; nothing where none does.

    Letters are looked for as UTF-8 and UTF-16, in capitals or not, in an archive's members and their names, in a PDF's
    streams, strings and hexadecimal strings. Letters that a PDF sets by the numbers of their shapes are not seen here;
    its text is looked through as it is read.

    Args:
        name: The writer's name.
        file: The file's own name.
        data: Its bytes.

    >>> holds_name("Ida Vance", "essay.txt", b"by I. VANCE"), holds_name("Ida Vance", "Vance.txt", b"")
    (('Vance in essay.txt',), ('Vance in the name of Vance.txt',))
    """
    found = []
    wanted = parts_of(name)
    for where, raw in ((f"the name of {file}", file.encode()), *unpack(file, data)):
        lowered = raw.lower()
        for part in wanted:
            for form in _forms(part):
                if _stands(form, lowered):
                    found.append(f"{part} in {where}")
                    break
    return tuple(dict.fromkeys(found))


def unpack(file: str, data: bytes, depth: int = 2) -> Iterator[tuple[str, bytes]]:
    """A file's bytes, and those within it: an archive's members and their names, a PDF's streams and strings."""
    yield file, data
    if data[:4] == b"PK\x03\x04" and depth:
        left = MOST_UNPACKED
        try:
            with zipfile.ZipFile(io.BytesIO(data)) as archive:
                yield f"the comment of {file}", archive.comment
                for member in archive.infolist():
                    left -= member.file_size
                    if left < 0:
                        return
                    inside = f"{member.filename} of {file}"
                    yield f"the name of {inside}", member.filename.encode() + b" " + member.comment + member.extra
                    yield from unpack(inside, archive.read(member), depth - 1)
        except (zipfile.BadZipFile, zlib.error, RuntimeError, NotImplementedError):
            return
    elif data[:5] == b"%PDF-":
        yield from _unpack_pdf(file, data)


def _unpack_pdf(file: str, data: bytes) -> Iterator[tuple[str, bytes]]:
    bodies = [data]
    for stream in _STREAM.finditer(data):
        opened = zlib.decompressobj()
        try:
            bodies.append(opened.decompress(stream[1], MOST_UNPACKED))
        except zlib.error:
            continue
    for body in bodies:
        yield file, body
        yield file, _OCTAL.sub(lambda octal: bytes([int(octal[1], 8) & 255]), body)
        for digits in _HEX.finditer(body):
            plain = re.sub(rb"\s", b"", digits[1])
            yield file, bytes.fromhex(plain[: len(plain) // 2 * 2].decode())


def _forms(part: str) -> tuple[bytes, ...]:
    forms = dict.fromkeys(unicodedata.normalize(form, part).lower() for form in ("NFC", "NFD"))
    return tuple(one.encode(encoding, "replace") for one in forms for encoding in ("utf-8", "utf-16-le", "utf-16-be"))


def _stands(form: bytes, raw: bytes) -> bool:
    """Whether the letters stand there as a word, not within a longer one."""
    at = raw.find(form)
    width = 2 if b"\0" in form else 1
    while at >= 0:
        before, after = raw[max(0, at - width) : at], raw[at + len(form) : at + len(form) + width]
        if not (_is_letter(before) or _is_letter(after)):
            return True
        at = raw.find(form, at + 1)
    return False


def _is_letter(raw: bytes) -> bool:
    plain = raw.replace(b"\0", b"")
    return bool(plain) and (plain.isalpha() or plain[0] >= 0xC3)
