"""The database's shape, step by step."""
