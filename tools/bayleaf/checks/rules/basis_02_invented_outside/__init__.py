"""Rules of the family BASIS_02_INVENTED_OUTSIDE."""
