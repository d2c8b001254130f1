"""The room that everybody loads stays light: only the estimates load the library for optima and curves."""

import subprocess
import sys


def test_commands_start_without_scipy():
    said = "import sys, rootcollar.cli.main, rootcollar.survey.plots; sys.exit('scipy' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", said], check=False).returncode == 0
    estimates = "import sys, rootcollar.survey.estimate; sys.exit('scipy' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", estimates], check=False).returncode == 1
