"""One rule a file: `<family>_<number>_<name>.py`, each with RULE."""
