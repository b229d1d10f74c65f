"""Sheet data to SVG: symbols, the circuit map, the make-up of a box.

Every drawing comes in two: a wide one, and a narrow one laid out anew for a
phone. One that takes all the width of a desk comes in a middle one too, for a
tablet and for paper. Lettering is never below 9 px at the width a drawing is
made for.
"""
