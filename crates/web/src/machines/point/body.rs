//! How thick the best oils are over the year, beside what the pairs of a point want at 40 °C and what its way of oiling still moves.

use advice::need::feed;
use advice::oil_line::oil_line;
use advice::verdict::Verdict;
use draw::{Band, Curve, Oil, viscosity_chart};
use maud::{Markup, PreEscaped, Render as _, html};
use shop::shelf::Family;
use tribology::feed::limit;

use super::judged::Held;
use crate::calc::{marks, thickness};
use crate::parts::{Figure, Fold};

/// So many oils are drawn, the best first.
const OILS: usize = 3;
/// The sides of the box about 40 °C, wide enough to be seen, °C.
const BAR_C: [f64; 2] = [38.5, 41.5];
/// Beyond the thickest that the chart shows, mm²/s.
const BEYOND: f64 = 1e6;

/// The chart of the best oils, to unfold; nothing where none of known body does.
pub(super) fn section(held: &Held<'_>) -> Option<Markup> {
    let Held { chart, point, shelf, settings, need, judged, .. } = held;
    let does = judged.iter().filter(|one| one.verdict > Verdict::Never);
    let oils = does.filter_map(|one| shelf.oil(&one.oil)).filter(|oil| oil.family != Family::Grease);
    let drawn: Vec<Oil> =
        oils.filter_map(|oil| Some(Oil { name: oil.name.clone(), line: oil_line(oil)?.line })).take(OILS).collect();
    if drawn.is_empty() {
        return None;
    }
    let bands = feed(chart, point).map(limit).map_or_else(Vec::new, |limit| {
        let [easy, most] = [limit.easy, limit.most].map(|limit| limit.mm2_s());
        vec![
            Band { name: "slowly".into(), ends: [easy, most] },
            Band { name: "not moved".into(), ends: [most, BEYOND] },
        ]
    });
    let mut plot = viscosity_chart(&drawn, &marks(settings), &bands);
    if let Some(band) = need.band {
        let [left, right] = BAR_C;
        let corners = [(left, band.high), (left, band.low), (right, band.low), (right, band.high), (left, band.high)];
        plot.curves.insert(0, Curve { name: "wanted".into(), points: corners.into() });
    }
    let caption = format!(
        "The warmer, the thinner. The upright box at 40 °C is what it wants. Grey: where the {} moves an oil slowly, and above that not at all.",
        point.method
    );
    let figure = Figure { drawing: PreEscaped(plot.svg("body")), caption }.render();
    Some(
        Fold::shut(
            "How thick the best oils are from cold to warm",
            html! { (figure) (thickness(&drawn, settings.units)) },
        )
        .render(),
    )
}
