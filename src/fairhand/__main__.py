"""``python -m fairhand``."""

from fairhand.cli import main

main()
