#!/usr/bin/env python3
"""How the window runs: time to the first frame against a bare window, and what idling costs.

tests/bench/window.py [BUILD]   BUILD: the build folder, with wrapwright-bench and bench_bare_window
Prints ratios and seconds; judges nothing.
"""

import pathlib
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "desktop"))
from screen import ROOT, Bench, Screen  # noqa: E402

RECIPES = 5000
STARTS = 9


def fill(data):
    """Copies the demo recipe under other names until the library is large."""
    file = data / "wrapwright.db"
    base = sqlite3.connect(file)
    text = base.execute("SELECT text FROM revision WHERE recipe = 'sill-dun'").fetchone()[0]
    for i in range(RECIPES):
        name = f"fly-{i}"
        base.execute("INSERT INTO recipe VALUES (?, ?, 'dry', '12-18', '', 0, 1)", (name, name))
        base.execute("INSERT INTO revision VALUES (?, 1, ?, '', 0)", (name, text))
        base.execute("INSERT INTO words (id, body) VALUES (?, ?)", (name, text))
    base.commit()
    base.close()


def seconds(command, env):
    start = time.monotonic()
    subprocess.run(command, env=env, check=True, stdout=subprocess.DEVNULL)
    return time.monotonic() - start


def cpu_seconds(pid):
    """Of all threads, from the scheduler's own count in nanoseconds."""
    total = 0
    for task in pathlib.Path(f"/proc/{pid}/task").iterdir():
        total += int((task / "schedstat").read_text().split()[0])
    return total / 1e9


def main():
    build = pathlib.Path(sys.argv[1] if len(sys.argv) > 1 else ROOT / "build").resolve()
    program = str(build / "wrapwright-bench")
    bare = str(build / "tests/bench/bench_bare_window")
    with tempfile.TemporaryDirectory() as folder, Screen() as screen:
        data = pathlib.Path(folder)
        bench = [program, "--data", folder, "--frames", "1"]
        seconds(bench, screen.env)
        fill(data)
        ours, theirs = [], []
        for _ in range(STARTS):
            theirs.append(seconds([bare], screen.env))
            ours.append(seconds(bench, screen.env))
        a, b = statistics.median(ours), statistics.median(theirs)
        print(f"start to first frame shown, and end: {1e3 * a:.0f} ms with {RECIPES} recipes; "
              f"bare window: {1e3 * b:.0f} ms; ratio {a / b:.2f} (goal 1.5)")

        window = Bench(screen, program, data)
        window.key("Escape", "screen")
        time.sleep(2)
        before = cpu_seconds(window.process.pid)
        time.sleep(10)
        used = cpu_seconds(window.process.pid) - before
        print(f"idle: {used:.4f} s of a core in 10 s = {10 * used:.3f} % (goal 0.1)")
        window.close()


if __name__ == "__main__":
    main()
