"""The set-up script on systems that are not Debian 12: it names what lacks and installs nothing."""

import os
import pathlib
import shutil
import subprocess
import tempfile
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]
NEEDED = ("bash", "dirname", "awk", "grep", "sort", "head", "cat", "uname")


class Setup(unittest.TestCase):
    def setUp(self):
        self.folder = tempfile.TemporaryDirectory()
        self.bin = pathlib.Path(self.folder.name)
        for tool in NEEDED:
            (self.bin / tool).symlink_to(shutil.which(tool))
        # Whatever would install leaves a mark, and the tests look for it.
        for tool in ("apt-get", "sudo", "dpkg-query"):
            self.script(tool, f"touch {self.bin}/was_called")
        self.release = self.bin / "os-release"
        self.release.write_text('ID=fedora\nVERSION_ID=41\nPRETTY_NAME="Fedora 41"\n')

    def tearDown(self):
        self.assertFalse((self.bin / "was_called").exists(), "something was installed")
        self.folder.cleanup()

    def script(self, name, body):
        (self.bin / name).write_text(f"#!{shutil.which('bash')}\n{body}\n")
        (self.bin / name).chmod(0o755)

    def run_setup(self, *groups):
        environment = {**os.environ, "PATH": str(self.bin), "WW_OS_RELEASE": str(self.release)}
        return subprocess.run([shutil.which("bash"), ROOT / ".ci/setup", *groups], text=True,
                              capture_output=True, env=environment, check=False)

    def test_another_system_is_told_each_tool_with_its_least_version(self):
        result = self.run_setup("build")
        self.assertEqual(result.returncode, 2)
        self.assertIn("Fedora 41, not Debian 12", result.stdout)
        self.assertIn("missing: tool cmake, version 3.25 or newer", result.stdout)
        self.assertIn("missing: header glm/vec3.hpp", result.stdout)
        self.assertIn("debian:12 platform/start", result.stdout)

    def test_a_tool_that_is_too_old_counts_as_missing(self):
        for version, missing in (("3.9.6", True), ("3.25.0", False), ("4.0.1", False)):
            with self.subTest(version=version):
                self.script("cmake", f"echo cmake version {version}")
                self.assertEqual("tool cmake" in self.run_setup("build").stdout, missing)

    def test_another_system_that_has_everything_is_fine(self):
        for tool in ("cmake", "ninja", "pkg-config", "make", "tclsh", "xz", "c++"):
            self.script(tool, "echo 99.0")
        keyring = pathlib.Path("/usr/share/keyrings/debian-archive-keyring.gpg")
        if not keyring.exists():
            self.skipTest("no Debian keys on this system")
        result = self.run_setup("build")
        self.assertEqual(result.returncode, 0, result.stdout)
        self.assertIn("nothing is missing", result.stdout)

    def test_an_unknown_group_is_refused(self):
        self.assertEqual(self.run_setup("everything").returncode, 2)


unittest.main()
