"""The desk on disk: the only room, with its neighbours at the edge, that touches files, SQLite and the clock."""
