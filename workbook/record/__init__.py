"""The pump-day record: one pump typed in, or many read from a CSV; what came of each, shown and kept.

    with open("pumps.csv", "rb") as stream:
        pumps = PumpFile(stream, "us")
        for pump in pumps:                          # one row at a time
            examined = examine(pump.record)         # solver.own.record
            print(page_text(examined, pump.messages))

`PumpFile.messages` are of the whole file, `Pump.messages` of a row; each names its row and column.
What a record is and how it is judged is in `solver.own.record`; here it is read and shown.

- `headings.py`: which field each column of a CSV is, and in which unit
- `reading.py`: a CSV row by row, each a record with what is to be said of it
- `fleet.py`: a whole file within bounds, by pump and day
- `demo.py`, `demo.csv`: eight invented pumps to try it all on, and what is wrong with three of them
- `findings.py`: what came of one record, as plain text and as HTML
- `trends.py`: a pump over the years, as pictures (`trend_chart.py`) and a table
- `results.py`: what came of records as CSV, JSON and pages of text
- `printed.py`, `printed_data.py`, `record.typ`: the same as a PDF
- `record_panel.py`: the page, of `form.py` (one day typed in), `taken_at.py` (where each reading is taken),
  `plant_panel.py` (a day of a file chosen), `keep.py` (links to save it), and `lesson_card.py` with `lesson_practice.py` (problems made of it)
- `command.py`: `python3 -m workbook record`
"""

from .findings import page_text
from .reading import Message, NoHeadings, Pump, PumpFile
from .results import pump_json

__all__ = ["Message", "NoHeadings", "Pump", "PumpFile", "page_text", "pump_json"]
