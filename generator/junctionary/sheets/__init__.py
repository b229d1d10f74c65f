"""What each page of the manual shows: frozen plain data in the page's own words, no HTML.

A sheet is built from a House, its figures and what was judged about it; a
page is then a pure function of the sheet and the theme.
"""
