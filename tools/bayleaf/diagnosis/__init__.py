"""Diagnosis: verdicts on readings, the fault matrix, and the faults that a job's readings leave. Pure computing."""
