"""Electric bills: demand, fixed charges, the average price, and prices by the hour."""

from solver.engine.family import Level

from .stations import BILLED, CHAPTER, SHIFTED

__all__ = ["BILLS"]

BILLS = (
    CHAPTER.numeric(
        "bill",
        "BI",
        "A bill with energy, demand and fixed charges",
        "bill",
        BILLED,
        Level(
            ("energy_cost", "peak_demand", "demand_price", "fixed_charge"),
            "This month's energy at {station} cost {energy_cost}. The peak demand was {peak_demand} "
            "at {demand_price}, and the fixed charge is {fixed_charge}. What is the electric bill?",
        ),
        Level(
            ("energy", "energy_price", "peak_demand", "demand_price", "fixed_charge"),
            "The pumps at {station} used {energy} this month at {energy_price}. The peak demand was "
            "{peak_demand} at {demand_price}, and the fixed charge is {fixed_charge}. What is the "
            "electric bill?",
        ),
        Level(
            (
                "input_power",
                "hours_per_day",
                "days",
                "energy_price",
                "peak_demand",
                "demand_price",
                "fixed_charge",
            ),
            "{place} draws {input_power} and runs {hours_per_day} for {days}. Energy costs "
            "{energy_price}. The station's peak demand was {peak_demand} at {demand_price}, and its "
            "fixed charge is {fixed_charge}. What is the electric bill?",
        ),
    ),
    CHAPTER.numeric(
        "average_price",
        "PK",
        "The average price per kilowatt-hour",
        "average_price",
        BILLED,
        Level(
            ("bill", "energy"),
            "This month's bill for {station} is {bill} for {energy}. What is the average price per "
            "kilowatt-hour?",
        ),
        Level(
            ("energy", "energy_cost", "demand_charge", "fixed_charge"),
            "The bill for {station} shows {energy}, which cost {energy_cost}. It also has a demand "
            "charge of {demand_charge} and a fixed charge of {fixed_charge}. "
            "What is the average price per kilowatt-hour?",
        ),
        Level(
            ("energy", "energy_price", "peak_demand", "demand_price", "fixed_charge"),
            "The pumps at {station} used {energy} this month at {energy_price}. The peak demand was "
            "{peak_demand} at {demand_price}, and the fixed charge is {fixed_charge}. "
            "What is the average price per kilowatt-hour?",
        ),
    ),
    CHAPTER.numeric(
        "time_of_use_bill",
        "TU",
        "A time-of-use bill",
        "time_of_use_bill",
        SHIFTED,
        Level(
            ("on_peak_energy", "off_peak_energy", "on_peak_price", "off_peak_price"),
            "{place} used {on_peak_energy} on-peak at {on_peak_price} and {off_peak_energy} "
            "off-peak at {off_peak_price}. What is the time-of-use bill?",
        ),
        Level(
            (
                "input_power",
                "on_peak_hours",
                "off_peak_hours",
                "on_peak_price",
                "off_peak_price",
            ),
            "{place} draws {input_power}. This month it ran {on_peak_hours} on-peak at "
            "{on_peak_price} and {off_peak_hours} off-peak at {off_peak_price}. "
            "What is the time-of-use bill?",
        ),
        Level(
            (
                "brake_power",
                "motor_efficiency",
                "on_peak_hours",
                "off_peak_hours",
                "on_peak_price",
                "off_peak_price",
            ),
            "{place} needs {brake_power} at its shaft. The motor efficiency is "
            "{motor_efficiency}. This month the pump ran {on_peak_hours} on-peak at "
            "{on_peak_price} and {off_peak_hours} off-peak at {off_peak_price}. "
            "What is the time-of-use bill?",
        ),
    ),
    CHAPTER.numeric(
        "shift_saving",
        "SH",
        "Savings from moving hours off-peak",
        "shift_saving",
        SHIFTED,
        Level(
            ("energy_moved", "on_peak_price", "off_peak_price"),
            "At {station}, {person} can move {energy_moved} a month from on-peak to off-peak. The "
            "price is {on_peak_price} on-peak and {off_peak_price} off-peak. How much does this "
            "save each month?",
        ),
        Level(
            ("input_power", "hours_moved", "on_peak_price", "off_peak_price"),
            "{place} draws {input_power}. {person} can move {hours_moved} a month from on-peak to "
            "off-peak. The price is {on_peak_price} on-peak and {off_peak_price} off-peak. "
            "How much does this save each month?",
        ),
        Level(
            (
                "brake_power",
                "motor_efficiency",
                "hours_moved",
                "on_peak_price",
                "off_peak_price",
            ),
            "{place} needs {brake_power} at its shaft. The motor efficiency is "
            "{motor_efficiency}. {person} can move {hours_moved} a month from on-peak to off-peak. "
            "The price is {on_peak_price} on-peak and {off_peak_price} off-peak. "
            "How much does this save each month?",
        ),
    ),
)
