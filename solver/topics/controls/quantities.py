"""What a signal says, how lead and lag take turns, how a motor starts softly, what runs on a battery."""

from solver.units.quantity import Both, Quantity, percent, same

__all__ = ["CONTROLS"]

LEVEL = ("ft", "m")
VOLUME = ("gal", "m3", (20, 60_000), (0.08, 230))
HERTZ = ("Hz", (5, 65))

CONTROLS = (
    # A signal of 4 to 20 mA
    percent("signal_percent", "percent of the signal", r"s", (0, 100),
        also="signal in percent, percent of span, percent of range"),
    Quantity("signal_span", "level range of the transmitter", r"h_\mathrm{span}", *LEVEL, (4, 60), (1.5, 20),
        also="span, transmitter span, level span"),
    Quantity("signal_level", "level by the signal", r"h_\mathrm{s}'", *LEVEL, (0.1, 60), (0.03, 20),
        also="level from the signal, level shown"),
    Quantity("signal_zero", "level at 4 mA", r"h_4", *LEVEL, (0.2, 10), (0.1, 3),
        also="level at zero signal, zero of the transmitter"),
    Quantity("pressure_span", "pressure range of the transmitter", r"p_\mathrm{span}", "psi", "kPa", (2, 30), (15, 200),
        also="pressure span, range in psi"),
    Quantity("signal_pressure", "pressure by the signal", r"p_\mathrm{s}", "psi", "kPa", (0.05, 30), (0.3, 200),
        also="pressure from the signal"),
    # A drive that follows a signal
    same("least_frequency", "drive frequency at 4 mA", r"f_4", *HERTZ,
        also="minimum frequency, minimum hertz, low speed limit"),
    same("most_frequency", "drive frequency at 20 mA", r"f_{20}", *HERTZ,
        also="maximum frequency, maximum hertz, high speed limit"),
    same("drive_frequency", "drive output frequency", r"f_\mathrm{d}", *HERTZ,
        also="drive output, drive hertz, output frequency of the drive"),
    # Lead and lag, and a timer
    Quantity("lag_depth", "depth from lead-on up to lag-on", r"h_\mathrm{lag}", *LEVEL, (0.25, 6), (0.1, 2),
        also="distance from lead-on to lag-on"),
    Quantity("lag_volume", "volume from lead-on up to lag-on", r"V_\mathrm{lag}", *VOLUME,
        also="volume between lead-on and lag-on"),
    same("lag_time", "time until the lag pump starts", r"t_\mathrm{lag}", "min", (0.3, 240),
        also="time to lag start, time to the lag float"),
    Quantity("lag_pump_down", "volume from lag-on down to pump-off", r"V_\mathrm{off}", *VOLUME,
        also="volume between lag-on and pump-off"),
    same("both_time", "time for both pumps to pump down", r"t_2", "min", (0.3, 240),
        also="pump-down time of both pumps"),
    same("off_delay", "off delay", r"t_\mathrm{d}", "s", (3, 600),
        also="off-delay time, delay at pump-off"),
    Quantity("delay_volume", "volume pumped in the delay", r"V_\mathrm{del}", "gal", "m3", (3, 10_000), (0.01, 40),
        also="volume during the delay"),
    Quantity("delay_drop", "drop during the delay", r"h_\mathrm{del}", *LEVEL, (0.12, 4), (0.04, 1.2),
        also="level drop in the delay"),
    # Starting on less than full volts
    percent("current_limit", "current limit of the soft starter", r"k_\mathrm{ss}", (150, 600), most=1000.0,
        also="soft starter current limit, current limit"),
    same("soft_amps", "starting amps with the soft starter", r"I_\mathrm{ss}", "A", (5, 2500),
        also="soft start amps, amps at the current limit"),
    percent("start_volts", "starting volts in percent", r"k_V", (40, 95),
        also="percent of full volts, reduced starting volts"),
    percent("start_torque", "starting torque in percent", r"k_T", (15, 95),
        also="percent of full-voltage starting torque"),
    percent("tap", "autotransformer tap", r"k_\mathrm{tap}", (45, 85),
        also="tap, tap in percent"),
    same("tap_amps", "line amps on the tap", r"I_\mathrm{tap}", "A", (3, 2500),
        also="line amps with the autotransformer"),
    # What the control circuit takes
    same("coil_va", "sealed VA of one coil", r"\mathrm{VA}_\mathrm{c}", "VA", (4, 80), also="coil VA, sealed VA, VA of one coil"),
    same("coil_count", "number of coils", r"n_\mathrm{c}", "", (1, 12), least=1.0, also="coils"),
    same("lamp_va", "VA of one pilot light", r"\mathrm{VA}_\mathrm{l}", "VA", (0.5, 12), also="pilot light VA, lamp VA"),
    same("lamp_count", "number of pilot lights", r"n_\mathrm{l}", "", (1, 30), least=1.0, also="pilot lights, lamps"),
    same("control_load", "control load", r"\mathrm{VA}_\mathrm{tot}", "VA", (5, 2000), also="total control VA, control VA"),
    same("control_load_amps", "amps of the control load", r"I_\mathrm{con}", "A", (0.05, 20),
        also="control circuit amps"),
    percent("control_share", "load on the control transformer", r"\ell_\mathrm{ct}", (5, 120), most=1000.0,
        also="percent load on the control transformer"),
    # Alarms on a battery
    same("battery_ah", "battery capacity", r"C_\mathrm{b}", "Ah", (2, 300), also="amp-hours, battery amp-hours"),
    percent("usable_share", "usable share of the battery", r"k_\mathrm{b}", (40, 100),
        also="usable percent of the battery, depth of discharge"),
    same("battery_volts", "battery volts", Both(r"V_\mathrm{b}", r"U_\mathrm{b}"), "V", (6, 60), also="volts of the battery"),
    same("standby_watts", "standby load", r"P_\mathrm{sb}", "W", (1, 200), also="watts on the battery, standby watts"),
    same("standby_amps", "standby amps", r"I_\mathrm{sb}", "A", (0.05, 20), also="amps on the battery, battery load in amps"),
    same("battery_time", "battery time", r"t_\mathrm{b}", "h", (3, 200), also="hours on the battery, battery hours, backup time"),
)  # fmt: skip
