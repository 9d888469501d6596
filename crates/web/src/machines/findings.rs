//! `GET /machines/{id}/findings`: what is to settle, open ones first, and the forms that write down a new one, mend one, and say how one
//! was settled.

mod finding;
pub(crate) mod fresh;
pub(crate) mod mending;
mod questions;
pub(crate) mod settlement;

pub(crate) use finding::{Finding, anchor, hole};

use axum::extract::{Path, Query, State};
use maud::{Markup, Render, html};
use serde::Deserialize;
use shop::chart;

use super::revision::Revision;
use crate::hand::Hand;
use crate::parts::{Empty, Fold, Form, Link, Page, Section, TitleBlock};
use crate::shop_state::{Shop, View};
use crate::{Error, FormKey, address};

/// What the address says: the element that a new finding is about.
#[derive(Deserialize)]
pub(crate) struct Asked {
    #[serde(default)]
    about: String,
}

/// `GET /machines/{machine}/findings`
pub(crate) async fn show(
    State(shop): State<Shop>,
    hand: Hand,
    Path(id): Path<String>,
    Query(asked): Query<Asked>,
) -> Result<Markup, Error> {
    let view = shop.view(&id).await?;
    let revision = Revision::in_force(&shop, &view.machine.id).await?;
    let form = fresh::form(&view, &revision, &fresh::Typed::about(&asked.about), FormKey::fresh()?);
    let fold = if asked.about.is_empty() { Fold::shut } else { Fold::open };
    Ok(page(&view, &hand, &revision, &fold(fresh::LINE, fresh::told(&form)), None)?.render())
}

/// A form about one finding, by its id, that came back with faults.
enum Returned<'a> {
    /// What is said of it.
    Mending(&'a str, Form),
    /// How it was settled.
    Settlement(&'a str, Form),
}

/// The page; `returned` is what came back with faults.
fn page(
    view: &View,
    hand: &Hand,
    revision: &Revision,
    fresh: &Fold,
    returned: Option<&Returned<'_>>,
) -> Result<Page, Error> {
    let (machine, chart) = (&view.machine.id, revision.chart());
    let mut open = Vec::new();
    let mut settled = Vec::new();
    for finding in &chart.findings {
        let id = finding.id.as_str();
        let settle = match returned {
            Some(Returned::Settlement(of, form)) if *of == id => Fold::open(settlement::LINE, form.render()),
            _ => {
                let form = settlement::form(machine, revision, finding, FormKey::fresh()?);
                let line = if finding.settled.is_none() { settlement::LINE } else { settlement::AGAIN };
                Fold::shut(line, form.render())
            }
        };
        let mend = match returned {
            Some(Returned::Mending(of, form)) if *of == id => Fold::open(mending::LINE, form.render()),
            _ => Fold::shut(mending::LINE, mending::form(machine, revision, finding, FormKey::fresh()?).render()),
        };
        let told = Finding::of(machine, chart, finding).section(html! { div { (settle) (mend) } });
        if finding.settled.is_none() { &mut open } else { &mut settled }.push(told);
    }
    let returned_id = returned.map(|(Returned::Mending(of, _) | Returned::Settlement(of, _))| *of);
    let is_settled = |finding: &&chart::Finding| finding.settled.is_some() && Some(finding.id.as_str()) == returned_id;
    let is_mended = chart.findings.iter().find(is_settled).is_some();
    let settled_fold = if is_mended { Fold::open } else { Fold::shut };
    let today = address::with_query("/", &[("machine", machine.as_str())]);
    Ok(Page {
        title: format!("To settle, {}", view.name()),
        section: Some(Section::Machines),
        today,
        block: TitleBlock::default()
            .and_link("Machine", Link::new(address::machine(machine), view.name()))
            .and("To settle", if open.is_empty() { "nothing".to_owned() } else { open.len().to_string() })
            .and_link("By", Link::new("/hand", hand.name())),
        body: html! {
            h1 { "To settle" }
            p { "What is missing, blocked, broken or not known on this machine, and what covers it meanwhile." }
            @if open.is_empty() {
                (Empty { says: "Nothing is open. When you find something, write it down below.".into(), first: None })
            } @else {
                h2 { "Open" }
                div.two { @for one in &open { (one) } }
            }
            h2 #new { "Found something?" }
            (fresh)
            @if !settled.is_empty() {
                h2 { "Settled" }
                (settled_fold(format!("{} settled", settled.len()), html! { div.two { @for one in &settled { (one) } } }))
            }
        },
    })
}
