"""Rules of the family LINK_06_RETIRED_ALONE."""
