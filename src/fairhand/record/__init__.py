"""The record as it is read: how the paper came to be, sitting by sitting, in words and in a picture."""
