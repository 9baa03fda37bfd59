#!/usr/bin/python3
"""The pane on the right: a dose as a line and as fields, each change one step of undo, and the client."""
import gui
from steps import check, ends, run

LINE = ("text", "Dose line")


def write_line(g, words):
    g.focus(*LINE)
    g.key("ctrl+a")
    g.type(words)


def test(work):
    g = work.start()
    g.wait("row", "Sit to stand, *")
    g.press("row", "Heel raise at the counter, *")
    g.expect(*LINE, "text", "3 x 12, rest 60 s, effort 6, pain 3")

    # The line counts while it is typed; fields, time and the item's row follow.
    g.key("ctrl+l")
    g.key("ctrl+a")
    g.type("4 x 10-15, hold 5 s, 2,5 kg, each side, rest 45 s")
    g.expect("spin", "Sets", "value", "4")
    g.expect("spin", "… up to", "value", "15")
    g.expect("spin", "Load", "value", "2.5")
    g.expect("spin", "Rest", "value", "45")
    g.expect("row", "Heel raise at the counter, *", "description", "4 x 10-15, hold 5 s, 2.5 kg, each side*")

    # What is no dose is said, stays, and changes nothing.
    g.type(", quickly")
    g.wait("label", "*“quickly” is not understood*")
    g.expect("spin", "Sets", "value", "4")
    g.expect(*LINE, "text", "4 x 10-15, hold 5 s, 2,5 kg, each side, rest 45 s, quickly")
    g.key("Escape")
    g.expect(*LINE, "text", "4 x 10-15, hold 5 s, 2.5 kg, each side, rest 45 s")

    # A field counts while it is typed, and refuses what is out of its range.
    g.focus("spin", "Sets")
    g.key("ctrl+a")
    g.type("3")
    g.expect(*LINE, "text", "3 x 10-15, hold 5 s, 2.5 kg, each side, rest 45 s")
    g.type("0")
    g.wait("label", "A whole number from 1 to 20.")
    g.key("Tab")
    g.expect("spin", "Sets", "text", "3")
    g.expect(*LINE, "text", "3 x 10-15, hold 5 s, 2.5 kg, each side, rest 45 s")

    # All that was typed into one place is one step back.
    g.key("ctrl+z")
    g.expect("spin", "Sets", "value", "4")
    g.key("ctrl+z")
    g.expect(*LINE, "text", "3 x 12, rest 60 s, effort 6, pain 3")

    # A load over the exercise's limit is said at the field, with its answer.
    write_line(g, "3 x 12, 40 kg, rest 60 s")
    g.scroll_to("button", "Set the load to 10 kg")
    g.press("button", "Set the load to 10 kg")
    g.expect("row", "Heel raise at the counter, *", "description", "3 x 12, 10 kg, rest 60 s*")
    g.press("button", "Load back to No load")
    g.expect("row", "Heel raise at the counter, *", "description", "3 x 12, rest 60 s*")
    g.key("ctrl+l")
    g.expect(*LINE, "text", "3 x 12, rest 60 s")

    # Another item: the line is its own, and what was typed at the first is not carried over.
    g.press("row", "Sit to stand, *")
    g.expect(*LINE, "text", "2 x 8-10, rest 60 s, effort 6, pain 3")

    # The week as a chart, with what it is measured by.
    g.press("button", "A week: *")
    g.wait("label", "Sets a week of each muscle group")
    g.wait("label", "*2 to 9 sets a week*")
    g.key("Escape")

    # Others in its place, each with the reason; by the keyboard alone, and one step back.
    g.press("row", "Heel raise at the counter, *")
    g.key("ctrl+r")
    g.wait_window("Another exercise")
    g.wait("row", "Heel raise in sitting. 1 step easier; *")
    nameless = gui.lint(g)
    check(not nameless, f"without an accessible name: {nameless}")
    g.key("Down")
    g.key("Return")
    g.wait("row", "Heel raise with bent knees, *")
    g.key("ctrl+z")
    g.wait("row", "Heel raise at the counter, *")

    # A position the client cannot get into speaks against what starts in it.
    g.key("Escape")
    g.scroll_to("button", "Positions not possible alone")
    g.press("button", "Positions not possible alone")
    g.press("checkbox", "Sitting")
    g.key("Escape")
    g.wait("button", "* to look at, *")

    # With nothing chosen, the client.
    g.press("row", "Sit to stand, *")
    g.key("Escape")
    g.focus("text", "Name")
    g.key("ctrl+a")
    g.type("Ada Fieldhouse")
    g.key("Tab")
    g.key("ctrl+a")
    g.type("1948")
    g.expect("spin", "Birth year", "value", "1948")
    nameless = gui.lint(g)
    check(not nameless, f"without an accessible name: {nameless}")
    g.key("ctrl+s")
    g.settle()
    with open(work.file, encoding="utf-8") as file:
        saved = file.read()
    check("Ada Fieldhouse" in saved and 'birth-year="1948"' in saved, "the client was not saved")

    g.key("ctrl+q")
    ends(g)


run(test)
