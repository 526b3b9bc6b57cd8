"""The book as data for other programs."""
