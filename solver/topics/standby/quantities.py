"""Standby power: what a generator carries, starts and burns; and getting by without the pumps."""

from solver.units.quantity import Both, Quantity, percent, same

__all__ = ["STANDBY"]

KVA = (1, 4000)
KILOWATTS = (1, 2500)

STANDBY = (
    # What it carries
    same("running_pumps", "pumps running", r"n_\mathrm{p}", "", (1, 6), least=1.0, also="number of pumps running"),
    same("other_load", "other loads", r"P_\mathrm{o}", "kW", (0.2, 300), also="other load, lights and controls"),
    same("running_load", "running load", r"P_\mathrm{run}", "kW", KILOWATTS, also="generator load in kW, load in kW"),
    same("load_power_factor", "power factor of the load", r"\mathrm{PF}_\mathrm{L}", "", (0.6, 1), most=1.0,
        also="load PF"),
    same("running_kva", "running kVA", Both(r"\mathrm{kVA}_\mathrm{run}", r"S_\mathrm{run}"), "kVA", KVA, also="kVA running"),
    same("starting_peak", "kVA at the largest start", Both(r"\mathrm{kVA}_\mathrm{pk}", r"S_\mathrm{pk}"), "kVA", KVA,
        also="peak starting kVA, starting kVA of the station"),
    same("soft_start_kva", "kVA at the soft start", Both(r"\mathrm{kVA}_\mathrm{ss}", r"S_\mathrm{ss}"), "kVA", KVA,
        also="soft start kVA, kVA of the soft start"),
    percent("starting_percent", "soft starter setting", r"k_\mathrm{st}", (120, 800), most=2000.0,
        also="starting current limit, starting current as a percent of full-load amps"),
    same("generator_rating", "generator rating", r"P_\mathrm{g}", "kW", (5, 3000), also="rated kW of the generator, generator size"),
    percent("generator_load", "generator load", r"\ell_\mathrm{g}", (5, 130), most=1000.0, also="percent load of the generator"),
    same("generator_power_factor", "rated power factor", r"\mathrm{PF}_\mathrm{g}", "", (0.7, 1), most=1.0,
        also="generator PF, power factor of the generator"),
    same("generator_kva", "generator kVA", Both(r"\mathrm{kVA}_\mathrm{g}", r"S_\mathrm{g}"), "kVA", (5, 4000), also="rated kVA of the generator"),
    same("generator_volts", "generator volts", Both(r"V_\mathrm{g}", r"U_\mathrm{g}"), "V", (180, 620), also="volts of the generator"),
    same("generator_amps", "generator full-load amps", r"I_\mathrm{g}", "A", (10, 6000), also="rated amps of the generator"),
    # How fast it turns
    same("engine_speed", "engine speed", r"n_\mathrm{e}", "rpm", (700, 3700), also="generator speed, engine rpm"),
    same("generator_poles", "poles of the generator", r"p_\mathrm{g}", "", (2, 8), least=2.0, also="generator poles"),
    same("generator_frequency", "generator frequency", r"f_\mathrm{g}", "Hz", (45, 65), also="hertz of the generator"),
    # What it burns
    Quantity("fuel_tank", "fuel tank capacity", r"V_\mathrm{t,f}", "gal", "L", (20, 20_000), (80, 75_000), also="capacity of the fuel tank"),
    percent("fuel_level", "fuel level", r"k_\mathrm{f}", (5, 100), also="percent of fuel left, fuel gauge"),
    percent("fuel_reserve", "fuel that can't be used", r"k_\mathrm{r}", (1, 30), also="unusable fuel, reserve fuel"),
    Quantity("usable_fuel", "usable fuel", r"V_\mathrm{f}", "gal", "L", (5, 20_000), (20, 75_000), also="fuel left, fuel on hand"),
    Quantity("fuel_rate", "fuel used per hour", r"Q_\mathrm{f}", "gph", "L/h", (0.3, 250), (1, 950), also="fuel consumption, fuel burned per hour"),
    Quantity("fuel_per_energy", "fuel per kilowatt-hour", r"b", "gal/kWh", "L/kWh", (0.05, 0.15), (0.2, 0.6), also="specific fuel consumption, gallons per kWh"),
    same("fuel_hours", "hours of fuel", r"t_\mathrm{f}", "h", (1, 400), also="run time on the fuel, hours until empty"),
    # Without the pumps
    same("peaking_factor", "peaking factor", r"k_\mathrm{pk}", "", (1.2, 6), least=1.0, also="peak factor"),
    Quantity("peak_inflow", "peak inflow", r"Q_\mathrm{pk}", "gpm", "L/s", (10, 20_000), (0.6, 1300), also="peak flow, bypass flow"),
    Quantity("bypass_pump", "flow of one bypass pump", r"Q_\mathrm{b}", "gpm", "L/s", (20, 8000), (1, 500), also="one bypass pump"),
    same("bypass_pumps", "bypass pumps for the flow", r"n_\mathrm{b}", "", (0.2, 20), also="number of bypass pumps"),
    Quantity("truck_volume", "volume of one truck", r"V_\mathrm{tr}", "gal", "m3", (500, 10_000), (2, 40), also="tank truck, vacuum truck volume"),
    same("round_trip", "round trip of a truck", r"t_\mathrm{tr}", "min", (10, 300), also="round trip time, truck cycle"),
    Quantity("truck_rate", "flow that one truck hauls", r"Q_\mathrm{tr}", "gpm", "L/s", (5, 500), (0.2, 32), also="hauling rate, one truck's flow"),
    same("trucks_needed", "trucks for the flow", r"n_\mathrm{tr}", "", (0.3, 60), also="number of trucks"),
)  # fmt: skip
