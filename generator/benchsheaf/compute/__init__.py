"""What follows from the facts: pure sums without files, clock or formatting."""
