"""The revision: what the draft argues, point by point and paragraph by paragraph, and what fits."""
