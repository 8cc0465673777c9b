"""Sets of work that tests share: any there can be, and one of a trainer's own plant."""

from hypothesis import strategies as st

from solver.sets.own_plant import plant_of
from solver.sets.work_set import MOST, TOP, set_of
from solver.topics.catalogue import CATALOGUE, chapters_at, kinds_at

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


def sets_at(catalogue: int):
    """Any set that could be made from a catalogue, of the chapters and families it has."""
    return st.builds(
        lambda chapters, families, **keys: set_of(
            chapters=chapters,
            families=families or (["brake_power"] if not chapters else []),
            **keys,
        ),
        st.lists(st.sampled_from(chapters_at(catalogue)), max_size=3, unique=True),
        st.lists(
            st.sampled_from([k.name for k in kinds_at(catalogue) if k.family]),
            max_size=4,
            unique=True,
        ),
        level=st.integers(0, TOP),
        units=st.sampled_from(["us", "si"]),
        count=st.integers(1, MOST),
        each=st.booleans(),
        seed=st.integers(0, 999_999_999) | st.integers(0, 99),
        catalogue=st.just(catalogue),
    )


SETS = st.integers(1, CATALOGUE).flatmap(sets_at)
WORK = set_of(chapters=["horsepower", "head"], level=2, count=20, seed=48213)
