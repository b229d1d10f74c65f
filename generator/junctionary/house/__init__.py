"""Records become one linked, frozen House, and questions are put to its conductor network."""
