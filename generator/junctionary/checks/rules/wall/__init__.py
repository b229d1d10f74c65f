"""The wall while it is open: what can be seen and mended only then."""
