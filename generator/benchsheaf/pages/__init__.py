"""Pages for people: what to do first, then why."""
