#!/usr/bin/python3
"""The clinic's logo: a file that is none, one that is, on the pages, undone, kept with the programme and remembered."""
import os
import subprocess

import gui
from steps import check, ends, run, save

SVG = ('<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 30"><!-- drawn by nobody -->'
       '<path d="M0 30L45 0L90 30z" fill="#234"/></svg>')


def write(path, text):
    with open(path, "w", encoding="utf-8") as file:
        file.write(text)
    return path


def choose(g, path):
    g.scroll_to("button", "Choose the logo…")
    g.press("button", "Choose the logo…")
    g.wait_window("Choose the clinic’s logo")
    g.key("ctrl+l")
    g.key("ctrl+a")
    g.type(path)
    # The first Return may only close the list of names that fit.
    for _ in range(3):
        g.key("Return")
        if g._until(lambda: not g.find_all("filler", "Choose the clinic’s logo"), 2):
            return
    raise gui.Fail("the dialog stays open")


def figures(work, name):
    """How many pictures with words for those who do not see them the handout's first page begins with."""
    pdf = work.path(name)
    subprocess.run([work.make, "handout", work.file, "-o", pdf], check=True)
    tree = subprocess.run(["pdfinfo", "-struct", pdf], check=True, capture_output=True, text=True).stdout
    return tree.split("H1")[0].count("Figure")


def test(work):
    g = work.start()
    g.wait("row", "Sit to stand, *")
    g.wait("text", "Name")

    choose(g, write(work.path("letter.svg"), "Dear all"))
    g.wait("alert", "The file is neither a PNG picture nor an SVG drawing.*")
    check(not g.find_all("button", "Remove the logo"), "what is no picture became the logo")

    choose(g, write(work.path("roof.svg"), SVG))
    g.scroll_to("button", "Remove the logo")
    check(not g.find_all("alert", "The file is neither*"), "the complaint stays")
    nameless = gui.lint(g)
    check(not nameless, f"without an accessible name: {nameless}")

    g.key("ctrl+z")
    g.wait_gone("button", "Remove the logo")
    g.key("ctrl+shift+z")
    g.wait("button", "Remove the logo")
    check(figures(work, "before.pdf") == 0, "a handout without a logo begins with a picture")
    save(g, work)
    with open(work.file, encoding="utf-8") as file:
        saved = file.read()
    check('<logo media-type="image/svg+xml">' in saved, "the logo was not saved")
    check(figures(work, "after.pdf") == 1, "the handout does not begin with the logo")

    remembered = os.path.join(os.environ.get("XDG_CONFIG_HOME") or os.path.expanduser("~/.config"), "setwright",
                              "clinic-logo")
    with open(remembered, encoding="utf-8") as file:
        drawing = file.read()
    check("path" in drawing and "nobody" not in drawing, f"not remembered as it is drawn: {drawing}")

    # A new programme begins with it.
    g.key("ctrl+n")
    g.wait_window("New programme*")
    check(g._until(lambda: g.find_all("button", "Remove the logo", hidden=True)), "a new programme has no logo")
    g.key("ctrl+q")
    ends(g)


run(test)
