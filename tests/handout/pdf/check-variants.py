#!/usr/bin/python3
"""check-variants.py PROGRAM    handouts of many kinds in the eyes of tools that are not ours

PROGRAM writes the handouts (variants.c). Each check is a test of its own; the last ones damage a file to see that the
checks notice."""
import base64
import copy
import json
import os
import re
import shutil
import subprocess
import sys
import tempfile
import unicodedata

from pdf_check import CHECKS, Document
from pdf_file import PdfFile, run, text

PAPERS = {"a4": (595.28, 841.89), "letter": (612, 792)}
# A letter reaches from about a quarter to three quarters of the height that its font asks for.
INK_SHARE = 0.25
RENDER_DPI = 72
# Letters that stand close, such as an f before a quotation mark, and the outline of a picture.
SAME_PLACE_PT = 2.0
# As in pdf_check.py.
LEAST_MARGIN_PT = 14.0
LEAST_SIDE_PT = 42.0
# The line at the head begins 7.5 mm from the top of the page, what is told below it at 40 pt at the earliest.
HEAD_PT = 30.0


def plain(words):
    """The letters alone, in one form: no spaces, no marks of direction."""
    return "".join(letter for letter in unicodedata.normalize("NFKC", words)
                   if not letter.isspace() and unicodedata.category(letter) != "Cf")


def read_dump(path):
    """For each page what is written on it, in order: whether it has a tag is not told, so texts of both kinds."""
    pages = []
    for line in open(path, encoding="utf-8"):
        if line.startswith("page "):
            pages.append([])
        elif line.startswith(("text ", "part ")):
            words = re.fullmatch(r'(?:text|part) (?:\S+ ){4}"(.*)"\n', line)[1]
            pages[-1].append(words.replace('\\"', '"').replace("|", " "))
    return pages


def check_sound(document, name):
    output = run("qpdf", "--check", document.file.path).decode()
    return [] if "No syntax or stream encoding errors" in output else [output]


def check_fonts_and_images(document, name):
    path = document.file.path
    fonts = run("pdffonts", path).decode().splitlines()[2:]
    images = run("pdfimages", "-list", path).decode().splitlines()[2:]
    faults = [font for font in fonts if not re.search(r" yes yes yes +\d+ +\d+$", font)]
    return faults + images + ([] if fonts else ["no fonts"])


def check_boxes(document, name):
    width, height = PAPERS["letter" if "letter" in name or "landscape" in name else "a4"]
    if "landscape" in name:
        width, height = height, width
    faults = []
    for page in document.file.pages:
        box = page["/MediaBox"]
        if box[:2] != [0, 0] or abs(box[2] - width) > 0.01 or abs(box[3] - height) > 0.01:
            faults.append(f"the paper is {box}")
        faults += [f"the page has {key}" for key in ("/CropBox", "/Rotate") if key in page]
    return faults


def check_reading_order(document, name):
    """The words as they were laid out, then what stands at the foot: so they are read from the file, in the order of
    the content by another extractor, and in the order of the structure by ours."""
    faults = []
    pages = read_dump(document.file.path.replace(".pdf", ".txt"))
    if len(pages) != len(document.file.pages):
        return [f"{len(pages)} pages were laid out, {len(document.file.pages)} are in the file"]
    for index, texts in enumerate(pages):
        wanted = plain(" ".join(texts))
        page = str(index + 1)
        read = plain(run("pdftotext", "-raw", "-f", page, "-l", page, document.file.path, "-").decode())
        if name.startswith("mirrored"):
            wanted, read = "".join(sorted(wanted)), "".join(sorted(read[:len(wanted)]))
        if not read.startswith(wanted):
            common = len(os.path.commonprefix([wanted, read]))
            faults.append(f"page {index + 1}: “{read[common:common + 40]}” is read for “{wanted[common:common + 40]}”")
        if len(read) > len(wanted) + 140:
            faults.append(f"page {index + 1}: more is read than was laid out")

    structure = plain("".join(document.own_text(element) for element in document.elements))
    painted = plain("".join(thing.text for reader in document.readers for thing in reader.painted
                            if thing.kind == "text" and thing.mcid is not None))
    if structure != painted:
        faults.append("the structure is read in another order than it is painted")
    return faults


def check_second_extractor(document, name):
    """The same letters by a third tool, where it is installed."""
    if shutil.which("mutool") is None:
        return []
    told = subprocess.run(["mutool", "draw", "-q", "-F", "txt", document.file.path], check=True, capture_output=True)
    read = plain(told.stdout.decode())
    raw = plain(run("pdftotext", "-raw", document.file.path, "-").decode())
    return [] if sorted(read) == sorted(raw) else ["two extractors do not read the same letters"]


def word_boxes(path):
    """For each page the words with their extents, from the top of the page, as poppler sees them."""
    output = run("pdftotext", "-bbox", path, "-").decode()
    return [[(*(float(value) for value in values), word)
             for *values, word in re.findall(r'<word xMin="(\S+)" yMin="(\S+)" xMax="(\S+)" yMax="(\S+)">(.*?)</word>',
                                             page)]
            for page in output.split("<page ")[1:]]


def shrink(box):
    height = box[3] - box[1]
    return (box[0] + SAME_PLACE_PT / 2, box[1] + INK_SHARE * height, box[2] - SAME_PLACE_PT / 2,
            box[3] - INK_SHARE * height)


def overlaps(one, other):
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def figure_boxes(document, index):
    """The ink of each picture on a page, from the top of the page."""
    height = document.file.pages[index]["/MediaBox"][3]
    boxes = []
    for element in document.elements:
        if element.type != "Figure":
            continue
        inks = [thing.box for page, mcid in element.mcids if page == index
                for thing in document.readers[index].painted if thing.mcid == mcid and thing.box[0] <= thing.box[2]]
        if inks:
            boxes.append((min(ink[0] for ink in inks), height - max(ink[3] for ink in inks),
                          max(ink[2] for ink in inks), height - min(ink[1] for ink in inks)))
    return boxes


def check_overlaps(document, name):
    """No word lies over another, none over a picture's ink, no picture over another."""
    faults = []
    for index, words in enumerate(word_boxes(document.file.path)):
        inks = [(shrink(word[:4]), word[4]) for word in words
                if any(unicodedata.category(letter)[0] != "M" for letter in word[4])]
        figures = figure_boxes(document, index)
        for i, (box, word) in enumerate(inks):
            faults += [f"page {index + 1}: “{word}” lies over “{other}”" for ink, other in inks[i + 1:]
                       if overlaps(box, ink)]
            faults += [f"page {index + 1}: “{word}” lies over a picture" for ink in figures if overlaps(box, ink)]
        for i, box in enumerate(figures):
            faults += [f"page {index + 1}: two pictures overlap" for other in figures[i + 1:] if overlaps(box, other)]
    return faults


def read_pgm(data):
    """Width, height and rows of the pages that pdftoppm wrote one behind another."""
    at = 0
    while at < len(data):
        header = re.compile(rb"P5\s+(\d+)\s+(\d+)\s+255\s").match(data, at)
        width, height = int(header[1]), int(header[2])
        at = header.end() + width * height
        yield width, height, [data[header.end() + y * width:header.end() + (y + 1) * width] for y in range(height)]


def check_rendered_margins(document, name):
    """Nothing is printed where a printer cannot print, and no page is empty."""
    faults = []
    margin = int(LEAST_MARGIN_PT * RENDER_DPI / 72.0)
    side = int(LEAST_SIDE_PT * RENDER_DPI / 72.0)
    pages = list(read_pgm(run("pdftoppm", "-r", str(RENDER_DPI), "-gray", document.file.path)))
    for index, (width, height, rows) in enumerate(pages):
        inked = [y for y, row in enumerate(rows) if row.strip(b"\xff")]
        if not inked:
            faults.append(f"page {index + 1} is empty")
            continue
        if inked[0] < margin or inked[-1] >= height - margin:
            faults.append(f"page {index + 1} has ink in rows {inked[0]} to {inked[-1]} of {height}")
        left = min(width - len(rows[y].lstrip(b"\xff")) for y in inked)
        right = max(len(rows[y].rstrip(b"\xff")) for y in inked)
        if left < side or right > width - side:
            faults.append(f"page {index + 1} has ink in columns {left} to {right} of {width}")
    return faults


OTHER_TOOLS = {"sound": check_sound, "fonts-and-images": check_fonts_and_images, "boxes": check_boxes,
               "reading-order": check_reading_order, "second-extractor": check_second_extractor,
               "overlaps": check_overlaps, "rendered-margins": check_rendered_margins}


def check_damaged_file(whole, name, what, damage):
    document = copy.deepcopy(whole)
    damage(document)
    path = whole.file.path.replace(".pdf", "-damaged.pdf")
    document.file.write(path)
    shutil.copy(whole.file.path.replace(".pdf", ".txt"), path.replace(".pdf", ".txt"))
    return [] if OTHER_TOOLS[what](Document(PdfFile(path)), name) else ["nothing was noticed"]


class Tap:
    def __init__(self):
        self.n = 0
        self.failed = False

    def tell(self, name, faults):
        self.n += 1
        self.failed |= bool(faults)
        print(f"{'not ok' if faults else 'ok'} {self.n} {name}")
        for fault in faults[:20]:
            print(f"# {fault}")


def count(document, *types):
    return sum(element.type in types for element in document.elements)


def check_links_and_fields(document, name):
    """As many fields as were laid out, in the eyes of qpdf too; each link leads to the clinic."""
    dump = open(document.file.path.replace(".pdf", ".txt"), encoding="utf-8").read()
    fields = json.loads(run("qpdf", "--json=2", "--json-key=acroform", document.file.path))["acroform"]["fields"]
    laid_out = len(re.findall(r"^field ", dump, re.MULTILINE))
    uris = {text(annotation["/A"]["/URI"]) for _, _, annotation in document.annotations() if "/A" in annotation}
    faults = []
    told = count(document, "Form")
    if not told == len(fields) == laid_out or ("form" in name) != (laid_out > 0):
        faults.append(f"{laid_out} fields were laid out, {told} are elements, {len(fields)} are there")
    if any(field["ischeckbox"] == field["istext"] or field["value"] not in ("/Off", None) for field in fields):
        faults.append("a field is neither an empty box nor an empty line")
    names = any(field["fullname"] == "client-name" for field in fields)
    if names != (laid_out > 0 and not name.startswith("mirrored")):
        faults.append("names can be typed exactly where the handout is not in Latin letters")
    if uris - {"tel:01632960234", "mailto:clinic@example.org"} or "tel:01632960234" not in uris:
        faults.append(f"the links lead to {uris}")
    return faults


def check_languages(document, name):
    """Only where an exercise is told in another language than the handout, and there all of it."""
    told = {text(element.dictionary["/Lang"]) for element in document.elements if "/Lang" in element.dictionary}
    if not name.startswith(("foreign", "mirrored")):
        return [f"languages of elements: {told}"] if told else []
    steps = [one for one in document.elements if one.type == "LBody" and one.parent.children[0] != one]
    silent = [element for element in steps if text(element.dictionary.get("/Lang")) != "en"]
    return ([] if told == {"en"} and steps else [f"languages of elements: {told}"]) + [str(one) for one in silent]


def check_telephone(document, name):
    """The clinic's number, whole, at the head of each page but the first, however large the words beside it are."""
    faults = []
    for index, words in enumerate(word_boxes(document.file.path)[1:], 2):
        head = plain("".join(word for _, top, _, _, word in words if top < HEAD_PT))
        if "01632960234" not in head:
            faults.append(f"page {index} begins with “{head}”")
    return faults


def check_outline(document, name):
    """Whatever can be jumped to has a name."""
    outlines = json.loads(run("qpdf", "--json=2", "--json-key=outlines", document.file.path))["outlines"]
    titles = [outline["title"] for outline in outlines]
    titles += [kid["title"] for outline in outlines for kid in outline["kids"]]
    return [] if titles and all(title.strip() for title in titles) else [f"the outline is {titles}"]


OTHER_TOOLS.update({"links-and-fields": check_links_and_fields, "languages": check_languages,
                    "telephone": check_telephone, "outline": check_outline})


def first(document, kind):
    return next(element.dictionary for element in document.elements if element.type == kind)


def widget(document):
    return next(annotation for _, _, annotation in document.annotations() if annotation["/Subtype"] == "/Widget")


def link(document):
    return next(annotation for _, _, annotation in document.annotations() if annotation["/Subtype"] == "/Link")


def swap_numbers(document):
    numbers = document.file.get(document.tree["/ParentTree"])["/Nums"]
    numbers[-1], numbers[-3] = numbers[-3], numbers[-1]


def change_content(document, change):
    """Changes the content of the first page."""
    entry = document.file.stream(document.file.pages[0]["/Contents"])
    content = base64.b64decode(entry["data"])
    changed = change(content)
    assert changed != content
    entry["data"] = base64.b64encode(changed).decode()


def repaint(document, old, new):
    change_content(document, lambda content: content.replace(old, new, 1))


def move_first_text(document, x, y):
    change_content(document, lambda content: re.sub(rb"(\S+ 0 0 \S+) \S+ \S+ Tm", rb"\1 %f %f Tm" % (x, y), content, 1))


def move_to_picture(document):
    x0, y0, x1, y1 = figure_boxes(document, 0)[0]
    move_first_text(document, (x0 + x1) / 2, (y0 + y1) / 2)


def read_backwards(content):
    """The texts of a page in the opposite order."""
    parts = re.split(rb"(?=/\w+ << /MCID)", content)
    return b"".join([parts[0], *parts[-2:0:-1], parts[-1]])


# Which check has to notice which damage.
DAMAGES = [
    ("file", "untagged", lambda d: d.file.root.pop("/MarkInfo")),
    ("file", "no-language", lambda d: d.file.root.pop("/Lang")),
    ("file", "file-name-shown", lambda d: d.file.root.pop("/ViewerPreferences")),
    ("file", "no-page-labels", lambda d: d.file.root.pop("/PageLabels")),
    ("file", "script", lambda d: d.file.root.update({"/OpenAction": {"/S": "/JavaScript"}})),
    ("metadata", "other-title", lambda d: d.file.info.update({"/Title": "u:Other"})),
    ("pages", "painted-outside", lambda d: repaint(d, b"/Artifact BMC", b"/Other BMC")),
    ("pages", "no-place", lambda d: first(d, "H1").pop("/K")),
    ("pages", "number-not-painted", lambda d: first(d, "P").update({"/K": 1000})),
    ("pages", "no-tab-order", lambda d: d.file.get(d.file.page_references[0]).pop("/Tabs")),
    ("pages", "wrong-parent-tree", lambda d: d.file.get(d.file.page_references[0]).update({"/StructParents": 99})),
    ("headings", "skipped", lambda d: first(d, "H2").update({"/S": "/H3"})),
    ("headings", "two-titles", lambda d: first(d, "P").update({"/S": "/H1"})),
    ("tables-and-lists", "no-scope", lambda d: first(d, "TH").pop("/A")),
    ("tables-and-lists", "short-row", lambda d: first(d, "TR")["/K"].pop()),
    ("tables-and-lists", "no-item", lambda d: first(d, "LBody").update({"/S": "/P"})),
    ("tables-and-lists", "no-numbering", lambda d: first(d, "L").pop("/A")),
    ("elements", "no-alternative", lambda d: first(d, "Figure").pop("/Alt")),
    ("elements", "no-box", lambda d: first(d, "Figure").pop("/A")),
    ("elements", "unknown-type", lambda d: first(d, "P").update({"/S": "/Para"})),
    ("elements", "bad-language", lambda d: first(d, "P").update({"/Lang": "u:English words"})),
    ("elements", "lost-parent", lambda d: first(d, "P").update({"/P": d.file.root["/Pages"]})),
    ("annotations", "link-without-words", lambda d: link(d).pop("/Contents")),
    ("annotations", "link-to-nowhere", lambda d: link(d)["/A"].update({"/URI": "u:tel:call us"})),
    ("annotations", "link-outside", lambda d: first(d, "Link").update({"/S": "/Span"})),
    ("annotations", "field-without-words", lambda d: widget(d).pop("/TU")),
    ("annotations", "two-names", lambda d: widget(d).update({"/T": "u:exercise1-pain"})),
    ("annotations", "off-the-page", lambda d: widget(d).update({"/Rect": [10, 10, 20, 900]})),
    ("annotations", "not-printed", lambda d: widget(d).update({"/F": 2})),
    ("annotations", "wrong-parent-tree", swap_numbers),
    ("fonts", "no-text", lambda d: [found.pop("/ToUnicode", 0) for _, found in d.file.dictionaries()]),
    ("fonts", "not-in-file", lambda d: [found.pop("/FontFile2", 0) for _, found in d.file.dictionaries()]),
    ("print", "pale", lambda d: repaint(d, b"0 0 0 rg", b"0.6 0.6 0.6 rg")),
    ("print", "coloured", lambda d: repaint(d, b"0 0 0 rg", b"0.2 0 0 rg")),
    ("print", "small", lambda d: repaint(d, b"13.759766 0 0 -13.759766", b"11 0 0 -11")),
    ("print", "in-the-margin", lambda d: repaint(d, b"BT\n", b"1 0 0 1 -20 0 cm BT\n")),
]


# The same for the checks that need a file, with the kind of handout that is damaged.
DAMAGED_FILES = [
    ("overlaps", "word-on-word", "full-a4", lambda d: move_first_text(d, 50, 100)),
    ("overlaps", "word-on-picture", "summary-a4", move_to_picture),
    ("rendered-margins", "too-far-left", "full-a4", lambda d: move_first_text(d, 10, 50)),
    ("rendered-margins", "empty-page", "full-a4", lambda d: change_content(d, lambda content: b"")),
    ("reading-order", "lost-word", "full-a4", lambda d: repaint(d, b"(Ada Thornbury)", b"( )")),
    ("reading-order", "backwards", "full-a4", lambda d: change_content(d, read_backwards)),
    ("boxes", "other-paper", "full-a4",
     lambda d: d.file.get(d.file.page_references[0]).update({"/MediaBox": [0, 0, 612, 1008]})),
]


def check_damage(whole, what, damage):
    """A fault is found in a damaged copy that the whole file does not have."""
    document = copy.deepcopy(whole)
    damage(document)
    document.file.read_pages()
    return [] if CHECKS[what](Document(document.file)) else ["nothing was noticed"]


def main(program):
    tap = Tap()
    with tempfile.TemporaryDirectory(prefix="handouts-") as folder:
        subprocess.run([program, folder], check=True)

        documents = {}
        for entry in sorted(os.listdir(folder)):
            name, ending = os.path.splitext(entry)
            if ending == ".pdf":
                documents[name] = Document(PdfFile(os.path.join(folder, entry)))
        for name, document in documents.items():
            for what, check in CHECKS.items():
                tap.tell(f"{name}/{what}", check(document))
            for what, check in OTHER_TOOLS.items():
                tap.tell(f"{name}/{what}", check(document, name))
        for what, name, damage in DAMAGES:
            tap.tell(f"damaged/{what}/{name}", check_damage(documents["compact-form-letter"], what, damage))
        for what, damaged, name, damage in DAMAGED_FILES:
            tap.tell(f"damaged/{what}/{damaged}", check_damaged_file(documents[name], name, what, damage))
    print(f"1..{tap.n}")
    return tap.failed


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
