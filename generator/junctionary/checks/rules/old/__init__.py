"""Old work: what was put in under other rules, and what nobody knows any more."""
