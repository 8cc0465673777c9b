"""Insulation and windings."""
