"""What the tests of the window share: a copy of the sample to work on, and words to say what happened."""
import os
import shutil
import subprocess
import sys
import tempfile

sys.path.insert(0, os.path.dirname(os.path.realpath(__file__)))
import gui


class Work:
    """A throw-away folder with a copy of the sample programme, and the programs under test."""

    def __init__(self, argv):
        self.program, self.make, sample = (os.path.abspath(path) for path in argv[1:4])
        self.folder = tempfile.mkdtemp(prefix="setwright-test-")
        os.chdir(self.folder)
        self.file = os.path.join(self.folder, "garden.setwright")
        shutil.copy(sample, self.file)

    def start(self, *files):
        return gui.Gui.start([self.program, *(files or (self.file,))])

    def path(self, name):
        return os.path.join(self.folder, name)

    def numbers(self, path):
        """What setwright-make reckons of a programme: an independent look at what was saved."""
        return subprocess.run([self.make, "numbers", path], check=True, capture_output=True, text=True).stdout

    def words(self, pdf):
        """The words of a PDF in reading order, by an extractor that is not ours."""
        text = subprocess.run(["pdftotext", pdf, "-"], check=True, capture_output=True, text=True).stdout
        return text.replace("\u00a0", " ")

    def remove(self):
        os.chdir("/")
        shutil.rmtree(self.folder)


def check(condition, words):
    if not condition:
        raise gui.Fail(words)


def save(g, work):
    """Saves, and waits until the window says that nothing is left to save."""
    g.key("ctrl+s")
    g.wait("label", os.path.basename(work.file))


def save_pdf(g, path, title="Save the handout as PDF"):
    """Saves the handout by the keyboard alone, in a dialog of that title."""
    g.key("ctrl+e")
    g.wait_window(title)
    g.expect("text", "Name:", "state", "focused")
    g.key("ctrl+a")
    g.type(path)
    g.expect("text", "Name:", "text", path)
    g.key("Return")
    check(g._until(lambda: os.path.exists(path)), f"{path} was not saved")
    g.wait("label", "The handout is saved.")


def ends(g):
    """Waits until the program has ended by itself, well."""
    try:
        status = g.proc.wait(gui.WAIT)
    except subprocess.TimeoutExpired:
        raise gui.Fail("the program did not end") from None
    check(status == 0, f"the program ended with status {status}")


def names(rows):
    """The rows of the session list without their numbering, so that they compare after a move."""
    return [row.rsplit(", ", 1)[0] if " of " in row else row for row in rows]


def run(test):
    """Runs one test of the window; says what failed, with a picture beside the log when that is asked for."""
    work = Work(sys.argv)
    try:
        test(work)
    except gui.Fail as failure:
        picture = os.environ.get("SETWRIGHT_TEST_PICTURE")
        if picture:
            gui.shot(picture)
        print(f"failed: {failure}")
        sys.exit(1)
    finally:
        work.remove()
    print("passed")
