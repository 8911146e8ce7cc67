"""The routes, one module for each noun of the contract."""
