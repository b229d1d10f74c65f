"""Panel, service, grounding: and what the door of a panel says."""
