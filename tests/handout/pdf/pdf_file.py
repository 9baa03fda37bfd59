"""The objects of a PDF as qpdf tells them, so that no part of our own program reads what it wrote."""
import base64
import json
import re
import subprocess
import tempfile

REFERENCE = re.compile(r"^\d+ \d+ R$")


def run(*command):
    """What a tool prints; any complaint of its is an error."""
    done = subprocess.run(command, capture_output=True, check=True)
    if done.stderr.strip():
        raise RuntimeError(f"{command[0]}: {done.stderr.decode(errors='replace')}")
    return done.stdout


class PdfFile:
    def __init__(self, path):
        self.path = path
        parts = json.loads(run("qpdf", "--json=2", "--json-stream-data=inline", "--decode-level=generalized", path))
        self.parts = parts["qpdf"]
        self.objects = self.parts[1]
        self.encrypted = parts["encrypt"]["encrypted"]
        self.root = self.get(self.objects["trailer"]["value"]["/Root"])
        self.info = self.get(self.objects["trailer"]["value"].get("/Info", {}))
        self.read_pages()

    def _entry(self, reference):
        return self.objects["obj:" + reference]

    def get(self, value):
        """The value itself, or what the reference leads to; of a stream its dictionary."""
        while isinstance(value, str) and REFERENCE.match(value):
            entry = self._entry(value)
            value = entry["stream"]["dict"] if "stream" in entry else entry["value"]
        return value

    def stream(self, reference):
        return self._entry(reference)["stream"]

    def data(self, reference):
        """The bytes of a stream, decoded."""
        return base64.b64decode(self.stream(reference)["data"])

    def write(self, path):
        """A PDF of these objects."""
        with tempfile.NamedTemporaryFile("w", suffix=".json") as file:
            json.dump({"qpdf": self.parts}, file)
            file.flush()
            run("qpdf", "--json-input", "--deterministic-id", file.name, path)

    def read_pages(self):
        """Finds the pages, again after a change to one of them."""
        self.page_references = []
        self.pages = []
        self._add_pages(self.root["/Pages"], {})

    def _add_pages(self, reference, inherited):
        node = self.get(reference)
        own = {**inherited, **{key: node[key] for key in ("/MediaBox", "/Resources", "/Rotate") if key in node}}
        if node["/Type"] == "/Page":
            self.page_references.append(reference)
            self.pages.append({**own, **node})
        else:
            for kid in node["/Kids"]:
                self._add_pages(kid, own)

    def content(self, page):
        contents = page.get("/Contents", [])
        return b"\n".join(self.data(part) for part in (contents if isinstance(contents, list) else [contents]))

    def dictionaries(self):
        """Every dictionary of the file, those within others too, with the object it is in."""
        def walk(value):
            if isinstance(value, dict):
                yield value
            for inner in value.values() if isinstance(value, dict) else value if isinstance(value, list) else ():
                yield from walk(inner)

        for name, entry in self.objects.items():
            top = entry["stream"]["dict"] if "stream" in entry else entry["value"]
            for found in walk(top):
                yield name.removeprefix("obj:"), found


def text(value):
    """A string object as text; None for anything else."""
    if isinstance(value, str) and value.startswith("u:"):
        return value[2:]
    if isinstance(value, str) and value.startswith("b:"):
        return bytes.fromhex(value[2:]).decode("latin-1")
    return None
