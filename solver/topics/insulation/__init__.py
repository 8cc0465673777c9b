"""Insulation and windings.

| file | what it has |
|---|---|
| `quantities.py` | megohms, leakage, temperatures, the two ratios, times on ground, ohms of the windings |
| `formulas.py` | a reading brought to 40 °C, ratios, the kV + 1 rule, unbalance of the ohms |
| `windings.py` | the windings under test, and what the families share |
| `problems.py` | the families that ask for a number, and the chapter in the order of teaching |
| `judgments_test.py` | the test voltage, and the time on ground after the test |
| `judgments_megohms.py` | the least megohms, and the trend over the years |
| `judgments_readings.py` | within one test: falling or rising, absorption ratio, polarization index |
| `judgments_windings.py` | ohms between leads: their limit, and what a fault makes of them |
| `by_hand.py` | each number worked in plain numbers |
| `insulation_tests.csv` | the published test volts |
"""
