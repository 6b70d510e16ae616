"""Sentences that leave the construction in which they began: mixed, dangling, unparallel."""
