"""Judgments of the cost chapter: the offer that pays back first, the pump cheaper to run."""

from collections.abc import Mapping
from typing import NamedTuple

from solver.engine.draw import Draw
from solver.engine.family import Judgement, Option
from solver.topics.constants import HOURLY_VOLUME
from solver.topics.drawn.pumps import pump
from solver.topics.drawn.readings import noted, only, shown
from solver.units.show import exact, figures, with_unit

from .scenes import energy_price, worked

__all__ = ["judge_energy", "judge_payback", "judge_price", "judge_upgrade"]


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
    """The offer of the shortest payback; None where two cost the same."""
    if len({offer.cost for offer in offers}) < len(offers):
        return None
    first, *later = sorted(offers, key=lambda offer: offer.years)
    least_cost = min(offer.cost for offer in offers)
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


def judge_payback(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Three offers by cost and yearly saving."""
    base = draw.between(700, 6000)
    savings = tuple(noted(base * share, 2) for share in (1, draw.between(1.3, 1.6), 2.2))
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
    base = draw.between(1.2, 9)
    kilowatts = [noted(base * share, 2) for share in (1, draw.between(1.3, 1.6), 2.2)]
    known = only(values, "yearly_hours", "energy_price")
    savings = tuple(
        worked({"saved_power": kw, **known}, "yearly_saving", units) for kw in kilowatts
    )
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


def _pumps(units: str, draw: Draw) -> list[dict[str, float]]:
    """Three pumps at one station, whose energy for a volume is at least a tenth apart."""
    base = pump(draw, units)
    flows = [noted(base["flow"] * share, 2) for share in (0.6, 1, 1.5)]
    energy = worked(only(base, "input_power", "flow"), "energy_per_volume", units)
    volume = HOURLY_VOLUME.figure(units).value
    return [
        {"flow": flow, "input_power": noted(flow * energy * share / volume)}
        for flow, share in zip(flows, draw.shuffled((1, 1.13, 1.3)), strict=True)
    ]


def _text(seen: Mapping[str, float], units: str) -> str:
    """A pump's readings as an option has them."""
    return ", ".join(shown(name, value, units, _bare) for name, value in seen.items())


def _bare(value: float, unit: str) -> str:
    """A number as it is, without the cents of money."""
    return exact(value)


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
    return _cheapest(_pumps(units, draw), "energy_per_volume", units, rule)


def judge_price(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Three pumps by flow, kilowatts and the price of their hours."""
    prices = [energy_price(draw) for _ in range(3)]
    pumps = [
        {**seen, "energy_price": price}
        for seen, price in zip(_pumps(units, draw), prices, strict=True)
    ]
    rule = (
        f"{{cost_per_volume:name}} = {{input_power:name}} × {_volume(units)} / flow "
        "× {energy_price:name}"
    )
    return _cheapest(pumps, "cost_per_volume", units, rule)


def _volume(units: str) -> str:
    return exact(HOURLY_VOLUME.figure(units).value)
