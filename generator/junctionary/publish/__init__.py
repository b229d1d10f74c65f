"""Sheets to pages: the theme, the addresses, the exports, and the folder that is swapped in whole."""
