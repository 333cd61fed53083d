"""A screen in memory with the bench on it: what the tests and benches of the window share."""

import os
import pathlib
import queue
import subprocess
import threading
import time

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent


class Screen:
    """An Xvfb of its own, gone with the block."""

    def __init__(self, width=1400, height=900):
        self.size = f"{width}x{height}x24"

    def __enter__(self):
        read, write = os.pipe()
        self.server = subprocess.Popen(
            ["Xvfb", "-displayfd", str(write), "-screen", "0", self.size, "-nolisten", "tcp"],
            pass_fds=[write], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        os.close(write)
        with os.fdopen(read) as told:
            self.env = dict(os.environ, DISPLAY=f":{told.readline().strip()}", LC_ALL="C")
        return self

    def __exit__(self, *_):
        self.server.terminate()
        self.server.wait()

    def tool(self, *arguments):
        """xdotool, which presses keys and moves the pointer as a person does."""
        subprocess.run(["xdotool", *map(str, arguments)], env=self.env, check=True,
                       stdout=subprocess.DEVNULL)

    def shot(self, file):
        file.parent.mkdir(parents=True, exist_ok=True)
        subprocess.run(["import", "-window", "root", str(file)], env=self.env, check=True)


class Bench:
    """The program in its window. Waits for states that it tells, never for a time."""

    PATIENCE = 60  # seconds until a state that does not come is a failure

    def __init__(self, screen, program, data, *options):
        self.screen = screen
        self.process = subprocess.Popen([program, "--data", str(data), "--trace", *options],
                                        env=screen.env, stdout=subprocess.PIPE, text=True)
        self.lines = queue.Queue()
        self.state = {}
        threading.Thread(target=self._read, daemon=True).start()
        self.wait(lambda s: True)
        screen.tool("mousemove", 300, 30)  # without a window manager keys follow the pointer

    def _read(self):
        for line in self.process.stdout:
            words = line.split()
            self.lines.put({words[i]: int(words[i + 1]) for i in range(0, len(words), 2)})

    def wait(self, wanted):
        """The first state from now on, or the present one, for which `wanted` holds."""
        end = time.monotonic() + self.PATIENCE
        while not (self.state and wanted(self.state)):
            left = end - time.monotonic()
            if left <= 0 or self.process.poll() is not None:
                raise AssertionError(f"stuck in the state {self.state}")
            try:
                self.state = self.lines.get(timeout=min(left, 0.5))
            except queue.Empty:
                pass
        return self.state

    def key(self, name, changes):
        """Presses a key and waits until `changes` (a name of the state) is another number."""
        before = self.state[changes]
        self.screen.tool("key", name)
        return self.wait(lambda s: s[changes] != before)

    def drain(self):
        """The newest state that was told."""
        while True:
            try:
                self.state = self.lines.get(timeout=0.3)
            except queue.Empty:
                return self.state

    def kill(self):
        self.process.kill()
        self.process.wait()

    def close(self):
        self.process.terminate()
        self.process.wait()
