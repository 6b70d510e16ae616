"""An open paper: read from its folder, worked out by the rooms, kept warm between one question and the next."""
