"""Every quantity once: name, label, symbol, unit in each system, plausible range, hard limit.

The plausible range is what an ordinary pump, motor, bill or reading shows (common practice, no
source). A problem drawn outside it is drawn again; a reader's own value outside it is remarked
on. The hard limits are what nature or arithmetic allow: beyond them a reading is wrong.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from types import MappingProxyType

from .errors import BadDefinition

__all__ = ["QUANTITIES", "Quantity", "quantity_named"]

Range = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Quantity:
    """One named quantity. `us` and `si` are unit names of units.py; ranges are in those units."""

    name: str
    label: str
    symbol: str
    us: str
    si: str
    us_range: Range
    si_range: Range
    least: float = 0.0
    most: float = float("inf")

    def unit(self, units: str) -> str:
        """Its unit in the system "us" or "si"."""
        return self.us if units == "us" else self.si

    def usual(self, units: str) -> Range:
        """Its plausible range in the system "us" or "si"."""
        return self.us_range if units == "us" else self.si_range

    @property
    def is_efficiency(self) -> bool:
        """Whether a bare decimal such as .82 can only mean 82 %."""
        return self.us == "%" and self.us_range[0] > 1


def _same(name: str, label: str, symbol: str, unit: str, usual: Range, **limits) -> Quantity:
    return Quantity(name, label, symbol, unit, unit, usual, usual, **limits)


def _percent(name: str, label: str, symbol: str, usual: Range, most: float = 100.0) -> Quantity:
    return _same(name, label, symbol, "%", usual, most=most)


def _rolled(turn: int, when: str) -> Iterator[Quantity]:
    """The amps of the same three legs after the motor leads are rolled."""
    for leg in "ABC":
        yield _same(
            f"amps_{leg.lower()}_{turn}", f"leg {leg}, {when}", f"I_{{{leg}{turn}}}", *_AMPS
        )
    yield _same(f"amps_average_{turn}", f"average, {when}", rf"\bar I_{turn}", *_AMPS)
    away, share = f"largest deviation, {when}", f"current unbalance, {when}"
    yield _same(f"amps_deviation_{turn}", away, rf"\Delta I_{turn}", "A", (0.01, 60))
    yield _percent(f"current_unbalance_{turn}", share, f"u_{{I{turn}}}", (0.05, 40))


_POWERS = ("hp", "kW", (0.05, 400), (0.04, 300))
_AMPS = ("A", (1, 300))
_VOLTS = ("V", (180, 620))

_ALL = (
    # What the pump does
    Quantity("flow", "flow", "Q", "gpm", "L/s", (10, 12000), (0.5, 800)),
    Quantity("daily_flow", "daily flow", "Q_d", "MGD", "m3/day", (0.01, 18), (40, 70000)),
    Quantity("head", "head", "H", "ft", "m", (5, 500), (1.5, 150)),
    Quantity("pressure", "pressure rise", "p", "psi", "kPa", (2, 220), (14, 1500)),
    # The three horsepowers, and the meter
    Quantity("water_power", "water power", r"P_\mathrm{w}", *_POWERS),
    Quantity("brake_power", "brake power", r"P_\mathrm{b}", *_POWERS),
    Quantity("motor_output", "motor output", r"P_\mathrm{out}", *_POWERS),
    Quantity("motor_power", "motor power", r"P_\mathrm{m}", *_POWERS),
    _same("input_power", "input power", r"P_\mathrm{in}", "kW", (0.04, 320)),
    Quantity("motor_size", "motor size", r"P_\mathrm{n}", "hp", "kW", (0.5, 400), (0.37, 315)),
    _percent("motor_load", "motor load", r"\ell", (20, 115), most=200.0),
    # Efficiencies
    _percent("pump_efficiency", "pump efficiency", r"\eta_\mathrm{p}", (45, 85)),
    _percent("motor_efficiency", "motor efficiency", r"\eta_\mathrm{m}", (70, 97)),
    _percent("drive_efficiency", "drive efficiency", r"\eta_\mathrm{d}", (65, 99)),
    _percent("overall_efficiency", "wire-to-water efficiency", r"\eta_\mathrm{o}", (28, 82)),
    # Hours, kilowatt-hours and money
    _same("run_time", "run time", "t", "h", (0.25, 8784)),
    _same("hours_per_day", "hours a day", r"t_\mathrm{d}", "h/day", (0.25, 24), most=24),
    _same("days", "days", "n", "day", (1, 366)),
    _same("energy", "energy", "E", "kWh", (0.1, 3_000_000)),
    _same("energy_price", "energy price", "c", "$/kWh", (0.03, 0.60)),
    _same("energy_cost", "energy cost", "C", "$", (0.01, 900_000)),
    Quantity("volume_pumped", "volume pumped", "V", "MG", "ML", (0.001, 6000), (0.004, 20000)),
    Quantity(
        "energy_per_volume",
        "energy per volume",
        "e",
        "kWh/MG",
        "kWh/1000 m3",
        (20, 6000),
        (5, 1600),
    ),
    Quantity(
        "cost_per_volume", "cost per volume", r"C_V", "$/MG", "$/1000 m3", (1, 1500), (0.2, 500)
    ),
    # Two machines compared
    _percent("new_pump_efficiency", "new pump efficiency", r"\eta_\mathrm{p}'", (45, 85)),
    _percent("new_motor_efficiency", "new motor efficiency", r"\eta_\mathrm{m}'", (70, 97)),
    Quantity("new_brake_power", "brake power with the new pump", r"P_\mathrm{b}'", *_POWERS),
    Quantity("new_motor_power", "motor power with the new machine", r"P_\mathrm{m}'", *_POWERS),
    _same(
        "new_input_power", "input power with the new machine", r"P_\mathrm{in}'", "kW", (0.04, 320)
    ),
    _same("saved_power", "power saved", r"\Delta P", "kW", (0.02, 150)),
    _same("yearly_hours", "hours a year", r"t_\mathrm{y}", "h/year", (50, 8784), most=8784),
    _same("saved_energy", "energy saved in a year", r"\Delta E", "kWh/year", (5, 900_000)),
    _same("yearly_saving", "saving in a year", "S", "$/year", (1, 200_000)),
    _same("installed_cost", "installed cost", "K", "$", (100, 500_000)),
    _same("simple_payback", "simple payback", r"t_\mathrm{pb}", "year", (0.1, 40)),
    # Bills
    _same("peak_demand", "peak demand", r"P_\mathrm{pk}", "kW", (1, 2000)),
    _same("demand_price", "demand price", r"c_\mathrm{d}", "$/kW", (1, 40)),
    _same("demand_charge", "demand charge", r"C_\mathrm{d}", "$", (1, 80_000)),
    _same("fixed_charge", "fixed charge", r"C_\mathrm{f}", "$", (5, 2000)),
    _same("bill", "bill", "B", "$", (5, 900_000)),
    _same("average_price", "average price", r"\bar c", "$/kWh", (0.03, 1.50)),
    _same("on_peak_hours", "on-peak hours", r"t_\mathrm{on}", "h", (0.5, 4400)),
    _same("off_peak_hours", "off-peak hours", r"t_\mathrm{off}", "h", (0.5, 8000)),
    _same("on_peak_energy", "on-peak energy", r"E_\mathrm{on}", "kWh", (1, 1_000_000)),
    _same("off_peak_energy", "off-peak energy", r"E_\mathrm{off}", "kWh", (1, 2_000_000)),
    _same("on_peak_price", "on-peak price", r"c_\mathrm{on}", "$/kWh", (0.08, 0.60)),
    _same("off_peak_price", "off-peak price", r"c_\mathrm{off}", "$/kWh", (0.03, 0.30)),
    _same("on_peak_cost", "on-peak cost", r"C_\mathrm{on}", "$", (0.1, 500_000)),
    _same("off_peak_cost", "off-peak cost", r"C_\mathrm{off}", "$", (0.1, 500_000)),
    _same("time_of_use_bill", "time-of-use bill", r"B_\mathrm{tou}", "$", (0.2, 900_000)),
    _same("hours_moved", "hours moved off peak", r"t_\mathrm{mv}", "h", (0.5, 4400)),
    _same("energy_moved", "energy moved off peak", r"E_\mathrm{mv}", "kWh", (1, 1_000_000)),
    _same("price_gap", "price gap", r"\Delta c", "$/kWh", (0.01, 0.5)),
    _same("shift_saving", "saving from the move", r"S_\mathrm{mv}", "$", (0.1, 400_000)),
    # Phase balance
    *(_same(f"amps_{x}", f"amps on leg {x.upper()}", f"I_{x.upper()}", *_AMPS) for x in "abc"),
    _same("amps_average", "average amps", r"\bar I", *_AMPS),
    _same("amps_deviation", "largest deviation in amps", r"\Delta I", "A", (0.01, 60)),
    _same("amps_range", "range of amps", "R_I", "A", (0.01, 90)),
    _same("amps_highest", "highest leg", r"I_\mathrm{hi}", *_AMPS),
    _percent("current_unbalance", "current unbalance", r"u_I", (0.05, 40)),
    _percent("current_spread", "current spread", r"s_I", (0.1, 60)),
    *(
        _same(
            f"volts_{x}", f"volts {x[0].upper()} to {x[1].upper()}", f"U_{{{x.upper()}}}", *_VOLTS
        )
        for x in ("ab", "bc", "ca")
    ),
    _same("volts_average", "average volts", r"\bar U", *_VOLTS),
    _same("volts_deviation", "largest deviation in volts", r"\Delta U", "V", (0.1, 40)),
    _percent("voltage_unbalance", "voltage unbalance", r"u_U", (0.1, 8)),
    _percent("derating", "derating", r"k_\mathrm{d}", (74, 100)),
    Quantity("derated_power", "derated power", r"P_\mathrm{d}", "hp", "kW", (0.3, 400), (0.2, 315)),
    _same("full_load_amps", "nameplate full-load amps", r"I_\mathrm{fl}", "A", (1, 600)),
    _same("service_factor", "service factor", "k_s", "", (1.0, 1.5), least=1.0, most=2.0),
    _same("service_factor_amps", "service-factor amps", r"I_\mathrm{sf}", "A", (1, 800)),
    _percent("load_amps", "share of full-load amps", r"i", (20, 140), most=1000.0),
    _same("balanced_rise", "temperature rise, balanced", r"\Delta T", "°C rise", (30, 130)),
    _percent("extra_rise", "extra temperature rise", r"x_T", (0.1, 130), most=1000.0),
    _same("added_rise", "degrees added", r"\Delta T_+", "°C rise", (0.05, 100)),
    _same("unbalanced_rise", "temperature rise, unbalanced", r"\Delta T_u", "°C rise", (30, 230)),
    *_rolled(2, "rolled once"),
    *_rolled(3, "rolled twice"),
)

QUANTITIES = MappingProxyType({q.name: q for q in _ALL})


def quantity_named(name: str) -> Quantity:
    """The quantity called `name`.

    >>> quantity_named("brake_power").unit("si")
    'kW'
    """
    try:
        return QUANTITIES[name]
    except KeyError:
        raise BadDefinition(
            f"no quantity is called {name!r}: add it to solver/vocabulary.py, "
            "or use one of the names there"
        ) from None
