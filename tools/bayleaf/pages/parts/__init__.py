"""Parts that several kinds of page share."""
