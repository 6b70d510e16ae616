"""How the model that reads references is made: invented records, set in many layouts, each word with its field."""
