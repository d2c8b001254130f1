"""How long `rootcollar --help` takes, beside a Python that does nothing, in one run.

    python benchmarks/help.py [--scale 0.1]

Wanted: at most six times as long, because a person asks for help at every second command.
"""

import argparse
import subprocess
import sys
import time

__all__ = ["main"]

REPEATS = 20
MOST_TIMES = 6.0
HELP = [sys.executable, "-m", "rootcollar", "--help"]
BARE = [sys.executable, "-c", "pass"]


def once_s(command: list[str]) -> float:
    """Run a command to its end and return the time it took [s]. Raises CalledProcessError if it fails."""
    begun = time.perf_counter()
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
    return time.perf_counter() - begun


def main(words: list[str] | None = None) -> int:
    """Run both in turn, print best times and ratio, and return 1 if, at full scale, the limit is passed."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--scale", type=float, default=1.0, help="share of the repeats; judged at 1 only")
    scale = parser.parse_args(words).scale
    pairs = [(once_s(HELP), once_s(BARE)) for _ in range(max(int(REPEATS * scale), 1))]
    help_s, bare_s = (min(times) for times in zip(*pairs, strict=True))
    print(
        f"--help {1000 * help_s:.0f} ms, bare Python {1000 * bare_s:.0f} ms: {help_s / bare_s:.2f} times; "
        f"wanted {MOST_TIMES:g}"
    )
    return 0 if scale != 1.0 or help_s <= MOST_TIMES * bare_s else 1


if __name__ == "__main__":
    sys.exit(main())
