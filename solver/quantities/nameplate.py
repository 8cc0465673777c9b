"""Three-phase power, and what a motor's nameplate says of it."""

from ..quantity import Quantity, percent, same

__all__ = ["NAMEPLATE"]

NAMEPLATE = (
    # Three-phase power
    same("line_volts", "volts between lines", "U", "V", (180, 620)),
    same("line_amps", "line amps", "I", "A", (1, 600)),
    same("apparent_power", "apparent power", "S", "kVA", (0.3, 500)),
    same("power_factor", "power factor", r"\mathrm{PF}", "", (0.3, 0.97), most=1.0),
    same("reactive_power", "reactive power", "Q_r", "kvar", (0.2, 300)),
    same("corrected_power_factor", "corrected power factor", r"\mathrm{PF}'", "", (0.85, 1), most=1.0),
    same("corrected_apparent_power", "corrected apparent power", "S'", "kVA", (0.3, 500)),
    same("corrected_reactive_power", "corrected reactive power", "Q_r'", "kvar", (0.1, 200)),
    same("capacitor_kvar", "capacitor kvar", "Q_c", "kvar", (0.2, 300)),
    # Load by amps
    same("rated_volts", "nameplate volts", r"U_\mathrm{n}", "V", (180, 14_000)),
    percent("load_by_amps", "load by amps", r"\ell_I", (20, 125), most=1000.0),
    # Speed and slip
    same("frequency", "frequency", "f", "Hz", (20, 65)),
    same("poles", "poles", "p", "", (2, 12), least=2.0),
    same("synchronous_speed", "synchronous speed", r"n_\mathrm{s}", "rpm", (250, 3900)),
    same("running_speed", "running speed", "n", "rpm", (240, 3900)),
    same("slip_speed", "slip in rpm", r"\Delta n", "rpm", (1, 250)),
    percent("slip", "slip", "s", (0.2, 8)),
    same("rated_speed", "nameplate speed", r"n_\mathrm{n}", "rpm", (240, 3600)),
    same("rated_slip_speed", "nameplate slip in rpm", r"\Delta n_\mathrm{n}", "rpm", (3, 250)),
    percent("load_by_slip", "load by slip", r"\ell_s", (10, 140), most=1000.0),
    # Amps of the table, of the nameplate, of the overload
    same("table_amps", "table full-load amps", r"I_\mathrm{t}", "A", (1, 600)),
    percent("nameplate_share", "nameplate amps over table amps", r"i_\mathrm{t}", (60, 130), most=1000.0),
    percent("overload_percent", "overload percent", r"k_\mathrm{o}", (110, 130), most=1000.0),
    same("overload_limit", "overload limit", r"I_\mathrm{o}", "A", (1, 750)),
    percent("raised_percent", "raised overload percent", r"k_\mathrm{o}'", (120, 145), most=1000.0),
    same("raised_limit", "raised overload limit", r"I_\mathrm{o}'", "A", (1, 850)),
    same("overload_setting", "overload setting", r"I_\mathrm{set}", "A", (1, 900)),
    percent("setting_share", "overload setting over nameplate amps", r"k_\mathrm{set}", (80, 180), most=1000.0),
    same("rated_rise", "nameplate temperature rise", r"\Delta T_\mathrm{n}", "°C rise", (30, 130)),
    Quantity("service_power", "service-factor power", r"P_\mathrm{sf}", "hp", "kW", (0.5, 500), (0.37, 400)),
    # Starting
    same("locked_rotor_amps", "locked-rotor amps", r"I_\mathrm{lr}", "A", (5, 4000)),
    same("starting_kva", "starting kVA", r"S_\mathrm{st}", "kVA", (3, 3000)),
    same("starting_kva_per_hp", "starting kVA per horsepower", r"s_\mathrm{st}", "kVA/hp", (2.5, 16)),
)  # fmt: skip
