"""For each rule, the slips that must make it speak in the demo house."""
