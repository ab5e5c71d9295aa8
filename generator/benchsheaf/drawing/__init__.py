"""Pictures: geometry worked out from records, two drawings of each, one for a wide column and one for a phone."""
