"""The many ways to type a number: each read as one value and said back, or refused."""

import re

import pytest

from solver.errors import Unreadable
from solver.own.record import read_entries
from solver.units.reading import read
from solver.vocabulary import quantity_named

# typed | asked | value in the unit asked | what is said back
READ = """
~12 | hp | 12 | 12 hp
~ 12 hp | hp | 12 | 12 hp
≈12 | hp | 12 | 12 hp
=12.5 | hp | 12.5 | 12.5 hp
= 12.5 hp | hp | 12.5 | 12.5 hp
about 12 | hp | 12 | 12 hp
About 12 hp | hp | 12 | 12 hp
around 12 | hp | 12 | 12 hp
approx 12 | hp | 12 | 12 hp
approx. 12 hp | hp | 12 | 12 hp
approximately 12 | hp | 12 | 12 hp
roughly 12 | hp | 12 | 12 hp
about 12 hp or so | hp | 12 | 12 hp
12 hp approx. | hp | 12 | 12 hp
12.5hp? | hp | 12.5 | 12.5 hp
12.5 hp ? | hp | 12.5 | 12.5 hp
12.5?? | hp | 12.5 | 12.5 hp
12.5! | hp | 12.5 | 12.5 hp
12.5 hp. | hp | 12.5 | 12.5 hp
answer 12.5 | hp | 12.5 | 12.5 hp
Answer: 12.5 hp | hp | 12.5 | 12.5 hp
my answer is 12.5 | hp | 12.5 | 12.5 hp
12.5 horse power | hp | 12.5 | 12.5 hp
12.5 H.P. | hp | 12.5 | 12.5 hp
12.5 kilowatts | kW | 12.5 | 12.5 kW
62 ft 6 in | ft | 62.5 | 62 ft 6 in, which is 62.5 ft
62 ft. 6 in. | ft | 62.5 | 62 ft 6 in, which is 62.5 ft
62 ft, 6 in | ft | 62.5 | 62 ft 6 in, which is 62.5 ft
62 feet and 6 inches | ft | 62.5 | 62 ft 6 in, which is 62.5 ft
62ft6in | ft | 62.5 | 62 ft 6 in, which is 62.5 ft
62' 6" | ft | 62.5 | 62 ft 6 in, which is 62.5 ft
62'6" | ft | 62.5 | 62 ft 6 in, which is 62.5 ft
62'-6" | ft | 62.5 | 62 ft 6 in, which is 62.5 ft
62’ 6” | ft | 62.5 | 62 ft 6 in, which is 62.5 ft
62′ 6″ | ft | 62.5 | 62 ft 6 in, which is 62.5 ft
62' 6'' | ft | 62.5 | 62 ft 6 in, which is 62.5 ft
62'6 | ft | 62.5 | 62 ft 6 in, which is 62.5 ft
3 ft 4 1/2 in | ft | 3.375 | 3 ft 4.5 in, which is 3.375 ft
3 ft 4.5 in | in | 40.5 | 3 ft 4.5 in, which is 40.5 in
-2 ft 6 in | ft | -2.5 | -2 ft 6 in, which is -2.5 ft
about 62 ft 6 in | ft | 62.5 | 62 ft 6 in, which is 62.5 ft
1,062 ft 6 in | ft | 1062.5 | 1,062 ft 6 in, which is 1,062 ft
4 m 20 cm | m | 4.2 | 4 m 20 cm, which is 4.2 m
1 hr 15 min | h | 1.25 | 1 hour 15 min, which is 1.25 hours
1 h 15 m | h | 1.25 | 1 hour 15 min, which is 1.25 hours
1h15m | h | 1.25 | 1 hour 15 min, which is 1.25 hours
1 hour and 15 minutes | h | 1.25 | 1 hour 15 min, which is 1.25 hours
1 hour, 15 mins | min | 75 | 1 hour 15 min, which is 75 min
1 hr 15 min 36 s | h | 1.26 | 1 hour 15 min 36 s, which is 1.26 hours
1 min 52 s | min | 1.8666666666666667 | 1 min 52 s, which is 1.867 min
1m 52s | min | 1.8666666666666667 | 1 min 52 s, which is 1.867 min
2 days 6 hours | h | 54 | 2 days 6 hours, which is 54 hours
2 days 6 hours | day | 2.25 | 2 days 6 hours, which is 2.25 days
1 hr 15 min | h/day | 1.25 | 1 hour 15 min, which is 1.25 hours per day
1 hr 15 min a day | h/day | 1.25 | 1 hour 15 min a day, which is 1.25 hours per day
1 hr 15 min per day | h/day | 1.25 | 1 hour 15 min a day, which is 1.25 hours per day
12 dollars and 50 cents | $ | 12.5 | $12 and 50 cents, which is $12.50
12 dollars 50 cents | $ | 12.5 | $12 and 50 cents, which is $12.50
1:15 | h | 1.25 | 1 hour 15 min, which is 1.25 hours
1:15 | min | 1.25 | 1 min 15 s, which is 1.25 min
1:15 | s | 75 | 1 min 15 s, which is 75 s
1:15 | h/day | 1.25 | 1 hour 15 min, which is 1.25 hours per day
0:45 | min | 0.75 | 0 min 45 s, which is 0.75 min
90:30 | min | 90.5 | 90 min 30 s, which is 90.5 min
1:52.5 | min | 1.875 | 1 min 52.5 s, which is 1.875 min
1:30:00 | h | 1.5 | 1 hour 30 min 0 s, which is 1.5 hours
1:15:36 | h | 1.26 | 1 hour 15 min 36 s, which is 1.26 hours
1:52:30 | min | 112.5 | 1 hour 52 min 30 s, which is 112.5 min
1:15 hr | h | 1.25 | 1 hour 15 min, which is 1.25 hours
1:15 hours | min | 75 | 1 hour 15 min, which is 75 min
1:15 min | min | 1.25 | 1 min 15 s, which is 1.25 min
about 1:15 | h | 1.25 | 1 hour 15 min, which is 1.25 hours
2.1:1 |  | 2.1 | 2.1:1, which is 2.1
2.1 : 1 |  | 2.1 | 2.1:1, which is 2.1
2.1 to 1 |  | 2.1 | 2.1:1, which is 2.1
3:1 |  | 3 | 3:1, which is 3
3 mil gal | gal | 3000000 | 3 MG, which is 3,000,000 gal
3 mil. gal | MG | 3 | 3 MG
3 million gallons | MG | 3 | 3 MG
3 million | gal | 3000000 | 3,000,000 gal
12 thousand | gal | 12000 | 12,000 gal
12 thousand gallons | gal | 12000 | 12 kgal, which is 12,000 gal
1.2 million kWh | kWh | 1200000 | 1,200,000 kWh
12k | gal | 12000 | 12,000 gal
12.5K | gal | 12500 | 12,500 gal
12k gal | gal | 12000 | 12,000 gal
12K gal | gal | 12000 | 12,000 gal
12.5k W | kW | 12.5 | 12,500 W, which is 12.5 kW
12k | ohm | 12000 | 12,000 ohms
12.6k |  | 12600 | 12,600
$12k | $ | 12000 | $12,000
$1.2M | $ | 1200000 | $1,200,000
$12k a year | $/year | 12000 | $12,000/year
$ 1.5k/month | $/year | 18000 | $1,500/month, which is $18,000/year
500 meg ohms | megohm | 500 | 500 megohms
500 meg-ohms | megohm | 500 | 500 megohms
500 Meg Ohm | megohm | 500 | 500 megohms
500 mega ohms | megohm | 500 | 500 megohms
500 meg | megohm | 500 | 500 megohms
500 M | megohm | 500 | 500 megohms
500M | megohm | 500 | 500 megohms
500 MΩ | megohm | 500 | 500 megohms
500 M Ω | megohm | 500 | 500 megohms
500 Mohm | megohm | 500 | 500 megohms
500 Mohms | megohm | 500 | 500 megohms
500 M ohms | megohm | 500 | 500 megohms
0.5 gigohms | megohm | 500 | 0.5 gigohm, which is 500 megohms
500 mohm | ohm | 0.5 | 500 milliohm, which is 0.5 ohms
500 mohm | milliohm | 500 | 500 milliohm
500 milliohms | megohm | 5e-7 | 500 milliohm, which is 0.0000005 megohms
82% eff | % | 82 | 82%
82 eff | % | 82 | 82%
.82 eff | % | 82 | 0.82, which is 82%
82 % efficiency | % | 82 | 82%
82 percent efficient | % | 82 | 82%
eff 82% | % | 82 | 82%
efficiency = .82 | % | 82 | 0.82, which is 82%
7.05/9.03 | % | 78.07308970099668 | 7.05 / 9.03 = 0.7807, which is 78.07%
6 per hour | starts/h | 6 | 6 starts per hour
6 an hour | starts/h | 6 | 6 starts per hour
6 each hour | starts/h | 6 | 6 starts per hour
6/hr | starts/h | 6 | 6 starts per hour
6 / hour | starts/h | 6 | 6 starts per hour
6 times an hour | starts/h | 6 | 6 starts per hour
6 times per hour | starts/h | 6 | 6 starts per hour
6 starts | starts/h | 6 | 6 starts per hour
6 starts an hour | starts/h | 6 | 6 starts per hour
6 starts per hour | starts/h | 6 | 6 starts per hour
6 cycles/hr | starts/h | 6 | 6 starts per hour
8 hours a day | h/day | 8 | 8 hours per day
8 hrs each day | h/day | 8 | 8 hours per day
8 hr/day | h/day | 8 | 8 hours per day
8 a day | h/day | 8 | 8 hours per day
8 per day | h/day | 8 | 8 hours per day
0.12 per kWh | $/kWh | 0.12 | $0.12/kWh
12 cents a kWh | $/kWh | 0.12 | 12 cents/kWh, which is $0.12/kWh
50 a month | $/year | 600 | $50/month, which is $600.00/year
450 gallons a minute | gpm | 450 | 450 gpm
10^3 | gpm | 1000 | 10^3 = 1,000 gpm
10³ | gpm | 1000 | 10^3 = 1,000 gpm
1.2x10^3 | gpm | 1200 | 1.2 × 10^3 = 1,200 gpm
1.2 x 10^3 gpm | gpm | 1200 | 1.2 × 10^3 = 1,200 gpm
1.2*10^3 | gpm | 1200 | 1.2 × 10^3 = 1,200 gpm
1.2×10³ | gpm | 1200 | 1.2 × 10^3 = 1,200 gpm
2.5 x 10^-1 | hp | 0.25 | 2.5 × 10^-1 = 0.25 hp
150*66/3960 | hp | 2.5 | 150 × 66 / 3,960 = 2.5 hp
=150*66/3960 | hp | 2.5 | 150 × 66 / 3,960 = 2.5 hp
150 * 66 / 3,960 hp | hp | 2.5 | 150 × 66 / 3,960 = 2.5 hp
150 x 66 / 3960 | hp | 2.5 | 150 × 66 / 3,960 = 2.5 hp
150 × 66 ÷ 3960 | hp | 2.5 | 150 × 66 / 3,960 = 2.5 hp
(150*66)/3960 | hp | 2.5 | (150 × 66) / 3,960 = 2.5 hp
150*66/3960 = 2.5 | hp | 2.5 | 150 × 66 / 3,960 = 2.5 hp
150*66/3960=2.5 hp | hp | 2.5 | 150 × 66 / 3,960 = 2.5 hp
450*66/(3960*.75) | hp | 10 | 450 × 66 / (3,960 × 0.75) = 10 hp
16*(875/1750)^3 | hp | 2 | 16 × (875 / 1,750)^3 = 2 hp
2*746 W | kW | 1.492 | 2 × 746 = 1,492 W, which is 1.492 kW
9900/3960 | hp | 2.5 | 9,900 / 3,960 = 2.5 hp
9900/3960/.5 | hp | 5 | 9,900 / 3,960 / 0.5 = 5 hp
1/0.5 | hp | 2 | 1 / 0.5 = 2 hp
41/50 | hp | 0.82 | 0.82 hp
12+13 | hp | 25 | 12 + 13 = 25 hp
12.5 + 1.5 ft | ft | 14 | 12.5 + 1.5 = 14 ft
104 - 42 | ft | 62 | 104 - 42 = 62 ft
5² | hp | 25 | 5^2 = 25 hp
9.03 mhp | hp | 9.03 | 9.03 hp
9.03mhp | hp | 9.03 | 9.03 hp
9.03 MHP | kW | 6.7336698403879 | 9.03 hp, which is 6.734 kW
9.03 motor hp | hp | 9.03 | 9.03 hp
12 bhp | hp | 12 | 12 hp
120 ft-lb | lb-ft | 120 | 120 lb-ft
120 foot pounds | lb-ft | 120 | 120 lb-ft
12 water hp | hp | 12 | 12 hp
12 water horsepower | hp | 12 | 12 hp
12 brake horsepower. | hp | 12 | 12 hp
MHP = 9.03 | hp | 9.03 | 9.03 hp
mhp: 9.03 hp | hp | 9.03 | 9.03 hp
MHP 9.03 | hp | 9.03 | 9.03 hp
the motor horsepower is 9.03 | hp | 9.03 | 9.03 hp
.85 pf |  | 0.85 | 0.85
pf .85 |  | 0.85 | 0.85
0.85 power factor |  | 0.85 | 0.85
PF = 0.85 |  | 0.85 | 0.85
62 tdh | ft | 62 | 62 ft
62 ft tdh | ft | 62 | 62 ft
62 ft of TDH | ft | 62 | 62 ft
TDH = 62 ft | ft | 62 | 62 ft
TDH is about 62 ft 6 in | ft | 62.5 | 62 ft 6 in, which is 62.5 ft
62 feet of total dynamic head | ft | 62 | 62 ft
62 feet of water | m | 18.8976 | 62 ft, which is 18.9 m
150*66/3960 whp | hp | 2.5 | 150 × 66 / 3,960 = 2.5 hp
hp 12.5 | hp | 12.5 | 12.5 hp
kW: 12.5 | kW | 12.5 | 12.5 kW
ft 62 | ft | 62 | 62 ft
USD 12.50 | $ | 12.5 | $12.50
$ 12.50 / day | $/day | 12.5 | $12.50/day
12 dollars | $ | 12 | $12
12 cents | $ | 0.12 | 12 cents, which is $0.12
12¢ | $ | 0.12 | 12 cents, which is $0.12
12.50 dollars a day | $/day | 12.5 | $12.50/day
20 C | °F | 68 | 20 °C, which is 68 °F
"""

# typed | asked | what the refusal must say
REFUSED = """
3,5 kg | kg | Type 3.5 if you mean that.
1.234,5 m | m | Type 1234.5 if you mean that.
1 234 m | m | Type 1234 if you mean that.
1 234,5 | hp | Type 1234.5 if you mean that.
1 234,5 hp | hp | Type 1234.5 if you mean that.
1 234 567,5 | hp | Type 1234567.5 if you mean that.
1 234.5 | hp | Type 1234.5 if you mean that.
$1 234,50 | $ | Type $1234.50 if you mean that.
1'234 | hp | an apostrophe inside its number
1'234 | ft | an apostrophe inside its number
1,5 | hp | Type 1.5 if you mean that.
0,125 | hp | Type 0.125 if you mean that.
~12,5 | hp | Type 12.5 if you mean that.
about 1,5 | hp | Type 1.5 if you mean that.
5;6 | hp | more than one number
20 C | gpm | °C is a temperature
MG/L | gpm | has no number in it
9**9**9 | hp | can't be worked out here
9^9^9^9 | hp | can't be worked out here
9^9 | hp | can't be worked out here
(9^5)^5 | hp | Type
2^-3 | hp | can't be worked out here
10^99 | hp | can't be worked out here
10^15*10^15 | hp | is too large
nan | hp | can't be graded
-inf | hp | can't be graded
12 hp hp | hp | more than one unit
3 1/2/2 | hp | Type
3 - 1/2 | hp | Type just one
500 mohm | megohm | Type 500 megohms or 500 milliohms.
500 mohms | megohm | Type 500 megohms or 500 milliohms.
500 m ohm | megohm | Type 500 megohms or 500 milliohms.
500 mΩ | megohm | Type 500 megohms or 500 milliohms.
about 500 mohm | megohm | Type 500 megohms or 500 milliohms.
500 mohms | ohm | Type 500 megohms or 500 milliohms.
500 M | ft | isn't a unit
500 m | megohm | m is a length
12 mW | kW | Type 12 megawatts or 12 milliwatts.
12 mw | kW | Type 12 megawatts or 12 milliwatts.
12k | kW | could mean 12 or 12,000 here
12k | kWh | such as 12,000 kWh
12k | megohm | could mean 12 or 12,000 here
12k | °F | could mean 12 or 12,000 here
12k kW | kW | could mean
3 million | MG | could mean 3 or 3,000,000 here
3M | gal | isn't a unit
62 ft 14 in | ft | which is 1 ft or more
62.5 ft 6 in | ft | more than one number
62 ft 6 | ft | more than one number
6 in 62 ft | ft | more than one number
62 ft 6 gal | ft | more than one number
5 m 3 s | m | more than one number
1 hr 75 min | h | which is 1 hour or more
1 hr 15 min | hp | h is a time
62 ft 6 in | hp | ft is a length
1:15 | day | Type the one you mean.
1:75 | h | 60 or more
1:5 | min | more than one number
1:52:00 | min | could be 1 hr 52 min or 1 min 52 s
1:15 pm | h | Type the one you mean.
1:15.5 | h | Type the one you mean.
1:15 | hp | more than one number
1:15 | ft | more than one number
1:2 |  | more than one number
12-13 | hp | a range or a subtraction
12 - 13 | hp | a range or a subtraction
104-42 | ft | a range or a subtraction
10 to 12 | hp | more than one number
12 or 13 | hp | more than one number
12+-1 | hp | Type
12 ± 1 | hp | Type
5/1/2024 | hp | looks like a date
2024-05-31 | hp | looks like a date
1/2/24 | ft | looks like a date
150 gpm * 66 ft / 3960 | hp | can't be worked out here
150*66/0 | hp | divides by zero
1/0 | hp | divides by zero
150*66/3960 = 3 | hp | 150 × 66 / 3,960 is 2.5
150*66/3960 zork | hp | Type
150*/3960 | hp | Type
150**66 | hp | can't be worked out here
2(3) | hp | Type
(12.5) | hp | Type
((((((2*3)))))) | hp | Type
6 x 8 in | in | Type
0x12 | hp | isn't a plain number
1_000 | hp | isn't a plain number
1.2.3 | hp | more than one number
1.2.3*4 | hp | Type
12,34*5 | hp | Type
1 234*5 | hp | Type
450*62/1000 gal | gal | Type
>500 | megohm | is a limit
< 12 | hp | is a limit
over 500 | megohm | is a limit
at least 12 | hp | is a limit
62 tdh | gpm | "tdh" is total dynamic head. This asks for a flow.
62 tdh | in | "tdh" doesn't say its unit.
tdh = 62 | hp | "tdh" is total dynamic head.
62 tdh 3 | ft | more than one number
82% eff | hp | Type
hp 12.5 kW | hp | Type
twelve | hp | has no number in it
about twelve | hp | has no number in it
about | hp | has no number in it
= | hp | has no number in it
? | hp | has no number in it
12 zork | hp | isn't a unit
12 hp (9.3 kW) | hp | more than one number
import os; 5 | hp | Type
12; import os | hp | Type
__import__('os') 5 | hp | Type
6 per zork | starts/h | Type
6 per hour | gpm | Type
"""


def rows(table: str, columns: int) -> list[tuple[str, ...]]:
    split = [tuple(cell.strip() for cell in line.split("|")) for line in table.strip().split("\n")]
    assert {columns} == {len(row) for row in split}
    return split


READ_ROWS, REFUSED_ROWS = rows(READ, 4), rows(REFUSED, 3)


def test_at_least_two_hundred_and_fifty_forms_are_tried():
    assert len({row[:2] for row in READ_ROWS + REFUSED_ROWS}) >= 250


@pytest.mark.parametrize(("text", "asked", "value", "echo"), READ_ROWS)
def test_a_form_that_people_type_is_read_and_said_back(text, asked, value, echo):
    reading = read(text, asked, bare_fraction=asked == "%")
    assert float(value) == pytest.approx(reading.value, rel=1e-12)
    assert echo == reading.echo


@pytest.mark.parametrize(("text", "asked", "says"), REFUSED_ROWS)
def test_what_may_mean_two_things_or_nothing_is_refused_and_says_why(text, asked, says):
    with pytest.raises(Unreadable, match=re.escape(says)):
        read(text, asked, bare_fraction=asked == "%")


@pytest.mark.parametrize("text", [f"{row[0]} {row[1]}" for row in READ_ROWS if row[1] == "hp"])
def test_a_form_is_never_a_try_at_another_kind(text):
    with pytest.raises(Unreadable):
        read(text, "psi")


@pytest.mark.parametrize(
    ("text", "asked", "echo"),
    [
        ("12 bhp", "motor_power", '12 hp. You wrote "bhp", but this asks for motor horsepower (MHP)'),
        ("12 mhp", "brake_power", '12 hp. You wrote "mhp", but this asks for brake horsepower (BHP)'),
        ("BHP = 12", "motor_power", '12 hp. You wrote "BHP", but this asks for motor horsepower (MHP)'),
        ("62 tdh", "static_head", '62 ft. You wrote "tdh", but this asks for static head'),
        ("12 mhp", "motor_power", "12 hp"),
        ("12 hp", "motor_power", "12 hp"),
        ("12 kW", "water_power", "12 kW, which is 16.09 hp"),
    ],
)  # fmt: skip
def test_the_name_of_another_quantity_of_the_kind_is_read_and_told(text, asked, echo):
    quantity = quantity_named(asked)
    assert echo == read(text, quantity.us, quantity=quantity).echo


def test_the_name_of_another_ratio_is_refused():
    asked = quantity_named("pump_efficiency")
    with pytest.raises(
        Unreadable, match=r'^"pf" is power factor\. This asks for pump efficiency\.'
    ):
        read(".85 pf", "%", bare_fraction=True, quantity=asked)


@pytest.mark.parametrize(
    ("name", "text", "value", "says"),
    [
        ("drawdown_time", "1:52", 112.0, '"1:52" counts as 1 min 52 s, which is 112 s.'),
        ("discharge_gauge_height", "3 ft 4 in", 3.3333333333,
         '"3 ft 4 in" counts as 3 ft 4 in, which is 3.333 ft.'),
        ("discharge_gauge_height", "62 tdh", 62.0,
         '"62 tdh" counts as 62 ft. You wrote "tdh", '
         "but this asks for height of the discharge gauge above the pump."),
        ("flow", "225*2", 450.0, '"225*2" counts as 225 × 2 = 450 gpm.'),
        ("flow", "about 450", 450.0, None),
    ],
)  # fmt: skip
def test_a_record_says_what_an_uncommon_form_counts_as(name, text, value, says):
    record, faults = read_entries({name: text})
    assert value == pytest.approx(record.values[name])
    assert ([says] if says else []) == [fault.says for fault in faults]


def test_the_date_of_a_record_is_still_a_date():
    record, faults = read_entries({"date": "2024-05-31"})
    assert ("2024-05-31", ()) == (record.texts["date"], faults)
