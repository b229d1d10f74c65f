"""Match: wire, breaker, receptacle, load."""
