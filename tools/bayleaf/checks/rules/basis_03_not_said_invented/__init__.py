"""Rules of the family BASIS_03_NOT_SAID_INVENTED."""
