"""The pages: a request in, the reckoning shown, nothing reckoned here."""
