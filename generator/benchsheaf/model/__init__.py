"""The facts of machines and parts as records, their names those of the schemas with the unit behind."""
