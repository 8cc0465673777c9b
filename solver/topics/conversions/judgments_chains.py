"""Which chain of conversions is set up right: every link true, every unit but one cancelled."""

from collections import Counter
from collections.abc import Mapping
from typing import NamedTuple

from solver.engine.draw import Draw
from solver.engine.judgement import Judge, Judgement, Option
from solver.units.show import exact

__all__ = ["CHANNEL", "POWER", "REPORT", "judge_chain"]

ON_THE_WATER = "Which chain gives the power that goes into the water, in {}?"
RULE = "every link must be true, and every unit must cancel except the one you want"


class Link(NamedTuple):
    """A conversion written as a fraction: so much over so much of the same thing."""

    over: str
    under: str

    @property
    def turned(self) -> "Link":
        """The same link upside down."""
        return Link(self.under, self.over)

    def __str__(self) -> str:
        return f"({self.over} / {self.under})"


class Chain(NamedTuple):
    """What is known and in which units it is written, what is wanted, and the links between.

    `false` is an untrue link, by its place, and what is wrong with it.
    """

    known: Mapping[str, str]
    wanted: str
    links: tuple[Link, ...]
    false: tuple[int, Link, str]
    asks: str = "Which chain of conversions changes that to {}?"


REPORT = {
    "us": Chain(
        {"daily_flow": "MG/day"},
        "gal/min",
        (Link("1,000,000 gal", "1 MG"), Link("1 day", "1,440 min")),
        (1, Link("1 day", "60 min"), "An hour has 60 minutes. A day has 1,440."),
    ),
    "si": Chain(
        {"daily_flow": "m³/day"},
        "L/s",
        (Link("1,000 L", "1 m³"), Link("1 day", "86,400 s")),
        (1, Link("1 day", "3,600 s"), "An hour has 3,600 seconds. A day has 86,400."),
    ),
}
CHANNEL = {
    "us": Chain(
        {"flow_per_second": "ft³/s"},
        "MG/day",
        (Link("7.48 gal", "1 ft³"), Link("86,400 s", "1 day"), Link("1 MG", "1,000,000 gal")),
        (
            0,
            Link("8.34 gal", "1 ft³"),
            "The 8.34 is pounds per gallon. A cubic foot holds 7.48 gallons.",
        ),
    ),
    "si": Chain(
        {"flow_per_second": "m³/s"},
        "ML/day",
        (Link("86,400 s", "1 day"), Link("1 ML", "1,000 m³")),
        (1, Link("1 ML", "100 m³"), "A megaliter is 1,000 cubic meters."),
    ),
}
POWER = {
    "us": Chain(
        {"flow": "gal/min", "head": "ft"},
        "kW",
        (Link("8.34 lb", "1 gal"), Link("1 hp", "33,000 ft-lb/min"), Link("0.746 kW", "1 hp")),
        (
            1,
            Link("1 hp", "3,960 ft-lb/min"),
            "The 3,960 already includes the 8.34. One horsepower is 33,000 ft-lb/min.",
        ),
        ON_THE_WATER,
    ),
    "si": Chain(
        {"flow": "L/s", "head": "m"},
        "kW",
        (Link("9.81 N", "1 L"), Link("1 kW", "1,000 N-m/s")),
        (
            1,
            Link("1 kW", "102 N-m/s"),
            "The 102 already includes the 9.81. One kilowatt is 1,000 N-m/s.",
        ),
        ON_THE_WATER,
    ),
}


def units_of(text: str) -> Counter[str]:
    """The units of "33,000 ft-lb/min", each with its power: ft 1, lb 1, min -1."""
    over, _, under = text.rpartition(" ")[2].partition("/")
    powers = Counter(over.split("-"))
    powers.subtract(filter(None, under.split("-")))
    return powers


def what_is_left(start: tuple[str, ...], links: tuple[Link, ...]) -> str:
    """The units that do not cancel, written as one fraction."""
    powers: Counter[str] = Counter()
    for text in start:
        powers.update(units_of(text))
    for link in links:
        powers.update(units_of(link.over))
        powers.subtract(units_of(link.under))
    over, under = ([u for u, n in powers.items() for _ in range(n * sign)] for sign in (1, -1))
    return "-".join(over or ["1"]) + ("/" + "-".join(under)) * bool(under)


def judge_chain(chains: Mapping[str, Chain]) -> Judge:
    """The right chain among one with an untrue link, one with a link turned, one with a gap."""

    def chosen(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
        chain = chains[units]
        start = tuple(f"{exact(values[name])} {unit}" for name, unit in chain.known.items())

        def text(links: tuple[Link, ...]) -> str:
            return " × ".join((*start, *map(str, links)))

        def wrong(id: str, links: tuple[Link, ...], does: str) -> Option:
            left = what_is_left(start, links)
            return Option(id, text(links), f"{does} That leaves {left}, not {chain.wanted}.")

        places = draw.shuffled(range(len(chain.links)))
        turned, gap = places[:2]
        before, (at, link, says) = chain.links, chain.false
        return Judgement(
            RULE,
            f"{text(before)} leaves {what_is_left(start, before)}",
            Option("right", text(before), f"Every unit cancels except {chain.wanted}."),
            (
                Option("false_link", text((*before[:at], link, *before[at + 1 :])), says),
                wrong(
                    "turned",
                    (*before[:turned], before[turned].turned, *before[turned + 1 :]),
                    "One link is upside down.",
                ),
                wrong("gap", (*before[:gap], *before[gap + 1 :]), "One link is missing."),
            ),
            chain.asks.format(chain.wanted),
        )

    return chosen
