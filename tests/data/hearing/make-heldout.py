"""Turns heldout.txt (one utterance a line) into heldout.jsonl in the form that score-hearing reads."""
import json, sys
UNIT = {"4": "birch-44", "6": "birch-60", "L": "lark-43"}
def value(k, v):
    v = v.replace("~", " ")
    if k == "value": return float(v)
    if k == "duration": n, u = v.split(); return {"value": float(n), "unit": u}
    if k == "values": return [{"value": float(x.split(":")[0]), "unit": x.split(":")[1]} for x in v.split(",")]
    return v
def reading(text):
    head, _, rest = text.strip().partition(" ")
    acts = []
    for part in filter(None, (p.strip() for p in rest.split(";"))):
        words = part.split(); slots = dict((k, value(k, v)) for k, v in (w.split("=", 1) for w in words[1:]))
        if "value" in slots: slots.setdefault("unit", None)
        acts.append({"act": words[0], "slots": slots})
    return {"outcome": head, "acts": acts}
count = {}
for line in open(sys.argv[1], encoding="utf-8"):
    if not line.strip() or line.startswith("#"): continue
    where, said, want = (p.strip() for p in line.split("|", 2))
    s, u, w, a = where.split(); count[s] = count.get(s, 0) + 1
    first, *more = [reading(r) for r in want.split("||")]
    row = {"id": f"{s}-h{count[s]:03}", "said": said, "unit": UNIT[u], "waiting_for": w, "about": None if a == "-" else a,
           **first, "also_ok": more, "must_not": [], "tags": [x["act"] for x in first["acts"]] or [first["outcome"]]}
    print(json.dumps(row, ensure_ascii=False))
