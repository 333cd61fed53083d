#!/usr/bin/env python3
"""Pages printed to PDF by a browser: how many, how large, what they say, and how long their bars are.

print_test.py PROGRAM
"""

import json
import os
import pathlib
import subprocess
import sys
import tempfile
import unittest

PROGRAM = "build/wrapwright"
DOTS_PER_MM = 600 / 25.4
# What a page may be off by: the promise of the gauge strip.
TOLERANCE_MM = 0.2


def run(*command):
    return subprocess.run(command, check=True, capture_output=True, text=True, timeout=120).stdout


def printed(html):
    """The PDF that a browser makes of a page."""
    pdf = html.with_suffix(".pdf")
    command = ["chromium", "--headless", "--disable-gpu", "--no-pdf-header-footer",
               f"--user-data-dir={html.parent}/browser", f"--print-to-pdf={pdf}"]
    if os.geteuid() == 0:
        command.append("--no-sandbox")
    run(*command, html.as_uri())
    return pdf


def page_mm(pdf):
    """Number of pages, and their size in mm."""
    info = dict(line.split(":", 1) for line in run("pdfinfo", str(pdf)).splitlines() if ":" in line)
    width, height = (float(x) / 72 * 25.4 for x in info["Page size"].split("pts")[0].split(" x "))
    return int(info["Pages"]), width, height


def picture(pdf):
    """The first page as rows of grey, 600 dots to the inch."""
    stem = pdf.with_suffix("")
    run("pdftoppm", "-r", "600", "-gray", "-aa", "no", "-aaVector", "no", "-singlefile", str(pdf),
        str(stem))
    data = stem.with_suffix(".pgm").read_bytes()
    fields, at = [], 0
    while len(fields) < 4:
        end = min(i for i in (data.find(b, at) for b in (b" ", b"\n")) if i >= 0)
        fields.append(data[at:end])
        at = end + 1
    width, height = int(fields[1]), int(fields[2])
    return [data[at + y * width: at + (y + 1) * width] for y in range(height)]


def longest_run(row, low, high):
    """The longest run of dots whose grey is within bounds: its start and its length."""
    best, start, length = (0, 0), 0, 0
    for x, grey in enumerate(row):
        if low <= grey <= high:
            if length == 0:
                start = x
            length += 1
            if length > best[1]:
                best = (start, length)
        else:
            length = 0
    return best


class Gauge(unittest.TestCase):
    def test_the_gauge_strip_measures_right_to_a_fifth_of_a_millimetre(self):
        for recipe, paper, size in (("sill-dun", "A4", (210, 297)),
                                    ("weirfoot-jig", "letter", (215.9, 279.4))):
            with self.subTest(recipe=recipe), tempfile.TemporaryDirectory() as folder:
                html = pathlib.Path(folder) / "gauge.html"
                run(PROGRAM, "gauge", recipe, "--size", "14", "--paper", paper, "-o", str(html))
                self.assertNotIn("http://", html.read_text().replace("http://www.w3.org/", ""))
                self.assertNotIn("https://", html.read_text())
                pdf = printed(html)
                pages, width, height = page_mm(pdf)
                self.assertEqual(pages, 1)
                self.assertAlmostEqual(width, size[0], delta=0.5)
                self.assertAlmostEqual(height, size[1], delta=0.5)
                self.assertIn("100 mm: measure it", run("pdftotext", str(pdf), "-"))
                rows = picture(pdf)
                # The line of the 100 mm bar is the longest dark run of the page.
                bar = max(longest_run(row, 0, 60)[1] for row in rows)
                self.assertAlmostEqual(bar / DOTS_PER_MM, 100.0, delta=TOLERANCE_MM)
                # Bars of the targets are grey, one below the other, each from its root line.
                said = json.loads(run(PROGRAM, "proportions", recipe, "--size", "14", "--json"))
                wanted = [r["target_mm"]["value"] for r in said["rows"]]
                seen, inside = [], 0
                for row in rows:
                    length = longest_run(row, 175, 200)[1]
                    inside = inside + 1 if length > 2 * DOTS_PER_MM else 0
                    if inside == int(1.5 * DOTS_PER_MM):  # the middle of a bar
                        seen.append(row)
                self.assertGreaterEqual(len(seen), len(wanted))
                for row, mm in zip(seen, wanted):
                    # From the root line to the line at the target, whose halves are drawn over it.
                    start = next(x for x, grey in enumerate(row) if grey < 60)
                    ends = [x for x, grey in enumerate(row) if grey < 60]
                    middle = 0.15 * DOTS_PER_MM
                    near = min(abs((x - start - middle) / DOTS_PER_MM - mm) for x in ends)
                    self.assertLess(near, TOLERANCE_MM)


if __name__ == "__main__":
    PROGRAM = sys.argv.pop(1) if len(sys.argv) > 1 else PROGRAM
    unittest.main()
