"""What the tests of stations print when a run ends."""

SHARE = "share of accepted draws"  # a test's property
SHOWN = 12


def pytest_terminal_summary(terminalreporter):
    """Print the kinds of problem whose draws are thrown away most often, and the average."""
    reports = [
        r
        for some in terminalreporter.stats.values()
        for r in some
        if getattr(r, "when", "") == "call"
    ]
    shares = [
        (share, report.nodeid.partition("[")[2].rstrip("]"))
        for report in reports
        for name, share in getattr(report, "user_properties", ())
        if name == SHARE
    ]
    if not shares:
        return
    terminalreporter.section(f"{SHARE}, lowest first")
    for share, name in sorted(shares)[:SHOWN]:
        terminalreporter.line(f"{share:6.1%}  {name}")
    average = sum(share for share, _ in shares) / len(shares)
    terminalreporter.line(f"{average:6.1%}  on average of {len(shares)} kinds, levels and systems")
