"""Citations recognised, resolved and set; the list of sources read and written."""
