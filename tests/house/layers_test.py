"""The include check: a copy of the tree passes, and with one bad include planted it fails there."""

import pathlib
import shutil
import subprocess
import sys
import tempfile
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]
TOP = ("core", "gui", "platform", "shaders", "tests", "assets")

# Each file gets this one line planted; the check has to name the file, the line and the header.
BAD = [
    ("core/hook/planted.h", '#include "gui/app.h"', "gui/app.h"),
    ("core/units/planted.h", '#include "core/hook/hook.h"', "core/hook/hook.h"),
    ("core/recipe/planted.cpp", '#include "core/tying/record.h"', "core/tying/record.h"),
    ("core/geometry/planted.cpp", '#include "core/tying/record.h"', "core/tying/record.h"),
    ("core/geometry/planted.cpp", '#include "core/geometry/fly/model.h"', "fly/model.h"),
    ("core/recipe/resolve_more.cpp", "#include <nlohmann/json.hpp>", "nlohmann/json.hpp"),
    ("core/water/planted.cpp", "#include <fstream>", "fstream"),
    ("core/water/planted.cpp", "  #  include <chrono>", "chrono"),
    ("core/water/planted.cpp", "#include <stdio.h>", "stdio.h"),
    ("core/water/planted.cpp", "#include <GL/gl.h>", "GL/gl.h"),
    ("core/planted.h", '#include "core/units/quantity.h"', "core/units/quantity.h"),
    ("gui/planted.cpp", "#include <sqlite3.h>", "sqlite3.h"),
    ("gui/planted.cpp", "#include <GLFW/glfw3.h>", "GLFW/glfw3.h"),
    ("gui/planted.cpp", "#include <fstream>", "fstream"),
    ("gui/planted.cpp", '#include "platform/gl/planted.h"', "platform/gl/planted.h"),
    ("platform/store/planted.cpp", "#include <imgui.h>", "imgui.h"),
    ("platform/gl/planted.cpp", "#include <GLFW/glfw3.h>", "GLFW/glfw3.h"),
    ("platform/gl/planted.cpp", '#include "gui/app.h"', "gui/app.h"),
    ("platform/cli/planted.cpp", '#include "tests/support/close.h"', "tests/support/close.h"),
    ("platform/desktop/planted.cpp", '#include "platform/web/planted.h"', "platform/web/planted.h"),
    ("core/hook/planted.cpp", '#include "hook.h"', "named from the top"),
    ("core/hook/planted.cpp", '#include "core/hook/no_such.h"', "not in the tree"),
    ("core/hook/planted.cpp", "#include SOME_MACRO", "cannot be checked"),
    ("core/strange/planted.cpp", "#include <vector>", "not a room"),
]

GOOD = [
    ("core/recipe/text_planted.cpp", "#include <nlohmann/json.hpp>"),
    ("core/geometry/fly/planted.cpp", '#include "core/tying/record.h"'),
    ("core/water/planted.cpp", "// once read <fstream>\n#include <vector>"),
    ("platform/cli/planted.cpp", "#include <fstream>\n#include <unistd.h>"),
    ("tests/planted.cpp", '#include "core/result.h"\n#include <doctest/doctest.h>'),
]


class Layers(unittest.TestCase):
    def setUp(self):
        self.folder = tempfile.TemporaryDirectory()
        self.root = pathlib.Path(self.folder.name)
        for top in TOP:
            if (ROOT / top).is_dir():
                shutil.copytree(ROOT / top, self.root / top)
        for header in ("gui/app.h", "platform/gl/planted.h", "platform/web/planted.h"):
            self.plant(header, "")

    def tearDown(self):
        self.folder.cleanup()

    def plant(self, path, text):
        (self.root / path).parent.mkdir(parents=True, exist_ok=True)
        (self.root / path).write_text(text + "\n")

    def check(self):
        return subprocess.run([sys.executable, ROOT / ".ci/layers", self.root],
                              capture_output=True, text=True, check=False)

    def test_the_tree_as_it_is_passes(self):
        result = self.check()
        self.assertEqual(result.returncode, 0, result.stderr)

    def test_each_bad_include_fails_and_is_named(self):
        for path, line, named in BAD:
            with self.subTest(path=path, line=line):
                self.plant(path, line)
                result = self.check()
                (self.root / path).unlink()
                self.assertEqual(result.returncode, 1, result.stdout)
                self.assertIn(path, result.stderr)
                self.assertIn(named, result.stderr)

    def test_innocent_includes_pass(self):
        for path, text in GOOD:
            self.plant(path, text)
        result = self.check()
        self.assertEqual(result.returncode, 0, result.stderr)

    def test_a_tree_without_sources_is_an_error(self):
        with tempfile.TemporaryDirectory() as empty:
            result = subprocess.run([sys.executable, ROOT / ".ci/layers", empty],
                                    capture_output=True, text=True, check=False)
        self.assertEqual(result.returncode, 1)


unittest.main()
