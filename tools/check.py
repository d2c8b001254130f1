"""Run every check: format, lint, types, layers, style, then the tests. `run.py test` starts it inside .venv.

One line a step; what a failed step said stands below its line. Nothing stops the later steps. Words that are not
known here go to pytest, for instance: -k dose.
"""

import argparse
import subprocess
import sys
import time
from pathlib import Path

__all__ = ["main"]

ROOT = Path(__file__).resolve().parent.parent
MODULE = [sys.executable, "-m"]
STEPS = {
    "format": [*MODULE, "ruff", "format", "--check", "--output-format", "concise", "."],
    "lint": [*MODULE, "ruff", "check", "--output-format", "concise", "."],
    "types": [*MODULE, "mypy", "--strict"],
    "layers": [str(Path(sys.executable).parent / "lint-imports")],
    "style": [sys.executable, "tools/style.py"],
}


def step(name: str, command: list[str]) -> bool:
    """Run one check, print its line and, if it failed, what it said; return whether it held."""
    begun = time.perf_counter()
    done = subprocess.run(command, cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, check=False)
    held = done.returncode == 0
    print(f"{name:7} {'ok' if held else 'FAILED'}  {time.perf_counter() - begun:.1f} s", flush=True)
    if not held:
        print(done.stdout.decode("utf-8", "replace").rstrip(), flush=True)
    return held


def pytest_words(quick: bool, everything: bool) -> list[str]:
    """Return what pytest is told; quick: no slow tests, fewer examples; everything: no skips; both: two cores."""
    if everything:
        return ["--no-skips", "-n", "2"]
    return ["-m", "not slow", "--hypothesis-profile", "quick", "-n", "2", "--dist", "loadfile"] if quick else []


def main() -> int:
    """Run all steps and return 0 only if every one of them held."""
    parser = argparse.ArgumentParser(prog="run.py test", description=__doc__)
    choice = parser.add_mutually_exclusive_group()
    choice.add_argument("--quick", action="store_true", help="leave out the slow tests, draw fewer examples")
    choice.add_argument("--all", action="store_true", help="a test that cannot run here is a failure")
    known, more = parser.parse_known_args()

    failed = [name for name, command in STEPS.items() if not step(name, command)]
    tests = [*MODULE, "pytest", "-q", *pytest_words(known.quick, known.all), *more]
    code = subprocess.run(tests, cwd=ROOT, check=False).returncode
    failed += ["tests"] if code else []
    if failed:
        print(f"failed: {', '.join(failed)}", flush=True)
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
