#!/usr/bin/python3
"""What a surgeon has set, entered by keyboard and pointer: it is found at once, undone step by step, saved and printed."""
import json

from steps import check, ends, run, save


def test(work):
    g = work.start()
    g.wait("row", "Sit to stand, *")
    g.scroll_to("button", "Add a limit")
    g.press("button", "Add a limit")

    # A range that is beyond stops the exercise as soon as it is typed.
    g.choose("Side", "Right")
    g.scroll_to("spin", "To, degrees")
    g.focus("spin", "To, degrees")
    g.type("95")
    g.focus("text", "Who set it")
    g.type("Letter of 3 November")
    save(g, work)
    saved = json.loads(work.numbers(work.file))
    check(saved["limits"] == [{"kind": "range", "side": "right", "movement": "knee-bend", "to-degrees": 95.0}],
          f"the limit was not saved: {saved['limits']}")
    keys = [finding["key"] for finding in saved["findings"] if finding["key"].startswith("limit-range:")]
    check(len(keys) == 1 and ":98:" in keys[0], f"sitting down is beyond it, and sitting is not: {keys}")

    # Each is one step back, and forth again.
    g.key("ctrl+z")
    g.expect("text", "Who set it", "text", "")
    g.expect("spin", "To, degrees", "text", "95")
    g.key("ctrl+shift+z")
    g.expect("text", "Who set it", "text", "Letter of 3 November")

    # Another kind has other fields; a load says what it is counted in.
    g.scroll_to("dropdown", "Kind of limit")
    g.choose("Kind of limit", "Weight on the leg")
    g.choose("Weight the leg may carry", "Part of the weight")
    g.focus("spin", "At most")
    g.type("20")
    save(g, work)
    saved = json.loads(work.numbers(work.file))["limits"]
    check(saved == [{"kind": "weight-bearing", "side": "right", "bearing": "part", "most-kg": 20.0}],
          f"the weight was not saved: {saved}")

    g.scroll_to("button", "Remove this limit")
    g.press("button", "Remove this limit")
    g.wait_gone("button", "Remove this limit")
    g.key("ctrl+z")
    g.wait("button", "Remove this limit")
    save(g, work)
    g.key("ctrl+q")
    ends(g)


run(test)
