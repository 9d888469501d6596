//! What a point's oil reaches: the pairs that it feeds itself, through oil lines, or out of the reservoir that is filled there.

use shop::chart::{Chart, Method, Pair, PairKind, Point};
use shop::id::Id;

use super::setup::{Reading, SetUp};

/// The moving pairs of this example that a point's oil reaches, each once.
pub(super) fn pairs<'c>(chart: &'c Chart, point: &Point) -> Vec<&'c Pair> {
    let lines: Vec<&Id> = point.circuit.iter().chain(&point.feeds).collect();
    let by_lines = chart
        .circuits
        .iter()
        .filter(|circuit| chart.applies(&circuit.when))
        .filter(|circuit| lines.contains(&&circuit.id) || (circuit.from.is_some() && circuit.from == point.reservoir))
        .flat_map(|circuit| circuit.nodes.iter().flat_map(|node| &node.feeds));
    let by_reservoir = point.reservoir.iter().filter_map(|id| chart.reservoir(id)).flat_map(|from| &from.feeds);
    let mut pairs: Vec<&Pair> = Vec::new();
    for pair in point.feeds.iter().chain(by_lines).chain(by_reservoir).filter_map(|id| chart.pair(id)) {
        if chart.applies(&pair.when) && pairs.iter().all(|known| known.id != pair.id) {
            pairs.push(pair);
        }
    }
    pairs
}

/// The pairs that a point's oil reaches and on which chips lie: ways that no cover hides, and threads and wheels that are oiled
/// with the brush. Oil over chips laps them (common practice, no source).
pub(super) fn open_pairs<'c>(chart: &'c Chart, point: &Point) -> Vec<&'c Pair> {
    if point.moves.iter().any(|text| matches!(SetUp::read(text).reading, Reading::Cover | Reading::Plug)) {
        return Vec::new();
    }
    let is_open = |pair: &&Pair| match pair.kind {
        PairKind::Slideway => true,
        PairKind::ScrewAndNut | PairKind::GearMesh | PairKind::Chain | PairKind::Worm => point.method == Method::Brush,
        PairKind::Journal
        | PairKind::RollingBearing
        | PairKind::SlidingCollar
        | PairKind::Cam
        | PairKind::FrictionClutch => false,
    };
    pairs(chart, point).into_iter().filter(is_open).collect()
}

/// What a pair is called.
pub(super) fn called(pair: &Pair) -> String {
    pair.name.clone().unwrap_or_else(|| pair.id.as_str().replace('-', " "))
}
