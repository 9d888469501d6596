//! Oil lines by themselves: what runs in every tube and how high the oil stands at every node.

use shop::oil_lines;
use tribology::feed::network::{Network, Solved};
use tribology::quantity::{Kind, Quantity as _};

use super::given::{Given, Refused};
use super::{Calculated, Item, Topic, Value, unit_of};
use crate::words;

/// A tank, a main, three drips at two heights, one of them narrowed by dirt.
const SAMPLE: &str = r#"viscosity = "68 mm2/s"

[[node]]
id   = "tank"
head = "1.2 m"

[[node]]
id = "tee"

[[node]]
id     = "left-way"
outlet = "0 m"

[[node]]
id     = "right-way"
outlet = "0 m"

[[node]]
id     = "spindle"
outlet = "0.6 m"

[[tube]]
id     = "main"
from   = "tank"
to     = "tee"
length = "0.5 m"
bore   = "4 mm"

[[tube]]
id     = "to-left"
from   = "tee"
to     = "left-way"
length = "0.6 m"
bore   = "2.5 mm"

[[tube]]
id     = "to-right"
from   = "tee"
to     = "right-way"
length = "0.9 m"
bore   = "2.5 mm"
passes = 0.3

[[tube]]
id     = "to-spindle"
from   = "tee"
to     = "spindle"
length = "0.4 m"
bore   = "2.5 mm"
"#;

pub(super) const TOPIC: Topic = Topic {
    name: "network",
    title: "Flow in oil lines",
    about: "What runs in every tube of oil lines that branch and meet, and how high the oil stands at every node, from a file of nodes \
            and tubes. A node may be a tank (head), an open end (outlet), a standpipe (lip), a relief valve (relief), or be drawn from \
            (draw); a tube may be narrowed (passes) or hold a check valve (one_way); a pump gives a fixed flow less its slip.",
    words: Some(Topic::file("file", "the file of the oil lines", "lines.toml", SAMPLE)),
    options: &[],
    examples: &["network lines.toml"],
    answer,
};

fn answer(given: &Given<'_>) -> Result<Calculated, Refused> {
    let text = given.words()?;
    let read = oil_lines::read(&text);
    let Some(network) = read.value else {
        let told = read.faults.first().map(|fault| format!("line {}: {}", fault.place(&text).line, fault.says));
        let more = match read.faults.len() {
            0 | 1 => String::new(),
            count => format!(" (and {} more)", words::count(count - 1, "fault")),
        };
        return Err(Refused::new(
            told.unwrap_or_else(|| "the file holds nothing that is known here".to_owned()) + &more,
        ));
    };
    let mut found = Calculated::default();
    let solved = found.take(network.solve().map_err(|fault| Refused::new(words::no_flow(&fault)))?);
    items(&network, &solved).into_iter().for_each(|item| found.push(item));
    found.assume("the oil has one temperature throughout and the lines are full of it");
    found.assume("steady, slow flow in round tubes; bends, joints and the drop's own size are left out");
    if solved.heads.iter().any(Option::is_none) {
        found.assume("where blocked or shut tubes leave a node nothing to settle its head, nothing runs and the head is not known");
    }
    Ok(found)
}

fn items(network: &Network, solved: &Solved) -> Vec<Item> {
    let flow = |flow: f64| Value::Quantity(flow, unit_of(Kind::VolumeFlow, "mL/min"));
    let named = |key, label, values: Vec<(String, Value)>| Item::new(key, label, Value::Named(values));
    let tubes = network.tubes.iter().zip(&solved.flows).map(|(tube, m3_s)| (tube.name.clone(), flow(m3_s.si())));
    let pumps = network.pumps.iter().zip(&solved.pumped).map(|(pump, m3_s)| (pump.name.clone(), flow(m3_s.si())));
    let leaves = network.nodes.iter().zip(&solved.leaves).filter(|(_, m3_s)| m3_s.si() != 0.0);
    let leaves = leaves.map(|(node, m3_s)| (node.name.clone(), flow(m3_s.si())));
    let head = |head: Option<_>| {
        head.map_or(Value::Nothing, |head: tribology::quantity::Length| {
            Value::Quantity(head.si(), unit_of(Kind::Length, "m"))
        })
    };
    let heads = network.nodes.iter().zip(&solved.heads).map(|(node, m)| (node.name.clone(), head(*m)));
    vec![
        named("flows_ml_min", "Flow in", tubes.collect()),
        named("pumped_ml_min", "Flow of pump", pumps.collect()),
        named("leaves_ml_min", "Leaves at", leaves.collect()),
        named("heads_m", "Head at", heads.collect()),
        Item::new("residual", "Worst imbalance, as a part of the largest flow", Value::Number(solved.residual)),
        Item::new("iterations", "Times solved", Value::Whole(i64::from(solved.iterations))),
    ]
}
