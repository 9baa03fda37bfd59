#!/usr/bin/python3
"""How the pages look: another layout and back, a card pressed on the page, the summary on its side as PDF."""
import re
import subprocess

import gui
from steps import check, ends, run, save, save_pdf

OPEN = ("button", "Layout: how the pages look")


def open_choices(g):
    g.press(*OPEN)
    g.wait("checkbox", "Compact")


def page_count(g):
    return int(g.find("label", "Page * of *").name.rsplit(" ", 1)[1])


def ticked(g, name):
    return g._until(lambda: "checked" in g.find("checkbox", name).states)


def places_of_words(pdf, words):
    """Wherever @words begin in the PDF: the page, and the place as shares of its width and height."""
    places = []
    boxes = subprocess.run(["pdftotext", "-bbox", pdf, "-"], check=True, capture_output=True, text=True).stdout
    for number, page in enumerate(boxes.split("<page ")[1:], 1):
        width, height = (float(size) for size in re.match(r'width="([\d.]+)" height="([\d.]+)"', page).groups())
        found = re.findall(r'xMin="([\d.]+)" yMin="([\d.]+)" xMax="[\d.]+" yMax="([\d.]+)">([^<]*)<', page)
        for i in range(len(found)):
            if [word[3] for word in found[i:i + len(words)]] == words:
                places.append((number, float(found[i][0]) / width, (float(found[i][1]) + float(found[i][2])) / 2 / height))
    return places


def press_card(g, work):
    """Presses the name of an exercise in the right-hand column of cards, as the program without a window places it."""
    pdf = work.path("compact.pdf")
    subprocess.run([work.make, "handout", work.file, "--layout", "compact", "-o", pdf], check=True)
    places = [place for place in places_of_words(pdf, ["Knee", "straightening"]) if place[1] > 0.5]
    check(places, "the card of knee straightening is not in the right-hand column")
    number, across, down = places[0]
    x, y, w, h = g.screen_rect(g.find("image", "Page 1 of *"))
    for _ in range(200):
        pages = g.find_all("image", f"Page {number} of *")
        if pages:
            x, y, w, h = g.screen_rect(pages[0])
            if y + h * down < 700:
                break
        g.xdo("mousemove", x + w // 2, 600, "click", 5)
        g.settle()
    # A slow window may still be scrolling, or drawing the pages anew, when it is pressed.
    for _ in range(6):
        g.settle(quiet=0.5, wait=20)
        x, y, w, h = g.screen_rect(g.find("image", f"Page {number} of *"))
        g.xdo("mousemove", int(x + w * across + 4), int(y + h * down), "sleep", 0.1, "click", 1)
        if g._until(lambda: g.find_all("text", "Dose line"), 5):
            break
    g.wait("text", "Dose line")
    g.expect("text", "Dose line", "text", "1 x 10, hold 2 s, each side, effort 5, pain 3")
    g.key("F6")
    g.key("Escape")


def info(pdf):
    return subprocess.run(["pdfinfo", pdf], check=True, capture_output=True, text=True).stdout


def test(work):
    g = work.start()
    g.wait("row", "Sit to stand, *")
    g.key("F9")
    g.wait("label", "Page 1 of *")
    full = page_count(g)

    # By keyboard: the popover, another layout with the arrow key; the pages follow.
    g.key("shift+F9")
    g.wait("checkbox", "Compact")
    nameless = gui.lint(g)
    check(not nameless, f"without an accessible name: {nameless}")
    check(ticked(g, "Full"), "the layout is not full at first")
    g.press("checkbox", "Compact")
    check(g._until(lambda: page_count(g) < full), "compact pages are not fewer")
    g.key("Escape")
    g.wait_gone("checkbox", "Compact")

    press_card(g, work)

    # One step back, the popover open or not.
    g.key("ctrl+z")
    check(g._until(lambda: page_count(g) == full), "undo did not bring the full pages back")
    open_choices(g)
    check(ticked(g, "Full"), "the popover did not follow undo")

    # Two parts are two steps.
    g.press("checkbox", "Mistakes to avoid")
    check(g._until(lambda: page_count(g) < full), "leaving out the mistakes leaves as many pages")
    g.press("checkbox", "Signs to stop for")
    g.key("ctrl+z")
    check(ticked(g, "Signs to stop for"), "undo did not bring the stop signs back")
    check("checked" not in g.find("checkbox", "Mistakes to avoid").states, "undo took two steps at once")
    g.key("ctrl+z")
    check(ticked(g, "Mistakes to avoid"), "undo did not bring the mistakes back")

    # A PDF to fill in: one step, told where it is saved, with fields in it.
    g.press("checkbox", "PDF to fill in on a tablet")
    check(ticked(g, "PDF to fill in on a tablet"), "the PDF to fill in is not chosen")
    g.key("ctrl+z")
    g.expect("checkbox", "PDF to fill in on a tablet", "state", "!checked")
    g.key("ctrl+shift+z")
    check(ticked(g, "PDF to fill in on a tablet"), "the PDF to fill in is not chosen again")
    g.key("Escape")
    g.wait_gone("checkbox", "Summary")
    form = work.path("form.pdf")
    save_pdf(g, form, "Save the handout as PDF to fill in")
    check(re.search(r"^Form: +AcroForm$", info(form), re.MULTILINE), "the PDF cannot be filled in")
    open_choices(g)

    # The summary, on its side; nothing else can lie on its side.
    check(not g.find_all("checkbox", "The page on its side"), "full pages can lie on their side")
    g.press("checkbox", "Summary")
    g.wait_gone("checkbox", "PDF to fill in on a tablet")
    g.press("checkbox", "The page on its side")
    check(ticked(g, "The page on its side"), "the summary does not lie on its side")
    g.key("Escape")
    g.wait_gone("checkbox", "Summary")
    save(g, work)
    with open(work.file, encoding="utf-8") as file:
        check('<pages layout="summary" landscape="yes" form="yes"/>' in file.read(), "the page plan was not saved")

    pdf = work.path("summary.pdf")
    save_pdf(g, pdf)
    width, height = (float(size) for size in re.search(r"Page size: +([\d.]+) x ([\d.]+)", info(pdf)).groups())
    check(width > height, f"the PDF's page is {width} by {height} points")
    check("Stop and get help" in work.words(pdf), "the summary does not say when to stop")

    g.wait("label", "*changes not saved")
    save(g, work)
    g.key("ctrl+q")
    ends(g)


run(test)
