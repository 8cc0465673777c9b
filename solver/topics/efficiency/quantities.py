"""The motor's size and load, efficiencies, and what each machine loses."""

from solver.units.quantity import Both, Quantity, percent

__all__ = ["EFFICIENCY"]

BELOW_NOTHING = -float("inf")  # readings that contradict each other are told by their efficiency

EFFICIENCY = (
    # The motor
    Quantity("motor_size", Both("nameplate horsepower", "nameplate power"), Both(r"\mathrm{HP}_\mathrm{np}", r"P_\mathrm{n}"), "hp", "kW", (0.5, 400), (0.37, 315),
        also="rated horsepower, motor rating, rated power, nameplate hp"),
    percent("motor_load", "motor load", Both(r"\mathrm{Load}", r"\ell"), (20, 115), most=200.0,
        also="motor loading, percent load"),
    # Efficiencies
    percent("pump_efficiency", "pump efficiency", Both(r"\mathrm{Eff}_\mathrm{pump}", r"\eta_\mathrm{p}"), (45, 85),
        also="pump eff"),
    percent("motor_efficiency", "motor efficiency", Both(r"\mathrm{Eff}_\mathrm{motor}", r"\eta_\mathrm{m}"), (70, 97),
        also="motor eff"),
    percent("drive_efficiency", "drive efficiency", Both(r"\mathrm{Eff}_\mathrm{drive}", r"\eta_\mathrm{d}"), (65, 99),
        also="drive eff, belt efficiency, vfd efficiency"),
    percent("overall_efficiency", "wire-to-water efficiency", Both(r"\mathrm{Eff}_\mathrm{ww}", r"\eta_\mathrm{o}"), (28, 82),
        also="wire to water efficiency, overall plant efficiency, plant efficiency, ope, overall eff"),
    # What is lost
    *(
        Quantity(
            f"{machine}_loss", f"power lost in the {machine}", Both(rf"\mathrm{{HP}}_\mathrm{{lost,{sign}}}", rf"P_\mathrm{{lost,{sign}}}"), "hp", "kW", (0.005, 130), (0.004, 100), least=BELOW_NOTHING,
            also=f"{machine} loss, {machine} losses")
        for machine, sign in (("motor", "m"), ("drive", "d"), ("pump", "p"))
    ),
)  # fmt: skip
