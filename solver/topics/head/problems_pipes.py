"""Head in pipes: velocity, friction, minor losses, the C factor."""

from solver.engine.family import Level

from .stations import CHAPTER, FULL_BORE, MAIN, PIPE, TESTED_MAIN, WELL

__all__ = ["PIPES"]

PIPES = (
    CHAPTER.numeric(
        "velocity",
        "HY",
        "Velocity in a pipe",
        "velocity",
        WELL,
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
        WELL,
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
        WELL,
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
        TESTED_MAIN,
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
        WELL,
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
            scene=FULL_BORE,
        ),
    ),
)
