"""Drives, belts and bearings: sheaves, torque, alignment, grease, wear rings, vibration, and questions.

`DRIVES` has the whole chapter, in the order of teaching.
"""

from solver.engine.family import Level
from solver.topics.questions import in_words
from solver.topics.scenes import ANY, BELTED, DRY

from .judgments import VIBRATION
from .small import (
    ALIGNED,
    CHAPTER,
    GREASED,
    RINGS,
    SHEAVES,
    SHEAVES_EXACT,
    SHEAVES_SLIPPING,
)

__all__ = ["DRIVES"]

ON_BELTS = "{place} is belt driven. The motor turns at {running_speed} and has a sheave of {motor_sheave}. "
BELTS = (
    CHAPTER.numeric(
        "driven_speed",
        "KS",
        "Pump speed from the sheaves",
        "pump_speed",
        SHEAVES,
        Level(
            ("running_speed", "motor_sheave", "pump_sheave"),
            f"{ON_BELTS}The pump's sheave is {{pump_sheave}}. How fast does the pump turn?",
        ),
        Level(
            ("running_speed", "motor_sheave", "pump_sheave", "belt_slip"),
            f"{ON_BELTS}The pump's sheave is {{pump_sheave}}. The belts are worn and slip by "
            "{belt_slip}. How fast does the pump turn?",
            scene=SHEAVES_SLIPPING,
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "sheave_needed",
        "KD",
        "The sheave that gives a speed",
        "pump_sheave",
        SHEAVES_EXACT,
        Level(
            ("running_speed", "motor_sheave", "pump_speed"),
            f"{ON_BELTS}The pump should turn at {{pump_speed}}. What diameter does its sheave need?",
        ),
        Level(
            ("motor_sheave", "pump_speed", "new_speed"),
            "{place} is belt driven and turns at {pump_speed} with a motor sheave of {motor_sheave}. It "
            "should turn at {new_speed}, and the pump's sheave stays. What diameter does the motor's new "
            "sheave need?",
            scene=SHEAVES,
            asked="new_motor_sheave",
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "belt_speed",
        "KV",
        "Belt speed",
        "belt_speed",
        SHEAVES,
        Level(
            ("running_speed", "motor_sheave"),
            f"{ON_BELTS}How fast do the belts run, in {{unit}}?",
        ),
        Level(
            ("motor_sheave", "pump_sheave", "pump_speed"),
            "{place} is belt driven. The motor has a sheave of {motor_sheave}, and the pump has one of "
            "{pump_sheave}. A tachometer at the pump shows {pump_speed}. How fast do the belts run, in "
            "{unit}?",
        ),
        since=2,
    ),
)
TORQUE = (
    CHAPTER.numeric(
        "shaft_torque",
        "KQ",
        "Torque from power and speed",
        "shaft_torque",
        ANY,
        Level(
            ("brake_power", "pump_speed"),
            "The shaft of {place} carries {brake_power} at {pump_speed}. What is the torque on the "
            "shaft, in {unit}?",
        ),
        Level(
            ("motor_size", "rated_speed"),
            "The motor of {place} has {motor_size} and {rated_speed} on its nameplate. What is its "
            "full-load torque, in {unit}?",
            asked="rated_torque",
        ),
        Level(
            ("motor_output", "drive_efficiency", "pump_speed"),
            "The motor of {place} delivers {motor_output} to its belts. The belts pass on "
            "{drive_efficiency} of it, and the pump turns at {pump_speed}. What is the torque on the "
            "pump shaft, in {unit}?",
            scene=BELTED,
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "power_from_torque",
        "KP",
        "Power from torque and speed",
        "brake_power",
        ANY,
        Level(
            ("shaft_torque", "pump_speed"),
            "{place} takes a torque of {shaft_torque} at {pump_speed}. What is the {brake_power:full}?",
        ),
        Level(
            ("shaft_torque", "pump_speed", "drive_efficiency"),
            "{place} takes a torque of {shaft_torque} at {pump_speed}. The belts between motor and pump "
            "have an efficiency of {drive_efficiency}. How much power does the motor have to deliver?",
            scene=BELTED,
            asked="motor_output",
        ),
        since=2,
    ),
)
RULE = (
    "The rule is 0.114 times diameter times width in inches, for ounces. For grams, it's 0.005 times "
    "diameter times width in millimeters. "
)
MECHANIC = (
    CHAPTER.numeric(
        "alignment_shims",
        "KO",
        "Coupling offset, and shims for an angle",
        "parallel_offset",
        ALIGNED,
        Level(
            ("rim_reading",),
            "{person} has locked out {place} and put a dial indicator on the rim of the coupling. Both "
            "shafts are turned together by hand. From top to bottom it moves by {rim_reading}, with bar sag taken "
            "out. How much higher is one shaft than the other?",
        ),
        Level(
            ("wide_gap", "narrow_gap", "coupling_diameter", "foot_spacing"),
            "{place} is locked out. Its coupling is {coupling_diameter} across. The gap between its halves "
            "is {wide_gap} at the top and {narrow_gap} at the bottom. The motor's front and "
            "back feet are {foot_spacing} apart. How thick a shim under the back feet squares the coupling?",
            asked="shim_thickness",
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "grease_amount",
        "KG",
        "How much grease a bearing takes",
        "grease_amount",
        GREASED,
        Level(
            ("bearing_diameter", "bearing_width"),
            "A bearing of {place} is {bearing_diameter} across outside and {bearing_width} wide. "
            f"{RULE}How much grease does it take, in {{unit}}?",
        ),
        Level(
            ("bearing_diameter", "bearing_width", "grease_per_stroke"),
            "A bearing of {place} is {bearing_diameter} across outside and {bearing_width} wide. "
            f"{RULE}One stroke of the grease gun gives {{grease_per_stroke}}. How many strokes does it "
            "take?",
            asked="grease_strokes",
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "days_to_grease",
        "KU",
        "Greasing by run hours",
        "days_to_grease",
        GREASED,
        Level(
            ("grease_interval", "hours_per_day"),
            "The manual for {place} calls for grease every {grease_interval} of running. The pump runs "
            "{hours_per_day}. How many days is that?",
        ),
        Level(
            ("grease_interval", "hour_meter_greased", "hour_meter", "hours_per_day"),
            "{place} is greased every {grease_interval} of running. At the last greasing its hour meter "
            "showed {hour_meter_greased}, and today it shows {hour_meter}. The pump runs {hours_per_day}. "
            "In how many days is it due again?",
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "ring_wear",
        "KR",
        "Wear-ring clearance",
        "ring_gap",
        RINGS,
        Level(
            ("case_ring_bore", "impeller_ring_diameter"),
            "{place} is open for repair. Its case wear ring is {case_ring_bore} inside, and the "
            "impeller's ring is {impeller_ring_diameter} outside. What is the clearance on the diameter?",
        ),
        Level(
            ("case_ring_bore", "impeller_ring_diameter", "new_ring_gap"),
            "{place} is open for repair. Its case wear ring is {case_ring_bore} inside, and the "
            "impeller's ring is {impeller_ring_diameter} outside. New, the clearance was {new_ring_gap}. "
            "What percent of the new clearance is it today?",
            asked="ring_wear",
        ),
        since=2,
    ),
)
IN_WORDS = (
    in_words(
        CHAPTER, "belt_drives", "KB", "Belts: matched sets, tension and guards", since=2, scene=DRY
    ),
    in_words(CHAPTER, "couplings", "KC", "Couplings, alignment and soft foot", since=2, scene=DRY),
    in_words(
        CHAPTER,
        "packing_rings",
        "KK",
        "Packing, mechanical seals and wear rings",
        since=2,
        scene=DRY,
    ),
)

DRIVES = (*BELTS, *TORQUE, *MECHANIC, VIBRATION, *IN_WORDS)
