"""Judgments of the cost chapter: the offer that pays back first, the pump cheaper to run."""

from collections.abc import Mapping
from typing import NamedTuple

from solver.engine.draw import Draw
from solver.engine.judgement import Judgement, Option
from solver.errors import NotSolvable, Unfit
from solver.station.drawn import beside
from solver.station.faults import put
from solver.station.scene import station_in
from solver.station.station import Station
from solver.topics.constants import HOURLY_VOLUME
from solver.topics.readings import noted, only, shown
from solver.units.show import exact, figures, with_unit

from .stations import OFFERED, worked

__all__ = ["judge_energy", "judge_payback", "judge_price", "judge_upgrade"]


LEAST_COST = 1000.0  # $: nobody repairs a pump for less
LEAST, MOST = 0.85, 1.2  # of the flow of the pump in the middle
# Prices of the pumps, from the least energy for a volume to the most, over the lowest price: the least
# energy is cheapest even so, or the lowest price makes up for more energy.
PRICES = ((1.06, 1.12, 1.0), (1.3, 1.0, 1.15))


class Offer(NamedTuple):
    """What is offered, in words; its cost, its saving in a year, its payback in years."""

    text: str
    cost: float
    saving: float
    years: float


def _offer(text: str, cost: float, saving: float, units: str) -> Offer:
    known = {"installed_cost": cost, "yearly_saving": saving}
    return Offer(text, cost, saving, worked(known, "simple_payback", units))


def _costs(draw: Draw, savings: tuple[float, ...]) -> list[float]:
    """An installed cost for each saving; the paybacks are at least a fifth apart."""
    paybacks = draw.shuffled((1.0, 1.3, 1.75))
    base = draw.between(1.6, 3.6)
    return [noted(saving * base * p, 2) for saving, p in zip(savings, paybacks, strict=True)]


def _first_to_pay(offers: list[Offer]) -> Judgement | None:
    """The offer of the shortest payback; None where two cost the same, or one next to nothing."""
    least_cost = min(offer.cost for offer in offers)
    if len({offer.cost for offer in offers}) < len(offers) or least_cost < LEAST_COST:
        return None
    first, *later = sorted(offers, key=lambda offer: offer.years)
    most_saved = max(offer.saving for offer in offers)

    def wrong(at: int, offer: Offer) -> Option:
        says = f"This one takes {offer.years:.1f} years. The first to pay back takes {first.years:.1f}."
        if offer.saving == most_saved:
            return Option(
                "took_most_saved",
                offer.text,
                f"{says} It saves the most, but each dollar saved costs more.",
            )
        if offer.cost == least_cost:
            return Option(
                "took_least_cost",
                offer.text,
                f"{says} It costs the least, but each dollar spent saves less.",
            )
        return Option(f"pays_later_{at}", offer.text, says)

    return Judgement(
        "{simple_payback:name} = {installed_cost:name} / {yearly_saving:name}",
        "; ".join(
            f"{_dollars(o.cost)} / {_dollars(o.saving)} = {o.years:.1f} years" for o in offers
        ),
        Option(
            "first", first.text, f"It pays back in {first.years:.1f} years, sooner than the others."
        ),
        tuple(wrong(at, offer) for at, offer in enumerate(later, 1)),
    )


def _dollars(value: float) -> str:
    return with_unit(f"{value:,.0f}", "$")


def _upgrade(values: Mapping[str, float], units: str, draw: Draw) -> Mapping[str, float]:
    """The readings of the level's station; of another where a reader typed what the level gives."""
    return values if "saved_power" in values else OFFERED(draw, units).values


def _saved(most: float, draw: Draw) -> list[float]:
    """Kilowatts that a repair, a good pump and the best one would save."""
    return [noted(most * share, 2) for share in (0.45, draw.between(0.6, 0.72), 1)]


def _savings(kilowatts: list[float], known: Mapping[str, float], units: str) -> tuple[float, ...]:
    """Dollars a year, at the hours and the price that are known."""
    prices = only(known, "yearly_hours", "energy_price")
    return tuple(worked({"saved_power": kw, **prices}, "yearly_saving", units) for kw in kilowatts)


def judge_payback(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Three offers by cost and yearly saving."""
    seen = _upgrade(values, units, draw)
    worth = _savings(_saved(seen["saved_power"], draw), seen, units)
    savings = tuple(noted(saving, 2) for saving in worth)
    return _first_to_pay(
        [
            _offer(
                f"{_dollars(cost)} installed, saves {_dollars(saving)} a year", cost, saving, units
            )
            for cost, saving in zip(_costs(draw, savings), savings, strict=True)
        ]
    )


def judge_upgrade(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Three offers by cost and kilowatts saved, for the hours and the price of the level."""
    kilowatts = _saved(_upgrade(values, units, draw)["saved_power"], draw)
    savings = _savings(kilowatts, values, units)
    return _first_to_pay(
        [
            _offer(f"{_dollars(cost)} installed, saves {kw:g} kW", cost, saving, units)
            for cost, saving, kw in zip(_costs(draw, savings), savings, kilowatts, strict=True)
        ]
    )


class Choice(NamedTuple):
    """A pump by its flow and its kilowatts, and what one volume takes or costs with it."""

    text: str
    kilowatts: float
    flow: float
    comes_to: float


def _pumps(values: Mapping[str, float], draw: Draw) -> list[dict[str, float]]:
    """Three pumps on one main, by flow and kilowatts; two of them worn, so that any one may be best.

    Raises:
        Unfit: no such three were drawn.
    """
    try:
        middle = station_in(values)
        three = [beside(draw, middle, LEAST), middle, beside(draw, middle, MOST)]
        best, second, third = draw.shuffled(three)
        least = best.reading("energy_per_volume")
        worn = (
            _worn(second, least * draw.between(1.09, 1.13)),
            _worn(third, least * draw.between(1.16, 1.22)),
        )
    except NotSolvable as why:
        raise Unfit(f"No three pumps can be told apart: {why}.") from None
    return [station.readings(("flow", "input_power")) for station in (best, *worn)]


def _worn(station: Station, energy: float) -> Station:
    """The pump, worn until a volume takes it this much energy, if it doesn't take more when new."""
    if station.reading("energy_per_volume") >= energy:
        return station
    return put(station, "worn_rings", "energy_per_volume", energy)


def _text(seen: Mapping[str, float], units: str) -> str:
    """A pump's readings as an option has them."""
    return ", ".join(shown(name, value, units) for name, value in seen.items())


def _cheapest(pumps: list[dict[str, float]], asked: str, units: str, rule: str) -> Judgement | None:
    """The pump with the least of what is asked; None where two are too close to call."""
    choices = [
        Choice(_text(p, units), p["input_power"], p["flow"], worked(p, asked, units)) for p in pumps
    ]
    best, *others = sorted(choices, key=lambda choice: choice.comes_to)
    if others[0].comes_to < 1.08 * best.comes_to:
        return None

    def said(choice: Choice) -> str:
        return shown(asked, choice.comes_to, units, figures)

    least = min(choice.kilowatts for choice in choices)
    most = max(choice.flow for choice in choices)

    def wrong(at: int, choice: Choice) -> Option:
        says = f"This one comes to {said(choice)}. The best one comes to {said(best)}."
        if choice.kilowatts == least:
            return Option(
                "took_least_kilowatts",
                choice.text,
                f"{says} It draws the fewest kilowatts, but runs longer to fill the tank.",
            )
        if choice.flow == most:
            return Option(
                "took_most_flow",
                choice.text,
                f"{says} It fills the tank fastest, but it draws more kilowatts to do it.",
            )
        return Option(f"dearer_{at}", choice.text, says)

    return Judgement(
        rule,
        "; ".join(f"{choice.text}: {said(choice)}" for choice in choices),
        Option("best", best.text, f"It comes to {said(best)}, the lowest of the three."),
        tuple(wrong(at, choice) for at, choice in enumerate(others, 1)),
    )


def judge_energy(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Three pumps by flow and kilowatts."""
    rule = f"{{energy_per_volume:name}} = {{input_power:name}} × {_volume(units)} / flow"
    return _cheapest(_pumps(values, draw), "energy_per_volume", units, rule)


def judge_price(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Three pumps by flow, kilowatts and the price of their hours."""
    price = draw.between(0.07, 0.16)
    by_energy = sorted(
        _pumps(values, draw), key=lambda seen: worked(seen, "energy_per_volume", units)
    )
    pumps = [
        {**seen, "energy_price": round(price * share, 3)}
        for seen, share in zip(by_energy, draw.pick(PRICES), strict=True)
    ]
    rule = (
        f"{{cost_per_volume:name}} = {{input_power:name}} × {_volume(units)} / flow "
        "× {energy_price:name}"
    )
    return _cheapest(pumps, "cost_per_volume", units, rule)


def _volume(units: str) -> str:
    return exact(HOURLY_VOLUME.figure(units).value)
