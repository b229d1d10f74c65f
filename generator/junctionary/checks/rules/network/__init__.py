"""The conductor network: what is connected to what, whatever its colour or name."""
