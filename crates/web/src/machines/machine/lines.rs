//! The oil lines of a machine, briefly: where each begins, what drives it, and where it lets oil out.

use maud::{Markup, Render, html};
use shop::chart::{Chart, Circuit};

use crate::parts::Facts;
use crate::phrase::{called, capital};

/// One set of oil lines.
pub(super) struct Lines {
    name: String,
    from: Option<String>,
    driven_by: Option<String>,
    lets_out: Vec<String>,
    signs: Vec<String>,
    note: Option<String>,
}

/// All of this example.
pub(super) fn all(chart: &Chart) -> Vec<Lines> {
    chart
        .circuits
        .iter()
        .filter(|circuit| chart.applies(&circuit.when))
        .map(|circuit| Lines::of(chart, circuit))
        .collect()
}

impl Lines {
    fn of(chart: &Chart, circuit: &Circuit) -> Self {
        let from = circuit.from.as_ref().and_then(|id| chart.reservoir(id));
        let fed = circuit.nodes.iter().flat_map(|node| &node.feeds);
        let fed = fed.filter_map(|id| chart.pair(id)).map(|pair| called(pair.name.as_ref(), &pair.id));
        let signs = circuit.nodes.iter().filter_map(|node| {
            let sign = node.sign.as_ref()?;
            Some(format!("{}: {sign}", called(node.name.as_ref(), &node.id)))
        });
        Self {
            name: circuit.name.clone(),
            from: from.map(|one| called(one.name.as_ref(), &one.id)),
            driven_by: circuit.driven_by.as_deref().map(capital),
            lets_out: fed.collect(),
            signs: signs.collect(),
            note: circuit.note.clone(),
        }
    }
}

impl Render for Lines {
    fn render(&self) -> Markup {
        let list =
            |items: &[String]| (!items.is_empty()).then(|| html! { ul { @for item in items { li { (item) } } } });
        html! {
            h3 { (self.name) }
            (Facts::new()
                .say("Draws from", self.from.clone())
                .say("Driven by", self.driven_by.clone())
                .say("Feeds", list(&self.lets_out))
                .say("Look for", list(&self.signs))
                .say("Note", self.note.clone()))
        }
    }
}
