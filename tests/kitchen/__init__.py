"""Tests of the kitchen against published figures, an independent integration, and its own promises."""
