#!/usr/bin/env python3
"""The bench in a real window: keys and presses from outside, a kill in the middle, pictures.

window_test.py PROGRAM [SHOTS]   SHOTS: folder for what was seen; kept, to be looked at
WW_KEEP_GOLDENS=1 keeps what is seen as the new goldens, after a look at every one.
"""

import os
import pathlib
import shutil
import subprocess
import sys
import tempfile
import time
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent))
from screen import ROOT, Bench, Screen  # noqa: E402

GOLDEN = ROOT / "tests" / "golden" / "desktop"
# Share of full scale by which two drivers, or a blinking cursor, may differ on average; another
# panel in another place differs by several times that.
TOLERANCE = 0.03
PROGRAM = "build/wrapwright-bench"
SHOTS = ROOT / "build" / "shots"

BENCH, LAY_OUT, LIBRARY, SETTINGS, WATER, CHECK, WRITE, ORDERS = 0, 1, 2, 3, 7, 8, 9, 10


def difference(shot, golden):
    """Root mean square difference of two pictures at a quarter of their size, 0 to 1."""
    run = subprocess.run(["compare", "-metric", "RMSE", str(shot), str(golden), "null:"],
                         capture_output=True, text=True)
    return float(run.stderr.split("(")[1].rstrip(")"))


class Window(unittest.TestCase):
    def setUp(self):
        self.folder = tempfile.TemporaryDirectory(prefix="wrapwright-window-")
        self.data = pathlib.Path(self.folder.name)

    def tearDown(self):
        self.folder.cleanup()

    def look(self, screen, name):
        """Keeps what is on the screen, and compares it with what was looked at before."""
        shot = SHOTS / f"{name}.png"
        small = SHOTS / "small" / f"{name}.png"
        small.parent.mkdir(parents=True, exist_ok=True)
        golden = GOLDEN / f"{name}.png"
        # A busy machine puts a picture on the screen some time after the program handed it over.
        for _ in range(10):
            screen.shot(shot)
            subprocess.run(["convert", str(shot), "-resize", "25%", str(small)], check=True)
            if os.environ.get("WW_KEEP_GOLDENS"):
                shutil.copy(small, golden)
            self.assertTrue(golden.exists(), f"no golden: look at {small} and keep it")
            if difference(small, golden) < TOLERANCE:
                break
            time.sleep(1)
        self.assertLess(difference(small, golden), TOLERANCE, name)

    def opened(self, screen, key, number):
        """The bench at the screen that a key opens."""
        bench = Bench(screen, PROGRAM, self.data, "--window", "1280x800")
        bench.key("Escape", "screen")
        bench.key(key, "screen")
        self.assertEqual(bench.state["screen"], number)
        time.sleep(0.5)
        return bench

    def test_a_fly_is_tied_through_a_kill(self):
        with Screen() as screen:
            bench = Bench(screen, PROGRAM, self.data, "--window", "1280x800")
            self.assertEqual(bench.state["screen"], LAY_OUT)
            time.sleep(0.5)
            self.look(screen, "lay-out")
            while bench.state["events"] == 0:  # ticks, which are no events, and then the beginning
                before = (bench.state["laid"], bench.state["events"])
                screen.tool("key", "space")
                bench.wait(lambda s: (s["laid"], s["events"]) != before)
            for _ in range(9):
                bench.key("space", "events")
                time.sleep(0.55)
            bench.drain()
            self.look(screen, "winding")
            shown = dict(bench.state)
            bench.kill()

            bench = Bench(screen, PROGRAM, self.data, "--window", "1280x800")
            for what in ("at", "turns", "events"):
                self.assertEqual(bench.state[what], shown[what], what)
            while bench.state["at"] < bench.state["of"]:
                bench.key("Tab", "at")
                time.sleep(0.55)
            bench.drain()
            time.sleep(0.5)
            self.look(screen, "done")
            bench.close()

    def test_a_broken_thread_is_mended_and_a_second_window_looks_on(self):
        with Screen() as screen:
            bench = Bench(screen, PROGRAM, self.data, "--window", "1280x800")
            screen.tool("mousemove", 900, 750, "click", 1)  # Begin now
            bench.wait(lambda s: s["screen"] == BENCH)
            for _ in range(12):
                bench.key("Tab", "at")
                time.sleep(0.55)
            stood = bench.state["at"]
            bench.key("b", "sheet")
            time.sleep(0.5)
            self.look(screen, "thread-broke")
            bench.key("space", "sheet")
            self.assertLess(bench.state["at"], stood)
            bench.key("u", "at")
            self.assertEqual(bench.state["at"], stood)

            other = Bench(screen, PROGRAM, self.data, "--window", "800x480")
            self.assertEqual(other.state["events"], bench.state["events"])
            other.close()
            bench.close()

    def test_the_system_reads_each_step_when_it_is_asked_to(self):
        heard = self.data / "heard"
        service = self.data / "bin" / "spd-say"  # stands in for the system's own
        service.parent.mkdir()
        service.write_text(f"#!/bin/sh\nprintf '%s\\n' \"$*\" >>{heard}\n")
        service.chmod(0o755)
        path = os.environ["PATH"]
        os.environ["PATH"] = f"{service.parent}:{path}"
        self.addCleanup(os.environ.__setitem__, "PATH", path)

        def said():
            lines = heard.read_text().splitlines() if heard.exists() else []
            return [line for line in lines if "--cancel" not in line]

        with Screen() as screen:
            bench = Bench(screen, PROGRAM, self.data, "--window", "1280x800")
            screen.tool("mousemove", 900, 750, "click", 1)  # Begin now
            bench.wait(lambda s: s["screen"] == BENCH)
            time.sleep(0.6)
            self.assertEqual(said(), [], "off by default")
            screen.tool("key", "y")
            for _ in range(50):
                if said():
                    break
                time.sleep(0.1)
            self.assertEqual(len(said()), 1)
            first = said()[0]
            self.assertRegex(first, r"^--language en -- \S.*")
            bench.key("Tab", "at")
            for _ in range(50):
                if len(said()) == 2:
                    break
                time.sleep(0.1)
            self.assertEqual(len(said()), 2)
            self.assertNotEqual(said()[1], first)
            bench.close()

    def test_the_water_says_the_same_after_a_kill(self):
        with Screen() as screen:
            bench = self.opened(screen, "n", WATER)
            for _ in range(2):  # a walk through the controls leads nowhere else
                screen.tool("key", "Tab")
            time.sleep(0.5)
            self.look(screen, "water")
            bench.kill()
            bench = self.opened(screen, "n", WATER)
            self.look(screen, "water")
            bench.close()

    def test_what_a_caliper_said_is_there_after_a_kill(self):
        with Screen() as screen:
            bench = self.opened(screen, "a", CHECK)
            bench.key("Escape", "screen")
            bench.key("e", "sheet")
            time.sleep(0.5)
            screen.tool("type", "--delay", "60", "tail 4.9")
            time.sleep(0.3)
            screen.tool("key", "Return")
            time.sleep(0.8)
            bench.key("Escape", "sheet")
            bench.kill()
            bench = self.opened(screen, "a", CHECK)
            self.look(screen, "check")
            bench.close()

    def test_what_was_being_written_is_there_after_a_kill(self):
        with Screen() as screen:
            bench = self.opened(screen, "j", WRITE)
            for _ in range(4):  # the tail
                screen.tool("key", "Down")
                time.sleep(0.2)
            for key in ("Return", "Return", "Tab", "Tab"):  # its fields: to its length
                screen.tool("key", key)
                time.sleep(0.3)
            screen.tool("key", "ctrl+a")
            screen.tool("type", "--delay", "100", "9 mm")
            time.sleep(3)
            bench.kill()
            bench = self.opened(screen, "j", WRITE)
            for _ in range(4):
                screen.tool("key", "Down")
                time.sleep(0.2)
            time.sleep(4.5)  # the notice is gone
            self.look(screen, "write")
            bench.close()

    def test_an_order_that_was_typed_is_there_after_a_kill(self):
        with Screen() as screen:
            bench = self.opened(screen, "F3", ORDERS)
            screen.tool("key", "Right")  # from the number to who it is for
            for words in ("Slate Weir anglers", "2040-12-20", "Weirfoot Jig", "14", None, None, "5 dozen"):
                if words is not None:
                    screen.tool("type", "--delay", "60", words)
                screen.tool("key", "Tab")
                time.sleep(0.3)
            time.sleep(1)
            bench.kill()
            bench = self.opened(screen, "F3", ORDERS)
            self.look(screen, "orders")
            bench.close()

    def test_every_screen_in_a_tall_window(self):
        with Screen(900, 1400) as screen:
            bench = Bench(screen, PROGRAM, self.data, "--window", "800x1280")
            bench.key("Escape", "screen")
            screen.tool("key", "h")
            for key, name, number in (("l", "tall-lay-out", LAY_OUT), ("f", "tall-recipes", LIBRARY),
                                      ("n", "tall-water", WATER), ("a", "tall-check", CHECK),
                                      ("j", "tall-write", WRITE), ("F3", "tall-orders", ORDERS)):
                screen.tool("key", key)
                bench.wait(lambda s, n=number: s["screen"] == n)
                time.sleep(0.5)
                self.look(screen, name)
                bench.key("Escape", "screen")
            bench.close()


if __name__ == "__main__":
    if len(sys.argv) > 1:
        PROGRAM = sys.argv.pop(1)
    if len(sys.argv) > 1 and not sys.argv[1].startswith("-"):
        SHOTS = pathlib.Path(sys.argv.pop(1))
    unittest.main()
