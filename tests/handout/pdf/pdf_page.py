"""What a page of a PDF paints, in order: texts with their size and grey, shapes with their extents."""
import dataclasses
import math
import re

TOKEN = re.compile(rb"""
    (?P<space>[\x00\t\n\f\r ]+|%[^\r\n]*)
  | (?P<dict><<|>>)
  | (?P<hex><[0-9A-Fa-f\s]*>)
  | (?P<string>\()
  | (?P<name>/[^\x00\t\n\f\r ()<>\[\]{}/%]*)
  | (?P<array>[\[\]])
  | (?P<number>[+-]?(?:\d+\.?\d*|\.\d+)(?=[\x00\t\n\f\r ()<>\[\]{}/%]|$))
  | (?P<word>[^\x00\t\n\f\r ()<>\[\]{}/%]+)
""", re.VERBOSE)

ESCAPES = {b"n": b"\n", b"r": b"\r", b"t": b"\t", b"b": b"\b", b"f": b"\f"}
FILLS = {"f", "F", "f*", "B", "B*", "b", "b*"}
STROKES = {"S", "s", "B", "B*", "b", "b*"}


def read_string(content, at):
    """A string in parentheses that begins before @at: its bytes, and where it ends."""
    out = bytearray()
    depth = 1
    while depth:
        byte = content[at:at + 1]
        at += 1
        if byte == b"\\":
            octal = re.match(rb"[0-7]{1,3}", content[at:at + 3])
            if octal:
                out.append(int(octal[0], 8) & 255)
                at += len(octal[0])
            else:
                out += ESCAPES.get(content[at:at + 1], content[at:at + 1])
                at += 1
            continue
        depth += (byte == b"(") - (byte == b")")
        if depth:
            out += byte
    return bytes(out), at


def read_hex(token):
    digits = re.sub(rb"\s", b"", token[1:-1])
    return bytes.fromhex((digits + b"0" * (len(digits) % 2)).decode())


def operations(content):
    """Operators with their operands: numbers, names as str, strings as bytes, lists, dictionaries."""
    stack = [[]]
    at = 0
    while at < len(content):
        match = TOKEN.match(content, at)
        kind, token = match.lastgroup, match[0]
        at = match.end()
        if kind == "number":
            stack[-1].append(float(token))
        elif kind == "name":
            stack[-1].append(token.decode("latin-1"))
        elif kind == "hex":
            stack[-1].append(read_hex(token))
        elif kind == "string":
            value, at = read_string(content, at)
            stack[-1].append(value)
        elif token in (b"[", b"<<"):
            stack.append([])
        elif token in (b"]", b">>"):
            items = stack.pop()
            stack[-1].append(items if token == b"]" else dict(zip(items[::2], items[1::2])))
        elif kind == "word" and token in (b"true", b"false", b"null"):
            stack[-1].append({b"true": True, b"false": False, b"null": None}[token])
        elif kind == "word":
            yield token.decode("latin-1"), stack[0]
            stack = [[]]


def multiply(first, second):
    a, b, c, d, e, f = first
    g, h, i, j, k, l = second
    return (a * g + b * i, a * h + b * j, c * g + d * i, c * h + d * j, e * g + f * i + k, e * h + f * j + l)


def apply(matrix, x, y):
    a, b, c, d, e, f = matrix
    return a * x + c * y + e, b * x + d * y + f


class Font:
    """How the codes of a font become text."""

    def __init__(self, file, dictionary):
        self.name = dictionary["/BaseFont"]
        self.wide = dictionary["/Subtype"] == "/Type0"
        self.table = {}
        if "/ToUnicode" in dictionary:
            self._read(file.data(dictionary["/ToUnicode"]).decode("latin-1"))

    def _read(self, cmap):
        for block in re.findall(r"beginbfchar(.*?)endbfchar", cmap, re.DOTALL):
            for code, value in re.findall(r"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>", block):
                self.table[int(code, 16)] = bytes.fromhex(value).decode("utf-16-be")
        for block in re.findall(r"beginbfrange(.*?)endbfrange", cmap, re.DOTALL):
            for low, high, value in re.findall(r"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>", block):
                base = bytes.fromhex(value).decode("utf-16-be")
                for code in range(int(low, 16), int(high, 16) + 1):
                    self.table[code] = base[:-1] + chr(ord(base[-1]) + code - int(low, 16))
            for low, _, values in re.findall(r"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>\s*\[(.*?)\]", block, re.DOTALL):
                for step, value in enumerate(re.findall(r"<([0-9A-Fa-f]+)>", values)):
                    self.table[int(low, 16) + step] = bytes.fromhex(value).decode("utf-16-be")

    def decode(self, codes):
        if self.wide:
            codes = [codes[i] << 8 | codes[i + 1] for i in range(0, len(codes) - 1, 2)]
        return "".join(self.table.get(code, "\ufffd") for code in codes)


@dataclasses.dataclass
class Painted:
    """Something painted. @mcid: its number in the structure; @marked: whether that or an artifact; @box: extents, of a
    text only where it begins."""
    kind: str
    mcid: int | None
    marked: bool
    box: tuple
    grey: float | None
    text: str = ""
    size: float = 0.0
    font: str = ""


@dataclasses.dataclass
class State:
    matrix: tuple
    fill: tuple = (0.0,)
    stroke: tuple = (0.0,)
    clip: tuple | None = None
    alpha: float = 1.0
    font: Font | None = None
    font_size: float = 0.0


def intersect(one, other):
    return one if other is None else (max(one[0], other[0]), max(one[1], other[1]),
                                      min(one[2], other[2]), min(one[3], other[3]))


def to_grey(colour):
    """The grey of a colour; None for one that is not grey."""
    if len(colour) == 1:
        return colour[0]
    return colour[0] if len(colour) == 3 and len(set(colour)) == 1 else None


class PageReader:
    """Walks a content stream and those that it draws. @painted: what it paints; @mcids: every number it opens."""

    def __init__(self, file, page):
        self.file = file
        self.fonts = {}
        self.painted = []
        self.mcids = []
        self.marks = []
        self.unbalanced = False
        self._walk(file.content(page), page.get("/Resources", {}), State((1, 0, 0, 1, 0, 0)))
        self.unbalanced |= bool(self.marks)

    def _font(self, resources, name):
        reference = self.file.get(resources["/Font"])[name]
        key = reference if isinstance(reference, str) else id(reference)
        if key not in self.fonts:
            self.fonts[key] = Font(self.file, self.file.get(reference))
        return self.fonts[key]

    def _add(self, kind, box, grey, **more):
        mcids = [mark["mcid"] for mark in self.marks if mark["mcid"] is not None]
        marked = any(mark["marked"] for mark in self.marks)
        self.painted.append(Painted(kind, mcids[-1] if mcids else None, marked, box, grey, **more))

    def _begin(self, operands, resources):
        told = operands[1] if len(operands) > 1 else {}
        if isinstance(told, str):
            told = self.file.get(self.file.get(resources["/Properties"])[told])
        mcid = told.get("/MCID")
        if mcid is not None:
            self.mcids.append(int(mcid))
        self.marks.append({"mcid": None if mcid is None else int(mcid),
                           "marked": mcid is not None or operands[0] == "/Artifact",
                           "actual": told.get("/ActualText")})

    def _show(self, state, text_matrix, strings):
        codes = b"".join(string for string in strings if isinstance(string, bytes))
        actual = [mark for mark in self.marks if mark["actual"] is not None]
        words = state.font.decode(codes)
        if actual:
            value = actual[-1]["actual"]
            words = value.decode("utf-16") if value[:2] in (b"\xfe\xff", b"\xff\xfe") else value.decode("latin-1")
            actual[-1]["actual"] = b""
        matrix = multiply(text_matrix, state.matrix)
        x, y = apply(matrix, 0, 0)
        size = math.hypot(matrix[2], matrix[3]) * state.font_size
        grey = to_grey(state.fill) if state.alpha == 1 else None
        self._add("text", (x, y, x, y), grey, text=words, size=size, font=state.font.name)

    def _draw(self, reference, state):
        form = self.file.get(reference)
        if form["/Subtype"] != "/Form":
            self._add("image", (0, 0, 0, 0), None)
            return
        matrix = multiply(tuple(form.get("/Matrix", (1, 0, 0, 1, 0, 0))), state.matrix)
        self._walk(self.file.data(reference), form.get("/Resources", {}), dataclasses.replace(state, matrix=matrix))

    def _walk(self, content, resources, state):
        resources = self.file.get(resources)
        saved = []
        points = []
        clips = False
        text_matrix = (1, 0, 0, 1, 0, 0)
        for operator, operands in operations(content):
            if operator == "q":
                saved.append(dataclasses.replace(state))
            elif operator == "Q":
                state = saved.pop()
            elif operator == "cm":
                state.matrix = multiply(tuple(operands), state.matrix)
            elif operator in ("m", "l", "c", "v", "y"):
                points += [apply(state.matrix, *operands[i:i + 2]) for i in range(0, len(operands), 2)]
            elif operator == "re":
                x, y, width, height = operands
                points += [apply(state.matrix, x, y), apply(state.matrix, x + width, y + height)]
            elif operator in ("W", "W*"):
                clips = True
            elif operator == "n" or operator in FILLS or operator in STROKES:
                if points:
                    box = (min(p[0] for p in points), min(p[1] for p in points),
                           max(p[0] for p in points), max(p[1] for p in points))
                    if operator in FILLS:
                        self._add("fill", intersect(box, state.clip), to_grey(state.fill))
                    if operator in STROKES:
                        self._add("stroke", intersect(box, state.clip), to_grey(state.stroke))
                    if clips:
                        state.clip = intersect(box, state.clip)
                points, clips = [], False
            elif operator in ("g", "rg", "k", "sc", "scn"):
                state.fill = tuple(value for value in operands if isinstance(value, float))
            elif operator in ("G", "RG", "K", "SC", "SCN"):
                state.stroke = tuple(value for value in operands if isinstance(value, float))
            elif operator == "gs":
                state.alpha = self.file.get(self.file.get(resources["/ExtGState"])[operands[0]]).get("/ca", state.alpha)
            elif operator == "BT":
                text_matrix = (1, 0, 0, 1, 0, 0)
            elif operator == "Tf":
                state.font, state.font_size = self._font(resources, operands[0]), operands[1]
            elif operator == "Tm":
                text_matrix = tuple(operands)
            elif operator == "Td":
                text_matrix = multiply((1, 0, 0, 1, *operands), text_matrix)
            elif operator in ("Tj", "'", '"'):
                self._show(state, text_matrix, operands[-1:])
            elif operator == "TJ":
                self._show(state, text_matrix, operands[0])
            elif operator == "sh":
                self._add("fill", state.clip or (0, 0, 0, 0), None)
            elif operator == "Do":
                self._draw(self.file.get(resources["/XObject"])[operands[0]], state)
            elif operator in ("BMC", "BDC"):
                self._begin(operands, resources)
            elif operator == "EMC":
                if not self.marks:
                    self.unbalanced = True
                else:
                    self.marks.pop()
