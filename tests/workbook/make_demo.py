"""The demo record: the eight pumps of the invented town over five years, read off the solver's stations.

    python -m tests.workbook.make_demo

Each year is the same station on another day: volts, temperature, lift and inflow differ a little. The three
faults are faults of the model, brought to what is written here, so that all readings agree.
"""

from collections.abc import Iterator
from dataclasses import replace
from random import Random

from solver.own.record import FIELDS
from solver.scenario import PEOPLE, PUMPS
from solver.station.faults import put
from solver.station.station import Station
from solver.station.town import town_station
from workbook.record.demo import FILE
from workbook.record.headings import heading_of
from workbook.ui.spreadsheet import CODING, csv_of

YEARS = range(2020, 2025)
PRICES = (0.108, 0.111, 0.117, 0.122, 0.126)
# What goes wrong, by the place in PUMPS: the fault, its reading, and that year by year (None: sound).
# Megohms are a share of what they were when sound; the others are in percent.
FAULTS = {
    3: ("damp_winding", "insulation_at_40", (None, 0.70, 0.32, 0.10, 0.02)),
    4: ("shorted_turns", "current_unbalance", (None, 3.2, 5.8, 9.0, 13.0)),
    2: ("worn_rings", "flow_share", (None, 97.0, 91.0, 85.0, 78.0)),
}
SHORTING = 4
ROLLED_FROM = 3  # the year in which somebody rolled its leads
MEGOHMS = 300.0  # at 40 °C, of the driest of these windings and up
PLATE = ("motor_size", "rated_volts", "full_load_amps", "service_factor", "rated_speed", "poles")
LEGS = ("ab", "bc", "ca", "a", "b", "c")
ELECTRIC = tuple(f"{'volts' if len(leg) > 1 else 'amps'}_{leg}" for leg in LEGS)
WELL = ("well_diameter", "drawdown_time", "rise_time")
GAUGES = ("discharge_gauge", "discharge_gauge_height", "suction_gauge", "suction_gauge_height")


class Year:
    """One pump in one year."""

    def __init__(self, at: int, turn: int):
        self.at, self.turn = at, turn
        self.chance = Random(f"{PUMPS[at]} {YEARS[turn]}")
        self.station = self.with_its_fault(self.on_its_day(town_station(PUMPS[at])))

    def near(self, value: float, percent: float) -> float:
        """A value as it comes out on a day: within some percent."""
        return value * (1 + self.chance.uniform(-percent, percent) / 100)

    def on_its_day(self, sound: Station) -> Station:
        """The sound station with the volts, the winding, the lift and the inflow of the day."""
        was, well = sound.condition, sound.well
        condition = replace(
            was,
            megohms=self.near(MEGOHMS + was.megohms, 6),
            temperature=float(self.chance.randrange(26, 39)),
            index=self.near(was.index, 3),
            ratio=self.near(was.ratio, 2),
            ohms=self.near(was.ohms, 0.4),
        )
        if well:
            well = replace(well, inflow=self.near(well.inflow, 10), daily=self.near(well.daily, 3))
        volts, lift = self.chance.uniform(461, 468), self.near(sound.main.static, 1.5)
        return replace(
            sound,
            altered=condition,
            well=well,
            main=replace(sound.main, static=lift),
            supply=replace(sound.supply, volts=volts),
        )

    def with_its_fault(self, sound: Station) -> Station:
        """What the fault has come to by this year."""
        name, reading, course = FAULTS.get(self.at, ("", "", (None,) * len(YEARS)))
        wanted = course[self.turn]
        if wanted is None:
            return sound
        of = sound.reading(reading) if name == "damp_winding" else 1
        return put(sound, name, reading, wanted * of)

    def entries(self) -> dict[str, str]:
        """All that was written down."""
        return self.who() | self.motor() | self.insulation() | self.water() | self.cost()

    def noted(self, *names: str) -> dict[str, str]:
        """Readings as their instruments show them."""
        return {name: f"{self.station.noted(name):g}" for name in names}

    def who(self) -> dict[str, str]:
        place, chance = PUMPS[self.at], self.chance
        station = place.station.removeprefix("the ").removeprefix("plant's ")
        return {
            "station": station[0].upper() + station[1:],
            "pump": place.name,
            "date": f"{YEARS[self.turn]}-05-{4 + self.at + chance.randrange(14):02d}",
            "person": chance.choice(PEOPLE),
        }

    def motor(self) -> dict[str, str]:
        """The nameplate, winding ohms, volts and amps, and amps with the leads rolled."""
        rolled = self.at == SHORTING and self.turn >= ROLLED_FROM
        turns = [f"amps_{leg}_{turn}" for turn in (2, 3) for leg in "abc"] if rolled else []
        return {
            **self.noted(*PLATE),
            "frequency": "60",
            "phase": "3",
            "motor_efficiency": f"{self.station.motor.efficiency:g}",
            "insulation_class": "F",
            "winding_kind": "random-wound",
            **self.noted("rated_flow", "ohms_12", "ohms_23", "ohms_31", *ELECTRIC, *turns),
        }

    def insulation(self) -> dict[str, str]:
        times = ("insulation_30s", "insulation_1min", "insulation_10min")
        tested = {name: megohms(self.station.reading(name)) for name in times}
        return {"test_volts": "500", **tested, **self.noted("winding_temperature")}

    def water(self) -> dict[str, str]:
        """Flow by a timed test of the well, or by a meter; head by gauges, or over a submersible as told."""
        station = self.station
        found = self.noted(*(WELL if station.well else ("flow",)))
        if station.well:
            for test in ("drawdown_level", "rise_level"):
                found[test] = f"{station.reading(test):.3g}"
        return found | self.noted(*(GAUGES if station.suction else ("head",)))

    def cost(self) -> dict[str, str]:
        """A pump that moves less water runs longer for the same."""
        alone = "pump_hours" if self.station.well else "hours_per_day"
        hours = 365 * self.station.reading(alone)
        return {
            **self.noted("input_power"),
            "run_time": f"{hours:.0f}",
            "energy_price": f"{PRICES[self.turn]}",
        }


def megohms(value: float) -> str:
    """As an insulation tester shows it: two figures, or three over 1,000."""
    step = 10 if value >= 100 else 1
    return f"{round(value / step) * step}"


def rows() -> Iterator[dict[str, str]]:
    """Year by year, as they were written down."""
    for turn in range(len(YEARS)):
        for at in range(len(PUMPS)):
            yield Year(at, turn).entries()


def made() -> str:
    """The CSV: the columns in which anything stands, in the order of the template."""
    found = list(rows())
    fields = [field for field in FIELDS if any(field.name in row for row in found)]
    heads = [heading_of(field, "us") for field in fields]
    made = csv_of([heads, *([row.get(field.name, "") for field in fields] for row in found)])
    return made.decode(CODING).replace("\r\n", "\n")


if __name__ == "__main__":
    FILE.write_text(made(), encoding="utf-8", newline="\n")
    print(f"{FILE.name} is made.")
