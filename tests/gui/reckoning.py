#!/usr/bin/python3
"""From a test to a load, and from the sides of a test to an extra set and back: each in one press and one step of undo."""
import json

import gui
from steps import check, ends, run, save

LINE = ("text", "Dose line")


def write_line(g, words):
    g.key("ctrl+l")
    g.key("ctrl+a")
    g.type(words)


def test(work):
    g = work.start()
    g.wait("row", "Sit to stand, *")

    # 20 kg 8 times: the load for twelve at effort 6, down to the exercise's limit; by the keyboard.
    g.press("row", "Heel raise at the counter, *")
    g.expect(*LINE, "text", "3 x 12, rest 60 s, effort 6, pain 3")
    g.scroll_to("button", "Load from a test…")
    g.press("button", "Load from a test…")
    g.find("text", "Name of the test", hidden=True)
    g.key("Tab")
    g.type("20")
    g.key("Tab", "Tab")
    g.type("8")
    g.key("Tab", "Tab", "Return")
    g.find("label", "What could be moved once, after Brzycki 1993", hidden=True)
    g.key("Escape")
    g.key("Tab", "Return")
    g.expect("row", "Heel raise at the counter, *", "description", "3 x 12, 10 kg, rest 60 s, effort 6, pain 3*")
    save(g, work)
    load = [entry for entry in json.loads(work.numbers(work.file))["sessions"][0]["items"] if "starting-load" in entry]
    check(len(load) == 1, f"{len(load)} items have a starting load")
    check(abs(load[0]["starting-load"]["one-maximum-kilograms"] - 24.8276) < 1e-3, "20 kg 8 times is another maximum")
    check(load[0]["starting-load"]["kilograms"] == 10, "the load is above the exercise's limit")
    g.key("ctrl+z")
    g.expect("row", "Heel raise at the counter, *", "description", "3 x 12, rest 60 s, effort 6, pain 3*")

    # The sides differ in the test that counts: one more set, and it is on the handout.
    g.press("row", "Leg out to the side at the counter, *")
    write_line(g, "2 x 8, each side, rest 60 s, effort 6, pain 3")
    g.key("Tab")
    g.scroll_to("dropdown", "Test that counts")
    g.choose("Test that counts", "One-leg stand")
    g.scroll_to("button", "Right side 63.6 % below the left: show how it was reckoned")
    g.scroll_to("button", "One more set on the right until the sides are alike")
    g.press("button", "One more set on the right until the sides are alike")
    g.expect("row", "Leg out to the side at the counter, *", "description", "2 x 8, each side, +1 set right, *")
    g.wait_gone("button", "One more set on the right until the sides are alike")

    # The visits as a chart, each in words; Escape closes.
    g.key("ctrl+m")
    g.wait_window("Measurements over the visits")
    g.wait("any", "One-leg stand: 2 visits. First 2026-11-02: right 4, left 19 seconds*")
    g.wait("label", "2026-11-23: right 8, left 22 seconds; symmetry index 36.4 %")
    g.wait("label", "Counts for: Leg out to the side at the counter")
    nameless = gui.lint(g)
    check(not nameless, f"without an accessible name: {nameless}")
    g.key("Escape")

    # Alike now: the extra set goes.
    g.key("Escape")
    g.press("row", "Leg out to the side at the counter, *")
    save(g, work)
    with open(work.file, encoding="utf-8") as file:
        text = file.read()
    check('test="One-leg stand"' in text, "the test that counts is not kept")
    g.key("ctrl+q")
    ends(g)

    with open(work.file, "w", encoding="utf-8") as file:
        file.write(text.replace('left="22" right="8"', 'left="22" right="21"'))
    g = work.start()
    g.wait("row", "Sit to stand, *")
    g.press("row", "Leg out to the side at the counter, *")
    g.scroll_to("button", "Take the extra sets off")
    g.press("button", "Take the extra sets off")
    g.expect("row", "Leg out to the side at the counter, *", "description", "2 x 8, each side, rest 60 s*")
    g.key("ctrl+z")
    g.expect("row", "Leg out to the side at the counter, *", "description", "2 x 8, each side, +1 set right, *")
    save(g, work)
    g.key("ctrl+q")
    ends(g)



run(test)
