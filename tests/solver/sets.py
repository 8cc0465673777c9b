"""Sets of work that tests share: any there can be, and one of a trainer's own plant."""

from hypothesis import strategies as st

from solver import FAMILIES
from solver.sets.own_plant import plant_of
from solver.sets.paper import CHAPTERS
from solver.sets.work_set import MOST, TOP, set_of
from solver.topics.catalogue import CATALOGUE

NAMES = tuple(family.name for family in FAMILIES)
PUMP = {"name": "Pump 2", "station": "the Quarry Road lift station"}
PLANT = plant_of(
    {
        "name": "Marlow Bend",
        "people": ["the day operator", "the night operator"],
        "pumps": [
            PUMP | {"ranges": {"flow": [300, 900], "head": [30, 90]}},
            {"name": "the small pump", "station": "the effluent building"},
        ],
    }
)
SETS = st.builds(
    lambda chapters, families, **keys: set_of(
        chapters=chapters, families=families or (["brake_power"] if not chapters else []), **keys
    ),
    st.lists(st.sampled_from(CHAPTERS), max_size=3, unique=True),
    st.lists(st.sampled_from(NAMES), max_size=4, unique=True),
    level=st.integers(0, TOP),
    units=st.sampled_from(["us", "si"]),
    count=st.integers(1, MOST),
    each=st.booleans(),
    seed=st.integers(0, 999_999_999) | st.integers(0, 99),
    catalogue=st.integers(1, CATALOGUE),
)
WORK = set_of(chapters=["horsepower", "head"], level=2, count=20, seed=48213)
