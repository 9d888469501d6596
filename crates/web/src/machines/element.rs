//! What an id of a chart is called, and the page that shows it.

use maud::{Markup, Render, html};
use shop::chart::Chart;
use shop::id::Id;

use crate::address;
use crate::parts::Link;
use crate::phrase::{called, capital};

/// An element of a chart: its name and, where a page shows it, where it leads.
pub(crate) struct Element {
    pub(crate) name: String,
    to: Option<String>,
    /// The number of a point.
    number: Option<String>,
}

/// The anchors of the machine's page.
pub(crate) const RESERVOIRS: &str = "reservoirs";
pub(crate) const LINES: &str = "oil-lines";

/// The anchor of an assembly on the machine's page.
pub(crate) fn assembly_anchor(id: &Id) -> String {
    format!("part-{id}")
}

impl Element {
    pub(crate) fn of(machine: &Id, chart: &Chart, id: &Id) -> Self {
        let on_page = |anchor: &str| Some(format!("{}#{}", address::machine(machine), address::escaped(anchor)));
        // Only a part that has points here has a heading on the page.
        let part = |id: &Id| {
            let has_points = chart.points_here().any(|point| point.assembly.as_ref() == Some(id));
            has_points.then(|| on_page(&assembly_anchor(id))).flatten()
        };
        let plain = |name: String, to: Option<String>| Self { name, to, number: None };
        if let Some(point) = chart.point(id) {
            let here = chart.applies(&point.when).then(|| address::point(machine, id));
            return Self { number: Some(id.to_string()), ..plain(format!("point {id} {}", point.name), here) };
        }
        if let Some(assembly) = chart.assembly(id) {
            return plain(assembly.name.clone(), part(id));
        }
        if let Some(pair) = chart.pair(id) {
            return plain(called(pair.name.as_ref(), id), pair.assembly.as_ref().and_then(part));
        }
        if let Some(reservoir) = chart.reservoir(id) {
            let here = chart.applies(&reservoir.when).then(|| address::reservoir(machine, id));
            return plain(called(reservoir.name.as_ref(), id), here);
        }
        for circuit in &chart.circuits {
            let here = || chart.applies(&circuit.when).then(|| on_page(LINES)).flatten();
            if circuit.id == *id {
                return plain(circuit.name.clone(), here());
            }
            if let Some(node) = circuit.nodes.iter().find(|node| node.id == *id) {
                return plain(called(node.name.as_ref(), id), here());
            }
            if circuit.tubes.iter().any(|tube| tube.id == *id) {
                return plain(called(None, id), here());
            }
        }
        let to = chart.options.iter().any(|option| option.id == *id).then(|| address::options(machine));
        let to = to.map(|page| format!("{page}#{}", address::escaped(&super::options::field(id))));
        plain(called(None, id), to)
    }
}

impl Element {
    /// As its balloon, where many stand in a row and their names would fill the page; as a line where it has none.
    pub(crate) fn as_balloon(&self) -> Markup {
        match (&self.to, &self.number) {
            (Some(to), Some(number)) => html! { a.balloon href=(to) aria-label=(self.name) { (number) } },
            _ => self.as_line(),
        }
    }

    /// As a line to press, where it stands alone.
    pub(crate) fn as_line(&self) -> Markup {
        match &self.to {
            Some(to) => Link::new(to, capital(&self.name)).render(),
            None => capital(&self.name).render(),
        }
    }
}

impl Render for Element {
    fn render(&self) -> Markup {
        html! { @match &self.to { Some(to) => { a href=(to) { (self.name) } }, None => { (self.name) } } }
    }
}
