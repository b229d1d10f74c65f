"""Make-up: how the conductors of a box are joined and landed, and how the box is reached."""
