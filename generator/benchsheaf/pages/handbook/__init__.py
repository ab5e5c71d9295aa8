"""The handbook: what holds for every machine, a page for each question."""
