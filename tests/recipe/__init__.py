"""Tests of changed recipes."""
