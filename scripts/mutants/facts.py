"""Facts of a card that are wrong or missing."""
import re
from .packs import *


def torques(files, change):
    for path, part, start, end, text in entries(files):
        found = re.search(r"torque: ([\d.]+) N\.m", text)
        if found and used(files, path, part, "tighten"):
            new = text.replace(found.group(0), f"torque: {float(found.group(1)) * change:g} N.m")
            yield cut(files, path, start, end, re.sub(r"N\.m \+/- [\d.]+ N\.m", "N.m", new).split("\n"))


kind("a torque of ten times", "torque out of proportion", "torque out of reach", "two values for one fact")(lambda f: list(torques(f, 10)))
kind("a torque of a tenth", "torque out of proportion", "torque out of reach", "two values for one fact")(lambda f: list(torques(f, 0.1)))


@kind("a unit lost", "form")
def _(files):
    out = []
    for path, text in files.items():
        if path.startswith("units/"):
            for found in re.finditer(r"(torque|across|key|bore|block|free|stroke|open): ([\d.]+) [\w./]+", text):
                out.append({**files, path: text[:found.start()] + f"{found.group(1)}: {found.group(2)}" + text[found.end():]})
    return out


@kind("a tool not in the crib", "tool not in the crib", "form")
def _(files):
    out = []
    for path, part, start, end, text in entries(files):
        for field in ("across", "key"):
            found = re.search(rf"^    {field}: ([\d.]+) mm", text, re.M)
            if found and not re.search(r"^    tool:", text, re.M):
                size = re.escape(found.group(1))
                tools = re.sub(rf"(?<![\d.]){size} mm, |, {size} mm(?=[\],])", "", files["tools.yaml"])
                out.append({**files, "tools.yaml": tools})
    return out


@kind("the safe phase can be skipped", "let go before it is safe")
def _(files):
    return [{**files, p: t.replace("    makes safe: yes\n", "", 1)} for p, t in files.items() if "    makes safe: yes\n" in t]


def without_field(files, field, deeds, keep=lambda text: True):
    for path, part, start, end, text in entries(files):
        if re.search(rf"^    {field}: ", text, re.M) and used(files, path, part, deeds) and keep(text):
            yield cut(files, path, start, end, re.sub(rf"\n    {field}: .*", "", text, count=1).split("\n"))


kind("no way of holding", "no way of holding")(lambda f: list(without_field(f, "hold", "loosen|tighten", lambda t: "thread:" in t)))
kind("not said from where", "not said from where")(lambda f: list(without_field(f, "end", "loosen|tighten|remove", lambda t: "thread:" in t)))


@kind("a key of another size", "tool does not fit", "tool not in the crib")
def _(files):
    out = []
    for path, part, start, end, text in entries(files):
        found = re.search(r"^    key: ([\d.]+) mm", text, re.M)
        for other in ("1.5", "5", "8") if found else ():
            out.append(cut(files, path, start, end, text.replace(found.group(0), f"    key: {other} mm").split("\n")))
    return out


@kind("flats of another size", "tool does not fit", "tool not in the crib")
def _(files):
    out = []
    for path, part, start, end, text in entries(files):
        found = re.search(r"^    across: ([\d.]+) mm", text, re.M)
        if found and "by ISO" in text:
            for other in ("17", "23", "30"):
                out.append(cut(files, path, start, end, text.replace(found.group(0), f"    across: {other} mm").split("\n")))
    return out
