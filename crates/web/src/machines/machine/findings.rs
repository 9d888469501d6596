//! What is to settle: defects and open questions, and what covers them meanwhile.

use maud::{Markup, html};
use shop::chart::{self, Chart, FindingKind};

use crate::parts::Facts;
use crate::phrase::capital;

/// One finding.
pub(crate) struct Finding {
    heading: String,
    note: Option<String>,
    thread: Option<String>,
    fits: Option<String>,
    meanwhile: Option<String>,
    interval: Option<String>,
    settled: Option<String>,
}

/// The findings of a machine, the open ones and the settled ones.
pub(super) fn sorted(chart: &Chart) -> (Vec<Finding>, Vec<Finding>) {
    let (open, settled): (Vec<_>, Vec<_>) = chart.findings.iter().partition(|finding| finding.settled.is_none());
    let told =
        |findings: Vec<&chart::Finding>| findings.into_iter().map(|finding| Finding::of(chart, finding)).collect();
    (told(open), told(settled))
}

/// The findings one under another.
pub(crate) fn told(findings: &[Finding]) -> Markup {
    html! {
        div.two {
            @for finding in findings {
                section.stack {
                    h3 { (finding.heading) }
                    (Facts::new()
                        .say("Found", finding.note.clone())
                        .say("Thread", finding.thread.clone())
                        .say("What fits", finding.fits.clone())
                        .say("Meanwhile", finding.meanwhile.as_deref().map(capital))
                        .say("Meanwhile every", finding.interval.clone())
                        .say("Settled", finding.settled.clone()))
                }
            }
        }
    }
}

impl Finding {
    /// A finding of a chart.
    pub(crate) fn of(chart: &Chart, finding: &chart::Finding) -> Self {
        let of: Vec<String> = finding
            .of
            .iter()
            .map(|id| match chart.point(id) {
                Some(point) => format!("point {id} {}", point.name),
                None => id.as_str().replace('-', " "),
            })
            .collect();
        let of = if of.is_empty() { String::new() } else { format!(": {}", of.join(", ")) };
        let interval: Vec<&str> = finding.interval.iter().map(|interval| interval.typed.as_str()).collect();
        Self {
            heading: format!("{} {}{of}", finding.id, kind(finding.kind)),
            note: finding.note.clone(),
            thread: finding.thread.clone(),
            fits: finding.equivalent.clone(),
            meanwhile: finding.meanwhile.clone(),
            interval: (!interval.is_empty()).then(|| interval.join(" or ")),
            settled: finding.settled.clone(),
        }
    }
}

fn kind(kind: FindingKind) -> &'static str {
    match kind {
        FindingKind::Hole => "Hole of unknown use",
        FindingKind::Missing => "Missing",
        FindingKind::Blocked => "Blocked",
        FindingKind::Damage => "Worn or broken",
        FindingKind::Leak => "Leak",
        FindingKind::Question => "Open question",
    }
}
