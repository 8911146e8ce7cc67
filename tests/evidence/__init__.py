"""Checks of the glossary against published data, which is fetched and never kept here."""
