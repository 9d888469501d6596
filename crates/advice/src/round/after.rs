//! What is done after the work: chips off, film on, drips shut, wicks lifted. By the ways of oiling and the moving pairs of the
//! chart (common practice, no source), with the chart's own words beside.

use shop::chart::{Behaviour, Chart, Method, PairKind};
use shop::id::Id;
use shop::snapshot::MachineSnapshot;

use super::reach::{called, open_pairs};
use super::setup::{Reading, SetUp};

/// An act after the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum AfterKind {
    /// Chips are brushed off, and the ways and threads wiped.
    Brush,
    /// A film of oil goes on what shines.
    Film,
    /// Drips are shut.
    ShutDrip,
    /// Wicks are lifted out of their tubes.
    LiftWick,
    /// Lids of cups are shut.
    ShutLid,
    /// What uses oil by design is looked at: it should stand lower than before.
    ReadLevel,
    /// What was taken off is put on again.
    Covers,
    /// The hours are written down.
    NoteHours,
}

/// An act, with what it is done to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct AfterAct {
    /// What is done.
    pub kind: AfterKind,
    /// What it is done to.
    pub to: Vec<AfterAt>,
}

/// A point, a pair or a reservoir.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct AfterAt {
    /// Its id.
    pub id: Id,
    /// What it is called.
    pub name: String,
    /// The chart's own words about it.
    pub words: Option<String>,
}

/// What is done after the work, in order. What the machine does not have is not in it.
#[must_use]
pub fn after_use(machine: &MachineSnapshot) -> Vec<AfterAct> {
    let chart = &machine.chart;
    let ways = open_to_chips(chart, |_| true);
    let shines = open_to_chips(chart, |kind| kind == PairKind::Slideway);
    let by_method = |method: Method| -> Vec<AfterAt> {
        let points = chart.points_here().filter(|point| point.method == method);
        points
            .map(|point| AfterAt { id: point.id.clone(), name: point.name.clone(), words: point.note.clone() })
            .collect()
    };
    let uses = chart.reservoirs.iter().filter(|one| chart.applies(&one.when) && one.behaviour == Some(Behaviour::Uses));
    let uses = uses.map(|one| AfterAt {
        id: one.id.clone(),
        name: one.name.clone().unwrap_or_else(|| one.id.as_str().replace('-', " ")),
        words: one.level.clone(),
    });
    let covers = chart.points_here().flat_map(|point| {
        let setups = point.moves.iter().map(|text| SetUp::read(text));
        setups.filter(|setup| setup.reading == Reading::Cover).map(move |setup| (point, setup))
    });
    let mut off: Vec<AfterAt> = Vec::new();
    for (point, cover) in covers {
        if off.iter().all(|known| known.name != cover.text) {
            off.push(AfterAt { id: point.id.clone(), name: cover.text, words: None });
        }
    }
    let acts = [
        (AfterKind::Brush, ways),
        (AfterKind::Film, shines),
        (AfterKind::ShutDrip, by_method(Method::Drip)),
        (AfterKind::LiftWick, by_method(Method::Wick)),
        (AfterKind::ShutLid, by_method(Method::Cup)),
        (AfterKind::ReadLevel, uses.collect()),
        (AfterKind::Covers, off),
    ];
    let acts = acts.into_iter().filter(|(_, to)| !to.is_empty()).map(|(kind, to)| AfterAct { kind, to });
    acts.chain([AfterAct { kind: AfterKind::NoteHours, to: Vec::new() }]).collect()
}

/// What lies open to chips, of the kinds that are wanted.
fn open_to_chips(chart: &Chart, wanted: impl Fn(PairKind) -> bool) -> Vec<AfterAt> {
    let mut open: Vec<AfterAt> = Vec::new();
    for pair in chart.points_here().flat_map(|point| open_pairs(chart, point)) {
        if wanted(pair.kind) && open.iter().all(|known| known.id != pair.id) {
            open.push(AfterAt { id: pair.id.clone(), name: called(pair), words: pair.note.clone() });
        }
    }
    open
}
