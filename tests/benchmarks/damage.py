"""What damage does to the files of answers: bits that turn, and programs that are killed.

    python -m tests.benchmarks.damage [KILLS]

Prints how many turned bits were taken as another answer (none may be, in lines with a check), and
how many answers that were said to be kept were lost when the program was killed (none may be).
"""

import json
import subprocess
import sys
import tempfile
from collections import Counter
from collections.abc import Callable, Iterator
from pathlib import Path

from workbook.exam.lines import ANSWER, BEGIN, END, FLAG, TICK, events, line
from workbook.log import Log, line_of, made, parse

__all__ = ["LOG", "SITTING", "killed", "read_log", "read_sitting", "turned", "unchecked"]

ROOT = Path(__file__).resolve().parents[2]
KILLS = 300
CODE = "BP-2U1-7-KMZ"
FIELDS = {"code": CODE, "family": "brake_power", "level": 2, "seconds": 41.5}
LOG = tuple(
    line_of(made(typed=typed, status=status, **FIELDS)).encode()
    for typed, status in (("12.5 hp", "right"), ("9", "wrong"), ("16.7 hp, 5½\N{PRIME}", "close"))
)
SITTING = tuple(
    line(kind, at, **fields).encode()
    for kind, at, fields in (
        (BEGIN, 0.0, {"code": "EXAM-33-2U-20-60-C-1-48213-92"}),
        (ANSWER, 95.2, {"question": 1, "typed": "2", "seconds": 41.0, "when": "2026-11-25T18:04Z"}),
        (FLAG, 97.0, {"question": 1, "on": True}),
        (TICK, 112.0, {}),
        (END, 300.5, {}),
    )
)

KILLED = """
import os, pathlib, random, signal, sys
from workbook.log import Log, made

path, times = pathlib.Path(sys.argv[1]), int(sys.argv[2])
chance = random.Random(7)
fields = dict(code="BP-2U1-7-KMZ", family="brake_power", level=2, status="wrong")

def write_for_ever(out):
    log = Log(path)
    while True:
        attempt = made(typed="9" * chance.randrange(1, 3000), **fields)
        log.keep(attempt)
        os.write(out, attempt.id.encode())

for turn in range(times):
    heard, out = os.pipe()
    if not (writer := os.fork()):
        write_for_ever(out)
    os.close(out)
    # It writes as fast as it can: after some answers it is in the middle of another one.
    for _ in range(chance.randrange(4)):
        sys.stdout.write(os.read(heard, 32).decode())
    signal.sigtimedwait([], chance.uniform(0, 0.01))
    os.kill(writer, signal.SIGKILL)
    os.waitpid(writer, 0)
    while ids := os.read(heard, 32 * 1024):
        sys.stdout.write(ids.decode())
    os.close(heard)
"""


def read_log(data: bytes) -> list:
    """What a log takes these bytes as."""
    return parse(data)[0]


def read_sitting(data: bytes) -> list:
    """What an exam takes these bytes as."""
    return [event for _, event in events(data) if event is not None]


def unchecked(line: bytes) -> bytes:
    """The line as version 0.1.0 wrote it."""
    fields = json.loads(line)
    del fields["check"]
    return json.dumps(fields | {"v": 1}, ensure_ascii=False).encode()


def turned(lines: tuple[bytes, ...], read: Callable[[bytes], list]) -> Counter[str]:
    """What becomes of a file of these lines, each bit of it turned in turn."""
    whole = b"".join(each + b"\n" for each in lines)
    right = read(whole)
    assert len(lines) == len(right)
    return Counter(_became(read(data), right) for data in _each_bit(whole))


def _each_bit(whole: bytes) -> Iterator[bytes]:
    for at, byte in enumerate(whole):
        for bit in range(8):
            yield whole[:at] + bytes([byte ^ 1 << bit]) + whole[at + 1 :]


def _became(found: list, right: list) -> str:
    if any(one not in right for one in found):
        return "taken as another"
    return "read as it was" if found == right else "set aside"


def killed(path: Path, times: int) -> tuple[int, int, int]:
    """How many answers were said to be kept, how many of them are lost, and how many lines are torn."""
    command = [sys.executable, "-c", KILLED, str(path), str(times)]
    told = subprocess.run(command, capture_output=True, text=True, check=False, cwd=ROOT)
    assert not told.stderr, told.stderr
    kept = {told.stdout[at : at + 32] for at in range(0, len(told.stdout), 32)}
    log = Log(path)
    log.read()
    return len(kept), len(kept - {attempt.id for attempt in log.attempts}), len(log.strange)


def main() -> None:
    for name, lines, read in (("of a log", LOG, read_log), ("of an exam", SITTING, read_sitting)):
        for how, each in (("with a check", lines), ("of 0.1.0", tuple(map(unchecked, lines)))):
            became = turned(each, read)
            parts = ", ".join(f"{count:,} {what}" for what, count in became.most_common())
            print(f"Bits turned in lines {how}, {name}: {became.total():,}. {parts}.")
    times = int(sys.argv[1]) if len(sys.argv) > 1 else KILLS
    with tempfile.TemporaryDirectory() as folder:
        kept, lost, torn = killed(Path(folder, "attempts.jsonl"), times)
    print(
        f"Killed {times} times: {kept:,} answers said to be kept, {lost} lost; {torn} lines torn."
    )


if __name__ == "__main__":
    main()
