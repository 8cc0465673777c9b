"""Volts, amps, ohms and watts of a circuit, what wire and transformers do, and demand by the kVA."""

from solver.units.quantity import Both, Quantity, percent, same

__all__ = ["ELECTRICITY"]

OHMS = ("ohm", (0.5, 2000))

ELECTRICITY = (
    # A circuit
    same("load_volts", "volts across the load", Both("V", "U"), "V", (1, 600),
        also="circuit volts, applied volts, voltage across the load"),
    same("circuit_amps", "circuit amps", "I", "A", (0.01, 200),
        also="amps in the circuit, current in the circuit, circuit current"),
    same("load_ohms", "load resistance", "R", *OHMS,
        also="ohms, ohms of the load, circuit resistance, element resistance"),
    same("load_watts", "watts", "W", "W", (1, 40_000),
        also="power in watts, watts of the load, heater watts"),
    same("rated_watts", "rated watts", r"W_\mathrm{r}", "W", (50, 20_000),
        also="nameplate watts, watts at rated volts"),
    # In series: a signal loop
    *(
        same(f"series_ohms_{n}", f"resistance of the {part}", f"R_{{s{n}}}", "ohm", (1, 1000),
            also=f"series resistance {n}, ohms {n} in series, {part} ohms")
        for n, part in ((1, "input card"), (2, "display"), (3, "wire in the loop"))
    ),
    same("loop_ohms", "loop resistance", r"R_\mathrm{s}", "ohm", (5, 2000),
        also="total series resistance, series ohms, ohms of the loop"),
    same("loop_current", "loop current", r"I_\mathrm{s}", "mA", (3, 25),
        also="loop milliamps, signal current, milliamps in the loop"),
    same("loop_drop", "volts used in the loop", Both(r"V_\mathrm{s}", r"U_\mathrm{s}"), "V", (0.05, 40),
        also="loop voltage drop, volts dropped in the loop"),
    same("loop_supply", "loop supply volts", Both(r"V_\mathrm{ps}", r"U_\mathrm{ps}"), "V", (10, 50),
        also="power supply volts, dc supply volts"),
    same("transmitter_volts", "volts left for the transmitter", Both(r"V_\mathrm{t}", r"U_\mathrm{t}"), "V", (3, 48),
        also="transmitter volts, volts at the transmitter"),
    # In parallel: elements side by side
    *(
        same(f"parallel_ohms_{n}", f"resistance of branch {n}", f"R_{{p{n}}}", *OHMS,
            also=f"ohms {n} in parallel, branch resistance {n}")
        for n in (1, 2, 3)
    ),
    same("parallel_ohms", "parallel resistance", r"R_\mathrm{p}", "ohm", (0.2, 1000),
        also="total parallel resistance, ohms in parallel, combined resistance"),
    # Single-phase power
    same("single_volts", "single-phase volts", Both(r"V_1", r"U_1"), "V", (90, 300),
        also="single phase volts, single-phase voltage"),
    same("single_amps", "single-phase amps", r"I_1", "A", (0.5, 100),
        also="single phase amps, single-phase current"),
    # Wire
    Quantity("run_length", "length of the run", r"\ell", "ft", "m", (15, 3000), (5, 900),
        also="one-way length, run length, wire length, distance from the panel"),
    Quantity("wire_ohms", Both("wire resistance per 1,000 ft", "cable resistance per km"), "r", "ohm/1000 ft", "ohm/km", (0.04, 4), (0.1, 12),
        also="ohms per 1000 ft, ohms per km, ohms per thousand feet"),
    Quantity("wire_area", "conductor area", "A", "cmil", "mm2", (4000, 300_000), (1.5, 150),
        also="circular mils, area of the wire, wire area"),
    same("supply_volts", "volts at the panel", Both(r"V_\mathrm{p}", r"U_\mathrm{p}"), "V", (90, 620),
        also="panel volts, volts at the source"),
    same("voltage_drop", "voltage drop", Both(r"V_\mathrm{d}", r"U_\mathrm{d}"), "V", (0.2, 60),
        also="volts lost in the wire, drop in volts"),
    percent("drop_percent", "voltage drop in percent", Both(r"\%V_\mathrm{d}", r"u_\mathrm{d}"), (0.2, 15),
        also="percent voltage drop, percent drop"),
    same("far_volts", "volts at the far end", Both(r"V_\mathrm{e}", r"U_\mathrm{e}"), "V", (80, 620),
        also="volts at the end of the run, volts at the load end"),
    # Transformers
    same("primary_volts", "primary volts", Both(r"V_\mathrm{pri}", r"U_\mathrm{pri}"), "V", (100, 15_000),
        also="high-side volts, primary voltage"),
    same("secondary_volts", "secondary volts", Both(r"V_\mathrm{sec}", r"U_\mathrm{sec}"), "V", (10, 620),
        also="low-side volts, secondary voltage"),
    same("turns_ratio", "turns ratio", "a", "", (1.2, 80),
        also="transformer ratio, ratio of turns, primary to secondary turns"),
    same("primary_amps", "primary amps", r"I_\mathrm{pri}", "A", (0.05, 400),
        also="high-side amps, primary current"),
    same("secondary_amps", "secondary amps", r"I_\mathrm{sec}", "A", (0.2, 1500),
        also="low-side amps, secondary current"),
    same("transformer_va", "control transformer rating", r"\mathrm{VA}", "VA", (25, 5000),
        also="control transformer VA, volt-amps of the transformer"),
    same("control_amps", "full-load amps of the control transformer", r"I_\mathrm{ct}", "A", (0.1, 50),
        also="control transformer amps"),
    same("transformer_kva", "transformer rating", Both(r"\mathrm{kVA}_\mathrm{t}", r"S_\mathrm{t}"), "kVA", (10, 1000),
        also="transformer kVA, size of the transformer"),
    same("transformer_amps", "full-load amps of the transformer", r"I_\mathrm{t}^\mathrm{fl}", "A", (10, 2800),
        also="rated amps of the transformer"),
    percent("transformer_load", "load on the transformer", r"\ell_\mathrm{t}", (10, 130), most=1000.0,
        also="percent load on the transformer, transformer load"),
    # Demand by the kVA, and load factor
    same("billed_kva", "billed kVA", Both(r"\mathrm{kVA}_\mathrm{b}", r"S_\mathrm{b}"), "kVA", (5, 3000),
        also="kVA demand, peak kVA, demand in kVA"),
    same("kva_price", "price per kVA of demand", r"c_S", "$/kVA", (2, 30),
        also="kVA rate, price per kVA"),
    same("kva_charge", "kVA demand charge", r"C_S", "$", (20, 60_000),
        also="kVA charge, charge for kVA"),
    same("required_power_factor", "power factor the utility requires", r"\mathrm{PF}_\mathrm{u}", "", (0.8, 1), most=1.0,
        also="required power factor, required PF"),
    same("adjusted_demand", "adjusted demand", r"P_\mathrm{adj}", "kW", (5, 3000),
        also="billed demand after the power-factor adjustment, adjusted kW"),
    same("period_hours", "hours in the billing period", r"t_\mathrm{b}", "h", (600, 800),
        also="billing hours, hours in the month"),
    same("average_demand", "average demand", r"P_\mathrm{avg}", "kW", (1, 2000),
        also="average kW, average kilowatts"),
    percent("load_factor", "load factor", r"\mathrm{LF}", (5, 95),
        also="LF, load factor in percent"),
)  # fmt: skip
