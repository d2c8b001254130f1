#!/usr/bin/env python3
"""Set rootcollar up in .venv beside this file, once, and run it from there.

Standard library only, written in words that old Pythons can read too, so that an old one can say what it needs.
"""

import os
import sys

if __name__ == "__main__":  # because a stray PYTHONPATH can put another module before the standard one
    STRAY = [os.path.abspath(entry) for entry in os.environ.get("PYTHONPATH", "").split(os.pathsep) if entry]
    sys.path[:] = [entry for entry in sys.path if os.path.abspath(entry) not in STRAY]

import hashlib
import shutil
import subprocess
import sysconfig
import time

HERE = os.path.dirname(os.path.realpath(__file__))
VENV = os.path.join(HERE, ".venv")
BIN = os.path.join(VENV, "Scripts" if os.name == "nt" else "bin")
EXE = ".exe" if os.name == "nt" else ""
PYTHON = os.path.join(BIN, "python" + EXE)
COMMAND = os.path.join(BIN, "rootcollar" + EXE)
PLACE, UNFINISHED = os.path.join(VENV, "place"), os.path.join(VENV, "unfinished")
LOG = os.path.join(VENV, "pip.log")

OLDEST = (3, 11)
OTHERS = [["python3"], ["python3.11"], ["python3.12"], ["python3.13"], ["python3.14"], ["py", "-3"]]
LEFT_OUT = ("PIP_USER", "PIP_TARGET", "PIP_PREFIX", "PYTHONPATH", "PYTHONHOME", "__PYVENV_LAUNCHER__")

HELP = """rootcollar: which stems to cut, treat and leave, with what, how much of it, and when.

  python3 run.py demo             walk through Hobbin Wood, an invented property
  python3 run.py COMMAND ...      any rootcollar command, for instance: choose FOLDER
  python3 run.py --help           all commands
  python3 run.py test             every check this machine can run, and a list of those it cannot
  python3 run.py test --quick     the same without the slow tests
  python3 run.py test --all       the same, where a check that cannot run is a failure

The first start sets up .venv beside this file: about a minute, and it needs the network. Later starts do not.
"""


class Trouble(Exception):
    """Something the reader can mend; the text says what and how."""


def tell(text):
    """Write a line where it cannot mix with results: to the error stream."""
    sys.stderr.write(text + "\n")
    sys.stderr.flush()


def read(path):
    """Return the bytes of a file, none for a file that is not there."""
    if not os.path.exists(path):
        return b""
    with open(path, "rb") as file:
        return file.read()


def write(path, content):
    """Write bytes to a file."""
    with open(path, "wb") as file:
        file.write(content)


def clean(environ):
    """Return the environment without what would lead Python or pip elsewhere than .venv."""
    kept = dict((name, value) for name, value in environ.items() if name not in LEFT_OUT)
    kept["PYTHONUTF8"] = "1"
    return kept


def place_of(root):
    """Return what an environment is tied to: Python, system and folder; change one and it must be made anew."""
    python = "%s %d.%d" % (sys.implementation.name, sys.version_info[0], sys.version_info[1])
    return ("%s\n%s\n%s\n" % (python, sysconfig.get_platform(), root)).encode("utf-8")


def stamp_of(place, contents):
    """Return the mark of an environment made at this place from files with these contents."""
    parts = [place] + list(contents)
    lengths = " ".join(str(len(part)) for part in parts)
    return hashlib.sha256(b"\n".join([lengths.encode("ascii")] + parts)).hexdigest().encode("ascii")


def stamp_file(kind):
    """Return where the stamp of a finished set-up stands; kind: "run", or "test" for the checks as well."""
    return os.path.join(VENV, "ready-" + kind)


def become(command, environ):
    """Let another program take over, and return its exit code where the system cannot replace this one."""
    if os.name == "nt":
        return subprocess.call(command, env=environ)
    sys.stdout.flush()
    return os.execve(command[0], command, environ)


def newer_python():
    """Return a command that starts a Python new enough, or None."""
    check = ["-c", "import sys; sys.exit(sys.version_info < %r)" % (OLDEST,)]
    for folder in os.environ.get("PATH", "").split(os.pathsep):
        for words in OTHERS:
            path = os.path.join(folder, words[0] + EXE)
            command = [path] + words[1:]
            with open(os.devnull, "w") as nowhere:
                if os.access(path, os.X_OK) and not subprocess.call(command + check, stdout=nowhere, stderr=nowhere):
                    return command
    return None


def make_venv(place):
    """Make .venv anew and note the place it belongs to."""
    try:
        import ensurepip
    except ImportError:
        ensurepip = None
    if ensurepip is None:
        raise Trouble(
            "This Python lacks the part that makes environments. On Debian and Ubuntu: apt install python3-venv "
            "(for this one by name: python%d.%d-venv), then start again." % sys.version_info[:2]
        )
    if os.path.exists(VENV):
        tell("  the .venv here is unfinished, moved or not ours: making it anew")
        shutil.rmtree(VENV)
    made = subprocess.Popen(
        [sys.executable, "-m", "venv", VENV], env=clean(os.environ), stdout=subprocess.PIPE, stderr=subprocess.STDOUT
    )
    said = made.communicate()[0]
    if made.returncode:
        raise Trouble("Making .venv failed:\n" + said.decode("utf-8", "replace"))
    write(PLACE, place)


def pip(*words):
    """Run pip in .venv, quietly; on a failure show the end of what it said and what to try."""
    command = [PYTHON, "-m", "pip", "--disable-pip-version-check", "--no-input"] + list(words)
    with open(LOG, "ab") as log:
        failed = subprocess.call(command, env=clean(os.environ), cwd=HERE, stdout=log, stderr=subprocess.STDOUT)
    if failed:
        tail = read(LOG).decode("utf-8", "replace").splitlines()[-12:]
        raise Trouble(
            "pip could not install what is needed. The end of what it said:\n\n  %s\n\n"
            "What to try: is the network there? Without it pip speaks of a conflict. Behind a proxy, set HTTPS_PROXY "
            "or pip's own configuration. With a Python newer than 3.14, use an older one. Then start again; all of it "
            "is in %s." % ("\n  ".join(tail), LOG)
        )


def install(kind):
    """Install the pinned releases of what pyproject.toml asks for, then the project itself, in place."""
    import tomllib

    project = tomllib.loads(read(os.path.join(HERE, "pyproject.toml")).decode("utf-8"))
    wanted = project["build-system"]["requires"] + ["editables"]  # editables: because the project is installed in place
    wanted += project["project"]["dependencies"]
    if kind == "test":
        wanted += project["project"]["optional-dependencies"]["dev"]
    pip("install", "--only-binary", ":all:", "--progress-bar", "off", "--constraint", "constraints.txt", *wanted)
    pip("install", "--no-build-isolation", "--no-deps", "--editable", HERE)


def prepare(kind):
    """See to it that .venv holds what this kind of start needs; at once when the stamp says so."""
    place = place_of(HERE)
    contents = [read(os.path.join(HERE, name)) for name in ("constraints.txt", "pyproject.toml")]
    stamp = stamp_of(place, contents)
    if read(stamp_file(kind)) == stamp and os.path.exists(PYTHON) and os.path.exists(COMMAND):
        return
    begun = time.time()
    tell("Setting up rootcollar%s in .venv, once: about a minute ..." % (" and its checks" if kind == "test" else ""))
    if read(PLACE) != place or os.path.exists(UNFINISHED) or not os.path.exists(PYTHON):
        make_venv(place)
    for other in ("run", "test"):
        if os.path.exists(stamp_file(other)) and read(stamp_file(other)) != stamp:
            os.remove(stamp_file(other))
    write(UNFINISHED, b"")
    install(kind)
    os.remove(UNFINISHED)
    for done in ("run", "test") if kind == "test" else ("run",):
        write(stamp_file(done), stamp)
    tell("Done in %.0f s." % (time.time() - begun))


def main(words):
    """Do what the words of the command line ask for and return the exit code."""
    if sys.version_info < OLDEST:
        newer = newer_python()
        if newer is None:
            tell(
                "rootcollar needs Python 3.11 or newer; this is %d.%d and no newer one was found."
                % sys.version_info[:2]
            )
            return 2
        return become(newer + [os.path.abspath(__file__)] + words, os.environ)
    if not words:
        sys.stdout.write(HELP)
        return 0
    if words[0] == "test":
        prepare("test")
        return become([PYTHON, os.path.join(HERE, "tools", "check.py")] + words[1:], clean(os.environ))
    prepare("run")
    return become([COMMAND] + words, clean(os.environ))


if __name__ == "__main__":
    try:
        sys.exit(main(sys.argv[1:]))
    except KeyboardInterrupt:
        tell("Stopped. Start again to finish.")
        sys.exit(130)
    except (Trouble, OSError) as trouble:
        tell(str(trouble))
        sys.exit(3)
