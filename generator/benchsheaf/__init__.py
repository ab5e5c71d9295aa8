"""Descriptions of old machines, checked, computed and turned into a site."""
