"""The rules, one a file, by subject. Nothing registers them: a file in a folder here is a check."""
