//! One finding: a defect or an open question, what covers it meanwhile, and what the round makes of it.

use advice::words;
use maud::{Markup, Render, html};
use shop::chart::{self, Chart, FindingKind};
use shop::id::Id;

use crate::machines::element::Element;
use crate::parts::{Facts, Note};
use crate::phrase::capital;

/// What is usual where nobody knows what a hole feeds. Common practice, no source.
pub(crate) fn hole() -> Note {
    Note {
        caution: "Do not pump oil into a hole of unknown use.".into(),
        rest: "It may lead to a clutch, to a switch, or nowhere. It is never in the round until it is settled. \
               (Common practice, no source.)"
            .into(),
        more: None,
    }
}

/// A finding as it stands on a page.
pub(crate) struct Finding {
    pub(crate) anchor: String,
    pub(crate) heading: String,
    caution: Option<Note>,
    facts: Facts,
}

impl Finding {
    /// The same on a page of several machines, where each may have a finding of one number.
    pub(crate) fn among_machines(self, machine: &Id) -> Self {
        Self { anchor: format!("{machine}-{}", self.anchor), ..self }
    }

    /// A finding of a chart.
    pub(crate) fn of(machine: &Id, chart: &Chart, finding: &chart::Finding) -> Self {
        let about: Vec<Element> = finding.of.iter().map(|id| Element::of(machine, chart, id)).collect();
        let names: Vec<String> = about.iter().map(|element| element.name.clone()).collect();
        let of = if names.is_empty() { String::new() } else { format!(": {}", names.join(", ")) };
        let open = finding.settled.is_none();
        let hole = finding.kind == FindingKind::Hole;
        let about = (!about.is_empty()).then(|| html! { @for one in &about { p { (one) } } });
        Self {
            anchor: anchor(&finding.id),
            heading: format!("{} {}{of}", finding.id, kind(finding.kind)),
            caution: (open && hole).then(self::hole),
            facts: Facts::new()
                .say("About", about)
                .say("Found", finding.note.clone())
                .say("Thread", finding.thread.clone())
                .say("Size", finding.size.clone())
                .say("What fits", finding.equivalent.clone())
                .say("Meanwhile", finding.meanwhile.as_deref().map(capital))
                .say("Meanwhile every", meanwhile_every(machine, chart, finding))
                .say("Settled", finding.settled.clone()),
        }
    }

    /// The finding, with what can be done about it under it.
    pub(crate) fn section(&self, under: impl Render) -> Markup {
        html! {
            section.stack id=(self.anchor) {
                h3 { (self.heading) }
                @if let Some(caution) = &self.caution { (caution) }
                (self.facts)
                (under)
            }
        }
    }
}

/// The place of a finding on a page.
pub(crate) fn anchor(id: &Id) -> String {
    format!("finding-{id}")
}

/// What a kind of finding is called.
pub(crate) fn kind(kind: FindingKind) -> &'static str {
    match kind {
        FindingKind::Hole => "Hole of unknown use",
        FindingKind::Missing => "Missing",
        FindingKind::Blocked => "Blocked",
        FindingKind::Damage => "Worn or broken",
        FindingKind::Leak => "Leak",
        FindingKind::Question => "Open question",
    }
}

/// The interval, and what the round makes of it while the finding is open.
fn meanwhile_every(machine: &Id, chart: &Chart, finding: &chart::Finding) -> Option<Markup> {
    let interval = words::short_interval(&finding.interval)?;
    let called: Vec<_> = chart.points_here().filter(|point| finding.of.contains(&point.id)).collect();
    Some(html! {
        (interval)
        @if finding.settled.is_none() {
            @if finding.kind == FindingKind::Hole {
                p.quiet { "Look at it that often yourself; the round does not call for it." }
            } @else if called.is_empty() {
                p.quiet { "It is about no oiling point, so the round cannot call for it: keep it in mind yourself." }
            } @else {
                @for point in called {
                    p {
                        "Until then the round also calls this often for "
                        (Element::of(machine, chart, &point.id))
                        @if let Some(own) = words::short_interval(&point.every) { "; its own is " (own) }
                        "."
                    }
                }
            }
        }
    })
}
