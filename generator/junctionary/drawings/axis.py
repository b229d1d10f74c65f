"""Axes of the drawings that plot a figure: round steps, and the figures beside them."""

import math

_ROUND = (1.0, 2.0, 5.0, 10.0)


def round_steps(most: float, about: int) -> tuple[float, ...]:
    """From nothing to the first round step at or above ``most``, in about so many steps of 1, 2 or 5."""
    if most <= 0:
        return (0.0, 1.0)
    least = most / about
    ten = 10.0 ** math.floor(math.log10(least))
    step = next(each * ten for each in _ROUND if each * ten >= least * 0.999)
    return tuple(index * step for index in range(math.ceil(most / step - 1e-9) + 1))


def figure_words(value: float) -> str:
    """``20``, ``0.5``: no more digits than it needs."""
    return f"{value:.6g}"
