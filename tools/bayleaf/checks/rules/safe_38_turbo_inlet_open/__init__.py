"""Rules of the family SAFE_38_TURBO_INLET_OPEN."""
