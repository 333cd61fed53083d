"""What .ci/tidy says of files that it reads several at once names the file, the line and everything in it."""

import json
import pathlib
import shutil
import subprocess
import sys
import tempfile
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]
CLEAN = "namespace {\nint twice(int x) { return 2 * x; }\n} // namespace\nint %s(int x) { return twice(x); }\n"


def tidy(**files):
    """Exit code and words of .ci/tidy for a core of these files, in one room."""
    with tempfile.TemporaryDirectory() as folder:
        root = pathlib.Path(folder).resolve()
        for part in (".ci/tidy", ".clang-tidy"):
            (root / part).parent.mkdir(exist_ok=True)
            shutil.copy(ROOT / part, root / part)
        room = root / "core" / "room"
        room.mkdir(parents=True)
        for name, text in files.items():
            (room / f"{name}.cpp").write_text(text)
        (root / "build").mkdir()
        (root / "build/compile_commands.json").write_text(json.dumps([
            {"directory": folder, "file": str(file), "command": f"clang++-19 -std=c++20 -o x.o -c {file}"}
            for file in room.iterdir()]))
        done = subprocess.run([sys.executable, root / ".ci/tidy", root / "build"], capture_output=True, text=True)
        return done.returncode, done.stdout.replace(folder + "/", "") + done.stderr


@unittest.skipUnless(shutil.which("clang-tidy-19"), "clang-tidy 19 comes with .ci/setup ci alone")
class Tidy(unittest.TestCase):
    def test_files_with_helpers_of_the_same_name_are_read_apart(self):
        self.assertEqual(tidy(a=CLEAN % "four", b=CLEAN % "eight", c="int plain() { return 1; }\n"),
                         (0, "tidy: 3 files are clean\n"))

    def test_a_remark_names_the_file_and_line_that_it_is_about(self):
        code, words = tidy(a="int plain() { return 1; }\n", b="\nint Named() { return 1; }\n")
        self.assertEqual(code, 1)
        self.assertIn("core/room/b.cpp:2:5: error: invalid case style for function 'Named'", words)

    def test_ways_through_a_function_are_followed_in_each_file(self):
        bad = "int %s(const int* p) { if (p == nullptr) { return *p; } return 1; }\n"
        code, words = tidy(a=bad % "first", b=bad % "second")
        self.assertEqual(code, 1)
        for name in "ab":
            self.assertRegex(words, rf"core/room/{name}\.cpp:1:\d+: error: Dereference of null pointer")

    def test_a_file_that_does_not_compile_is_told_and_not_passed_over(self):
        code, words = tidy(a="int plain() { return 1; }\n", b="int broken() { return }\n")
        self.assertEqual(code, 1)
        self.assertIn("core/room/b.cpp:1", words)


unittest.main()
