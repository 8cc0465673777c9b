"""The pump-day record from files: reading a CSV of many pumps, writing what came of each."""

from .reading import Message, NoHeadings, Pump, PumpFile

__all__ = ["Message", "NoHeadings", "Pump", "PumpFile"]
