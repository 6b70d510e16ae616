"""``python -m fairhand.cli``."""

from fairhand.cli import main

main()
