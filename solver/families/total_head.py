"""Pipes and what they take, and the total dynamic head from its parts, to power and back."""

from ..family import Level
from .head_family import numeric
from .scenes_head import force_main, friction_heavy, station

__all__ = ["PIPES", "TOTAL"]

MAIN = (
    "{place} sends {flow} through {pipe_length} of pipe. Its inside diameter is "
    "{pipe_diameter}, its C {c_factor}."
)
WILLIAMS = "Use Hazen-Williams."

PIPES = (
    numeric(
        "velocity",
        "HY",
        "Velocity in a pipe",
        "velocity",
        force_main,
        Level(
            ("flow", "pipe_diameter"),
            "{place} sends {flow} through a pipe of {pipe_diameter} inside diameter. "
            "What is the velocity?",
        ),
        Level(
            ("daily_flow", "pipe_diameter"),
            "The pumps at {station} send {daily_flow} at all hours through a pipe of {pipe_diameter} inside "
            "diameter. What is the velocity?",
        ),
    ),
    numeric(
        "velocity_head",
        "HK",
        "Velocity head",
        "velocity_head",
        force_main,
        Level(
            ("velocity",),
            "The water in the main of {station} runs at {velocity}. What is its velocity head?",
        ),
        Level(
            ("flow", "pipe_diameter"),
            "{place} sends {flow} through a pipe of {pipe_diameter} inside diameter. "
            "What is the velocity head?",
        ),
    ),
    numeric(
        "friction_head",
        "HF",
        "Friction head in a pipe",
        "friction_head",
        force_main,
        Level(
            ("friction_rate", "pipe_length"),
            "A friction table gives {friction_rate} for the flow of {place}. Its main is "
            "{pipe_length} long. What is the friction head?",
        ),
        Level(
            ("flow", "pipe_length", "pipe_diameter", "c_factor"),
            f"{MAIN} {WILLIAMS} What is the friction head?",
        ),
        Level(
            ("daily_flow", "pipe_length", "pipe_diameter", "c_factor"),
            "The pumps at {station} send {daily_flow} at all hours through {pipe_length} of pipe. Its inside "
            f"diameter is {{pipe_diameter}}, its C {{c_factor}}. {WILLIAMS} "
            "What is the friction head?",
        ),
    ),
    numeric(
        "c_factor",
        "HC",
        "The C factor of a main",
        "c_factor",
        force_main,
        Level(
            ("flow", "pipe_diameter", "friction_rate"),
            "A test on the main of {place} finds {friction_rate} at {flow}. The inside diameter "
            f"is {{pipe_diameter}}. {WILLIAMS} What is its C factor?",
        ),
        Level(
            ("flow", "pipe_diameter", "pipe_length", "friction_head"),
            "A test finds {friction_head} of friction over {pipe_length} of the main of {place}. "
            "The flow is {flow}, the inside diameter {pipe_diameter}. "
            f"{WILLIAMS} What is its C factor?",
        ),
    ),
    numeric(
        "minor_loss",
        "HM",
        "What fittings take",
        "minor_loss",
        force_main,
        Level(
            ("loss_coefficient", "velocity_head"),
            "The fittings of {place} have K that add up to {loss_coefficient}. The velocity head "
            "is {velocity_head}. What are the minor losses?",
        ),
        Level(
            ("loss_coefficient", "velocity"),
            "The fittings of {place} have K that add up to {loss_coefficient}. The water runs at "
            "{velocity}. What are the minor losses?",
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
            "The pipe of {place} has {elbows} elbows with K {elbow_coefficient} each. Its check "
            "valve has K {check_valve_coefficient}, its gate valve {gate_valve_coefficient} and "
            "its outlet {outlet_coefficient}. The water runs at {velocity}. "
            "What are the minor losses?",
        ),
    ),
)

TOTAL = (
    numeric(
        "total_head",
        "HP",
        "Total dynamic head from its parts",
        "head",
        station,
        Level(
            ("static_head", "friction_head", "minor_loss"),
            "{place} lifts the water by {static_head}. The pipe takes {friction_head} and the "
            "fittings {minor_loss}. What is the total dynamic head?",
        ),
        Level(
            ("static_discharge_head", "suction_lift", "friction_head", "outlet_velocity"),
            "{place} stands {suction_lift} above the water it draws, and discharges "
            "{static_discharge_head} above itself. The pipe takes {friction_head}. The water "
            "leaves at {outlet_velocity}. What is the total dynamic head?",
        ),
        Level(
            ("static_head", "friction_head", "minor_loss", "delivery_pressure"),
            "{place} lifts the water by {static_head}. The pipe takes {friction_head} and the "
            "fittings {minor_loss}. At the end {delivery_pressure} must be left. "
            "What is the total dynamic head?",
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
            "The wet well of {station} stands at an elevation of {suction_elevation}, and the main "
            "ends at {discharge_elevation}. The pump sends {flow} through {pipe_length} of pipe. "
            f"Its inside diameter is {{pipe_diameter}}, its C {{c_factor}}. {WILLIAMS} "
            "What is the total dynamic head?",
        ),
    ),
    numeric(
        "power_for_head",
        "HW",
        "Brake power from the parts of the head",
        "brake_power",
        station,
        Level(
            ("flow", "static_head", "friction_head", "pump_efficiency"),
            "{place} moves {flow}. It lifts the water by {static_head}, and the pipe takes "
            "{friction_head}. The pump efficiency is {pump_efficiency}. What is the brake power?",
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
            f"{MAIN} The lift is {{static_head}}. The pump efficiency is "
            f"{{pump_efficiency}}. {WILLIAMS} What is the brake power?",
        ),
    ),
    numeric(
        "friction_from_power",
        "HB",
        "Friction head from the power, back again",
        "friction_head",
        friction_heavy,
        Level(
            ("head", "static_head"),
            "{place} works against {head} of total head and lifts the water by {static_head}. "
            "The rest is friction. How much is that?",
        ),
        Level(
            ("water_power", "flow", "static_head"),
            "{place} gives the water {water_power} while it moves {flow}. It lifts the water by "
            "{static_head}; the rest of the head is friction. How much is that?",
        ),
        Level(
            ("brake_power", "pump_efficiency", "flow", "static_head"),
            "The shaft of {place} carries {brake_power} at a pump efficiency of "
            "{pump_efficiency}. It moves {flow} and lifts the water by {static_head}. "
            "The rest of the head is friction. How much is that?",
        ),
    ),
)
