"""What a page must not do on a telephone 360 pixels wide: scroll sideways, stick out, be too small."""

__all__ = ["WIDTH", "faults_on_a_phone"]

WIDTH = 360
LEAST = 24  # px; WCAG 2.2, 2.5.8: what is touched is at least so wide and so high
LOOKS = 20  # a quarter of a second apart: pictures and tables follow a new width a moment later


def faults_on_a_phone(page) -> list[str]:
    """A line for each fault of the page as it stands, shown so narrow; then it is as wide as before."""
    before = page.viewport_size
    page.set_viewport_size({"width": WIDTH, "height": 740})
    try:
        page.wait_for_function(f"document.querySelector('.jp-Notebook').clientWidth <= {WIDTH}")
        for _ in range(LOOKS):
            page.wait_for_timeout(250)
            if not (found := page.evaluate(FAULTS, [WIDTH, LEAST])):
                break
        return found
    finally:
        page.set_viewport_size(before)


# A wide table of numbers has a region of its own that moves sideways, by keyboard too.
FAULTS = """([width, least]) => {
  const told = node => `${node.tagName} ${node.className.baseVal ?? node.className} `
    + `“${node.textContent.trim().slice(0, 40)}”`;
  const shown = node => node.getClientRects().length
    && !node.closest('.w2w-heard, [role=region][tabindex], mjx-assistive-mml, svg')
    && getComputedStyle(node).visibility !== 'hidden';
  const scrolls = node => /auto|scroll/.test(getComputedStyle(node).overflowX)
    && node.scrollWidth > node.clientWidth + 1;
  const sticksOut = node => {
    const r = node.getBoundingClientRect();
    return r.width > 0 && (r.right > width + 1 || r.left < -1);
  };
  const touched = 'a[href], button, input, select, textarea, summary, [role=slider]';
  const tooSmall = node => {
    const boxes = [node, ...(node.labels ?? [])].map(each => each.getBoundingClientRect());
    return boxes.every(r => r.width < least - 0.5 || r.height < least - 0.5);
  };
  const nodes = [...document.querySelectorAll('.jp-Notebook *, .wtw-bar *, .wtw-foot *')].filter(shown);
  const listed = (what, found) => found.map(node => `${what}: ${told(node)}`);
  return [
    ...(document.documentElement.scrollWidth > width ? ['the page scrolls sideways'] : []),
    ...listed('scrolls sideways', nodes.filter(scrolls)),
    ...listed('sticks out', nodes.filter(sticksOut)),
    ...listed('too small to touch', nodes.filter(node => node.matches(touched) && tooSmall(node))),
  ];
}"""
