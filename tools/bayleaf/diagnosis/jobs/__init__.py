"""Jobs: judged, replayed and put into words."""
