"""What is known: the records of wool, yarn and plans, pure and immutable."""
