"""The pump-day record from files: reading a CSV of many pumps, writing what came of each.

    with open("pumps.csv", "rb") as stream:
        pumps = PumpFile(stream, "us")
        for pump in pumps:                          # one row at a time
            examined = examine(pump.record)         # solver.own.record
            print(page_text(examined, pump.messages))

`PumpFile.messages` are of the whole file, `Pump.messages` of a row; each names its row and column.
print.py sets one PDF of `Sheet`s with typst; plots.py draws a pump's years, trends.py puts them on a
page. demo.py has eight invented pumps to try it all on, and what is wrong with three of them.
To write another form of a record, make a `Write` as in writing.py, a function of (pump, examined),
and add it to `_writers` in command.py with its option in workbook/commands.py.
"""

from .data import pump_json
from .page import page_text
from .reading import Message, NoHeadings, Pump, PumpFile

__all__ = ["Message", "NoHeadings", "Pump", "PumpFile", "page_text", "pump_json"]
