"""Rules of the family DIAG_05_SILENT_ON_PATH."""
