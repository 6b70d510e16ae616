"""Each check's precision, measured: papers made right and spoiled in one place at a time, and prose as it was found."""
