"""Words, phrases and scripts that are wrong; and the rest of the first kinds."""
import re
from .packs import *


from .work import dropped

def said(files, change):
    for s in steps(files, top=False):
        text = s.field("say")
        if text and not text.startswith(("If", ">")):
            new = change(text)
            yield in_step(files, s, s.text.replace(f"say: {text}", f"say: {new}", 1))


kind("a step too long", "too many words")(lambda f: list(said(f, lambda t: t.rstrip(".") + ", slowly and with care, as far as it will go by hand, and no further than that at all.")))
kind("a contraction", "words run together")(lambda f: list(said(f, lambda t: t.rstrip(".") + " so it doesn't slip.")))
kind("two instructions", "more than one instruction")(lambda f: list(said(f, lambda t: t.rstrip(".") + " and wipe the bench.")))
kind("a condition behind", "condition comes last")(lambda f: list(said(f, lambda t: t.rstrip(".") + " if it is dry.")))
kind("no imperative", "not an instruction")(lambda f: list(said(f, lambda t: "You should " + t[0].lower() + t[1:])))


@kind("a phrase stolen", "phrases that fight", "phrase that nothing reaches")
def _(files):
    t, out = files["talk/talk.jsgf"], []
    for mine, other in (("done", "scratch that"), ("that is done", "scratch that"), ("done", "undo"), ("that is done", "undo")):
        out.append({**files, "talk/talk.jsgf": t.replace(f" * @example {other}\n", f" * @example {other}\n * @example {mine}\n")})
    for mine, other in (("undo", "done"), ("scratch that", "done"), ("undo", "that is done"), ("scratch that", "that is done")):
        out.append({**files, "talk/talk.jsgf": t.replace(f" * @example {other}\n", f" * @example {other}\n * @example {mine}\n", 1)})
    return out


def expressions(files):
    for s in steps(files, top=False):
        for field in ("when", "accept"):
            if s.field(field):
                yield s, field, s.field(field)


@kind("a script divides by zero", "script that fails", "form")
def _(files):
    return [in_step(files, s, s.text.replace(f"{f}: {e}", f"{f}: 1 / (3 - 3) > 0 || {e}", 1)) for s, f, e in expressions(files)]


@kind("an unknown function", "form")
def _(files):
    return [in_step(files, s, s.text.replace(f"{f}: {e}", f"{f}: is_upside_down(\"spring\") || {e}", 1)) for s, f, e in expressions(files)]


@kind("a guard that is always true", "guard that decides nothing")
def _(files):
    return [in_step(files, s, s.text.replace(f"{f}: {e}", f"{f}: true || {e}", 1)) for s, f, e in expressions(files) if f == "when"]


@kind("a guard that is never true", "guard that decides nothing", "threadlocker too late", "threadlocker left out")
def _(files):
    return [in_step(files, s, s.text.replace(f"{f}: {e}", f"{f}: false && {e}", 1)) for s, f, e in expressions(files) if f == "when"]


@kind("an unused function", "function that nothing uses")
def _(files):
    return [{**files, p: t + f"\nfn spare_{n}(x) {{\n    x > {n}.0\n}}\n"} for p, t in files.items() if p.endswith(".rhai") for n in range(6)]


@kind("a wait after threadlocker", "threadlocker too late")
def _(files):
    out = []
    for s in steps(files):
        if s.deed == "threadlock":
            for minutes in (6, 10, 30):
                pad = " " * s.indent
                wait = [f"{pad}- wait: parts to dry", f"{pad}  timer: {{lasts: {minutes} min, for: parts to dry}}"]
                out.append(cut(files, s.path, s.end, s.end, wait))
    return out


@kind("heat while charged", "worked on while charged")
def _(files):
    out = []
    for s in steps(files):
        gas = "gas: " in files.get("units/birch-44.yaml", "") and "birch-44" in s.path
        if gas and s.deed in ("loosen", "remove"):
            pad = " " * s.indent
            put = [f"{pad}- heat: {s.about}", f"{pad}  id: warm {s.about} {s.start}", f"{pad}  before: [no heat on the cartridge]"]
            out.append(cut(files, s.path, s.start, s.start, put))
        if s.deed == "vent":
            pad = " " * s.indent
            out.append(cut(files, s.path, s.start, s.start, [f"{pad}- heat: {s.about}", f"{pad}  before: {s.field('before')}"]))
    return out


@kind("a name that dangles", "form")
def _(files):
    return [in_step(files, s, s.text.replace(f"{s.deed}: {s.about}", f"{s.deed}: {s.about}-x", 1)) for s in steps(files) if s.deed in ("loosen", "tighten", "remove", "refit")]


@kind("one name for two things", "one name for two things")
def _(files):
    out = []
    for path in {p for p in files if p.startswith("units/")}:
        own = [e for e in entries(files) if e[0] == path]
        for (_, _, _, _, a), (_, _, start, end, b) in zip(own, own[1:]):
            first = re.search(r"called: \[([^,\]]+)", a)
            if first and "called: [" in b:
                out.append(cut(files, path, start, end, b.replace("called: [", f"called: [{first.group(1)}, ", 1).split("\n")))
    return out


@kind("a torque said otherwise", "two values for one fact")
def _(files):
    t = files["cautions.yaml"]
    return [{**files, "cautions.yaml": t.replace("thirty two newton metres", f"{n} newton metres")} for n in ("twenty three", "forty", "fifty", "twenty") if "thirty two" in t]


@kind("a spring that closes early", "spring closes in the stroke")
def _(files):
    out = []
    for path, part, start, end, text in entries(files):
        if "springs:" in text and "stroke:" in files[path] and part != "tender":
            for block in re.finditer(r"block: ([\d.]+) mm", text):
                new = text[:block.start()] + f"block: {float(block.group(1)) + 60:g} mm" + text[block.end():]
                out.append(cut(files, path, start, end, new.split("\n")))
    return out


@kind("a cure dropped", "cure not told")
def _(files):
    out = []
    for path, part, start, end, text in entries(files):
        for field in (r"\n      cure: .*", r"\n      handle: .*", r", cure: [^}]*", r", handle: [^,]*(?=,)"):
            if "locker:" in text and re.search(field, text):
                out.append(cut(files, path, start, end, re.sub(field, "", text, count=1).split("\n")))
    return out


@kind("a source dropped", "no source", "caution without a source")
def _(files):
    out = [{**files, p: re.sub(r"^source: .*\n", "", t, count=1, flags=re.M)} for p, t in files.items() if p.startswith("units/") and re.search(r"^source: ", t, re.M)]
    t = files["cautions.yaml"]
    return out + [{**files, "cautions.yaml": t[:m.start()] + t[m.end():]} for m in re.finditer(r"\n  source: .*", t)]


@kind("a signal word too mild", "signal word does not fit", "caution missing")
def _(files):
    t, out = files["cautions.yaml"], []
    for m in re.finditer(r"signal: (danger|caution)", t):
        out.append({**files, "cautions.yaml": t[:m.start()] + "signal: notice" + t[m.end():]})
    for m in re.finditer(r"signal: notice", t):
        out.append({**files, "cautions.yaml": t[:m.start()] + "signal: danger" + t[m.end():]})
    return out


@kind("a part taken off twice", "done twice")
def _(files):
    out = []
    for s in steps(files):
        if s.deed == "remove" and any(p == s.about for _, p, _, _, _ in entries(files)):
            out.append(cut(files, s.path, s.end, s.end, [f"{' ' * s.indent}- remove: {s.about}", f"{' ' * s.indent}  id: once more {s.start}"]))
    return out


@kind("a judgement that nothing passes", "no way on", "judgement that decides nothing")
def _(files):
    return [in_step(files, s, s.text.replace(f"{f}: {e}", f"{f}: value < -1.0 && {e}", 1)) for s, f, e in expressions(files) if f == "accept"]
