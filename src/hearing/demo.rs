//! The units of the demo scenario by their spoken names, for trying talk without a pack.

use super::{Sort, Stock, Thing, Vocabulary};

fn thing(id: &str, called: &str, sort: Sort, most: Option<u32>) -> Thing {
    Thing { id: id.to_owned(), called: called.split(", ").map(str::to_owned).collect(), sort, most }
}

/// The three units, their procedures and tools.
#[must_use]
pub fn stock() -> Stock {
    let unit = |id: &str, called: &[&str], axle: Option<&str>, things: Vec<Thing>| Vocabulary {
        unit: id.to_owned(),
        called: called.iter().map(|name| (*name).to_owned()).collect(),
        axle: axle.map(str::to_owned),
        things,
    };
    let part = |id: &str, called: &str| thing(id, called, Sort::Part, None);
    let birch_44 = unit(
        "birch-44",
        &["birch 44"],
        Some("front"),
        vec![
            thing(
                "slow-rebound",
                "low speed rebound, slow rebound, rebound clicker, rebound",
                Sort::Clicker,
                Some(24),
            ),
            thing("rebound-range", "range ring, rebound range, range", Sort::Ring, Some(4)),
            thing("preload", "preload, perch, platform, spring seat", Sort::Screw, None),
            part("clicker-knob", "knob, clicker knob"),
            part("knob-grub", "knob grub"),
            part("needle-collar", "needle collar"),
            part("foot-grub", "foot grub, nut grub"),
            part("foot-nut", "foot nut, bottom nut"),
            part("top-nut", "top nut"),
            part("top-mount", "top mount"),
            part("bump-stop", "bump stop"),
            part("perch-lock", "split ring, pinch screw"),
            thing("spring", "spring", Sort::Spring, None),
            part("shaft-seal", "seal, shaft seal"),
            part("cartridge", "cartridge, insert"),
            part("carrier", "carrier, strut tube"),
        ],
    );
    let birch_60 = unit(
        "birch-60",
        &["birch 60"],
        Some("rear"),
        vec![
            thing("slow-bump", "slow bump, low speed compression, low speed bump", Sort::Clicker, Some(22)),
            thing("fast-bump", "fast bump, high speed compression, high speed bump", Sort::Clicker, Some(14)),
            thing("rebound", "rebound", Sort::Clicker, Some(30)),
            thing("reservoir-charge", "gas, nitrogen, charge, pressure, gas pressure", Sort::Charge, None),
            thing("preload", "preload, perch, platform, spring seat", Sort::Screw, None),
            part("gas-cap", "valve cap, gas cap"),
            part("gas-valve", "valve core, gas valve"),
            part("reservoir-cap", "reservoir cap"),
            part("cap-ring", "wire ring"),
            part("seal-head", "seal head, head, gland"),
            part("piston-nut", "piston nut"),
            part("shim-stack", "shims, shim stack"),
            part("piston-band", "piston band"),
            part("o-rings", "o rings"),
            part("bump-stop", "bump stop"),
            part("eye-bearing", "eye bearing"),
            part("floating-piston", "floating piston"),
            part("shaft-eye", "eye, shaft eye"),
            thing("spring", "main spring, spring", Sort::Spring, None),
            thing("tender", "tender, helper, tender spring, helper spring", Sort::Spring, None),
            part("spacer", "spacer"),
            thing("oil", "oil", Sort::Fluid, None),
        ],
    );
    let lark = unit(
        "lark-43",
        &["lark 43", "lark", "lark leg"],
        None,
        vec![
            thing("preload", "preload", Sort::Screw, Some(12)),
            thing("rebound", "rebound", Sort::Clicker, Some(16)),
            thing("bump", "compression, bump", Sort::Clicker, Some(18)),
            part("fork-cap", "cap, fork cap, top cap"),
            part("rod-nut", "rod nut, jam nut, lock nut"),
            part("axle-clamp", "axle clamp, spindle clamp, pinch bolts"),
            thing("oil-level", "oil level", Sort::Level, None),
            thing("oil", "oil", Sort::Fluid, None),
            thing("spring", "spring", Sort::Spring, None),
            part("seal", "seal"),
        ],
    );
    let names = |list: &[(&str, &str)]| {
        list.iter().map(|(said, id)| ((*said).to_owned(), (*id).to_owned())).collect()
    };
    Stock {
        units: vec![birch_44, birch_60, lark],
        procedures: names(&[
            ("re spring", "re-spring"),
            ("respring", "re-spring"),
            ("full service", "full-service"),
        ]),
        tools: Default::default(),
    }
}
