"""Judgments of the cost chapter: the offer that pays back first, the pump cheaper to run."""

from collections.abc import Mapping
from typing import NamedTuple

from solver.engine.draw import Draw
from solver.engine.family import Judgement, Option
from solver.topics.constants import HOURLY_VOLUME
from solver.topics.drawn.pumps import pump
from solver.topics.drawn.readings import noted
from solver.units.show import exact, figures, with_unit

from .scenes import energy_price

__all__ = ["judge_energy", "judge_payback", "judge_price", "judge_upgrade"]


class Offer(NamedTuple):
    """What is offered, in words; its cost, its saving in a year, its payback in years."""

    text: str
    cost: float
    saving: float

    @property
    def years(self) -> float:
        return self.cost / self.saving


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
            Offer(f"{_dollars(cost)} installed, saves {_dollars(saving)} a year", cost, saving)
            for cost, saving in zip(_costs(draw, savings), savings, strict=True)
        ]
    )


def judge_upgrade(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Three offers by cost and kilowatts saved, for the hours and the price of the level."""
    base = draw.between(1.2, 9)
    kilowatts = [noted(base * share, 2) for share in (1, draw.between(1.3, 1.6), 2.2)]
    savings = tuple(kw * values["yearly_hours"] * values["energy_price"] for kw in kilowatts)
    return _first_to_pay(
        [
            Offer(f"{_dollars(cost)} installed, saves {kw:g} kW", cost, saving)
            for cost, saving, kw in zip(_costs(draw, savings), savings, kilowatts, strict=True)
        ]
    )


class Choice(NamedTuple):
    """A pump by its flow, its kilowatts and its price; `energy` is what one volume takes."""

    text: str
    kilowatts: float
    flow: float
    price: float
    energy: float


def _pumps(units: str, draw: Draw, prices: list[float]) -> list[Choice]:
    """Three pumps at one station, whose energy for a volume is at least a tenth apart."""
    base = pump(draw, units)
    flows = [noted(base["flow"] * share, 2) for share in (0.6, 1, 1.5)]
    volume = HOURLY_VOLUME.figure(units).value
    energy = base["input_power"] * volume / base["flow"]
    found = []
    for flow, share, price in zip(flows, draw.shuffled((1, 1.13, 1.3)), prices, strict=True):
        kilowatts = noted(flow * energy * share / volume)
        text = f"{with_unit(exact(flow), 'gpm' if units == 'us' else 'L/s')}, {kilowatts:g} kW"
        found.append(Choice(text, kilowatts, flow, price, kilowatts * volume / flow))
    return found


def _cheapest(pumps: list[Choice], units: str, cost_of, unit: str, rule: str) -> Judgement | None:
    """The pump of least `cost_of` a volume; None where two are too close to call."""
    best, *others = sorted(pumps, key=cost_of)
    if cost_of(others[0]) < 1.08 * cost_of(best):
        return None

    def shown(choice: Choice) -> str:
        return with_unit(figures(cost_of(choice), "$" if unit[0] == "$" else ""), unit)

    least = min(choice.kilowatts for choice in pumps)
    most = max(choice.flow for choice in pumps)

    def wrong(at: int, choice: Choice) -> Option:
        says = f"This one comes to {shown(choice)}. The best one comes to {shown(best)}."
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
        "; ".join(f"{choice.text}: {shown(choice)}" for choice in pumps),
        Option("best", best.text, f"It comes to {shown(best)}, the lowest of the three."),
        tuple(wrong(at, choice) for at, choice in enumerate(others, 1)),
    )


def judge_energy(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Three pumps by flow and kilowatts."""
    unit = "kWh/MG" if units == "us" else "kWh/1000 m3"
    pumps = _pumps(units, draw, [1.0, 1.0, 1.0])
    rule = f"{{energy_per_volume:name}} = {{input_power:name}} × {_volume(units)} / flow"
    return _cheapest(pumps, units, lambda choice: choice.energy, unit, rule)


def judge_price(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Three pumps by flow, kilowatts and the price of their hours."""
    unit = "$/MG" if units == "us" else "$/1000 m3"
    pumps = [
        choice._replace(text=f"{choice.text}, {with_unit(exact(choice.price), '$/kWh')}")
        for choice in _pumps(units, draw, [energy_price(draw) for _ in range(3)])
    ]
    rule = (
        f"{{cost_per_volume:name}} = {{input_power:name}} × {_volume(units)} / flow "
        "× {energy_price:name}"
    )
    return _cheapest(pumps, units, lambda choice: choice.energy * choice.price, unit, rule)


def _volume(units: str) -> str:
    return exact(HOURLY_VOLUME.figure(units).value)
