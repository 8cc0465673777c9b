"""Three legs: amps and volts in balance."""
