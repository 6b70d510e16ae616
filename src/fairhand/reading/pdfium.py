"""PDFium's turn: it is no library for several threads at once."""

from __future__ import annotations

import threading

TURN = threading.RLock()
"""Held by whoever has a PDF open."""
