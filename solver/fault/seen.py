"""What is seen, heard and felt at a station, in words that stand for a state of the model.

Where one ends and the next begins is common practice, no source.
"""

from solver.station.station import Station

__all__ = [
    "SMOOTH",
    "along_the_main",
    "arm",
    "arm_at_rest",
    "check_inside",
    "rotation",
    "seat",
    "shaft",
    "sound",
    "strainer",
    "valve_turns",
]

SMOOTH = "smooth and steady"
HUMS = 3.0  # % of voltage unbalance, from which a motor can be heard (common practice, no source)


def arm(station: Station) -> str:
    """The check valve's arm while the pump runs."""
    share = station.running.pumped / station.rated[0]
    if share >= 0.75:
        return "lifts most of the way"
    return "lifts part of the way" if share >= 0.35 else "barely lifts"


def arm_at_rest(station: Station) -> str:
    """The same when the pump stops."""
    return "stays a little open" if station.main.passing else "drops shut"


def sound(station: Station) -> str:
    """What is heard and felt at the pump and its riser."""
    pump = station.pump
    if station.supply.open_leg or station.reading("voltage_unbalance") > HUMS:
        return "a loud electrical hum"
    if pump.air > 0.1:
        return "surging and gurgling"
    if pump.backward:
        return "a rough rumble"
    if pump.clog > 0.08:
        return "thumping"
    if station.then and station.condition.vibration > 1.8 * station.then.condition.vibration:
        return "a grinding growl"
    if (
        station.suction
        and station.suction.blocked
        and station.reading("npsh_available") < 1.3 * (station.reading("npsh_required"))
    ):
        return "crackling, like gravel"
    return SMOOTH


def shaft(station: Station) -> str:
    """The shaft turned by hand."""
    if station.pump.clog > 0.08:
        return "something in the impeller holds it back"
    if station.motor.drag:
        return "turns, but rough and noisy"
    return "turns free"


def seat(station: Station) -> str:
    """Looking down from the rim with a light while the pump runs."""
    return (
        "water boils up at the discharge elbow" if station.main.seat else "still water at the elbow"
    )


def valve_turns(station: Station) -> str:
    """The discharge valve's position."""
    return "not all the way open" if station.main.closed else "all the way open"


def check_inside(station: Station) -> str:
    """The check valve opened."""
    return "its seat is worn and doesn't seal" if station.main.passing else "clean, seals well"


def along_the_main(station: Station) -> str:
    """The route of the main, walked."""
    return "wet, soft ground and water running" if station.main.broken < 1 else "dry all the way"


def rotation(station: Station) -> str:
    """The order of phases at the panel."""
    return "right order" if station.supply.rotation > 0 else "reversed"


def strainer(station: Station) -> str:
    """The suction strainer, opened."""
    clogged = station.suction is not None and station.suction.blocked
    return "matted with debris" if clogged else "clean"
