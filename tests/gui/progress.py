#!/usr/bin/python3
"""The next visit: the diary is written down by keyboard, the rules propose, the therapist takes it or not, and the plan
over the weeks stands on the pages; all of it can be undone and is in the file."""
import gui
from steps import check, ends, run, save

SIT = "Sit to stand: "
HEEL = "Heel raise at the counter: "


def open_window(g):
    g.key("ctrl+j")
    g.wait_window("Diary and progress")


def text_of(work):
    with open(work.file, encoding="utf-8") as stream:
        return stream.read()


def test(work):
    g = work.start()
    g.wait("row", "Sit to stand, *")
    open_window(g)

    # One press for what was done as asked, the rest by keyboard.
    g.press("button", SIT + "done as asked")
    g.expect("spin", SIT + "sets that were done", "value", "2")
    g.expect("spin", SIT + "repetitions in the last set", "value", "10")
    g.set("spin", SIT + "pain during, 0 to 10", "7")
    g.wait("button", "Ease: 1 set of 10: show how it was reckoned")

    # Taken, the dose is another one; undone, the proposal is back.
    g.press("button", "Ease: 1 set of 10")
    g.wait_gone("button", "Ease: 1 set of 10: show how it was reckoned")
    g.key("ctrl+z")
    g.wait("button", "Ease: 1 set of 10: show how it was reckoned")

    # Two days of two more than asked: the next step.
    for day in range(2):
        if day:
            g.press("button", "The day before")
        g.expect("spin", HEEL + "pain during, 0 to 10", "text", "")
        g.set("spin", HEEL + "repetitions in the last set", "14")
        g.set("spin", HEEL + "pain during, 0 to 10", "1")
    g.wait("button", "Take the next step: 14 repetitions: show how it was reckoned")

    # A rule's number is the therapist's.
    g.press("*", "Rules")
    g.scroll_to("spin", "Repetitions more than asked")
    g.set("spin", "Repetitions more than asked", "3")
    g.wait("label", "At least 3 repetitions more than asked*")
    g.press("*", "Diary")
    g.wait_gone("button", "Take the next step: 14 repetitions: show how it was reckoned")
    g.key("ctrl+z")
    g.wait("button", "Take the next step: 14 repetitions: show how it was reckoned")

    # The plan: each amount opens to the rule that made it.
    g.press("*", "Plan")
    g.wait("label", "Week 6")
    g.set("spin", "Length of the plan", "4")
    g.wait_gone("label", "Week 5")
    g.wait("label", "Week 4")
    g.press("checkbox", "Print the plan on the handout")
    g.expect("checkbox", "Print the plan on the handout", "state", "checked")
    g.key("Escape")
    g.wait_gone("label", "Week 4")

    save(g, work)
    text = text_of(work)
    check('<progression weeks="4"/>' in text, "the plan is not in the file")
    check('add="plan"' in text, f"the plan is not on the pages: {[line for line in text.splitlines() if 'pages' in line]}")
    check(text.count("<entry ") == 3, f"{text.count('<entry ')} entries in the file, not 3")
    check('pain-during="7"' in text, "the pain is not in the file")
    g.key("ctrl+q")
    ends(g)


run(test)
