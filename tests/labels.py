"""The labels of drawings on a page: where each is, and which of them meet."""

__all__ = ["LABELS", "touching"]

LABELS = """() => [...document.querySelectorAll('svg')].map(svg => {
  const all = svg.getBoundingClientRect();
  return {
    width: all.width,
    labels: [...svg.querySelectorAll('text')].map(text => {
      const box = text.getBoundingClientRect();
      return {
        says: text.textContent, size: parseFloat(getComputedStyle(text).fontSize),
        left: box.left - all.left, right: box.right - all.left,
        top: box.top - all.top, bottom: box.bottom - all.top, tall: all.height,
      };
    }),
  };
})"""
LEADING = 5  # px of a line's box that no letter fills


def touching(labels: list[dict]) -> list[tuple[str, str]]:
    """Pairs of labels whose letters meet."""
    return [
        (one["says"], other["says"])
        for place, one in enumerate(labels)
        for other in labels[place + 1 :]
        if one["left"] < other["right"]
        and other["left"] < one["right"]
        and one["top"] + LEADING < other["bottom"]
        and other["top"] + LEADING < one["bottom"]
    ]
