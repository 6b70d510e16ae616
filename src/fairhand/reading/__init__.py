"""Sources and sheets as text: pages, their labels, the words on them."""
