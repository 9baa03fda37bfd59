"""pdf_check.py FILE...    what is wrong with a tagged PDF, after the requirements of ISO 14289-1 and our own

Not a complete validator: of ISO 14289-1 it checks what can go wrong in files that this program makes. Each function
returns faults as sentences, none when all is well."""
import re
import sys

from pdf_file import PdfFile, text
from pdf_page import PageReader

# WCAG 2.2, success criterion 1.4.6.
LEAST_CONTRAST = 7.0
LEAST_TEXT_PT = 12.0
LEAST_ARTIFACT_PT = 9.0
# What printers cannot reach: 5 mm; our pages begin at 16 mm, a picture may reach out by one.
LEAST_MARGIN_PT = 14.0
LEAST_SIDE_PT = 42.5
ROUNDING_PT = 0.05

TYPES = {"Document", "Sect", "H1", "H2", "H3", "H4", "H5", "H6", "P", "Span", "L", "LI", "Lbl", "LBody", "Table", "TR",
         "TH", "TD", "Figure", "Link", "Form"}
LANGUAGE = re.compile(r"^[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*$")
URI = re.compile(r"^(tel:\+?[0-9]+|mailto:[^\s@]+@[^\s@]+)$")


class Element:
    """An element of the structure. @number: object number; @mcids: (page index, number) of its own content."""

    def __init__(self, file, reference, parent):
        dictionary = file.get(reference)
        self.reference = reference
        self.dictionary = dictionary
        self.parent = parent
        self.type = dictionary["/S"].removeprefix("/")
        self.children = []
        self.mcids = []
        self.objects = []
        kids = dictionary.get("/K", [])
        for kid in kids if isinstance(kids, list) else [kids]:
            value = file.get(kid)
            if isinstance(value, int):
                self.mcids.append((file.page_references.index(dictionary["/Pg"]), value))
            elif value.get("/Type") == "/OBJR":
                self.objects.append(value["/Obj"])
            elif value.get("/Type") == "/MCR":
                self.mcids.append((file.page_references.index(value.get("/Pg", dictionary.get("/Pg"))), value["/MCID"]))
            else:
                self.children.append(Element(file, kid, self))

    def walk(self):
        yield self
        for child in self.children:
            yield from child.walk()

    def of_type(self, *types):
        return [element for element in self.walk() if element.type in types]

    def attribute(self, owner, key):
        attributes = self.dictionary.get("/A", [])
        for one in attributes if isinstance(attributes, list) else [attributes]:
            if one.get("/O") == owner and key in one:
                return one[key]
        return None

    def __str__(self):
        return f"{self.type} {self.reference}"


class Document:
    """A file with its structure and its pages read."""

    def __init__(self, file):
        self.file = file
        self.tree = file.get(file.root.get("/StructTreeRoot", {}))
        kids = self.tree.get("/K", [])
        self.top = [Element(file, kid, None) for kid in (kids if isinstance(kids, list) else [kids])]
        self.elements = [element for top in self.top for element in top.walk()]
        numbers = file.get(self.tree.get("/ParentTree", {})).get("/Nums", [])
        self.numbers = list(zip(numbers[::2], numbers[1::2]))
        self.readers = [PageReader(file, page) for page in file.pages]

    def annotations(self):
        for index, page in enumerate(self.file.pages):
            for reference in self.file.get(page.get("/Annots", [])):
                yield index, reference, self.file.get(reference)

    def own_text(self, element):
        return "".join(painted.text for index, mcid in element.mcids for painted in self.readers[index].painted
                       if painted.kind == "text" and painted.mcid == mcid)


def check_file(document):
    file = document.file
    root = file.root
    faults = []
    if file.get(root.get("/MarkInfo", {})).get("/Marked") is not True:
        faults.append("the file does not say that it is tagged")
    if not LANGUAGE.match(text(root.get("/Lang")) or ""):
        faults.append("the file has no language")
    if file.get(root.get("/ViewerPreferences", {})).get("/DisplayDocTitle") is not True:
        faults.append("the window would show the file's name, not its title")
    if file.encrypted:
        faults.append("the file is encrypted")
    if "/PageLabels" not in root:
        faults.append("the pages have no labels")
    if "/RoleMap" in document.tree:
        faults.append("elements are mapped to others")
    for where, dictionary in file.dictionaries():
        for key in ("/JS", "/JavaScript", "/AA", "/OpenAction", "/EmbeddedFiles", "/XFA"):
            if key in dictionary:
                faults.append(f"object {where} has {key}")
        if dictionary.get("/Subtype") == "/Image":
            faults.append(f"object {where} is an image")
    return faults


def check_metadata(document):
    file = document.file
    if "/Metadata" not in file.root:
        return ["the file has no XMP metadata"]
    xmp = file.data(file.root["/Metadata"]).decode("utf-8")
    faults = []

    def between(tag):
        found = re.search(rf"<{tag}>(?:<rdf:(?:Alt|Seq|Bag)><rdf:li[^>]*>)?([^<]*)<", xmp)
        value = found[1] if found else ""
        for entity, letter in (("&lt;", "<"), ("&gt;", ">"), ("&quot;", '"'), ("&#39;", "'"), ("&amp;", "&")):
            value = value.replace(entity, letter)
        return value

    for tag, key in (("dc:title", "/Title"), ("dc:description", "/Subject"), ("dc:creator", "/Author"),
                     ("xmp:CreatorTool", "/Creator"), ("pdf:Producer", "/Producer")):
        if between(tag) != (text(file.info.get(key)) or ""):
            faults.append(f"{tag} is “{between(tag)}”, but {key} is “{text(file.info.get(key))}”")
    if not text(file.info.get("/Title")):
        faults.append("the file has no title")
    if between("dc:language") != text(file.root["/Lang"]):
        faults.append("dc:language is not the language of the file")
    if re.sub(r"[-:T]", "", between("xmp:CreateDate")) != (text(file.info["/CreationDate"]) or "").removeprefix("D:"):
        faults.append("xmp:CreateDate is not the date of the file")
    if "pdfuaid" in xmp:
        faults.append("the file claims to conform, which nobody has validated")
    return faults


def check_pages(document):
    """Everything painted has a place in the structure, exactly one, or is an artifact."""
    file = document.file
    numbers = dict(document.numbers)
    owners = {}
    faults = []
    for element in document.elements:
        for place in element.mcids:
            if place in owners:
                faults.append(f"content {place} belongs to {owners[place]} and to {element}")
            owners[place] = element
    if [key for key, _ in document.numbers] != sorted(set(numbers)):
        faults.append("the keys of the parent tree do not ascend")
    for index, (page, reader) in enumerate(zip(file.pages, document.readers)):
        where = f"page {index + 1}"
        if reader.unbalanced:
            faults.append(f"{where}: a mark is begun and not ended, or the other way round")
        if page.get("/Tabs") != "/S":
            faults.append(f"{where}: the tab order is not that of the structure")
        unmarked = sum(1 for painted in reader.painted if not painted.marked)
        if unmarked:
            faults.append(f"{where}: {unmarked} things are painted outside every mark")
        if len(set(reader.mcids)) != len(reader.mcids):
            faults.append(f"{where}: a content number is used twice")
        if set(reader.mcids) != {mcid for place, mcid in owners if place == index}:
            faults.append(f"{where}: content and structure do not have the same numbers")
        parents = file.get(numbers.get(page.get("/StructParents"), []))
        for mcid in reader.mcids:
            parent = parents[mcid] if mcid < len(parents) else None
            if (index, mcid) in owners and parent != owners[index, mcid].reference:
                faults.append(f"{where}: the parent tree leads from content {mcid} to {parent}")
    return faults


def check_headings(document):
    faults = []
    level = 0
    for element in document.elements:
        if re.match(r"^H[1-6]$", element.type):
            if int(element.type[1]) > level + 1:
                faults.append(f"{element} follows a heading of level {level}")
            level = int(element.type[1])
    if sum(element.type == "H1" for element in document.elements) != 1:
        faults.append("there is not exactly one H1")
    return faults


def check_tables_and_lists(document):
    faults = []
    parents = {"LI": "L", "Lbl": "LI", "LBody": "LI", "TR": "Table", "TH": "TR", "TD": "TR"}
    for element in document.elements:
        if element.type in parents and element.parent.type != parents[element.type]:
            faults.append(f"{element} is in {element.parent}")
        if element.type == "L" and (not element.children or not element.attribute("/List", "/ListNumbering")):
            faults.append(f"{element} has no items or does not say how they are numbered")
        if element.type == "LI" and [child.type for child in element.children] not in (["LBody"], ["Lbl", "LBody"]):
            faults.append(f"{element} is no item of a list")
        if element.type == "TH" and element.attribute("/Table", "/Scope") not in ("/Row", "/Column"):
            faults.append(f"{element} does not say what it is the header of")
        if element.type == "Table":
            widths = {len(row.children) for row in element.children}
            if len(widths) != 1 or len(element.children) < 2:
                faults.append(f"{element} has rows of {sorted(widths)} cells")
    return faults


def check_elements(document):
    file = document.file
    faults = []
    if [element.type for element in document.top] != ["Document"]:
        faults.append("the structure is not one document")
    for element in document.elements:
        parent = element.parent.reference if element.parent else file.root["/StructTreeRoot"]
        if element.dictionary.get("/P") != parent:
            faults.append(f"{element} does not lead back to what it is in")
        if element.type not in TYPES:
            faults.append(f"{element} is of an unknown type")
        if element.children and element.mcids:
            faults.append(f"{element} has content beside other elements")
        language = element.dictionary.get("/Lang")
        if language is not None and not LANGUAGE.match(text(language) or ""):
            faults.append(f"{element} has a language that is none")
        words = element.type in ("P", "Span", "Lbl", "LBody", "TH", "Link") or re.match(r"^H[1-6]$", element.type)
        if words and not element.children and not document.own_text(element).strip():
            faults.append(f"{element} has no words")
        if element.type == "Figure":
            box = element.attribute("/Layout", "/BBox")
            if not (text(element.dictionary.get("/Alt")) or "").strip():
                faults.append(f"{element} has no text alternative")
            if box is None or not (box[0] < box[2] and box[1] < box[3]):
                faults.append(f"{element} has no box")
    return faults


def check_annotations(document):
    """Links and fields: each in the structure, with words, in its place."""
    file = document.file
    numbers = dict(document.numbers)
    owners = {reference: element for element in document.elements for reference in element.objects}
    fields = file.get(file.get(file.root.get("/AcroForm", {})).get("/Fields", []))
    names = []
    boxes = {}
    faults = []
    for index, reference, annotation in document.annotations():
        owner = owners.pop(reference, None)
        where = f"annotation {reference} on page {index + 1}"
        kind = annotation["/Subtype"]
        x0, y0, x1, y1 = annotation["/Rect"]
        _, _, width, height = file.pages[index]["/MediaBox"]
        if owner is None or owner.type != {"/Link": "Link", "/Widget": "Form"}.get(kind):
            faults.append(f"{where} is not in the structure")
        elif numbers.get(annotation.get("/StructParent")) != owner.reference:
            faults.append(f"{where}: the parent tree does not lead to {owner}")
        elif kind == "/Link" and owner.parent.type not in ("P", "Span", "LBody", "TH", "TD"):
            faults.append(f"{where}: {owner} is in {owner.parent}")
        if annotation.get("/F") != 4:
            faults.append(f"{where} is not printed")
        if not (0 < x0 < x1 < width and 0 < y0 < y1 < height):
            faults.append(f"{where} is off the page")
        for other in boxes.get(index, []):
            if min(x1, other[2]) - max(x0, other[0]) > 1 and min(y1, other[3]) - max(y0, other[1]) > 1:
                faults.append(f"{where} lies over another")
        boxes.setdefault(index, []).append((x0, y0, x1, y1))
        if kind == "/Link":
            if not text(annotation.get("/Contents")):
                faults.append(f"{where} has no words")
            if not URI.match(text(annotation["/A"]["/URI"]) or ""):
                faults.append(f"{where} leads nowhere: {annotation['/A']['/URI']}")
        elif kind == "/Widget":
            looks = file.get(annotation.get("/AP", {})).get("/N")
            names.append(text(annotation.get("/T")))
            if not text(annotation.get("/TU")):
                faults.append(f"{where} has no words")
            if reference not in fields:
                faults.append(f"{where} is not in the form")
            if annotation.get("/P") != file.page_references[index]:
                faults.append(f"{where} thinks that it is on another page")
            if annotation["/FT"] == "/Btn" and set(looks or {}) != {"/Yes", "/Off"}:
                faults.append(f"{where} does not have its two looks")
            if annotation["/FT"] == "/Tx" and not (looks and annotation.get("/MaxLen") and annotation.get("/DA")):
                faults.append(f"{where} does not say how text looks")
        else:
            faults.append(f"{where} is a {kind}")
    if owners:
        faults.append(f"elements without their annotations: {sorted(owners)}")
    if len(set(names)) != len(names) or len(names) != len(fields):
        faults.append("fields do not have names of their own")
    if any(not re.match(r"^[a-z0-9-]+$", name or "") for name in names):
        faults.append("a field has a name that is not plain")
    if "/NeedAppearances" in file.get(file.root.get("/AcroForm", {})):
        faults.append("a reader would have to draw the fields")
    return faults


def check_fonts(document):
    """Every font that anything is painted in comes with the file. What is typed into a form is drawn by the reader of
    the file, in the one font that each has."""
    file = document.file
    form = file.get(file.root.get("/AcroForm", {}))
    typed = [id(font) for font in file.get(file.get(form.get("/DR", {})).get("/Font", {})).values()]
    faults = []
    for where, font in file.dictionaries():
        if font.get("/Type") != "/Font":
            continue
        if id(font) in typed:
            if font["/BaseFont"] != "/Helvetica":
                faults.append(f"font {font['/BaseFont']} would be typed in")
            continue
        descriptor = file.get(font.get("/FontDescriptor", {}))
        if font["/Subtype"] not in ("/Type0", "/CIDFontType2", "/CIDFontType0", "/TrueType", "/Type1"):
            faults.append(f"font {where} is of the type {font['/Subtype']}")
        if not re.match(r"^/[A-Z]{6}\+", font.get("/BaseFont", "")):
            faults.append(f"font {where} is not a part of a font")
        if font["/Subtype"] != "/Type0" and not {"/FontFile", "/FontFile2", "/FontFile3"} & set(descriptor):
            faults.append(f"font {where} is not in the file")
        if not font["/Subtype"].startswith("/CIDFont") and "/ToUnicode" not in font:
            faults.append(f"font {where} does not lead back to text")
        if font["/Subtype"] == "/CIDFontType2" and font.get("/CIDToGIDMap") != "/Identity":
            faults.append(f"font {where} does not say which glyph is which")
    for index, reader in enumerate(document.readers):
        for painted in reader.painted:
            if "\ufffd" in painted.text:
                faults.append(f"page {index + 1}: a glyph of {painted.font} is no text")
    return faults


def luminance(grey):
    """Relative luminance of a grey (WCAG 2.2, definition)."""
    return grey / 12.92 if grey <= 0.04045 else ((grey + 0.055) / 1.055) ** 2.4


def contrast(one, other):
    """Contrast ratio (WCAG 2.2, definition)."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def check_print(document):
    """Texts: large enough, in a grey that stands out from what is painted under them. Everything: within the margins.
    The background of a text is the last area painted before it that holds its beginning."""
    faults = []
    for index, (page, reader) in enumerate(zip(document.file.pages, document.readers)):
        _, _, width, height = page["/MediaBox"]
        where = f"page {index + 1}"
        areas = []
        for painted in reader.painted:
            x0, y0, x1, y1 = painted.box
            if painted.grey is None:
                faults.append(f"{where}: {painted.kind} “{painted.text}” is not in an opaque grey")
                continue
            if painted.kind == "fill":
                areas.append((painted.box, painted.grey))
            if x0 <= x1 and y0 <= y1 and (x0 < LEAST_SIDE_PT or x1 > width - LEAST_SIDE_PT or y0 < LEAST_MARGIN_PT
                                          or y1 > height - LEAST_MARGIN_PT):
                faults.append(f"{where}: {painted.kind} “{painted.text}” at {painted.box} is in the margin")
            if painted.kind != "text" or not painted.text.strip():
                continue
            least = LEAST_ARTIFACT_PT if painted.mcid is None else LEAST_TEXT_PT
            if painted.size < least - ROUNDING_PT:
                faults.append(f"{where}: “{painted.text}” is of {painted.size:.1f} pt")
            x, y = x0 + 0.1 * painted.size, y0 + 0.3 * painted.size
            under = [grey for box, grey in areas if box[0] <= x <= box[2] and box[1] <= y <= box[3]]
            ratio = contrast(painted.grey, under[-1] if under else 1.0)
            if ratio < LEAST_CONTRAST:
                faults.append(f"{where}: “{painted.text}” has a contrast of {ratio:.1f}")
    return faults


CHECKS = {"file": check_file, "metadata": check_metadata, "pages": check_pages, "headings": check_headings,
          "tables-and-lists": check_tables_and_lists, "elements": check_elements, "annotations": check_annotations,
          "fonts": check_fonts, "print": check_print}


if __name__ == "__main__":
    bad = False
    for path in sys.argv[1:]:
        checked = Document(PdfFile(path))
        for name, check in CHECKS.items():
            for fault in check(checked):
                print(f"{path}: {name}: {fault}")
                bad = True
    sys.exit(bad)
