"""The reference: every formula turned round, constants, units, tables and limits; to search, to print."""
