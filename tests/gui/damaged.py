#!/usr/bin/python3
"""Files that cannot be read: a clear word each, the program stays usable, the file as it was."""
from steps import check, ends, run


def test(work):
    with open(work.file, "rb") as stream:
        whole = stream.read()
    cases = {
        "cut.setwright": whole[: len(whole) // 2],
        "latin.setwright": whole[:400] + b"\xe9" + whole[400:],
        "bomb.setwright": b'<?xml version="1.0"?>\n<!DOCTYPE programme [<!ENTITY a "aaaa">]>\n<programme>&a;</programme>\n',
        "absurd.setwright": whole.replace(b' sets="2"', b' sets="-2"', 1),
    }
    for name, content in cases.items():
        path = work.path(name)
        with open(path, "wb") as stream:
            stream.write(content)
        g = work.start(path)
        g.wait("label", name + "*line*")
        g.focus("entry", "Search the catalogue")
        g.type("heel raise in sitting")
        g.wait("row", "Heel raise in sitting")
        g.key("ctrl+q")
        ends(g)
        with open(path, "rb") as stream:
            check(stream.read() == content, f"{name}: the file was changed")


run(test)
