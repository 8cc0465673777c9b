"""The families of the wet well, against the same sums done here by hand and in plain numbers.

Nothing here uses the solver's formulas. A round well holds 0.785 of the square around it, a cubic
foot 7.48 gal (both as taught); drawdown: pump rate = fall + inflow (common practice, no source);
V = T q / 4 and the least times between starts are those of EI 11C201 (1997) chapter 7.
"""

import pytest

from solver import draw, grade
from solver.topics.tables import motor_sizes
from solver.topics.wet_well.problems import WET_WELL

from .drawn import named, seeds, typed

SEEDS = seeds(60)
PROBLEMS = [
    (family, level, units)
    for family in WET_WELL
    for level in range(1, len(family.levels) + 1)
    for units in ("us", "si")
]
NUMERIC = [problem for problem in PROBLEMS if problem[0].judge is None]
DEPTH_IN = {"us": 12, "si": 100}  # inches in a foot, centimetres in a metre
A_MINUTE = {"us": 1, "si": 0.06}  # the volume a unit of flow moves in a minute


def cases(problem):
    family, level, units = problem
    return [draw(family, seed, units, level) for seed in SEEDS]


def problems(*names: str):
    chosen = [problem for problem in PROBLEMS if problem[0].name in names]
    assert {problem[0].name for problem in chosen} == set(names)
    return pytest.mark.parametrize("problem", chosen, ids=named)


class Well:
    """A case's givens, with what an operator would work from them by hand."""

    def __init__(self, given, units):
        self.given, self.units = given, units
        self.has = given.get

    def per_depth(self):
        """Gallons a foot, or cubic metres a metre."""
        if "volume_per_depth" in self.given:
            return self.given["volume_per_depth"]
        if "working_volume" in self.given:
            return self.given["working_volume"] / self.between()
        area = (
            0.785 * self.given["well_diameter"] ** 2
            if "well_diameter" in self.given
            else self.given["well_length"] * self.given["well_width"]
        )
        return area * (7.48 if self.units == "us" else 1)

    def between(self):
        if "working_depth" in self.given:
            return self.given["working_depth"]
        return self.given["on_level"] - self.given["off_level"]

    def working(self):
        return self.has("working_volume") or self.per_depth() * self.between()

    def minutes(self, volume, rate):
        return volume / (rate * A_MINUTE[self.units])

    def moved(self, name):
        """The rate of a change of level, in gpm or L/s."""
        seconds = self.given[f"{name}_time"]
        volume = self.has(f"{name}_volume")
        if volume is None:
            volume = self.per_depth() * self.given[f"{name}_read"] / DEPTH_IN[self.units]
        return volume / seconds * (60 if self.units == "us" else 1000)

    def comes_in(self):
        if "inflow" in self.given:
            return self.given["inflow"]
        return self.moved("closed_rise" if "closed_rise_time" in self.given else "rise")

    def rises(self):
        return self.has("rise_rate") or self.moved("rise")

    def pumps(self):
        if "flow" in self.given:
            return self.given["flow"]
        fall = self.has("drawdown_rate") or self.moved("drawdown")
        return fall + self.comes_in()

    def fill(self):
        return self.has("fill_time") or self.minutes(self.working(), self.comes_in())

    def empty(self):
        net = self.has("flow", 0) - self.has("inflow", 0)
        return self.has("pump_down_time") or self.minutes(self.working(), net)

    def cycle(self):
        return self.has("cycle_time") or self.fill() + self.empty()

    def starts(self):
        return self.has("starts_per_hour") or 60 / self.cycle()

    def turns(self):
        return self.has("alternating_pumps", 1)

    def least_cycle(self):
        return self.has("least_cycle") or 60 / (self.given["most_starts"] * self.turns())

    def least_volume(self):
        swept = self.least_cycle() * A_MINUTE[self.units] * self.pumps()
        return swept / 4

    def stored(self):
        if "storage_volume" in self.given:
            return self.given["storage_volume"]
        depth = self.has("storage_depth")
        if depth is None:
            depth = self.given["depth_to_water"] - self.given["depth_to_overflow"]
        return self.per_depth() * depth + self.has("sewer_storage", 0)

    def hours(self):
        if "hours_per_day" in self.given:
            return self.given["hours_per_day"]
        if "pump_hours" in self.given:
            return self.given["pump_hours"] * self.turns()
        return self.minutes(self.given["daily_inflow"], self.pumps()) / 60

    def deep(self):
        if "water_depth" in self.given:
            return self.given["water_depth"]
        return self.given["depth_to_floor"] - self.given["depth_to_water"]


BY_HAND = {
    "well_volume": lambda w: w.per_depth() * w.deep(),
    "volume_per_depth": Well.per_depth,
    "drawdown_flow": Well.pumps,
    "inflow": Well.comes_in,
    "leakage": lambda w: w.rises() - w.comes_in(),
    "fill_time": Well.fill,
    "pump_down_time": Well.empty,
    "cycle_time": Well.cycle,
    "starts_per_hour": Well.starts,
    "pump_starts": lambda w: w.starts() / w.turns(),
    "least_volume": Well.least_volume,
    "least_depth": lambda w: (w.has("least_volume") or w.least_volume()) / w.per_depth(),
    "shortest_cycle": lambda w: 4 * w.minutes(w.working(), w.given["flow"]),
    "run_hours": Well.hours,
    "pump_hours": lambda w: w.hours() / w.turns(),
    "daily_inflow": lambda w: w.hours() * 60 * A_MINUTE[w.units] * w.pumps(),
    "storage_time": lambda w: w.minutes(w.stored(), w.given["inflow"]),
}


@pytest.mark.parametrize("problem", NUMERIC, ids=named)
def test_the_answer_is_the_one_worked_by_hand(problem):
    family, _, units = problem
    for case in cases(problem):
        expected = BY_HAND[family.name](Well(case.given, units))
        assert expected == pytest.approx(case.answer, rel=1e-9), case.code


def zone(size, low, high):
    return (size > low) + (size > high)


def starts_zone(well):
    """EI 11C201 Table 7-1: under 20 hp (15 kW) 10 to 15 min, to 100 hp (75 kW) 15 to 20, above 30."""
    small, middle = {"us": (20, 100), "si": (15, 75)}[well.units]
    size = well.given["motor_size"]
    low, high = (10, 15) if size < small else (15, 20) if size < middle else (20, 30)
    between = well.has("motor_cycle") or well.cycle() * well.turns()
    return ("too_often", "maker_decides", "seldom_enough")[zone(between, low, high)]


def share_zone(well):
    share = well.pumps() / well.given["rated_flow"]
    return ("low", "as_rated", "high")[zone(share, 0.9, 1.1)]


def source_zone(well):
    share = 1 - well.comes_in() / well.rises()
    return ("inflow", "both", "check_valve")[zone(share, 0.1, 0.5)]


def leaking(well):
    """A closed valve that slows the rise by a tenth or more stopped its own check valve's leak."""
    if "rise_rate" in well.given:
        rates = [well.given[f"rise_rate{which}"] for which in ("", "_1", "_2")]
    else:
        rates = [1 / well.given[f"rise_time{which}"] for which in ("", "_1", "_2")]
    slowed = tuple(rate <= 0.9 * rates[0] for rate in rates[1:])
    return {(0, 0): "neither", (1, 0): "pump_1", (0, 1): "pump_2", (1, 1): "both"}[slowed]


def cause(well):
    """On its curve, less flow is more head; off it, both are less."""
    flow = well.pumps() / well.given["rated_flow"]
    head = well.given["head"] / well.given["rated_head"]
    return "opened" if flow > 1 else "worn" if head < 1 else "restricted"


JUDGED_BY_HAND = {
    "starts_limit": starts_zone,
    "drawdown_check": share_zone,
    "rise_source": source_zone,
    "leaking_valve": leaking,
    "drawdown_cause": cause,
}


@problems(*JUDGED_BY_HAND)
def test_the_right_choice_is_the_one_judged_by_hand(problem):
    family, _, units = problem
    drawn = [(case, {mistake.id for mistake in case.mistakes}) for case in cases(problem)]
    every_id = set().union(*(wrong for _, wrong in drawn))
    for case, wrong in drawn:
        assert {JUDGED_BY_HAND[family.name](Well(case.given, units))} == every_id - wrong, case.code


@problems(*JUDGED_BY_HAND)
def test_every_choice_comes_to_be_the_right_one(problem):
    drawn = cases(problem)
    right = {case.choices[int(case.answer) - 1] for case in drawn}
    assert len(drawn[0].choices) == len(right)


@problems("drawdown_flow", "pump_down_time", "cycle_time")
def test_an_inflow_forgotten_is_named(problem):
    _, _, units = problem
    if "fill_time" in problem[0].level(problem[1]).given:
        return
    for case in cases(problem):
        well = Well(case.given, units)
        wrong = {
            "drawdown_flow": lambda w: w.pumps() - w.comes_in(),
            "pump_down_time": lambda w: w.minutes(w.working(), w.given["flow"]),
            "cycle_time": lambda w: w.fill() + w.minutes(w.working(), w.given["flow"]),
        }[problem[0].name](well)
        assert "inflow_forgotten" in grade(case, typed(wrong, case.unit)).mistake, case.code


@problems("well_volume", "volume_per_depth", "storage_time", "fill_time")
def test_a_diameter_put_in_for_the_radius_is_named(problem):
    for case in cases(problem):
        if "well_diameter" in case.given:
            factor = 4
            wrong = typed(case.answer * factor, case.unit)
            assert "well_area.diameter_for_radius" == grade(case, wrong).mistake, case.code


@problems("drawdown_flow", "inflow", "leakage", "rise_source", "leaking_valve")
def test_whoever_measures_a_level_reads_that_it_is_done_from_outside(problem):
    for case in cases(problem):
        if any(name.endswith("_read") for name in case.given):
            why = " ".join(step.why for step in case.steps)
            assert "Measure from outside" in why, case.code
            assert "permit-required confined space" in why, case.code


@pytest.mark.parametrize("problem", PROBLEMS, ids=named)
def test_no_wet_well_stands_at_a_booster_station(problem):
    assert not any("booster" in case.question for case in cases(problem))


@problems("starts_limit")
def test_motors_come_from_the_table_of_the_system(problem):
    sizes = {case.given["motor_size"] for case in cases(problem)}
    assert sizes <= set(motor_sizes(problem[2]))
    assert len(sizes) > 4


@problems("drawdown_flow", "inflow", "leakage")
def test_levels_are_read_and_timed_as_a_tape_and_a_watch_allow(problem):
    for case in cases(problem):
        for name, value in case.given.items():
            if name.endswith(("_read", "_time")):
                assert value == round(value), f"{case.code}: {name}"
