#!/usr/bin/python3
"""A session in a better order: offered with what it saves, taken as one step of undo, and what it has to keep to."""
import json

import gui
from steps import check, ends, run, save

WINDOW = "Arrange the session"


def order(g):
    """The exercises of the session from top to bottom, by what its rows are called."""
    return [row.name.rsplit(", ", 1)[0] for row in g.find_all("row", "*, * of *") if ", section " not in row.name]


def test(work):
    g = work.start()
    g.wait("row", "Sit to stand, *")

    # The minutes of the session open to their working.
    g.press("button", "21–28 min · 30 min wished: *")
    g.wait("row", "Reading what comes next: 8 × 5–15 s = 0:40–2:00. *")
    g.wait("row", "Together: everything goes quickly, or nothing does: 21:16–27:05 min. *")
    g.key("Escape")

    # Sitting down between two exercises in standing is a way too many; the order as it was comes back in one step.
    g.press("row", "Sit to stand, *")
    g.key("alt+Down")
    g.wait("button", "4 changes of position (*")
    before = order(g)
    g.key("ctrl+shift+a")
    g.wait_window(WINDOW)
    g.wait("label", "Saves about * fewer changes of position*")
    g.wait("label", "Each exercise stays in its section*")
    g.press("button", "Take this order")
    g.wait_gone("button", "4 changes of position (*")
    after = order(g)
    check(sorted(before) == sorted(after) and before != after, f"arranged from {before} to {after}")
    g.press("button", "* of position (*")
    g.wait("label", "Nothing to gain: in no other order does less time go between the exercises.")
    check(not g.find_all("button", "Take this order"), "nothing to gain, and yet an order to take")
    g.key("Escape")
    g.key("ctrl+z")
    g.wait("button", "4 changes of position (*")
    check(order(g) == before, f"undone to {order(g)}, not {before}")

    # What keeps its place costs something, and says so; escaping changes nothing.
    g.press("row", "Sit to stand, *")
    g.scroll_to("checkbox", "Keep at this place")
    g.press("checkbox", "Keep at this place")
    g.key("ctrl+shift+a")
    g.wait("label", "*Items that keep their place cost about * s.*")
    g.key("Escape")
    check(order(g) == before, f"left as {order(g)}, not {before}")

    # What comes after another can be told too, and all of it is saved.
    g.choose("Always after", "Heel raise at the counter")
    save(g, work)
    with open(work.file, encoding="utf-8") as stream:
        text = stream.read()
    check('pinned="yes"' in text and ' after="' in text, "what arranging keeps to is not in the file")
    kept = json.loads(work.numbers(work.file))["sessions"][0]["arranged"]
    check(kept["seconds-less-without-kept-places"] > 0, f"what is kept costs nothing: {kept}")

    # The clinic's own times count at once, and the usual ones come back in one step.
    g.press("row", "Sit to stand, *")
    g.key("Escape")
    g.scroll_to("*", "Time between exercises")
    g.press("*", "Time between exercises")
    g.scroll_to("button", "Back to the usual times")
    usual = g.find("button", "4 changes of position (*").name
    g.set("spin", "Between standing and a seat or bed, at most", "70")
    g.wait_gone("button", usual)
    g.wait("button", "4 changes of position (*")
    g.press("button", "Back to the usual times")
    g.expect("spin", "Between standing and a seat or bed, at most", "value", "10")
    g.wait("button", usual)
    save(g, work)
    g.key("ctrl+q")
    ends(g)


run(test)
