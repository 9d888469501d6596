//! How thick the best oils are over the year, beside what the pairs of a point want at 40 °C and what its way of oiling still moves.

use advice::judge::Judged;
use advice::need::{Need, feed};
use advice::oil_line::oil_line;
use advice::verdict::Verdict;
use draw::{Across, Band, Curve, Mark, Oil, viscosity_chart};
use maud::{Markup, PreEscaped, Render as _, html};
use shop::chart::Point;
use shop::shelf::{Family, Shelf};
use store::Settings;
use tribology::feed::limit;

use crate::calc::{marks, thickness};
use crate::parts::{Figure, Fold};

/// So many oils are drawn, the best first.
const OILS: usize = 3;
/// Beyond the thickest that the chart shows, mm²/s.
const BEYOND: f64 = 1e6;

/// The chart of the best oils, to unfold; nothing where none of known body does.
pub(super) fn section(
    point: &Point,
    need: &Need<'_>,
    shelf: &Shelf,
    judged: &[Judged],
    settings: &Settings,
) -> Option<Markup> {
    let does = judged.iter().filter(|one| one.verdict > Verdict::Never);
    let oils = does.filter_map(|one| shelf.oil(&one.oil)).filter(|oil| oil.family != Family::Grease);
    let drawn: Vec<Oil> =
        oils.filter_map(|oil| Some(Oil { name: oil.name.clone(), line: oil_line(oil)?.line })).take(OILS).collect();
    if drawn.is_empty() {
        return None;
    }
    let bands = feed(point.method).map(limit).map_or_else(Vec::new, |limit| {
        let [easy, most] = [limit.easy, limit.most].map(|limit| limit.mm2_s());
        vec![
            Band { name: "moves slowly".into(), ends: [easy, most] },
            Band { name: "does not move".into(), ends: [most, BEYOND] },
        ]
    });
    let mut chart = viscosity_chart(&drawn, &marks(settings), &bands);
    if let Some(band) = need.band {
        chart.curves.push(Curve { name: "wanted".into(), points: vec![(40.0, band.low), (40.0, band.high)] });
        chart.marks.push(Mark { name: "40 °C".into(), at: Across::At(40.0) });
        chart.marks.sort_by(|a, b| place(a).total_cmp(&place(b)));
    }
    let caption = format!(
        "The warmer, the thinner. Upright at 40 °C: what it wants. Grey: where the {} moves an oil slowly, and above that not at all.",
        point.method
    );
    let figure = Figure { drawing: PreEscaped(chart.svg("body")), caption }.render();
    Some(
        Fold::shut(
            "How thick the best oils are from cold to warm",
            html! { (figure) (thickness(&drawn, settings.units)) },
        )
        .render(),
    )
}

fn place(mark: &Mark) -> f64 {
    match mark.at {
        Across::At(at) | Across::Level(at) => at,
    }
}
