"""What is left out of a procedure, or stands in the wrong place."""
import re
from .packs import *


def dropped(*deeds, when=lambda step: True):
    return lambda files: [drop(files, s) for s in steps(files) if s.deed in deeds and when(s)]


def has_locker(files, step):
    return any(p == step.about and "locker:" in text for _, p, _, _, text in entries(files))


kind("a refit dropped", "left off", "fitted too soon", "tightened while it is off", "held by what is off")(dropped("refit"))
kind("a press dropped", "left off", "fitted too soon")(dropped("press"))
kind("a tightening dropped", "not tightened")(dropped("tighten"))
kind("threadlocker dropped", "threadlocker left out")(dropped("threadlock"))


@kind("cleaning dropped", "threadlocker on old threadlocker")
def _(files):
    return [drop(files, s) for s in steps(files) if s.deed == "clean" and has_locker(files, s)]


@kind("two fittings swapped", "fitted too soon")
def _(files):
    return list(swapped(files, ("refit", "press"), lambda over, a, b: a in over.get(b, ())))


@kind("two takings off swapped", "taken off too soon")
def _(files):
    return list(swapped(files, ("remove", "rock"), lambda over, a, b: b in over.get(a, ())))


def swapped(files, deeds, related):
    over = {}
    for _, part, _, _, text in entries(files):
        found = re.search(r"over: \[(.*)\]", text)
        over.setdefault(part, set()).update(x.strip() for x in found.group(1).split(",")) if found else None
    all_steps = [s for s in steps(files) if s.deed in deeds]
    for a, b in zip(all_steps, all_steps[1:]):
        if a.path == b.path and related(over, a.about, b.about):
            lines = files[a.path].split("\n")
            one, two = lines[a.start:a.end], lines[b.start:b.end]
            yield cut(cut(files, b.path, b.start, b.end, one), a.path, a.start, a.end, two)


CAUTIONS = ("caution missing", "caution in one place only", "caution that guards nothing", "caution behind its step")


@kind("a caution dropped", *CAUTIONS)
def _(files):
    out = []
    for s in steps(files):
        if s.field("before") and (s.deed in DANGEROUS or lone(files, s)):
            out.append(in_step(files, s, re.sub(rf"\n {{{s.indent + 2}}}before: .*", "", s.text, count=1)))
    return out


DANGEROUS = ("strike", "heat", "compress", "vent", "charge", "prove")


def lone(files, step):
    """Whether a caution of the step stands nowhere else."""
    every = "\n".join(t for p, t in files.items() if p.startswith("procedures/"))
    names = [n.strip() for n in step.field("before").strip("[]").split(",")]
    return any(len(re.findall(rf"before: \[[^\]]*\b{re.escape(n)}\b", every)) == 1 for n in names)


@kind("a caution moved behind", *CAUTIONS)
def _(files):
    out, all_steps = [], list(steps(files))
    for s, after in zip(all_steps, all_steps[1:]):
        if s.path == after.path and s.deed in DANGEROUS and s.field("before") and not after.field("before"):
            lines = after.text.split("\n")
            new = [lines[0], " " * (after.indent + 2) + "before: " + s.field("before")] + lines[1:]
            moved = cut(files, after.path, after.start, after.end, new)
            out.append(in_step(moved, s, re.sub(rf"\n {{{s.indent + 2}}}before: .*", "", s.text, count=1)))
    return out


def has_mark(files, step):
    return any(p == step.about and "mark:" in text for _, p, _, _, text in entries(files))


@kind("a mark never looked at", "mark not looked at")
def _(files):
    return [drop(files, s) for s in steps(files) if s.deed == "look" and has_mark(files, s)]


kind("a mark never made", "mark never made")(dropped("mark"))
kind("a restore missing", "setting not restored")(dropped("set"))
kind("travel not counted again", "travel not counted again")(dropped("count", when=lambda s: s.field("as") == "travel again"))
kind("as found not counted", "moved before it was counted")(dropped("count", when=lambda s: s.field("as") == "found"))
kind("as found not read back", "settings as found not read back")(dropped("record", when=lambda s: s.field("reads back") == "found"))
kind("as left not read back", "settings as left not read back")(dropped("record", when=lambda s: s.field("reads back") == "left"))
kind("a proof dropped", "let go before it is safe", "form")(
    dropped("prove", when=lambda s: s.about in ("spring", "charge", "reservoir-charge")))
kind("a venting dropped", "let go before it is safe")(dropped("vent"))
kind("a charge dropped", "not charged again")(dropped("charge"))
kind("a renewal dropped", "single-use part used again")(dropped("replace", when=lambda s: s.about in ("seal", "shaft-seal", "piston-nut", "gas-valve")))


@kind("a loop without an end", "loop without an end")
def _(files):
    out = []
    for s in steps(files):
        if re.search(rf"^ {{{s.indent + 2}}}else:", s.text, re.M) and s.field("stop"):
            out.append(in_step(files, s, re.sub(rf"\n {{{s.indent + 2}}}stop: .*", "", s.text, count=1)))
    return out
