"""Damage that an author does without noticing: a mark lost, a way turned round, a step in the wrong phase."""
import re
from .packs import *
from .work import dropped


def lines_of(files, start, pattern, new, meant_part=None):
    """One mutant for each match of a pattern in files that begin so."""
    out = []
    for path, text in files.items():
        if path.startswith(start):
            for m in re.finditer(pattern, text, re.M):
                put = m.expand(new)
                out.append({**files, path: text[:m.start()] + put + text[m.end():]})
    return out


def field_lost(files, field, deeds, having=lambda text: True):
    for path, part, start, end, text in entries(files):
        if re.search(rf"^    {field}: ", text, re.M) and used(files, path, part, deeds) and having(text):
            yield cut(files, path, start, end, re.sub(rf"\n    {field}: .*", "", text, count=1).split("\n"))


kind("a critical mark dropped", "not marked as critical")(lambda f: list(field_lost(f, "critical", "tighten")))
kind("a single-use mark dropped", "renewed each time")(
    lambda f: list(field_lost(f, "single use", "replace", lambda t: "springs:" not in t)))
kind("a limit inverted", "limit the wrong way round", "form")(
    lambda f: lines_of(f, "procedures/", r"limit: at most ", "limit: at least "))
kind("a band inverted", "form")(
    lambda f: lines_of(f, "procedures/", r"limit: ([1-9][\d.]*) to ([\d.]+) ", r"limit: \2 to \1 "))
kind("a clicker's way turned round", "turned the other way")(
    lambda f: lines_of(f, "units/", r"closes: clockwise", "closes: anticlockwise"))
kind("a screw's way turned round", "turned the other way")(
    lambda f: lines_of(f, "units/", r"adds: clockwise", "adds: anticlockwise"))
kind("a step's way turned round", "turned the other way")(
    lambda f: lines_of(f, "procedures/", r"(say: (?:Count|Turn) .*? )clockwise", r"\1anticlockwise"))
kind("a reading's unit swapped", "unit does not fit", "form")(
    lambda f: lines_of(f, "procedures/", r"limit: (.*) (?:mm|degC|bar)$", r"limit: \1 N.m"))
kind("a grade missing", "form")(lambda f: lines_of(f, "units/", r"\{grade: medium, ", "{")
                                + lines_of(f, "units/", r"\n      grade: \w+", ""))
kind("a torque wrench too small", "torque out of reach")(
    lambda f: lines_of(f, "tools.yaml", r"range: [15] N.m to [\d.]+ N.m", "range: 0.5 N.m to 2 N.m"))
kind("a calibration lost", "calibration not told")(
    lambda f: lines_of(f, "tools.yaml", r"\n  calibrated: .*\n  due: .*", ""))
kind("a day of calibration lost", "calibration not told")(
    lambda f: lines_of(f, "tools.yaml", r"\n  due: .*", ""))
kind("a caution emptied", "form")(
    lambda f: lines_of(f, "cautions.yaml", r"full: >-\n(?:    .*\n)+", 'full: ""\n')
    + lines_of(f, "cautions.yaml", r"full: [A-Z].*", 'full: ""') + lines_of(f, "cautions.yaml", r"brief: .*", 'brief: ""'))
kind("a stop emptied", "form")(lambda f: lines_of(f, "procedures/", r"stop: Stop.*", 'stop: ""'))
kind("wishes never asked", "settings wanted not asked")(
    dropped("record", when=lambda s: s.field("reads back") == "wanted"))
kind("oil drained and not filled", "not filled and bled")(
    lambda f: [without_deeds(f, p, ("fill",)) for p in f if "- drain: oil" in f[p]])
kind("oil filled and not bled", "not filled and bled")(
    lambda f: [without_deeds(f, p, ("bleed",)) for p in f if "- bleed: oil" in f[p]])
kind("a phase lost", "left off", "settings as left not read back", "setting not restored", "let go before it is safe",
     "settings as found not read back", "moved before it was counted", "serial not recorded", "tightened while it is off",
     "single-use part used again", "caution that guards nothing", "done twice", "form")(lambda f: list(phases_lost(f)))
kind("threadlocker that sets before it is tight", "times of the threadlocker")(
    lambda f: lines_of(f, "units/", r"open: 5 min", "open: 5 h") + lines_of(f, "units/", r"cure: (\d+) h", r"cure: \1 min")
    + lines_of(f, "units/", r"open: 5 min", "open: 5 s"))
kind("a wait cut short", "two values for one fact")(
    lambda f: lines_of(f, "procedures/", r"(say: .* minutes.*\n *timer: \{)lasts: (?:10|20|2) min", r"\1lasts: 1 min"))
kind("a spoken name that is an act", "name that is an act", "phrases that fight")(
    lambda f: lines_of(f, "units/", r"called: \[", "called: [done, ")[:8] + lines_of(f, "units/", r"called: \[", "called: [undo, ")[-8:])
kind("a name said twice", "one name for two things", "form")(
    lambda f: lines_of(f, "tools.yaml", r"called: \[caliper", "called: [spanner, caliper"))
kind("a wrong figure in words", "two values for one fact")(
    lambda f: lines_of(f, "procedures/", r"forty two millimetres", "twenty four millimetres")
    + lines_of(f, "procedures/", r"fourteen millimetres", "forty millimetres")
    + lines_of(f, "cautions.yaml", r"gas at fourteen bar", "gas at four bar")
    + lines_of(f, "procedures/", r"one hundred and ten millimetres", "one hundred and one millimetres"))
kind("a rule never reached", "phrase that nothing reaches", "form")(
    lambda f: [{**f, "talk/talk.jsgf": f["talk/talk.jsgf"] + "public <lost> = never <VOID> said {again};\n"},
               {**f, "talk/talk.jsgf": f["talk/talk.jsgf"] + "<alone> = never asked for;\n"}])
kind("a judgement left out", "reading without a limit", "judgement that decides nothing", "function that nothing uses",
     "step never reached", "guard that decides nothing")(
    lambda f: lines_of(f, "procedures/", r"\n +accept: .*", ""))
kind("an else left out", "reading without a consequence", "no way on", "step never reached", "nothing follows", "form")(
    lambda f: list(else_lost(f)))
kind("a question left out", "form")(
    lambda f: [in_step(f, s, re.sub(r"\n +question: .*", "", s.text, count=1)) for s in steps(f)
               if s.deed == "prove" and s.field("question")])


def without_deeds(files, path, deeds):
    for _ in range(20):
        found = [s for s in steps({path: files[path]}, top=False) if s.deed in deeds and s.about == "oil"]
        if not found:
            return files
        files = drop(files, found[0])
        # An `else` that held nothing else goes with it.
        files = {**files, path: re.sub(r"\n +else:\n(?= *(- |\w|\n))(?! *- )", "\n", files[path])}
        files = {**files, path: re.sub(r"\n( +)else:\n(?!\1  )", "\n", files[path])}
    return files


def phases_lost(files):
    for path, text in files.items():
        if not path.startswith("procedures/"):
            continue
        lines = text.split("\n")
        heads = [n for n, line in enumerate(lines) if re.match(r"^  [\w-]+:$", line)]
        for head in heads:
            end = next((n for n in range(head + 1, len(lines)) if re.match(r"^ {0,2}\S", lines[n])), len(lines))
            if lines[head].strip() not in ("inspect:", "swap:"):
                yield cut(files, path, head, end)


def else_lost(files):
    for s in steps(files):
        found = re.search(rf"\n( {{{s.indent + 2}}})else:(?:\n {{{s.indent + 4}}}.*)+", s.text)
        if found and s.deed in ("measure",) and not s.field("stop"):
            yield in_step(files, s, s.text[:found.start()] + s.text[found.end():])


def moved_to(files, step, path, at):
    lines = files[path].split("\n")
    own = lines[step.start:step.end]
    if at > step.start:
        return {**files, path: "\n".join(lines[:step.start] + lines[step.end:at] + own + lines[at:])}
    return {**files, path: "\n".join(lines[:at] + own + lines[at:step.start] + lines[step.end:])}


def behind(files, what, before, same=True):
    """A step moved behind the next one of another deed on the same part."""
    all_steps = list(steps(files))
    for n, s in enumerate(all_steps):
        if s.deed not in what:
            continue
        for later in all_steps[n + 1:n + 12]:
            if later.path == s.path and later.deed in before and (later.about == s.about) == same:
                yield moved_to(files, s, s.path, later.end)
                break


kind("threadlocker behind the tightening", "threadlocker left out", "threadlocker on what is tight")(
    lambda f: list(behind(f, ("threadlock",), ("tighten",))))
kind("a look before the tightening", "mark not looked at")(
    lambda f: [moved_to(f, s, s.path, t.start) for s, t in pairs(f, "look", "tighten") if has_mark(f, s)])
kind("a mark made after the loosening", "mark never made")(lambda f: list(behind(f, ("mark",), ("loosen", "remove"))))
kind("renewed after it is on", "single-use part used again", "done twice")(
    lambda f: list(behind(f, ("replace",), ("refit", "press"))))
kind("set before it is together", "set before it is together", "tightened while it is off", "held by what is off", "form")(lambda f: list(set_early(f)))
kind("charged before it is closed", "charged while it is open", "tightened while it is off", "form")(lambda f: list(charged_early(f)))
kind("a hold on what is off", "held by what is off", "fitted too soon", "tightened while it is off", "left off")(
    lambda f: [drop(f, s) for s in steps(f) if s.deed == "refit" and s.about in ("shaft-eye",) or s.deed == "refit" and s.field("id") == "cap onto the rod"])
kind("the safe phase behind the strip", "let go before it is safe")(lambda f: list(safe_late(f)))
kind("a part that hangs on itself", "under itself", "form")(
    lambda f: [cut(f, p, s, e, re.sub(r"over: \[", f"over: [{part}, ", t).split("\n")) for p, part, s, e, t in entries(f) if "over: [" in t])
kind("a script that runs without end", "script near its limits", "script that fails", "form")(
    lambda f: lines_of(f, "scripts/", r"^fn (\w+)\((\w*)\) \{", r"fn \1(\2) {\n    let n = 0; while n >= 0 { n += 1; }"))
kind("a field that does not exist", "form")(lambda f: lines_of(f, "procedures/", r"^(      )stop: ", r"\1stops: ")[:14]
                                            + lines_of(f, "units/", r"^(    )torque: ", r"\1torqe: "))
kind("a torque twice as high", "torque out of proportion", "torque out of reach", "two values for one fact")(
    lambda f: lines_of(f, "units/", r"torque: (32|28|20) N.m", r"torque: \g<1>0 N.m"))


def has_mark(files, step):
    return any(p == step.about and "mark:" in text for _, p, _, _, text in entries(files))


def pairs(files, one, other):
    """Each step with that of another deed on the same part before it."""
    all_steps = list(steps(files))
    for n, s in enumerate(all_steps):
        if s.deed == one:
            for t in reversed(all_steps[:n]):
                if t.path == s.path and t.deed == other and t.about == s.about:
                    yield s, t
                    break


def set_early(files):
    """Zero, count and set of an adjuster before the part that carries it is back on."""
    through = {}
    for path, adjuster, _, _, text in entries(files, "adjusters"):
        found = re.search(r"through: \[([\w-]+)", text)
        if found and "clicker:" in text:
            through[(path, adjuster)] = found.group(1)
    for (card, adjuster), part in through.items():
        unit = re.search(r"^unit: (.*)$", files[card], re.M).group(1)
        for path, text in files.items():
            if path.startswith("procedures/") and f"unit: {unit}\n" in text:
                one = {path: text}
                fit = [s for s in steps(one) if s.deed in ("refit", "press") and s.about == part]
                sets = [s for s in steps(one) if s.deed == "set" and s.about == adjuster]
                if fit and sets and fit[0].start < sets[0].start:
                    yield moved_to(files, fit[0], path, sets[0].end)


def charged_early(files):
    for path, text in files.items():
        if path.startswith("procedures/"):
            one = {path: text}
            charge = [s for s in steps(one) if s.deed == "charge"]
            fits = [s for s in steps(one) if s.deed in ("refit", "tighten") and s.about in ("gas-valve", "cap", "core", "reservoir-cap", "cap-ring")]
            for fit in fits:
                if charge and fit.start < charge[0].start:
                    yield moved_to(files, fit, path, charge[0].end)


def safe_late(files):
    """The phase that makes safe moved behind the next phase."""
    for path, text in files.items():
        lines = text.split("\n")
        heads = [n for n, line in enumerate(lines) if re.match(r"^  [\w-]+:$", line)]
        safe = [n for n, line in enumerate(lines) if line == "    makes safe: yes"]
        if path.startswith("procedures/") and safe:
            at = heads.index(safe[0] - 1)
            a, b, c = (heads + [len(lines)])[at:at + 3]
            yield {**files, path: "\n".join(lines[:a] + lines[b:c] + lines[a:b] + lines[c:])}
