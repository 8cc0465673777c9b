"""One problem's arithmetic as bare floats: what the solver's own way is measured against.

It is the motor power of a pump from flow, head and two efficiencies, in US units: the same
number of random draws, the chain, its ten mistakes, and the accepted band, written out by hand.
Nothing is named, explained, worded or checked for other problems.
"""

from random import Random

__all__ = ["bare_case", "bare_grade"]


def _three(value: float) -> float:
    return float(f"{value:.3g}")


def bare_case(seed: int) -> tuple[float, float, float, list[float]]:
    """Answer, low, high and the wrong answers of one pump."""
    chance = Random(f"bare {seed}").random
    size = (5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60, 75, 100)[int(chance() * 12)]
    pump, motor = 0.6 + 0.2 * chance(), 0.86 + 0.08 * chance()
    head = round(18 + 190 * chance())
    flow = round(size * (0.66 + 0.31 * chance()) * pump * 3960 / head / 10) * 10
    place, person, attempt = chance(), chance(), chance()
    water = flow * head / 3960
    brake = water / pump
    answer = brake / motor
    wrong = [
        flow * head * 8.34 / 3960 / pump / motor,
        (flow + head) / 3960 / pump / motor,
        brake / pump / motor,
        flow * head * 3960 / pump / motor,
        flow * head / pump / motor,
        water / (pump * 100) / motor,
        water * pump / motor,
        water / motor,
        brake * motor,
        brake + 0 * (place + person + attempt),
    ]
    others = [flow * head / constant / pump / motor for constant in (3957, 3956)]
    rounded = [_three(water) / pump / motor, _three(brake) / motor]
    low = min(answer, *others, *rounded) * 0.995
    high = max(answer, *others, *rounded) * 1.005
    wrong = [value for value in wrong if not low <= value <= high]
    return answer, low, high, wrong


def bare_grade(case: tuple[float, float, float, list[float]], text: str) -> str:
    """The verdict on a number without a unit."""
    _, low, high, wrong = case
    value = float(text)
    if low <= value <= high:
        return "right"
    near = [w for w in wrong if abs(value - w) <= 0.005 * w]
    return "mistake" if near else "wrong"
