"""Pure arithmetic with worked steps: it knows no house, and cites what it rests on."""
