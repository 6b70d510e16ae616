"""What is printed on a photographed page, read by OCR where the extra for it is installed.

The engine is RapidOCR on onnxruntime, whose models come with it: nothing leaves the machine. It takes a few seconds and
some 750 MB for a page, so whoever calls this does so in a process apart.
"""

from __future__ import annotations

import io
from dataclasses import dataclass
from functools import lru_cache
from importlib.util import find_spec
from typing import Any

from fairhand.errors import FileTooLarge, FileUnreadable
from fairhand.outside.printed_lines import Printed, lay_lines

_MOST_PIXELS = 80_000_000
"""A page that unpacks to more is refused before it does; the cameras of phones take 12 to 50 million."""
_LONGEST_SIDE = 2400
"""Pixels that are left of it: small print on a whole page of A4 is still read, and time is bounded."""
_SURE = 0.5
"""Confidence from 0 to 1 under which a line is left out: the engine's own default."""


_UPRIGHT = 0.75
"""Certainty over which a page does not stand on its head: upright pages have .98 and more, those on their head .62."""


def has_ocr() -> bool:
    """Whether the extra for OCR is installed."""
    return find_spec("rapidocr") is not None and find_spec("onnxruntime") is not None


def read_printed(picture: bytes) -> str:
    """The text on a photographed page: a line for each line, the cells of a row parted by bars; may be empty.

    Args:
        picture: A JPEG, a PNG or another picture that Pillow opens.

    Raises:
        FileUnreadable: It is no picture that can be opened; the message leaves its name to the caller.
        FileTooLarge: It has more pixels than are read; the same.
    """
    found = _read_upright(_unpack(picture))
    return lay_lines([one.printed for one in found if one.sure >= _SURE])


@dataclass(frozen=True, slots=True)
class _Read:
    """A piece of print as the engine read it."""

    printed: Printed
    sure: float
    """How sure the engine is of it, from 0 to 1."""


def _read_upright(pixels: Any) -> list[_Read]:
    """What is read off a page once it stands on its feet: one on its side has upright lines, one on its head no words.

    The page is turned only where it must be, since each reading takes seconds.
    """
    import numpy as np

    found = _read(pixels)
    tall, wide = (sum(len(one.printed.text) for one in found if _is_tall(one) == way) for way in (True, False))
    if tall > wide:
        return max((_read(np.rot90(pixels, quarters)) for quarters in (1, 3)), key=_certainty)
    if _certainty(found) < _UPRIGHT:
        return max(found, _read(np.rot90(pixels, 2)), key=_certainty)
    return found


def _read(pixels: Any) -> list[_Read]:
    import numpy as np

    found = _engine()(np.ascontiguousarray(pixels))
    return (
        [
            _Read(Printed(text, tuple((float(x), float(y)) for x, y in corners)), float(sure))
            for corners, text, sure in zip(found.boxes, found.txts, found.scores, strict=True)
        ]
        if found.txts is not None
        else []
    )


def _is_tall(one: _Read) -> bool:
    top_left, top_right, bottom_right, _ = one.printed.corners
    return abs(bottom_right[1] - top_left[1]) > abs(top_right[0] - top_left[0])


def _certainty(found: list[_Read]) -> float:
    """How sure the engine is of each letter, on average; 0 where there is none."""
    letters = sum(len(one.printed.text) for one in found)
    return sum(len(one.printed.text) * one.sure for one in found) / letters if letters else 0.0


def _unpack(picture: bytes) -> Any:
    """Its pixels upright, as the engine takes them: blue, green, red."""
    import numpy as np
    from PIL import Image, ImageOps

    try:
        with Image.open(io.BytesIO(picture)) as opened:
            if opened.width * opened.height <= _MOST_PIXELS:
                opened.draft("RGB", (_LONGEST_SIDE, _LONGEST_SIDE))
                upright = ImageOps.exif_transpose(opened).convert("RGB")
                upright.thumbnail((_LONGEST_SIDE, _LONGEST_SIDE))
                return np.asarray(upright)[:, :, ::-1]
    except Image.DecompressionBombError:
        pass
    except Exception as error:  # Pillow's readers raise whatever their formats make them
        message = "it is no picture that can be opened, or broken; save it again as JPEG or PNG"
        raise FileUnreadable(message) from error
    message = f"it has more than {_MOST_PIXELS // 10**6} million pixels; save a smaller copy of it"
    raise FileTooLarge(message)


@lru_cache(maxsize=1)
def _engine() -> Any:
    from rapidocr import RapidOCR

    return RapidOCR(
        params={
            "Global.log_level": "critical",
            "Global.max_side_len": _LONGEST_SIDE,
            "Global.use_cls": False,  # whole pages are turned here, not lines
            "EngineConfig.onnxruntime.intra_op_num_threads": 1,  # a process apart has its own processor, and no more
        }
    )
