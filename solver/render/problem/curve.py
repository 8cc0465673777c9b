"""Head against flow: the pump's curve, the system's, the point where they cross, or a point beside the rated one.

The curves are the same in every problem. Only a reading that is given beside the rated one, or beside the
best, is where it is.
"""

from solver.render.svg import ACCENT, LOOK, SOFT, Look, across, circle, element, line, path

from .drawing import Drawing, Drawn
from .shown import LINE, Rows, Shown, words

__all__ = ["BEST_POINT", "CURVE"]

TOP, FOOT, LEFT = 8.0, 108.0, 0.6  # px and percent: the axes
STEPS = 24
SHUTOFF, STATIC = 28.0, 84.0  # px: where the curves begin
PUMP, SYSTEM = 72 / 95**2, -44 / 80**2  # px down by the square of a percent along
PAIR = PUMP / 4  # two pumps give twice the flow at the same head
DUTY, BOTH_PUMPS, RATED, BEST, FAR = 62.0, 75.0, 74.0, 58.0, 88.0  # percent
UNDER: Rows = (
    ("rated_head", "rated head"),
    ("rated_flow", "rated flow"),
    ("rated_friction", "friction at that flow"),
    ("known_friction", "friction"),
    ("known_flow", "at"),
    ("suction_elevation", "from"),
    ("discharge_elevation", "up to"),
    ("static_now", "static head now"),
    ("added_flow", "second pump adds"),
    ("pump_speed", "speed"),
    ("new_speed", "new speed"),
    ("speed_cut", "slowed by"),
    ("least_speed", "minimum speed"),
)
POINTS: tuple[Rows, ...] = (
    (("rated_head", "rated head"), ("rated_flow", "at"), ("static_head", "static head")),
    (("head", "now"), ("flow", "at"), ("static_now", "static head now")),
)


def _curve(start: float, bend: float, end: float, color: str, dash: str = "") -> str:
    """A curve from the axis to a share of the width (percent)."""
    points = " ".join(
        f"{x:.1f},{start + bend * x * x:.1f}" for x in (end * n / STEPS for n in range(STEPS + 1))
    )
    look = {"stroke_dasharray": dash} if dash else {}
    drawn = element(
        "polyline", points=points, fill="none", stroke=color, stroke_width=2.5,
        vector_effect="non-scaling-stroke", **look,
    )  # fmt: skip
    return element(
        "svg", drawn, x=f"{LEFT:g}%", y=0, width="99%", height=FOOT, viewBox=f"0 0 100 {FOOT:g}",
        preserveAspectRatio="none",
    )  # fmt: skip


def _axes() -> list[str]:
    foot = element(
        "line", x1=f"{LEFT:g}%", x2="100%", y1=FOOT, y2=FOOT, stroke=SOFT, stroke_width=1.5
    )
    return [across(LEFT, path((0, TOP), (0, FOOT), stroke=SOFT, width=1.5)), foot]


def _draw(shown: Shown) -> Drawn:
    if shown.has("rated_flow") and all(
        name in shown.case.given for name in ("flow", "head", "rated_head")
    ):
        return _beside_rated(shown)
    pair = shown.works("parallel_flow")
    pieces = [*_axes(), _curve(SHUTOFF, PUMP, 98, ACCENT), _curve(STATIC, SYSTEM, 88, LOOK)]
    pieces += [
        words(100, FOOT - 8, "pump", "end", dx=-34),
        words(88, STATIC + SYSTEM * 88**2 - 6, "system", "end"),
    ]
    pieces.append(shown.note(LEFT, SHUTOFF - 12, "shutoff_head", "shutoff head", dx=8))
    pieces.append(shown.note(LEFT, STATIC + 19, "static_head", "static head", dx=8))
    crossing, foot = SHUTOFF + PUMP * DUTY**2, FOOT + 18
    look: Look = {"stroke": SOFT, "stroke_width": 1, "stroke_dasharray": "3 3"}
    pieces += [
        line(LEFT, DUTY, crossing, 0, **look),
        across(DUTY, path((0, crossing), (0, FOOT), stroke=SOFT, width=1, dash="3 3")),
        _dot(DUTY, crossing),
        shown.note(LEFT, crossing + 5, "head", "TDH", dx=8),
        shown.note(DUTY - 10, foot, "flow", "one pump", "end")
        if pair
        else shown.note(DUTY, foot, "flow", "flow", "middle"),
    ]
    if pair:
        pieces.append(_curve(SHUTOFF, PAIR, 98, ACCENT, "6 4"))
        pieces.append(_dot(BOTH_PUMPS, SHUTOFF + PAIR * BOTH_PUMPS**2))
        pieces.append(shown.note(100, foot, "parallel_flow", "both", "end"))
    more, low = shown.flow(foot + LINE, UNDER)
    return Drawn(pieces + more, low)


def _beside_rated(shown: Shown) -> Drawn:
    """The rated point on the pump's curve, and where the pump is now."""
    given = shown.case.given
    rated = SHUTOFF + PUMP * RATED**2
    along = min(RATED * given["flow"] / given["rated_flow"], 96)
    up = (FOOT - rated) * given["head"] / given["rated_head"]
    now = max(FOOT - up, TOP + 6)
    side = "end" if along < RATED or along > FAR else "start"
    pieces = [
        *_axes(),
        _curve(SHUTOFF, PUMP, 98, ACCENT),
        _dot(RATED, rated, ACCENT),
        words(RATED, rated - 8 if now >= rated else rated + 20, "rated", "start", dx=8),
        _dot(along, now),
        words(along, now + 5, "now", side, dx=-11 if side == "end" else 11),
        words(100, FOOT - 8, "flow", "end"),
        words(LEFT, TOP + 10, "head", dx=8),
    ]
    low = FOOT + 1
    for rows in POINTS:
        more, low = shown.flow(low + LINE, rows)
        pieces += more
    return Drawn(pieces, low)


def _beside_best(shown: Shown) -> Drawn:
    """The flow of the best efficiency point, and the pump's flow, on its curve."""
    given = shown.case.given
    along = min(BEST * given["flow"] / given["best_flow"], 98)
    pieces = [*_axes(), _curve(SHUTOFF, PUMP, 98, ACCENT)]
    for share, color in ((BEST, ACCENT), (along, LOOK)):
        height = SHUTOFF + PUMP * share**2
        pieces += [
            across(share, path((0, height), (0, FOOT), stroke=SOFT, width=1, dash="3 3")),
            _dot(share, height, color),
        ]
    more, low = shown.flow(FOOT + 19, (("best_flow", "BEP at"), ("flow", "now at")))
    pieces += [
        words(BEST, SHUTOFF + PUMP * BEST**2 - 11, "BEP", "middle"),
        words(along, SHUTOFF + PUMP * along**2 + 24, "now", "end", dx=-8),
        words(LEFT, TOP + 10, "head", dx=8),
    ]
    return Drawn([*pieces, words(100, FOOT + 19, "flow", "end"), *more], low)


def _dot(share: float, y: float, color: str = LOOK) -> str:
    return across(share, circle(0, y, 5.5, fill=color))


CURVE = Drawing(
    "The pump's curve and the system's",
    tuple(
        dict.fromkeys(
            (
                "shutoff_head",
                "parallel_flow",
                *(name for rows in (UNDER, *POINTS) for name, _ in rows),
            )
        )
    ),
    _draw,
    ("flow", "static_head"),
    ("rated_head", "rated_flow", "rated_friction", "shutoff_head", "parallel_flow"),
)
BEST_POINT = Drawing(
    "The pump's curve and its best point", ("best_flow", "flow"), _beside_best, (), ("best_flow",)
)
