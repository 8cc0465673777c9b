"""Belts, torque, alignment, grease and wear rings: what a mechanic measures on a drive."""

from solver.units.quantity import Quantity, percent, same

__all__ = ["DRIVES"]

SHEAVE = ("in", "mm", (2, 36), (50, 900))
CLEARANCE = ("in", "mm", (0.004, 0.2), (0.1, 5))

DRIVES = (
    # Belts and sheaves
    Quantity("motor_sheave", "motor sheave diameter", r"D_1", *SHEAVE,
        also="driver sheave, driving sheave, motor pulley, driver diameter"),
    Quantity("pump_sheave", "pump sheave diameter", r"D_2", *SHEAVE,
        also="driven sheave, pump pulley, driven diameter"),
    Quantity("new_motor_sheave", "new motor sheave diameter", r"D_1'", *SHEAVE,
        also="new driver sheave, new motor pulley"),
    percent("belt_slip", "belt slip", r"s_\mathrm{b}", (0.5, 8), also="slip of the belts, belt creep"),
    Quantity("belt_speed", "belt speed", r"v_\mathrm{b}", "ft/min", "m/s", (800, 7000), (4, 36),
        also="rim speed, speed of the belts"),
    # Torque
    Quantity("shaft_torque", "torque", "T", "lb-ft", "N·m", (2, 9000), (3, 12_000),
        also="shaft torque, twisting force, torque on the shaft"),
    Quantity("rated_torque", "full-load torque", r"T_\mathrm{n}", "lb-ft", "N·m", (2, 9000), (3, 12_000),
        also="rated torque, nameplate torque"),
    # Alignment
    Quantity("rim_reading", "total indicator reading", r"\mathrm{TIR}", "mil", "mm", (2, 90), (0.05, 2.3),
        shorts="TIR", also="indicator reading, rim reading, full reading"),
    Quantity("parallel_offset", "parallel offset", r"\delta", "mil", "mm", (1, 45), (0.02, 1.2),
        also="offset, offset misalignment, parallel misalignment"),
    Quantity("wide_gap", "widest coupling gap", r"g_1", "mil", "mm", (60, 400), (1.5, 10),
        also="wide gap, larger gap"),
    Quantity("narrow_gap", "narrowest coupling gap", r"g_2", "mil", "mm", (60, 400), (1.5, 10),
        also="narrow gap, smaller gap"),
    Quantity("gap_difference", "difference between the gaps", r"\Delta g", "mil", "mm", (1, 60), (0.03, 1.5),
        also="gap difference, face difference"),
    Quantity("coupling_diameter", "coupling diameter", r"D_\mathrm{c}", "in", "mm", (3, 18), (75, 460),
        also="diameter of the coupling, hub diameter of the coupling"),
    Quantity("foot_spacing", "distance between the motor feet", r"L_\mathrm{f}", "in", "mm", (5, 36), (120, 920),
        also="foot spacing, distance between the feet"),
    Quantity("shim_thickness", "shim thickness", r"t_\mathrm{s}", "mil", "mm", (1, 150), (0.02, 4),
        also="shims, shim"),
    # Grease
    Quantity("bearing_diameter", "bearing outside diameter", r"D_\mathrm{b}", "in", "mm", (1.5, 10), (40, 250),
        also="outside diameter of the bearing, bearing od"),
    Quantity("bearing_width", "bearing width", r"B", "in", "mm", (0.5, 3), (12, 70),
        also="width of the bearing"),
    Quantity("grease_amount", "grease per relubrication", r"G", "oz", "g", (0.05, 3), (1.5, 80),
        also="amount of grease, grease quantity, grease volume"),
    Quantity("grease_per_stroke", "grease per stroke", r"g_\mathrm{s}", "oz", "g", (0.02, 0.2), (0.5, 5),
        also="grease per pump of the gun, grease gun output"),
    same("grease_strokes", "strokes of the grease gun", r"n_\mathrm{s}", "", (1, 80),
        also="number of strokes, pumps of the grease gun"),
    same("grease_interval", "run hours between greasings", r"t_\mathrm{g}", "h", (200, 20_000),
        also="relubrication interval, greasing interval"),
    same("hour_meter", "hour meter now", r"h_2", "h", (100, 99_999), also="hour meter reading, meter today"),
    same("hour_meter_greased", "hour meter at the last greasing", r"h_1", "h", (50, 99_999),
        also="hour meter reading at the last greasing, meter then"),
    same("hours_since_greased", "run hours since the last greasing", r"\Delta h", "h", (5, 20_000),
        also="hours since greasing, hours since last greased"),
    same("hours_left", "run hours left", r"t_\mathrm{l}", "h", (5, 20_000), least=-float("inf"),
        also="hours left until greasing, hours to go"),
    same("days_to_grease", "days until the next greasing", r"n_\mathrm{g}", "day", (5, 550),
        least=-float("inf"), also="days between greasings, days to go"),
    # Wear rings and vibration
    Quantity("case_ring_bore", "bore of the case wear ring", r"d_1", "in", "mm", (2, 24), (50, 600),
        also="case ring bore, inside diameter of the case ring"),
    Quantity("impeller_ring_diameter", "diameter of the impeller wear ring", r"d_2", "in", "mm", (2, 24), (50, 600),
        also="impeller ring diameter, outside diameter of the impeller ring"),
    Quantity("ring_gap", "wear-ring clearance", r"c", *CLEARANCE, also="clearance, ring clearance"),
    Quantity("new_ring_gap", "wear-ring clearance when new", r"c_0", *CLEARANCE,
        also="original clearance, design clearance"),
    percent("ring_wear", "clearance as a percent of new", r"k_c", (90, 600), most=100_000.0,
        also="clearance compared with new"),
    Quantity("bearing_vibration", "vibration velocity", r"v_\mathrm{rms}", "in/s", "mm/s", (0.005, 1.2), (0.1, 30),
        also="vibration, vibration reading, overall vibration"),
    Quantity("earlier_vibration", "earlier vibration velocity", r"v_\mathrm{rms}'", "in/s", "mm/s",
        (0.005, 1.2), (0.1, 30), also="earlier vibration, baseline vibration"),
    Quantity("vibration_change", "change in vibration velocity", r"\Delta v_\mathrm{rms}", "in/s", "mm/s",
        (0.0001, 1.2), (0.001, 30), also="vibration change, rise in vibration"),
)  # fmt: skip
