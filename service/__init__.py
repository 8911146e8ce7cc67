"""Reads the label on a bag of dried pulses, names the pulse in many languages, and says how to cook it."""
