"""The judged families of drives, chemical feed and standby power: what is right is judged here by hand."""

from solver import draw
from solver.topics.chemical.by_hand import hour
from solver.topics.standby.by_hand import load

from .drawn import JUDGEMENTS, each, seeds

SEEDS = seeds(60)
TOPS = {"us": (0.055, 0.11, 0.18), "si": (1.4, 2.8, 4.5)}  # ISO 20816-3, group 2, rigid


def vibration(given, units):
    now, tops = given["bearing_vibration"], TOPS[units]
    if "earlier_vibration" not in given:
        return ("zone_a", "zone_b", "zone_c", "zone_d")[sum(now > top for top in tops)]
    if now > tops[2]:
        return "stop"
    changed = now - given["earlier_vibration"] > 0.25 * tops[1]
    return "find_out" if changed else "keep_on"


def feeder(given, units):
    share = hour(given, units) / given["feeder_capacity"]
    return ("too_big", "fits", "too_small")[(share > 0.1) + (share > 1)]


def loaded(given, units):
    share = load(given, units) / given["generator_rating"]
    return ("too_light", "right", "overloaded")[(share > 0.3) + (share > 1)]


JUDGED_BY_HAND = {"vibration_zone": vibration, "feed_pump_size": feeder, "load_check": loaded}
PROBLEMS = [problem for problem in JUDGEMENTS if problem[0].name in JUDGED_BY_HAND]


@each(PROBLEMS)
def test_the_right_choice_is_the_one_judged_by_hand_and_each_comes_to_be_right(problem):
    family, level, units = problem
    drawn = [draw(family, seed, units, level) for seed in SEEDS]
    every_id = {mistake.id for case in drawn for mistake in case.mistakes}
    for case in drawn:
        right = every_id - {mistake.id for mistake in case.mistakes}
        assert {JUDGED_BY_HAND[family.name](case.given, units)} == right, case.code
    assert len(every_id) == len({case.choices[int(case.answer) - 1] for case in drawn})
