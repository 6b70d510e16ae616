"""A long list on disk of which a few lines are wanted: its lines are sorted, and one is found by halving."""

from __future__ import annotations


class SortedLines:
    r"""Lines of fields parted by tabs, in the order of their bytes; the first field is the key.

    Reading so takes no time at the start, as a dictionary of a hundred thousand lines would.

    >>> lines = SortedLines(b"ebb\tu\nflow\tg\n")
    >>> lines.find("flow"), lines.find("tide")
    (('g',), None)
    """

    def __init__(self, data: bytes) -> None:
        """The lines of ``data``, each ended by a line feed."""
        self._data = data

    def find(self, key: str) -> tuple[str, ...] | None:
        """The other fields of the line with that key; None where there is none."""
        data = self._data
        wanted = key.encode("utf-8", "replace") + b"\t"
        low, high = 0, len(data)
        while low < high:
            middle = (low + high) // 2
            start = data.rfind(b"\n", low, middle) + 1 or low
            end = data.find(b"\n", middle)
            end = high if end < 0 else end + 1
            if data[start:end] < wanted:
                low = end
            else:
                high = start
        if not data.startswith(wanted, low):
            return None
        end = data.find(b"\n", low)
        return tuple(data[low + len(wanted) : len(data) if end < 0 else end].decode().split("\t"))

    @property
    def text(self) -> str:
        """All of it."""
        return self._data.decode()
