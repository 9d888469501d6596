//! `GET /machines/{id}/audit`: what is doubtful about a chart, what matters most first, and what to do about it.

use advice::words;
use axum::extract::{Path, State};
use maud::{Markup, Render, html};
use shop::audit::{FIRST, Remark, audit};

use super::element::Element;
use crate::parts::{Empty, Fold, Link, Page, Section, TitleBlock};
use crate::phrase::capital;
use crate::shop_state::{Shop, View};
use crate::{Error, address};

/// How many elements a remark can name before their names would fill the page.
const FEW: usize = 2;

/// `GET /machines/{machine}/audit`
pub(crate) async fn show(State(shop): State<Shop>, Path(id): Path<String>) -> Result<Markup, Error> {
    let view = shop.view(&id).await?;
    Ok(page(&view).render())
}

/// The line that leads here.
pub(crate) fn link(view: &View) -> Link {
    let remarks = audit(&view.machine.chart).len();
    let count = if remarks == 0 { "nothing".to_owned() } else { words::count(remarks, "remark") };
    Link::new(address::audit(&view.machine.id), format!("What is doubtful about this chart: {count}"))
}

fn page(view: &View) -> Page {
    let machine = &view.machine.id;
    let remarks = audit(&view.machine.chart);
    let told: Vec<Markup> = remarks.iter().map(|remark| told(view, remark)).collect();
    let (first, rest) = told.split_at(told.len().min(FIRST));
    Page {
        title: format!("What is doubtful, {}", view.name()),
        section: Some(Section::Machines),
        today: address::with_query("/", &[("machine", machine.as_str())]),
        block: TitleBlock::default()
            .and_link("Machine", Link::new(address::machine(machine), view.name()))
            .and("Remarks", told.len().to_string()),
        body: html! {
            h1 { "What is doubtful about this chart" }
            @if first.is_empty() {
                (Empty { says: "Nothing that can be seen from the chart alone. The machine may know more.".into(), first: None })
            } @else {
                p { "What can let a part run dry stands first. None of it is wrong for certain: look at the machine." }
                ol.stack { @for one in first { (one) } }
                @if !rest.is_empty() {
                    (Fold::shut(
                        format!("{} more", rest.len()),
                        html! { ol.stack start=(first.len() + 1) { @for one in rest { (one) } } },
                    ))
                }
            }
        },
    }
}

fn told(view: &View, remark: &Remark) -> Markup {
    let about = remark.of.iter().map(|id| Element::of(&view.machine.id, &view.machine.chart, id));
    let shown = if remark.of.len() > FEW { Element::as_balloon } else { Element::as_line };
    html! {
        li {
            p { b { (capital(&remark.says)) "." } }
            p { "Next: " (remark.next) "." }
            ul.row { @for one in about { li { (shown(&one)) } } }
        }
    }
}
