"""Set Changeover up in a private environment and open it, or run its tests; standard library only.

    python3 start.py             open the window on a working copy of the demo store
    python3 start.py test        run all tests; further arguments go to pytest
    python3 start.py set-up      only set up, for development too

With no display the first writes worklist, workbook and pictures of the window into a folder.
"""

from __future__ import annotations

import hashlib
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent
VENV = ROOT / ".venv"
PYTHON = VENV / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
STAMP = VENV / "changeover-stamp"
DEMO = ROOT / "demo.sqlite"
OUT = ROOT / "out"
LEAST = (3, 11)

DEMO_JOB = ("--planter", "Penny Twelve", "--lot", "Y-208", "--field", "Otter Flat")

# Debian's names for the system libraries that Qt's wheel does not carry.
PACKAGES = {
    "libEGL.so.1": "libegl1",
    "libGL.so.1": "libgl1",
    "libGLX.so.0": "libglx0",
    "libOpenGL.so.0": "libopengl0",
    "libX11.so.6": "libx11-6",
    "libX11-xcb.so.1": "libx11-xcb1",
    "libdbus-1.so.3": "libdbus-1-3",
    "libfontconfig.so.1": "libfontconfig1",
    "libfreetype.so.6": "libfreetype6",
    "libglib-2.0.so.0": "libglib2.0-0",
    "libgthread-2.0.so.0": "libglib2.0-0",
    "libgssapi_krb5.so.2": "libgssapi-krb5-2",
    "libxcb.so.1": "libxcb1",
    "libxcb-cursor.so.0": "libxcb-cursor0",
    "libxcb-glx.so.0": "libxcb-glx0",
    "libxcb-icccm.so.4": "libxcb-icccm4",
    "libxcb-image.so.0": "libxcb-image0",
    "libxcb-keysyms.so.1": "libxcb-keysyms1",
    "libxcb-randr.so.0": "libxcb-randr0",
    "libxcb-render.so.0": "libxcb-render0",
    "libxcb-render-util.so.0": "libxcb-render-util0",
    "libxcb-shape.so.0": "libxcb-shape0",
    "libxcb-shm.so.0": "libxcb-shm0",
    "libxcb-sync.so.1": "libxcb-sync1",
    "libxcb-util.so.1": "libxcb-util1",
    "libxcb-xfixes.so.0": "libxcb-xfixes0",
    "libxcb-xkb.so.1": "libxcb-xkb1",
    "libxkbcommon.so.0": "libxkbcommon0",
    "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
    "libzstd.so.1": "libzstd1",
}
FONTS = "fonts-dejavu-core"
FONT_FOLDERS = ("/usr/share/fonts", "/usr/local/share/fonts", "~/.fonts", "~/.local/share/fonts")
MISSING = re.compile(r"(lib[\w.+-]+?\.so[\w.]*)(?:: cannot open shared object| => not found)")


def main(arguments: list[str]) -> int:
    """Do what is asked and return the exit status."""
    if sys.version_info < LEAST:
        stop(
            f"Changeover needs Python {LEAST[0]}.{LEAST[1]} or newer and this is "
            f"{sys.version_info[0]}.{sys.version_info[1]}: install a newer Python "
            "and start again with it."
        )
    if arguments[:1] == ["test"]:
        set_up("dev")
        return run_tests(arguments[1:])
    if arguments == ["set-up"]:
        set_up("dev")
        return 0
    if arguments:
        stop(f"“{' '.join(arguments)}” is not known: leave it out, or write test or set-up.", 2)
    set_up("")
    return open_window() if has_display() else do_without_window()


def stop(sentence: str, status: int = 1) -> None:
    """End with one sentence on standard error."""
    sys.stderr.write(sentence + "\n")
    raise SystemExit(status)


def say(sentence: str) -> None:
    """Tell at once what is being done, also into a pipe."""
    sys.stdout.write(sentence + "\n")
    sys.stdout.flush()


def run(*command: object, **options: object) -> subprocess.CompletedProcess[str]:
    """Run a command with its text passed on as UTF-8; never raises for its exit status."""
    words = [str(word) for word in command]
    env = {**os.environ, "PYTHONUTF8": "1", "PIP_DISABLE_PIP_VERSION_CHECK": "1"}
    given = options.pop("env", {})
    env.update(given)  # type: ignore[call-overload]
    return subprocess.run(words, check=False, text=True, env=env, **options)  # type: ignore[call-overload,no-any-return]


# --- the private environment -----------------------------------------------------------------


def set_up(extras: str) -> None:
    """Make the environment and install the program, unless that was done for these very files."""
    make_environment()
    if not is_stamped(extras):
        say("Setting up: installing what Changeover needs (once, some minutes) ...")
        target = f".[{extras}]" if extras else "."
        pip = run(
            PYTHON, "-m", "pip", "install", "-q", "-c", "constraints.txt", "-e", target, cwd=ROOT
        )
        if pip.returncode != 0:
            stop("Setting up failed: the lines above say why; is this machine online?")
        STAMP.write_text(f"{digest()} {extras}", encoding="utf-8")
    look_for_libraries()


def make_environment() -> None:
    """Make .venv if it is not there or does not work."""
    if PYTHON.exists() and run(PYTHON, "-c", "import pip").returncode == 0:
        return
    say("Setting up: making the private environment .venv ...")
    command = (sys.executable, "-m", "venv", "--clear", VENV)
    made = run(*command, capture_output=True)
    if made.returncode != 0 and "ensurepip" in made.stdout + made.stderr:
        version = f"python{sys.version_info[0]}.{sys.version_info[1]}-venv"
        if not install_packages([version]):
            stop(f"Python's venv module is missing: install it (sudo apt-get install {version}).")
        made = run(*command, capture_output=True)
    if made.returncode != 0:
        stop(f"The environment could not be made: {(made.stderr or made.stdout).strip()}")


def digest() -> str:
    """Return the mark of what the environment is made from."""
    mark = hashlib.sha256(sys.version.encode())
    mark.update(str(ROOT).encode())
    for name in ("pyproject.toml", "constraints.txt"):
        mark.update((ROOT / name).read_bytes())
    return mark.hexdigest()


def is_stamped(extras: str) -> bool:
    """Return whether the environment has these extras, made from these files."""
    if not STAMP.exists():
        return False
    made_from, _, has = STAMP.read_text(encoding="utf-8").partition(" ")
    return made_from == digest() and has in (extras, "dev")


# --- the libraries of the system -------------------------------------------------------------


def look_for_libraries() -> None:
    """See that Qt can be loaded; install what is missing where that is allowed, else say it."""
    if not sys.platform.startswith("linux"):
        return
    if missing := missing_libraries():
        if install_packages([*sorted(set(PACKAGES.values())), FONTS]):
            missing = missing_libraries()
        if missing:
            names = sorted({PACKAGES.get(name, f"the one with {name}") for name in missing})
            stop(
                f"Qt needs {', '.join(sorted(missing))}, missing on this machine: install "
                f"{', '.join(names)} (on Debian: sudo apt-get install {' '.join(names)}) "
                "and start again."
            )
    if not has_fonts() and not install_packages([FONTS]):
        say(f"There are no fonts on this machine: install a package such as {FONTS}.")


def missing_libraries() -> set[str]:
    """Return the names of the shared libraries that Qt asks for in vain."""
    load = "import PySide6.QtSvg, PySide6.QtWidgets"
    done = run(PYTHON, "-c", load, capture_output=True, cwd=ROOT)
    missing = set(MISSING.findall(done.stderr))
    if done.returncode != 0 and not missing:
        stop(f"Qt cannot be loaded: {done.stderr.strip().splitlines()[-1]}")
    plugins = ("libqoffscreen.so", "libqxcb.so") if has_display() else ("libqoffscreen.so",)
    for plugin in plugins if shutil.which("ldd") else ():
        for path in VENV.glob(f"lib/*/site-packages/PySide6/Qt/plugins/platforms/{plugin}"):
            missing |= set(MISSING.findall(run("ldd", path, capture_output=True).stdout))
    return missing


def has_fonts() -> bool:
    """Return whether any font file lies where fonts lie."""
    folders = (Path(folder).expanduser() for folder in FONT_FOLDERS)
    return any(next(folder.rglob("*.[top][tc]f*"), None) for folder in folders if folder.is_dir())


def install_packages(names: list[str]) -> bool:
    """Install packages of the system: only as root on Debian; returns whether it was done."""
    root = hasattr(os, "geteuid") and os.geteuid() == 0
    if not (root and Path("/etc/debian_version").exists() and shutil.which("apt-get")):
        return False
    say(f"Setting up: apt-get install {' '.join(names)} ...")
    quiet = {"env": {"DEBIAN_FRONTEND": "noninteractive"}, "stdout": subprocess.DEVNULL}
    run("apt-get", "update", "-q", **quiet)
    install = ("apt-get", "install", "-q", "-y", "--no-install-recommends")
    if run(*install, *names, **quiet).returncode == 0:
        return True
    done = [run(*install, name, **quiet).returncode == 0 for name in names]
    return any(done)


# --- the jobs --------------------------------------------------------------------------------


def has_display() -> bool:
    """Return whether a window can be shown."""
    if os.environ.get("QT_QPA_PLATFORM", "") in ("offscreen", "minimal"):
        return False
    if not sys.platform.startswith("linux"):
        return True
    return bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))


def working_copy(folder: Path, *, fresh: bool) -> Path:
    """Return a copy of the demo store to work on, so that the one that came stays as it is."""
    folder.mkdir(parents=True, exist_ok=True)
    copy = folder / DEMO.name
    if fresh or not copy.exists():
        for old in folder.glob(f"{DEMO.name}*"):
            old.unlink()
        shutil.copyfile(DEMO, copy)
    return copy


def open_window() -> int:
    """Open the window on the working copy, which keeps what was done in it."""
    store = working_copy(OUT, fresh=False)
    say(f"Opening {store}")
    return run(PYTHON, "-m", "changeover", store, cwd=ROOT).returncode


def do_without_window() -> int:
    """Do the job that the window is for, into a folder."""
    folder = OUT / "without-window"
    store = working_copy(folder, fresh=True)
    say("There is no display, so the same job is done without a window.")
    worklist = ("worklist", store, *DEMO_JOB, "--out", folder / "worklist")
    for job in (worklist, ("shots", folder / "pictures")):
        offscreen = {"QT_QPA_PLATFORM": "offscreen"}
        done = run(PYTHON, "-m", "changeover", *job, cwd=ROOT, env=offscreen)
        if done.returncode != 0:
            return done.returncode
    say(f"Worklist and workbook are in {folder / 'worklist'},")
    say(f"pictures of the window in {folder / 'pictures'}.")
    return 0


def run_tests(arguments: list[str]) -> int:
    """Run all tests, or those that the arguments choose."""
    pytest = (PYTHON, "-m", "pytest", "-n", "2", "--dist", "loadgroup", *arguments)
    return run(*pytest, cwd=ROOT, env={"QT_QPA_PLATFORM": "offscreen"}).returncode


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
