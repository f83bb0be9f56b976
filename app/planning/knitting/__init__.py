"""While a garment is on the needles: where it is, what its balls reach, and how it will end."""
