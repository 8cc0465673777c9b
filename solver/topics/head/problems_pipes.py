"""Losses in pipes, and the total dynamic head from its parts, to power and back."""

from solver.engine.family import Level

from .problems_judged import PARTS
from .scenes import CHAPTER, force_main, friction_heavy, station

__all__ = ["PIPES", "TDH", "TOTAL"]

PIPE = (
    "through {pipe_length} of pipe. The inside diameter is {pipe_diameter}, and the C factor is "
    "{c_factor}."
)
MAIN = f"{{place}} pumps {{flow}} {PIPE}"
TDH = "What is the total dynamic head (TDH)?"

PIPES = (
    CHAPTER.numeric(
        "velocity",
        "HY",
        "Velocity in a pipe",
        "velocity",
        force_main,
        Level(
            ("flow", "pipe_diameter"),
            "{place} pumps {flow} through a pipe with an inside diameter of {pipe_diameter}. "
            "What is the velocity in the pipe?",
        ),
        Level(
            ("daily_flow", "pipe_diameter"),
            "The pumps at {station} send a steady {daily_flow} through a pipe with an inside diameter "
            "of {pipe_diameter}. What is the velocity in the pipe?",
        ),
    ),
    CHAPTER.numeric(
        "velocity_head",
        "HK",
        "Velocity head",
        "velocity_head",
        force_main,
        Level(
            ("velocity",),
            "Water moves through the force main of {station} at {velocity}. "
            "What is the velocity head?",
        ),
        Level(
            ("flow", "pipe_diameter"),
            "{place} pumps {flow} through a pipe with an inside diameter of {pipe_diameter}. "
            "What is the velocity head?",
        ),
    ),
    CHAPTER.numeric(
        "friction_head",
        "HF",
        "Friction loss in a pipe",
        "friction_head",
        force_main,
        Level(
            ("friction_rate", "pipe_length"),
            "For the flow of {place}, the friction table gives a loss of {friction_rate}. The force "
            "main is {pipe_length} long. What is the friction loss?",
        ),
        Level(
            ("flow", "pipe_length", "pipe_diameter", "c_factor"),
            f"{MAIN} Using Hazen-Williams, what is the friction loss?",
        ),
        Level(
            ("daily_flow", "pipe_length", "pipe_diameter", "c_factor"),
            f"The pumps at {{station}} send a steady {{daily_flow}} {PIPE} "
            "Using Hazen-Williams, what is the friction loss?",
        ),
    ),
    CHAPTER.numeric(
        "c_factor",
        "HC",
        "The C factor of a force main",
        "c_factor",
        force_main,
        Level(
            ("flow", "pipe_diameter", "friction_rate"),
            "A test on the force main of {place} finds a friction loss of {friction_rate} at {flow}. "
            "The inside diameter is {pipe_diameter}. Using Hazen-Williams, what is the C factor?",
        ),
        Level(
            ("flow", "pipe_diameter", "pipe_length", "friction_head"),
            "A test on the force main of {place} finds {friction_head} of friction loss over "
            "{pipe_length} of pipe. The flow is {flow}, and the inside diameter is {pipe_diameter}. "
            "Using Hazen-Williams, what is the C factor?",
        ),
    ),
    CHAPTER.numeric(
        "minor_loss",
        "HM",
        "Minor losses in fittings and valves",
        "minor_loss",
        force_main,
        Level(
            ("loss_coefficient", "velocity_head"),
            "The K values of the fittings and valves on {place} add up to {loss_coefficient}. "
            "The velocity head is {velocity_head}. What are the minor losses?",
        ),
        Level(
            ("loss_coefficient", "velocity"),
            "The K values of the fittings and valves on {place} add up to {loss_coefficient}. "
            "The water moves at {velocity}. What are the minor losses?",
        ),
        Level(
            (
                "elbows",
                "elbow_coefficient",
                "check_valve_coefficient",
                "gate_valve_coefficient",
                "outlet_coefficient",
                "velocity",
            ),
            "The pipe of {place} has {elbows} elbows with a K of {elbow_coefficient} each. The check "
            "valve has a K of {check_valve_coefficient}, the gate valve {gate_valve_coefficient} "
            "and the pipe outlet {outlet_coefficient}. The water moves at {velocity}. "
            "What are the minor losses?",
        ),
    ),
)

TOTAL = (
    CHAPTER.numeric(
        "total_head",
        "HP",
        "Total dynamic head from its parts",
        "head",
        station,
        Level(
            ("static_head", "friction_head", "minor_loss"),
            f"{PARTS} {TDH}",
        ),
        Level(
            ("static_discharge_head", "suction_lift", "friction_head", "outlet_velocity"),
            "{place} is {suction_lift} above the water in the wet well and discharges "
            "{static_discharge_head} above itself. Friction loss is {friction_head}. The water "
            "leaves the pipe at {outlet_velocity}. What is the total dynamic head (TDH), with the "
            "velocity head at the outlet?",
        ),
        Level(
            ("static_head", "friction_head", "minor_loss", "delivery_pressure"),
            f"{PARTS} The pressure at the end of the pipe must be {{delivery_pressure}}. {TDH}",
        ),
        Level(
            (
                "discharge_elevation",
                "suction_elevation",
                "flow",
                "pipe_length",
                "pipe_diameter",
                "c_factor",
            ),
            "At {station}, the water in the wet well is at elevation {suction_elevation}. The force main "
            f"discharges at elevation {{discharge_elevation}}. The pump sends {{flow}} {PIPE} "
            "Using Hazen-Williams, what is the total dynamic head (TDH)?",
        ),
    ),
    CHAPTER.numeric(
        "power_for_head",
        "HW",
        "From static head and friction loss to power",
        "brake_power",
        station,
        Level(
            ("flow", "static_head", "friction_head", "pump_efficiency"),
            "{place} pumps {flow} against a static head of {static_head} and a friction loss of "
            "{friction_head}. The pump efficiency is {pump_efficiency}. "
            "What is the {brake_power:full}?",
        ),
        Level(
            (
                "flow",
                "static_head",
                "pipe_length",
                "pipe_diameter",
                "c_factor",
                "pump_efficiency",
            ),
            f"{MAIN} The static head is {{static_head}}, and the pump efficiency is "
            "{pump_efficiency}. Using Hazen-Williams, what is the {brake_power:full}?",
        ),
    ),
    CHAPTER.numeric(
        "friction_from_power",
        "HB",
        "From power back to friction loss",
        "friction_head",
        friction_heavy,
        Level(
            ("head", "static_head"),
            "{place} works against a total dynamic head (TDH) of {head}. The static head is "
            "{static_head}, and the rest is friction loss. How much is the friction loss?",
        ),
        Level(
            ("water_power", "flow", "static_head"),
            "{place} puts {water_power} into the water at {flow}. The static head is {static_head}, "
            "and the rest of the head is friction loss. How much is the friction loss?",
        ),
        Level(
            ("brake_power", "pump_efficiency", "flow", "static_head"),
            "{place} takes {brake_power} at the shaft, and its pump efficiency is {pump_efficiency}. "
            "It pumps {flow} against a static head of {static_head}. The rest of the head is "
            "friction loss. How much is the friction loss?",
        ),
    ),
)
