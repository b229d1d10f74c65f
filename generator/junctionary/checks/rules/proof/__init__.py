"""What was tested, and what is due to be tested."""
