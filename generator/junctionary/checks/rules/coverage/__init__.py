"""What a dwelling must have: circuits, receptacles in reach, light, alarms."""
