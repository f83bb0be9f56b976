"""What the trade knows: quantities, formulas and tables, each with unit, domain and source."""
