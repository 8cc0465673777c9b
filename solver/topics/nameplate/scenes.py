"""What the problems share: motors as their nameplate, their meter and the code's table have them.

Volts, amps, kVA, kW and rpm are the same in both systems; shaft power is in hp or kW, shares in
percent. Sizes and full-load amps come from the published tables. Service volts, power factors,
loads and slips are common practice, no source.
"""

from math import sqrt

from solver.engine.draw import Draw
from solver.topics.chapter import Chapter
from solver.topics.drawn.readings import by, in_horsepower, in_kilowatts, noted, three
from solver.topics.formulas import COST, NAMEPLATE, POWER
from solver.topics.tables import Motor, motors

from .formulas import full_load_amps
from .formulas_running import ROOT_THREE

__all__ = [
    "CHAPTER",
    "LEGS_READ",
    "LIVE",
    "READ",
    "nameplate",
    "off_volts",
    "on_a_drive",
    "running",
    "slipping",
    "speeds",
    "starting",
    "worked",
]

CHAPTER = Chapter("nameplate", (*POWER, *COST, *NAMEPLATE))
worked = by(CHAPTER.formulas)
LIVE = "Only a qualified person takes readings on live parts."
READ = "A qualified person reads {line_volts} line to line at {place} and {line_amps} on each leg."
LEGS_READ = (
    "A qualified person reads {line_volts} line to line at {place}. The three legs read "
    "{amps_a}, {amps_b} and {amps_c}."
)

# Nameplate volts, and what a meter shows between the lines of a service for them.
RATED = {
    "us": ((460, 466, 492), (460, 466, 492), (230, 234, 246), (208, 203, 213)),
    "si": ((400, 391, 411),),
}
OFF_VOLTS = {"us": ((428, 441), (480, 496)), "si": ((370, 383), (416, 428))}
LINE_FREQUENCY = {"us": 60.0, "si": 50.0}
SERVICE_FACTORS = (1.0, 1.15)
LEAST_AMPS, MOST_AMPS = 6, 230


def motor_on(draw: Draw, units: str) -> tuple[Motor, float, float, float]:
    """A motor, its nameplate volts, the volts of its service, and the table's full-load amps."""
    rated, low, high = draw.pick(RATED[units])
    fitting = [
        motor
        for motor in motors(units)
        if LEAST_AMPS <= full_load_amps(motor.size, rated, units) <= MOST_AMPS
    ]
    motor = draw.pick(fitting)
    amps = full_load_amps(motor.size, rated, units)
    return motor, rated, draw.step(low, high, 1), amps


def amps_of(kva: float, volts: float) -> float:
    """Line amps (A) of so many kVA at so many volts between lines."""
    return kva * 1000 / (ROOT_THREE.us.value * volts)


def running(draw: Draw, units: str) -> dict[str, float]:
    """A motor that carries part of its load, from the shaft back to the line."""
    motor, _, volts, _ = motor_on(draw, units)
    share = draw.between(0.55, 0.97)
    factor = round(draw.between(0.80, 0.87) - 0.42 * (1 - share) ** 1.5, 2)
    efficiency = round(motor.efficiency - draw.between(0, 3))
    shaft = noted(motor.size * share)
    kilowatts = in_kilowatts(shaft, units) / efficiency * 100
    kva = kilowatts / factor
    legs, average = three(draw, amps_of(kva, volts), draw.between(1.5, 4), (0.2, 0.5))
    return {
        "motor_size": motor.size,
        "brake_power": shaft,
        "motor_efficiency": float(efficiency),
        "input_power": noted(kilowatts),
        "apparent_power": noted(kva),
        "power_factor": factor,
        "line_volts": volts,
        "line_amps": average,
        **dict(zip(("amps_a", "amps_b", "amps_c"), legs, strict=True)),
        "service_factor": draw.pick((1.15, 1.25)),
        **corrected(draw, kilowatts, kva, factor),
    }


def corrected(draw: Draw, kilowatts: float, kva: float, factor: float) -> dict[str, float]:
    """The same kilowatts at a better power factor."""
    better = draw.pick([f for f in (0.9, 0.92, 0.95) if f > factor + 0.07])
    return {
        "corrected_power_factor": better,
        "corrected_apparent_power": noted(kilowatts / better),
        "reactive_power": noted(sqrt(kva**2 - kilowatts**2)),
    }


def off_volts(draw: Draw, units: str) -> dict[str, float]:
    """A motor on volts that are not those of its nameplate, and the amps it draws there."""
    rated = RATED[units][0][0]
    fitting = [m for m in motors(units) if LEAST_AMPS <= m.amps <= MOST_AMPS]
    nameplate_amps = noted(draw.pick(fitting).amps * draw.between(0.86, 0.97))
    volts = draw.step(*draw.pick(OFF_VOLTS[units]), 1)
    drawn = nameplate_amps * draw.between(0.55, 0.97) * rated / volts
    legs, average = three(draw, drawn, draw.between(1.5, 4), (0.2, 0.5))
    return {
        "full_load_amps": nameplate_amps,
        "rated_volts": float(rated),
        "line_volts": volts,
        "line_amps": average,
        **dict(zip(("amps_a", "amps_b", "amps_c"), legs, strict=True)),
    }


def speeds(draw: Draw, units: str) -> dict[str, float]:
    """The speeds of one motor: of its field, of its nameplate, and as it runs now."""
    frequency, poles = LINE_FREQUENCY[units], float(draw.pick((2, 4, 4, 6, 8)))
    field = 120 * frequency / poles
    rated = 5.0 * round(field * (1 - draw.between(0.012, 0.032)) / 5)
    slip = round((field - rated) * draw.between(0.35, 0.92))
    return {
        "frequency": frequency,
        "poles": poles,
        "synchronous_speed": field,
        "rated_speed": rated,
        "running_speed": field - slip,
        "slip_speed": float(slip),
        "slip": round(100 * (field - rated) / field, 1),
    }


def slipping(draw: Draw, units: str) -> dict[str, float]:
    """A small motor at full load: it slips enough to tell its speed from the field's."""
    values = speeds(draw, units)
    field = values["synchronous_speed"]
    speed = 5.0 * round(field * (1 - draw.between(0.035, 0.055)) / 5)
    return values | {"running_speed": speed, "slip_speed": field - speed}


def on_a_drive(draw: Draw, units: str) -> dict[str, float]:
    """A motor that a drive slows, with the slip of a steady load."""
    line, poles = LINE_FREQUENCY[units], float(draw.pick((2, 4, 4, 6)))
    frequency = draw.step(line * 0.6, line * 0.97, 0.5)
    field = 120 * frequency / poles
    slip = round(draw.between(0.015, 0.04) * 120 * line / poles)
    return {
        "frequency": frequency,
        "poles": poles,
        "synchronous_speed": field,
        "slip_speed": float(slip),
    }


def nameplate(draw: Draw, units: str) -> dict[str, float]:
    """A nameplate beside the code's table; makers' motors draw a little less than the table has."""
    motor, rated, _, amps = motor_on(draw, units)
    factor = draw.pick(SERVICE_FACTORS)
    return {
        "motor_size": motor.size,
        "rated_volts": float(rated),
        "table_amps": amps,
        "full_load_amps": noted(amps * draw.between(0.85, 0.96)),
        "service_factor": factor,
        "overload_percent": 125.0 if factor > 1 else 115.0,
        "rated_rise": draw.pick((35.0, 40.0, 40.0, 55.0, 60.0, 80.0, 90.0, 105.0)),
    }


def starting(draw: Draw, units: str) -> dict[str, float]:
    """A motor whose rotor stands still on full volts."""
    motor, rated, _, _ = motor_on(draw, units)
    horsepower = in_horsepower(motor.size, units)
    per_horsepower = round(draw.between(4.6, 8.9), 2)
    kva = noted(per_horsepower * horsepower)
    return {
        "motor_size": motor.size,
        "rated_volts": float(rated),
        "starting_kva_per_hp": per_horsepower,
        "starting_kva": kva,
        "locked_rotor_amps": noted(amps_of(per_horsepower * horsepower, rated)),
    }
