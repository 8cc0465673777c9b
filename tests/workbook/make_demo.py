"""The demo record: eight invented pumps over five years, made by the solver's own formulas.

    python -m tests.workbook.make_demo

Each reading is worked from what the pump is like that year, so that no two readings contradict
each other, then rounded as its meter shows it. Chance is small, and the same everywhere.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from random import Random

from solver.engine.plan import find_plan
from solver.own.record import FIELDS
from solver.scenario import PEOPLE, PUMPS
from solver.topics.formulas import FORMULAS
from workbook.record.demo import FILE
from workbook.record.headings import heading_of
from workbook.ui.spreadsheet import CODING, csv_of

YEARS = range(2020, 2025)
PRICES = (0.108, 0.111, 0.117, 0.122, 0.126)


@dataclass(frozen=True)
class Machine:
    """What a pump is like when nothing is wrong: its nameplate, its well, its water."""

    hp: float
    motor_efficiency: float
    flow: float
    head: float
    pump_efficiency: float
    power_factor: float
    megohms: float
    ohms: float
    hours: int
    well: float | None = None  # diameter in feet; without one the flow is read on a meter
    poles: int = 4
    speed: int = 1760


MACHINES = (
    Machine(15, 91.0, 480, 66, 66, 0.82, 620, 0.842, 2310, well=8),
    Machine(15, 91.0, 480, 66, 65, 0.82, 540, 0.838, 2190, well=8),
    Machine(10, 89.5, 340, 58, 62, 0.80, 760, 1.31, 1740, well=6),
    Machine(10, 89.5, 340, 58, 61, 0.80, 690, 1.32, 1820, well=6),
    Machine(25, 92.4, 610, 92, 69, 0.84, 810, 0.486, 1960, well=10),
    Machine(20, 91.7, 520, 84, 70, 0.85, 930, 0.624, 3120, poles=2, speed=3525),
    Machine(40, 93.6, 1450, 66, 74, 0.83, 880, 0.291, 4380, poles=6, speed=1180),
    Machine(30, 93.0, 1300, 55, 73, 0.83, 1010, 0.402, 4050, poles=6, speed=1175),
)
# What goes wrong, year by year: a share of what is right, or percent.
MOIST, SHORTING, WEARING = 3, 4, 2  # places in PUMPS
DRYNESS = (1.0, 0.78, 0.42, 0.20, 0.09)
MOIST_INDEX, MOIST_RATIO = (2.4, 2.3, 2.2, 2.1, 1.7), (1.42, 1.38, 1.35, 1.31, 1.18)
HIGH_LEG = (1.6, 2.1, 3.9, 5.8, 7.9)
OHMS_OFF = (0.5, 0.7, 1.2, 1.9, 2.6)
FLOW_KEPT = (1.0, 0.97, 0.91, 0.85, 0.78)
LIFT = 0.8
EFFICIENCY_KEPT = (1.0, 0.965, 0.90, 0.83, 0.755)


def work(asked: str, **given: float) -> float:
    """A quantity from others, as the solver works it."""
    return find_plan(tuple(given), asked, FORMULAS, "us").run(given)[asked]


class Year:
    """One pump in one year."""

    def __init__(self, at: int, turn: int):
        self.at, self.turn, self.machine = at, turn, MACHINES[at]
        self.chance = Random(f"{PUMPS[at]} {YEARS[turn]}")
        machine = self.machine
        wear, less = (EFFICIENCY_KEPT, FLOW_KEPT) if at == WEARING else ((1.0,) * 5,) * 2
        self.flow = self.near(machine.flow, 1.2) * less[turn]
        # Less water meets less friction: most of the head is lift, the rest falls with the square.
        self.head = self.near(machine.head, 0.8) * (LIFT + (1 - LIFT) * less[turn] ** 2)
        efficiency = self.near(machine.pump_efficiency, 0.8) * wear[turn]
        self.power = work(
            "input_power",
            flow=self.flow,
            head=self.head,
            pump_efficiency=efficiency,
            motor_efficiency=machine.motor_efficiency,
        )

    def near(self, value: float, percent: float) -> float:
        """A value as it comes out on a day: within some percent."""
        return value * (1 + self.chance.uniform(-percent, percent) / 100)

    def entries(self) -> dict[str, str]:
        """All that was written down."""
        machine = self.nameplate() | self.insulation() | self.ohms() | self.volts_and_amps()
        return self.who() | machine | self.water() | self.gauges() | self.cost()

    def who(self) -> dict[str, str]:
        place, chance = PUMPS[self.at], self.chance
        station = place.station.removeprefix("the ").removeprefix("plant's ")
        return {
            "station": station[0].upper() + station[1:],
            "pump": place.name,
            "date": f"{YEARS[self.turn]}-05-{4 + self.at + chance.randrange(14):02d}",
            "person": chance.choice(PEOPLE),
        }

    def nameplate(self) -> dict[str, str]:
        machine = self.machine
        return {
            "motor_size": f"{machine.hp:g}",
            "rated_volts": "460",
            "full_load_amps": f"{self.rated_amps():.1f}",
            "service_factor": "1.15",
            "rated_speed": f"{machine.speed}",
            "poles": f"{machine.poles}",
            "frequency": "60",
            "phase": "3",
            "motor_efficiency": f"{machine.motor_efficiency}",
            "insulation_class": "F",
            "winding_kind": "random-wound",
            "rated_flow": f"{machine.flow:g}",
        }

    def rated_amps(self) -> float:
        machine = self.machine
        power = work(
            "motor_power", brake_power=machine.hp, motor_efficiency=machine.motor_efficiency
        )
        factor = machine.power_factor + 0.03
        return amps(work("input_power", motor_power=power), factor, (460.0,) * 3)

    def insulation(self) -> dict[str, str]:
        moist = self.at == MOIST
        celsius = self.chance.randrange(26, 39)
        at_40 = self.near(self.machine.megohms, 6) * (DRYNESS[self.turn] if moist else 1)
        minute = work("insulation", insulation_at_40=at_40, winding_temperature=celsius)
        index = MOIST_INDEX[self.turn] if moist else self.chance.uniform(2.3, 2.9)
        ratio = MOIST_RATIO[self.turn] if moist else self.chance.uniform(1.35, 1.5)
        return {
            "test_volts": "500",
            "insulation_30s": megohms(
                work("insulation_30s", insulation_1min=minute, absorption_ratio=ratio)
            ),
            "insulation_1min": megohms(minute),
            "insulation_10min": megohms(
                work("insulation_10min", insulation_1min=minute, polarization_index=index)
            ),
            "winding_temperature": f"{celsius}",
        }

    def ohms(self) -> dict[str, str]:
        """Shorted turns take ohms from one winding, and so from the two readings it is in."""
        off = OHMS_OFF[self.turn] if self.at == SHORTING else self.chance.uniform(0.2, 0.6)
        middle = self.near(self.machine.ohms, 0.5)
        readings = (middle * (1 - off / 200), middle * (1 + off / 100), middle * (1 - off / 200))
        return {f"ohms_{name}": f"{value:.4g}" for name, value in zip(("12", "23", "31"), readings, strict=True)}  # fmt: skip

    def volts_and_amps(self) -> dict[str, str]:
        middle = self.chance.uniform(461, 468)
        volts = tuple(round(middle + self.chance.uniform(-1.2, 1.2)) for _ in range(3))
        average = amps(self.power, self.machine.power_factor, volts)
        faulty = self.at == SHORTING
        off = HIGH_LEG[self.turn] if faulty else self.chance.uniform(1.2, 2.4)
        found = {f"volts_{n}": f"{v}" for n, v in zip(("ab", "bc", "ca"), volts, strict=True)}
        first = self.chance.randrange(3)
        turns = ("", "_2", "_3") if faulty and self.turn >= 3 else ("",)
        for rolled, ending in enumerate(turns):
            # The high leg goes on with its lead.
            found |= legs(average, self.near(off, 3), (first + rolled) % 3, ending)
        return found

    def water(self) -> dict[str, str]:
        machine = self.machine
        if machine.well is None:
            return {"flow": f"{self.flow:.0f}"}
        inflow = self.near(0.28 * machine.flow, 20)
        rise, drop = 0.5, 1.5
        one_second = work("rise_rate", well_diameter=machine.well, rise_level=rise, rise_time=1.0)
        time = work(
            "drawdown_time",
            flow=self.flow, inflow=inflow, well_diameter=machine.well, drawdown_level=drop,
        )  # fmt: skip
        return {
            "well_diameter": f"{machine.well:g}",
            "drawdown_level": f"{drop}",
            "drawdown_time": f"{time:.0f}",
            "rise_level": f"{rise}",
            "rise_time": f"{one_second / inflow:.0f}",
        }

    def gauges(self) -> dict[str, str]:
        suction = round(self.chance.uniform(2, 5) * 2) / 2
        discharge = work(
            "discharge_gauge",
            head=self.head, suction_gauge=suction, discharge_gauge_height=2.5, suction_gauge_height=1.0,
        )  # fmt: skip
        return {
            "discharge_gauge": f"{discharge:.1f}",
            "discharge_gauge_height": "2.5",
            "suction_gauge": f"{suction:g}",
            "suction_gauge_height": "1",
        }

    def cost(self) -> dict[str, str]:
        # A pump that moves less water runs longer for the same.
        hours = self.near(self.machine.hours, 4) * self.machine.flow / self.flow
        return {
            "input_power": f"{self.power:.1f}",
            "run_time": f"{hours:.0f}",
            "energy_price": f"{PRICES[self.turn]}",
        }


def amps(kilowatts: float, power_factor: float, volts: tuple[float, ...]) -> float:
    """The average amps of so many kilowatts; one amp on each leg gives the scale."""
    kva = work("apparent_power", input_power=kilowatts, power_factor=power_factor)
    one = dict.fromkeys(("amps_a", "amps_b", "amps_c"), 1.0)
    on = dict(zip(("volts_ab", "volts_bc", "volts_ca"), volts, strict=True))
    return kva / work("apparent_power", **one, **on)


def legs(average: float, off: float, high: int, ending: str) -> dict[str, str]:
    """Three legs round their average: one is high by `off` percent, the others share it."""
    shares = [1 - 0.0055 * off, 1 - 0.0045 * off]
    shares.insert(high, 1 + off / 100)
    return {f"amps_{leg}{ending}": f"{average * share:.1f}" for leg, share in zip("abc", shares, strict=True)}  # fmt: skip


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
