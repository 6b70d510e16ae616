"""The plan of the desk: its papers by their hours, how each stands, and the pace that is learnt."""
