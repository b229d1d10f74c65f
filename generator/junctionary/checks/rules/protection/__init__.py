"""What guards people and wood: ground-fault and arc-fault protection, shutters, weather."""
