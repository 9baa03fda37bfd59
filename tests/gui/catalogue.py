#!/usr/bin/python3
"""The catalogue pane and the pages: search, filters, cards, details, menus, keys, and a click on a page."""
import gui
from steps import check, ends, names, run

SEARCH = "Search the catalogue"


def search(g, words):
    g.key("ctrl+f")
    g.key("ctrl+a")
    g.type(words)
    g.settle()


def clear(g):
    g.press("button", "Clear search and filters")
    g.settle()
    g.expect("entry", SEARCH, "text", "")


def test_search(g):
    """Any word order and a typing error; nothing found, and the way back."""
    search(g, "counter raize heel")
    g.expect("row", "Heel raise at the counter", "count", "1")
    search(g, "zzzz")
    g.expect("label", "No exercise fits “zzzz”.", "count", "1")
    g.press("button", "Show the whole catalogue")
    g.settle()
    g.expect("entry", SEARCH, "text", "")
    g.wait("row", "Ankle rocks in sitting")


def test_keys(g):
    """Down leads to the cards, a letter typed there into a new search, Escape back and out."""
    search(g, "bridge")
    g.key("Down")
    g.type("knee")
    g.settle()
    g.expect("entry", SEARCH, "text", "knee")
    g.key("Down")
    g.key("Escape")
    g.key("Escape")
    g.expect("entry", SEARCH, "text", "")


def test_filters(g):
    """A filter says on its button what it lets through."""
    g.press("any", "Region: any")
    g.settle()
    g.press("any", "Neck")
    g.key("Escape")
    g.settle()
    g.expect("any", "Region: Neck", "count", "1")
    g.expect("row", "Chin slide back", "count", "1")
    g.expect("row", "Bridge", "count", "0")
    g.press("any", "Review: any")
    g.settle()
    g.press("any", "Retired")
    g.key("Escape")
    g.settle()
    g.expect("any", "Review: Retired", "count", "1")
    g.expect("row", "Chin slide back", "count", "0")
    clear(g)
    g.expect("any", "Region: any", "count", "1")


def test_cards(g):
    """A card warns of the client's precautions; Enter adds, one undo takes away again."""
    search(g, "arm and leg reach")
    g.expect("row", "Arm and leg reach on hands and knees", "description", "Against: High blood pressure*")
    before = names(g.order("Session"))
    search(g, "bridge")
    g.key("Down", "Return")
    g.wait("row", "Bridge, *")
    after = names(g.order("Session"))
    check(len(after) == len(before) + 1, f"added: {after}")
    check(after[after.index("Bridge") + 1].startswith("Cool-down"), f"not at the end of the main work: {after}")
    g.key("ctrl+z")
    g.wait_gone("row", "Bridge, *")
    check(names(g.order("Session")) == before, f"after undo: {names(g.order('Session'))}")
    clear(g)


def test_details(g):
    """Details at a key, closed by the same key; harder exercises from the card's menu."""
    search(g, "bridge")
    g.key("Down", "F4")
    g.wait("any", "Details of the exercise")
    g.wait("label", "1. Tighten your bottom.")
    g.expect("image", "Bridge", "description", "Side view. Lying on the back*")
    g.scroll_to("label", "Hardest to read")
    g.wait("label", "School grade * (Flesch-Kincaid); aim: 6 or below")
    g.wait("label", "• “*” (*)")
    g.key("F4")
    g.wait_gone("any", "Details of the exercise")
    clear(g)
    g.rightclick("row", "Ankle rocks in sitting")
    g.press("any", "Show harder exercises")
    g.expect("any", "Harder than “Ankle rocks in sitting”: * exercises", "count", "1")
    g.key("Escape")
    clear(g)


def shown_page(g):
    """The page of the handout under the name that stands above the pages, and that name."""
    title = g.find("label", "Page * of *").name
    return next(node for node in g.find_all("*", title) if node.role != "label"), title


def is_chosen(g, row):
    return "selected" in g.find("row", row).states


def test_pages(g):
    """Pages in place of the catalogue: a chosen item brings its page, a pressed page chooses its item."""
    g.key("F9")
    g.wait("label", "Page 1 of *")
    nameless = gui.lint(g)
    check(not nameless, f"without an accessible name: {nameless}")

    g.press("row", "Sit to stand, *")
    check(g._until(lambda: not g.find_all("label", "Page 1 of *")), "the chosen item's page was not shown")
    g.settle()
    page, title = shown_page(g)
    g.key("Escape")
    check(g._until(lambda: not is_chosen(g, "Sit to stand, *")), "still chosen")
    x, y, width, height = g.screen_rect(page)
    g.click(page, at=(x + width // 2, y + height // 4))
    check(g._until(lambda: is_chosen(g, "Sit to stand, *")), "the pressed page chose nothing")
    check(shown_page(g)[1] == title, "the pages moved under the pointer")

    before = g.screen_rect(page)[2]
    g.key("ctrl+plus")
    check(g._until(lambda: g.screen_rect(shown_page(g)[0])[2] > before), "the pages did not grow")
    g.key("ctrl+0")
    check(g._until(lambda: g.screen_rect(shown_page(g)[0])[2] == before), "the pages do not fit again")
    g.key("F9")
    g.wait("entry", SEARCH)


def test(work):
    g = work.start()
    g.wait("row", "Ankle rocks in sitting")
    nameless = gui.lint(g)
    check(not nameless, f"without an accessible name: {nameless}")
    for part in (test_search, test_keys, test_filters, test_cards, test_details, test_pages):
        part(g)
    g.key("ctrl+q")
    ends(g)


run(test)
