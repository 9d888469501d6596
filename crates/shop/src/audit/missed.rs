//! The points that are most often missed, by kind of machine (common practice, no source), as far as no point or pair of the
//! chart is called like them.

use crate::chart::Chart;

use super::{Remark, Rule};

/// A point that is often missed, and the words by which a chart would name it.
type Item = (&'static str, &'static [&'static str]);

const BY_KIND: [(&str, &[Item]); 6] = [
    (
        "lathe",
        &[
            ("the bore of the cone pulley, under its set screws", &["cone", "pulley"]),
            ("the back-gear quill and its eccentric", &["back gear", "back-gear", "quill"]),
            ("the tumbler's studs", &["tumbler", "reverse"]),
            ("the change-gear studs", &["stud", "banjo", "change gear"]),
            ("the half-nut cam and slides", &["half nut", "half-nut"]),
            ("the apron worm", &["worm"]),
            ("the cross screw's nut and thrust", &["cross screw", "cross-screw", "cross slide"]),
            ("the compound screw", &["compound", "top slide"]),
            ("the rack pinion's shaft", &["rack"]),
            ("the lead screw's end bearing and thrust", &["lead screw", "lead-screw"]),
            ("the feed rod's bushes", &["feed rod", "feed-rod"]),
            ("the tailstock screw's thrust", &["tailstock"]),
            ("the steady-rest jaws", &["steady"]),
            ("the countershaft and clutch bushes", &["countershaft"]),
        ],
    ),
    (
        "mill",
        &[
            ("the arbor-support bush", &["arbor"]),
            ("the overarm", &["overarm"]),
            ("the knee screw, its bevels and its hidden nut", &["knee screw", "knee-screw", "elevating"]),
            ("the telescopic shaft and its joints", &["telescopic", "universal joint", "joint"]),
            ("the feed-trip worm box", &["trip"]),
            ("the table's end thrusts", &["table end", "table-end", "end collar", "thrust"]),
            ("the underside of the saddle", &["saddle"]),
            ("the dividing-head worm", &["dividing"]),
        ],
    ),
    (
        "shaper",
        &[
            ("the sliding block", &["block"]),
            ("the crank pin", &["crank"]),
            ("the rocker's foot pivot", &["rocker"]),
            ("the stroke-setting bevels", &["stroke"]),
            ("the pawl and ratchet", &["pawl", "feed box", "feed-box"]),
            ("the cross-rail screws and elevating nuts", &["rail screw", "elevating", "cross rail", "cross-rail"]),
            ("the tool slide", &["tool slide", "tool-slide", "down-feed"]),
            ("the clapper pin", &["clapper"]),
            ("the table-support foot", &["support"]),
            ("the belt shifter and the loose pulley", &["pulley", "clutch"]),
            ("the bull-gear shaft", &["bull"]),
        ],
    ),
    (
        "planer",
        &[
            ("the cross-rail screws and elevating nuts", &["rail", "elevating"]),
            ("the tool slide and the clapper pin", &["clapper", "tool slide", "tool-slide"]),
            ("the belt shifter and the loose pulley", &["shifter", "pulley"]),
            ("the bull-gear shaft", &["bull"]),
            ("the table rollers or pockets", &["roller", "pocket", "well"]),
        ],
    ),
    (
        "drill",
        &[
            ("the idlers and the belt tension", &["idler"]),
            ("the quill's spline", &["spline"]),
            ("the table's elevating bevels", &["bevel", "elevating"]),
            ("the column", &["column"]),
            ("the feed trip", &["trip"]),
        ],
    ),
    (
        "grinder",
        &[
            ("the table rollers", &["roller"]),
            ("the cross-feed nut", &["cross"]),
            ("the wheelhead ways", &["wheelhead", "wheel head"]),
            ("the elevating screw", &["elevating"]),
            ("the belt idlers", &["idler"]),
            ("the coolant pump's bush", &["coolant"]),
        ],
    ),
];

pub(super) fn remarks(chart: &Chart) -> Vec<Remark> {
    let kind = chart.machine.kind.as_deref().unwrap_or("").to_lowercase();
    let Some((name, items)) = BY_KIND.iter().find(|(known, _)| kind.contains(known)) else { return Vec::new() };
    let called = called(chart);
    let missed: Vec<&str> = items
        .iter()
        .filter(|(_, words)| !words.iter().any(|word| called.contains(word)))
        .map(|(what, _)| *what)
        .collect();
    if missed.is_empty() {
        return Vec::new();
    }
    vec![Remark {
        rule: Rule::Missed,
        of: Vec::new(),
        says: format!(
            "often missed on a {name} and not on this chart: {} (common practice, no source)",
            missed.join("; ")
        ),
        next: "look for each; chart it, or write a finding that this example has none".to_owned(),
    }]
}

/// Everything that the chart calls by a name, findings too: who wrote that there is none has looked.
fn called(chart: &Chart) -> String {
    let mut called = String::new();
    let mut add = |text: &str| {
        called.push_str(&text.to_lowercase());
        called.push(' ');
    };
    for point in &chart.points {
        add(&point.name);
        point.place.as_deref().into_iter().for_each(&mut add);
    }
    for pair in &chart.pairs {
        add(pair.id.as_str());
        pair.name.as_deref().into_iter().chain(pair.note.as_deref()).for_each(&mut add);
    }
    for finding in &chart.findings {
        finding.note.as_deref().into_iter().for_each(&mut add);
    }
    called
}
