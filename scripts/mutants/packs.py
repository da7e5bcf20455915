"""The clean packs, and how their texts are cut."""
import pathlib, re

HERE = pathlib.Path(__file__).resolve().parent.parent.parent
TALK = (HERE / "tests/findings/base/talk/talk.jsgf").read_text()


def read(folder):
    files = {str(p.relative_to(folder)): p.read_text() for p in sorted(folder.rglob("*")) if p.is_file()}
    files = {path: text for path, text in files.items() if not path.startswith("talk/")}
    files["talk/talk.jsgf"] = TALK
    return files


PACKS = {"built-in": read(HERE / "rules"), "base": read(HERE / "tests/findings/base")}
STEP = re.compile(r"^( *)- (\w+): (.*)$")


class Step:
    """A step with the lines from `start` to `end`, in which stands what is under it."""
    def __init__(self, path, lines, at):
        self.path, self.start = path, at
        indent, self.deed, self.about = STEP.match(lines[at]).groups()
        self.indent = len(indent)
        end = at + 1
        while end < len(lines) and lines[end].strip() and len(lines[end]) - len(lines[end].lstrip()) > self.indent:
            end += 1
        self.end = end
        self.text = "\n".join(lines[at:end])
        own = []
        for line in lines[at + 1:end]:
            if re.match(rf"^ {{{self.indent + 2}}}else:", line):
                break
            own.append(line)
        self.own = "\n".join(own)

    def field(self, name):
        found = re.search(rf"^ {{{self.indent + 2}}}{name}: (.*)$", self.text, re.M)
        return found and found.group(1)


def steps(files, top=True):
    for path, text in files.items():
        if not path.startswith("procedures/"):
            continue
        lines, inner = text.split("\n"), -1
        for at, line in enumerate(lines):
            if not STEP.match(line) or line.startswith("  - "):
                continue
            step = Step(path, lines, at)
            if top and at < inner:
                continue
            if step.field("else") is None and not re.search(rf"^ {{{step.indent + 2}}}else:", step.text, re.M):
                pass
            if at >= inner:
                inner = step.end
            yield step


def cut(files, path, start, end, put=()):
    lines = files[path].split("\n")
    lines[start:end] = list(put)
    return {**files, path: "\n".join(lines)}


def drop(files, step):
    return cut(files, step.path, step.start, step.end)


def swap_text(files, path, old, new, count=1):
    assert old in files[path], (path, old)
    return {**files, path: files[path].replace(old, new, count)}


def in_step(files, step, new):
    return cut(files, step.path, step.start, step.end, new.split("\n"))


def entries(files, kind="parts"):
    """Parts (or adjusters) of the cards: (path, id, start, end, text)."""
    for path, text in files.items():
        if not path.startswith("units/"):
            continue
        lines, inside, at = text.split("\n"), False, 0
        while at < len(lines):
            if re.match(r"^\w", lines[at]):
                inside = lines[at].startswith(kind + ":")
            found = inside and re.match(r"^  ([\w-]+):", lines[at])
            if found:
                end = at + 1
                while end < len(lines) and (not lines[end].strip() or len(lines[end]) - len(lines[end].lstrip()) > 2):
                    end += 1
                yield path, found.group(1), at, end, "\n".join(lines[at:end])
                at = end
            else:
                at += 1


def units_of(files):
    """Card file -> procedure files of that unit: only what a procedure uses is worth breaking for it."""
    out = {}
    for path, text in files.items():
        if path.startswith("procedures/"):
            out.setdefault(re.search(r"^unit: (.*)$", text, re.M).group(1).strip(), []).append(path)
    return out


def used(files, path, part, deeds):
    unit = re.search(r"^unit: (.*)$", files[path], re.M).group(1).strip()
    procedures = units_of(files).get(unit, [])
    return any(re.search(rf"- ({deeds}): {part}$", files[p], re.M) for p in procedures)


KINDS = {}


def kind(name, *meant):
    def add(function):
        KINDS[name] = (function, set(meant))
        return function
    return add
