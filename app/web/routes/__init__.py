"""One subject a file; each only calls work and renders a page."""
