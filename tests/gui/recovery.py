#!/usr/bin/python3
"""A crash while typing: the program is killed, and the next start offers the work of up to some seconds before."""
import os
import signal
import time

from steps import check, ends, run, save


def test(work):
    with open(work.file, "rb") as stream:
        saved = stream.read()

    g = work.start()
    g.wait("row", "Sit to stand, *")
    g.press("row", "Sit to stand, *")
    g.set("text", "Dose line", "5 x 7, rest 45 s", commit=None)
    g.expect("row", "Sit to stand, *", "description", "5 x 7*")
    time.sleep(6)  # less than the ten seconds that may be lost, more than a draft takes
    os.kill(g.proc.pid, signal.SIGKILL)
    g.proc.wait()
    with open(work.file, "rb") as stream:
        check(stream.read() == saved, "the crash changed the programme's own file")

    again = work.start()
    again.wait("button", "Recover")
    again.press("button", "Recover")
    again.expect("row", "Sit to stand, *", "description", "5 x 7*")
    save(again, work)
    again.key("ctrl+q")
    ends(again)

    # Saved work is not offered again.
    third = work.start()
    third.wait("row", "Sit to stand, *")
    third.expect("row", "Sit to stand, *", "description", "5 x 7*")
    time.sleep(1)
    check(not third.find_all("button", "Recover"), "a draft is offered though all was saved")
    third.key("ctrl+q")
    ends(third)


run(test)
