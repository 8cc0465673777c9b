"""The pump-day record: one pump's readings worked, judged, and set against its earlier ones.

>>> from solver.record import examine, read_entries
>>> record, faults = read_entries({"pump": "Pump 2", "volts_ab": "462", "volts_bc": "463",
...                                "volts_ca": "455"})
>>> examine(record).finding("voltage_unbalance").state
'look into it'
"""

from .check import Check, Finding
from .entries import Fault, Record, read_entries
from .examine import ALWAYS, CHECKS, Examined, examine
from .fields import FIELDS, GROUPS, Field, field_named
from .trend import FOLLOWED, Trend, by_pump, trend, trend_of
from .verdict import BEYOND, LOOK, NO_LIMIT, NOT_MEASURED, STATES, WITHIN, Verdict

__all__ = [
    "ALWAYS",
    "BEYOND",
    "CHECKS",
    "FIELDS",
    "FOLLOWED",
    "GROUPS",
    "LOOK",
    "NOT_MEASURED",
    "NO_LIMIT",
    "STATES",
    "WITHIN",
    "Check",
    "Examined",
    "Fault",
    "Field",
    "Finding",
    "Record",
    "Trend",
    "Verdict",
    "by_pump",
    "examine",
    "field_named",
    "read_entries",
    "trend",
    "trend_of",
]
