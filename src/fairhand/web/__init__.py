"""The page: the desk and its papers in a browser, on this machine alone. A shell, as ``cli`` is."""
