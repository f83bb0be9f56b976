"""What is typed into a form, checked field by field."""
