"""Packs that differ from ours and are as good."""
from .packs import *


def variations():
    """Ten packs that differ from ours and are as good."""
    ours, base = PACKS["built-in"], PACKS["base"]
    p44, u44 = "procedures/re-spring.birch-44.yaml", "units/birch-44.yaml"
    return [
        ("another source", swap_text(ours, u44, "source: demo\n", "source: drawing 1234\n")),
        ("a comment", {**ours, p44: "# Another hand.\n" + ours[p44]}),
        ("a torque in its band", swap_text(ours, u44, "32 N.m +/- 2 N.m", "31 N.m +/- 2 N.m")),
        ("another spoken name", swap_text(ours, u44, "called: [foot nut, bottom nut]", "called: [foot nut, bottom nut, lower nut]")),
        ("a note more", swap_text(ours, p44, "    - loosen: foot-nut\n", "    - loosen: foot-nut\n      note: It gives with a crack.\n")),
        ("a longer spring", swap_text(ours, u44, "free: 200 mm, block: 95 mm", "free: 210 mm, block: 95 mm")),
        ("a caution more", swap_text(base, "procedures/strut.yaml", "    - remove: spring\n", "    - remove: spring\n      before: [stored energy]\n")),
        ("two steps that do not care", swap_text(base, "procedures/strut.yaml", "    - remove: spring\n    - remove: seal\n", "    - remove: seal\n    - remove: spring\n")),
        ("other clicks", swap_text(base, "units/strut.yaml", "clicker: 24 clicks", "clicker: 18 clicks")),
        ("a tool more", {**base, "tools.yaml": base["tools.yaml"] + "soft-drift:\n  called: [soft drift]\n  kind: drift\n"}),
    ]
