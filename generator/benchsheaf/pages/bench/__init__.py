"""Pages of the bench: finding the fault, checks, taking apart, going back into service, repair records."""
