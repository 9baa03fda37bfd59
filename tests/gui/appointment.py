#!/usr/bin/python3
"""One appointment: open the sample, search, drag three exercises in, re-order by drag and by keyboard, change
a dose and undo it, save, make the PDF, open again and compare."""
import os
import re
import subprocess

import gui
from steps import check, ends, names, run, save, save_pdf

SESSION = "Session"


def drag_in(g, words, name, target, where):
    """Searches as a person does, misspelling included, and drags the hit to its place."""
    g.focus("entry", "Search the catalogue")
    g.key("ctrl+a")
    g.type(words)
    g.wait("row", name)
    g.settle()
    before = names(g.order(SESSION))
    g.drag(("row", name), ("row", target), where)
    g.wait("row", name + ", *")
    after = names(g.order(SESSION))
    check(len(after) == len(before) + 1, f"dragging {name} in made {len(after) - len(before)} rows")
    return after


def test(work):
    g = work.start()
    g.wait("row", "Sit to stand, *")
    nameless = gui.lint(g)
    check(not nameless, f"without an accessible name: {nameless}")

    rows = drag_in(g, "calf rasie one", "Heel raise on one leg", "Sit to stand, *", "after")
    check(rows.index("Heel raise on one leg") == rows.index("Sit to stand") + 1, f"dropped in the wrong place: {rows}")
    rows = drag_in(g, "neck turns", "Neck turns", "Ankle rocks in sitting, *", "before")
    check(rows.index("Neck turns") == rows.index("Ankle rocks in sitting") - 1, f"dropped in the wrong place: {rows}")
    rows = drag_in(g, "squeeze blade shoulder", "Shoulder blade squeeze", "Knee straightening in sitting, *", "after")
    check(rows.index("Shoulder blade squeeze") == rows.index("Knee straightening in sitting") + 1,
          f"dropped in the wrong place: {rows}")

    # Re-ordered by drag, then by keyboard; the moved item stays chosen, so the key moves the same one on.
    g.drag(("row", "Shoulder blade squeeze, *"), ("row", "Ankle rocks in sitting, *"), "before")
    moved = list(rows)
    moved.remove("Shoulder blade squeeze")
    moved.insert(moved.index("Ankle rocks in sitting"), "Shoulder blade squeeze")
    check(g._until(lambda: names(g.order(SESSION)) == moved), f"after the drag: {names(g.order(SESSION))}")
    g.key("alt+Up")
    moved.remove("Shoulder blade squeeze")
    moved.insert(moved.index("Neck turns"), "Shoulder blade squeeze")
    check(g._until(lambda: names(g.order(SESSION)) == moved), f"after Alt+Up: {names(g.order(SESSION))}")

    # A dose, typed as a therapist writes it; undone; typed again.
    g.press("row", "Sit to stand, *")
    g.set("text", "Dose line", "3 x 12, tempo 2-0-2, rest 60 s", commit=None)
    g.expect("row", "Sit to stand, *", "description", "3 x 12, tempo 2-0-2*")
    g.key("ctrl+z")
    g.expect("row", "Sit to stand, *", "description", "2 x 8-10*")
    g.key("ctrl+shift+z")
    g.expect("row", "Sit to stand, *", "description", "3 x 12, tempo 2-0-2*")

    save(g, work)
    order = g.order(SESSION)
    check('"length-low-seconds" : 264.0' in work.numbers(work.file),
          "3 sets of 12 at 2-0-2 with 60 s rest are 264 s; the saved programme says otherwise")

    # The PDF, by the keyboard alone.
    pdf = work.path("handout.pdf")
    save_pdf(g, pdf)
    subprocess.run(["qpdf", "--check", pdf], check=True, capture_output=True)
    text = work.words(pdf)
    places = [text.find(row.rsplit(", ", 1)[0]) for row in order if " of " in row and ", section " not in row]
    check(-1 not in places, "an exercise of the session is not in the handout")
    check("3 sets of 12" in text, "the new dose is not in the handout")

    # Giving the handout out is noted in the programme, so there is something to save again.
    g.wait("label", "*changes not saved")
    save(g, work)

    # The printer, here the one that prints to a file, gets the very pages of the PDF.
    g.key("ctrl+p")
    g.wait_window("Print")
    dialog = g.find("dialog", "Print")
    g.click(g.find("label", "Print to File", within=dialog))
    g.click(g.find("button", "Print", within=dialog))
    printed = work.path("output.pdf")
    check(g._until(lambda: os.path.exists(printed) and os.path.getsize(printed) > 1000), "nothing was printed")
    g.wait("label", "*changes not saved")
    check(sorted(work.words(printed).split()) == sorted(text.split()), "the printed pages have other words than the PDF")

    # What was given is noted as it was when printing began: the same pages as the PDF, the same doses.
    save(g, work)
    with open(work.file, encoding="utf-8") as stream:
        issues = dict(re.findall(r'<issue [^>]*way="(pdf|print)"(.*?)</issue>', stream.read(), re.DOTALL))
    check(sorted(issues) == ["pdf", "print"] and issues["pdf"] == issues["print"], f"noted as given: {issues}")
    g.key("ctrl+q")
    ends(g)

    again = work.start()
    again.wait("row", "Sit to stand, *")
    check(again.order(SESSION) == order, f"opened again it reads {again.order(SESSION)}, not {order}")
    again.key("ctrl+q")
    ends(again)


run(test)
