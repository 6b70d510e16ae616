"""What is printed on a photographed page, read by OCR where the extra for it is installed.

The engine is RapidOCR on onnxruntime, whose models come with it: nothing leaves the machine. It takes a few seconds and
some 750 MB for a page, so whoever calls this does so in a process apart.
"""

from __future__ import annotations

import io
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
    pixels = _unpack(picture)
    found = _engine()(pixels)
    if found.txts is None:
        return ""
    lines = [
        Printed(text, tuple((float(x), float(y)) for x, y in box))
        for box, text, score in zip(found.boxes, found.txts, found.scores, strict=True)
        if score >= _SURE
    ]
    return lay_lines(lines)


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
            "EngineConfig.onnxruntime.intra_op_num_threads": 1,  # a process apart has its own processor, and no more
        }
    )
