"""One function for each thing a person does: load, reckon, save."""
