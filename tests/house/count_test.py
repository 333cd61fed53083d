"""The count of passed and failed tests is an honest one."""

import pathlib
import subprocess
import sys
import tempfile
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]


def count(*tests):
    """What .ci/count says of these tests, each as (status, output or reason for not running)."""
    cases = ""
    for status, text in tests:
        body = f'<skipped message="{text}"/>' if status == "notrun" else ""
        cases += f'<testcase name="t" status="{status}">{body}<system-out>{text}</system-out></testcase>'
    with tempfile.NamedTemporaryFile("w", suffix=".xml") as file:
        file.write(f'<?xml version="1.0" encoding="UTF-8"?><testsuite>{cases}</testsuite>')
        file.flush()
        result = subprocess.run([sys.executable, ROOT / ".ci/count", file.name],
                                capture_output=True, text=True, check=True)
    return tuple(map(int, result.stdout.split()))


def doctest(passed, failed):
    """The line that a doctest program ends with."""
    return f"[doctest] test cases:  {passed + failed} |  {passed} passed | {failed} failed | 0 skipped"


class Count(unittest.TestCase):
    def test_a_plain_test_counts_as_one(self):
        self.assertEqual(count(("run", ""), ("run", ""), ("fail", "")), (2, 1))

    def test_a_doctest_program_counts_by_its_cases(self):
        self.assertEqual(count(("run", "order\n" + doctest(12, 0)), ("run", "")), (13, 0))
        self.assertEqual(count(("fail", "order\n" + doctest(10, 2))), (10, 2))

    def test_a_crash_before_or_after_the_cases_is_a_failure(self):
        self.assertEqual(count(("fail", "no summary")), (0, 1))
        self.assertEqual(count(("fail", doctest(5, 0) + "\nleak found")), (5, 1))

    def test_a_program_that_is_not_there_is_a_failure(self):
        self.assertEqual(count(("notrun", "Unable to find executable")), (0, 1))

    def test_what_is_skipped_or_switched_off_counts_as_neither(self):
        self.assertEqual(count(("notrun", "SKIP_RETURN_CODE=77"), ("disabled", "")), (0, 0))


unittest.main()
