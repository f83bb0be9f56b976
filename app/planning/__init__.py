"""The reckoning: needs against the shelf. Pure: a book goes in, frozen answers come out."""
