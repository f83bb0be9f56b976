"""One table or a few of one subject a file."""
