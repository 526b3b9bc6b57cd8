"""Rules of the family SAFE_47_ROAD_NOT_LOOKED_AT."""
