"""What can be done at a station: what each act reads, how long it takes, and what it needs first.

Minutes are those of a practiced person with the tools at hand (common practice, no source).
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from solver.station.station import Station

__all__ = ["ACTS", "CHECK", "PULL_MINUTES", "Act", "acts_at"]

PULL_MINUTES = 40  # to hoist a submersible pump up its rails, once
CHECK = "check_instruments"  # the act that tells which instrument reads off


@dataclass(frozen=True, slots=True)
class Act:
    """One thing to do: its name in code, its label, minutes, the signals it reads.

    `needs`: "running" with the panel closed, "live" behind its door, or "dead", locked out and proved.
    `permit`: it is done inside a permit space. `pull`: a submersible pump has to come up for it.
    `only`: "submerged" or "dry", where it can be done at one kind of pump alone. `how`: a line of advice.
    """

    name: str
    label: str
    minutes: int
    signals: tuple[str, ...]
    needs: str
    how: str
    permit: bool = False
    pull: bool = False
    only: str = ""


ACTS: Mapping[str, Act] = MappingProxyType(
    {
        act.name: act
        for act in (
            Act("gauges", "pressure gauges", 2, ("discharge_gauge", "suction_gauge"), "running",
                "Read them with the pump running steadily."),
            Act("listen", "listen and feel", 2, ("sound",), "running",
                "Listen at the pump or its riser, and put a hand on the pipe."),
            Act("arm", "check-valve arm", 3, ("arm", "arm_at_rest"), "running",
                "Watch it while the pump runs, and again as it stops."),
            Act("elbow", "look down at the elbow", 3, ("seat",), "running",
                "From outside the rim, with a light. Guard the open hatch.", only="submerged"),
            Act("vibration", "vibration", 4, ("vibration",), "running",
                "Put the meter on the bearing housing or the riser."),
            Act("valve", "valve position", 4, ("valve_turns",), "running",
                "Work it from outside with the key or the handwheel."),
            Act("drawdown", "drawdown test", 15, ("drawdown_time",), "running",
                "Time the water as it goes down, with a tape or a sounder from outside."),
            Act("refill", "refill, pumps off", 10, ("rise_time",), "running",
                "Time the water as it rises, with both pumps off."),
            Act("levels", "start and stop levels", 20, ("on_level", "off_level"), "running",
                "Watch one whole cycle and read the level at each end."),
            Act("main", "walk the force main", 30, ("along_the_main",), "running",
                "Look for wet ground and listen along the whole route."),
            Act("amps", "amps by leg", 3, ("amps_a", "amps_b", "amps_c", "current_unbalance"), "live",
                "One clamp, all three legs, the pump running steadily."),
            Act("volts", "volts by pair", 3, ("volts_ab", "volts_bc", "volts_ca", "voltage_unbalance"),
                "live", "Line to line at the motor's side, the pump running."),
            Act("power", "kilowatts and power factor", 5, ("input_power", "power_factor"), "live",
                "A three-phase power meter, the pump running."),
            Act("heat", "heat at lugs and bearing", 4, ("lug_rise", "bearing_temperature"), "live",
                "An infrared look at the lugs, and the bearing's sensor."),
            Act("rotation", "phase rotation", 4, ("rotation",), "live",
                "A phase-rotation meter at the panel."),
            Act("overload", "overload setting", 2, ("overload_setting",), "live",
                "Read the dial and compare it with the nameplate."),
            Act("insulation", "insulation, 1 and 10 min", 20, ("insulation_1min", "polarization_index"),
                "dead", "Each lead to ground. Discharge the winding afterward."),
            Act("ohms", "ohms by pair", 6, ("ohms_12", "ohms_23", "ohms_31", "resistance_unbalance"),
                "dead", "A low-resistance ohmmeter at the motor leads."),
            Act("shaft", "turn the shaft", 5, ("shaft",), "dead", "By hand, all the way around.", pull=True),
            Act("impeller", "look at the impeller", 25, ("rags", "vane_wear", "ring_clearance"), "dead",
                "Vanes, passages, and the ring clearance with a feeler gauge.", pull=True),
            Act("oil", "oil chamber", 12, ("water_in_oil",), "dead", "Take a sample from the bottom.",
                pull=True),
            Act("check_valve", "open the check valve", 35, ("check_inside",), "dead",
                "Isolate it, drain it, lift the cover.", permit=True),
            Act("strainer", "open the suction strainer", 30, ("strainer",), "dead",
                "Close and lock the suction valve, drain it, lift the basket.", only="dry"),
            Act(CHECK, "check the instruments", 12, (), "live",
                "Compare each with a second one, and the gauge with a known level."),
        )
    }
)  # fmt: skip


def acts_at(station: Station, level: int) -> tuple[Act, ...]:
    """The acts that this station and level have."""
    here = "submerged" if station.kind.submerged else "dry"
    return tuple(
        act for act in ACTS.values() if act.only in ("", here) and (act.name != CHECK or level == 3)
    )
