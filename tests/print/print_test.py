#!/usr/bin/env python3
"""Pages printed to PDF by a browser: how many, how large, what they say, and how long their bars are.

print_test.py PROGRAM
"""

import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]
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


RECIPES = ("weirfoot-jig", "sill-dun", "tailrace-spider", "lockgate-sedge", "millpool-leech",
           "keepers-note")


def words_of(pdf):
    """Every word of the first page with its box in mm: left, top, right, bottom."""
    text = run("pdftotext", "-bbox", str(pdf), "-")
    pattern = r'<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*?)<'
    return [([float(v) / 72 * 25.4 for v in m[:4]], m[4]) for m in re.findall(pattern, text)]


class Cards(unittest.TestCase):
    def test_a_recipe_is_whole_on_one_card_that_keeps_its_scale(self):
        for paper, size in (("3x5", (127, 76.2)), ("A6", (148, 105))):
            for recipe in RECIPES:
                with self.subTest(recipe=recipe, paper=paper), \
                        tempfile.TemporaryDirectory() as folder:
                    html = pathlib.Path(folder) / "card.html"
                    run(PROGRAM, "card", recipe, "--paper", paper, "-o", str(html))
                    pdf = printed(html)
                    pages, width, height = page_mm(pdf)
                    self.assertEqual(pages, 1)
                    self.assertAlmostEqual(width, size[0], delta=0.5)
                    self.assertAlmostEqual(height, size[1], delta=0.5)
                    # What has no room would be in a third column, beyond the page.
                    words = words_of(pdf)
                    for (left, top, right, bottom), word in words:
                        self.assertTrue(0 <= left <= right <= width, word)
                        # A font's own box reaches beyond its letters.
                        self.assertTrue(-1 <= top <= bottom <= height + 1, word)
                    # Every word of every step is there, in order.
                    said = json.loads((ROOT / "assets" / "recipes" / f"{recipe}.json").read_text())
                    text = "".join(run("pdftotext", "-raw", str(pdf), "-").split())
                    for step in said.get("steps", []):
                        self.assertIn("".join(step["text"].split()), text)
                    rows = picture(pdf)
                    if recipe == "weirfoot-jig":
                        bar = max(longest_run(row[:int(40 * DOTS_PER_MM)], 0, 90)[1]
                                  for row in rows[int(25 * DOTS_PER_MM):])
                        self.assertAlmostEqual(bar / DOTS_PER_MM, 25.4, delta=TOLERANCE_MM)

    def test_the_card_says_the_same_as_the_plan_and_the_water(self):
        with tempfile.TemporaryDirectory() as folder:
            html = pathlib.Path(folder) / "card.html"
            run(PROGRAM, "card", "weirfoot-jig", "--size", "14", "-o", str(html))
            water = json.loads(run(PROGRAM, "water", "weirfoot-jig", "--size", "14", "--json"))
            text = html.read_text()
            mass, sink = water["mass_mg"], water["sink_m_s"]
            self.assertIn(f"Weighs {mass['value']:.0f} mg ({mass['low']:.0f} to {mass['high']:.0f})",
                          text)
            self.assertIn(f"Sinks {sink['value']:.2f} m/s ({sink['low']:.2f} to {sink['high']:.2f})",
                          text)
            self.assertIn("until you time one", text)

    def test_a_handout_has_every_step_with_a_picture_and_mirrors_for_the_other_hand(self):
        with tempfile.TemporaryDirectory() as folder:
            pages = {}
            for hand in ("right", "left"):
                html = pathlib.Path(folder) / f"{hand}.html"
                run(PROGRAM, "card", "weirfoot-jig", "--size", "14", "--as", "handout", "--hand", hand,
                    "-o", str(html))
                pages[hand] = html.read_text()
            steps = json.loads((ROOT / "assets/recipes/weirfoot-jig.json").read_text())["steps"]
            self.assertEqual(pages["right"].count('<div class="step keep">'), len(steps))
            self.assertEqual(pages["right"].count("<svg"), len(steps) + 2)
            self.assertNotEqual(pages["right"], pages["left"])
            plain = [re.sub(r"<svg.*?</svg>", "", pages[h], flags=re.S) for h in ("right", "left")]
            self.assertEqual(*plain)  # words do not change
            pdf = printed(pathlib.Path(folder) / "right.html")
            text = run("pdftotext", str(pdf), "-")
            self.assertIn("Look for:", text)
            self.assertIn("Blades: cut away", text)

    def test_lead_is_told_on_tags_and_labels_where_it_is_in_the_fly(self):
        with tempfile.TemporaryDirectory() as folder:
            recipe = json.loads((ROOT / "assets/recipes/weirfoot-jig.json").read_text())
            for material in recipe["materials"]:
                if material["id"] == "ballast" or "weighting" in material.get("text", ""):
                    material["substance"] = "lead"
            leaded = pathlib.Path(folder) / "leaded.json"
            leaded.write_text(json.dumps(recipe))
            for source, word in ((str(leaded), "yes"), ("weirfoot-jig", "no")):
                for kind in ("tag", "label"):
                    html = pathlib.Path(folder) / "page.html"
                    run(PROGRAM, "card", source, "--size", "14", "--as", kind, "--flies", "24",
                        "--maker", "Keeper & <Sons>", "-o", str(html))
                    text = html.read_text()
                    self.assertIn(f"contains lead: {word}", text)
                    self.assertIn("Keeper &amp; &lt;Sons&gt;", text)
                    self.assertEqual(text.count("contains lead"), 24 if kind == "tag" else 2)
            html = pathlib.Path(folder) / "page.html"
            run(PROGRAM, "card", str(leaded), "--size", "14", "-o", str(html))
            self.assertIn("Contains lead", html.read_text())


class OrderSheet(unittest.TestCase):
    def test_an_order_prints_on_one_sheet_with_its_lines_and_what_lacks(self):
        with tempfile.TemporaryDirectory() as folder:
            data, table, html = (pathlib.Path(folder) / n for n in ("data", "in.csv", "order.html"))
            data.mkdir()
            table.write_text("who,due,recipe,size,flies,dozen\n"
                             "Slate Weir anglers,2099-12-20,Sill & Dun <14>,14,3 dozen,24\n"
                             "Slate Weir anglers,2099-12-20,weirfoot-jig,16,2 dozen,24\n")
            run(PROGRAM, "orders", "--data", str(data), "--in", str(table), "--yes")
            run(PROGRAM, "orders", "--data", str(data), "--line", "1", "--sheet", str(html))
            self.assertNotIn("http", html.read_text().replace("http://www.w3.org/", ""))
            pdf = printed(html)
            pages, width, height = page_mm(pdf)
            self.assertEqual(pages, 1)
            self.assertAlmostEqual(width, 210, delta=0.5)
            self.assertAlmostEqual(height, 297, delta=0.5)
            text = run("pdftotext", "-layout", str(pdf), "-")
            for words in ("Order for Slate Weir anglers", "Due 2099-12-20", "3 dozen",
                          "Sill &", "<14>", "Price agreed: 120.00"):
                self.assertIn(words, text)
            for (left, top, right, bottom), word in words_of(pdf):
                self.assertGreaterEqual(left, 9.5, word)
                self.assertLessEqual(right, 200.5, word)


if __name__ == "__main__":
    PROGRAM = sys.argv.pop(1) if len(sys.argv) > 1 else PROGRAM
    unittest.main()
