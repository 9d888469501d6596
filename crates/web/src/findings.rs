//! `GET /findings`: what is to settle in the whole shop, machine by machine.

use advice::words;
use axum::extract::State;
use maud::{Markup, Render, html};

use crate::machines::findings::{Finding, anchor};
use crate::parts::{Empty, Fold, Link, Page, Section, TitleBlock};
use crate::shop_state::Shop;
use crate::{Error, address};

/// The findings of one machine.
struct OfMachine {
    name: String,
    findings: String,
    open: Vec<Markup>,
    settled: Vec<Markup>,
}

/// `GET /findings`
pub(crate) async fn show(State(shop): State<Shop>) -> Result<Markup, Error> {
    let settings = shop.store.settings().await?;
    let snapshot = shop.store.snapshot(shop.clock.now()).await?;
    let machines = snapshot.machines.iter().map(|machine| {
        let (id, chart) = (&machine.id, &machine.chart);
        let findings = address::findings(id);
        let told = |finding: &shop::chart::Finding| {
            let here = anchor(&finding.id);
            let act = if finding.settled.is_none() { "Settle it" } else { "Open it again" };
            let to = Link::new(format!("{findings}#{}", address::escaped(&here)), act);
            Finding::of(id, chart, finding).among_machines(id).section(to)
        };
        let (open, settled): (Vec<_>, Vec<_>) = chart.findings.iter().partition(|finding| finding.settled.is_none());
        OfMachine {
            name: chart.machine.name.clone(),
            open: open.into_iter().map(told).collect(),
            settled: settled.into_iter().map(told).collect(),
            findings,
        }
    });
    Ok(page(settings.name, &machines.collect::<Vec<_>>()).render())
}

fn page(shop: String, machines: &[OfMachine]) -> Page {
    let open: usize = machines.iter().map(|machine| machine.open.len()).sum();
    let settled: usize = machines.iter().map(|machine| machine.settled.len()).sum();
    Page {
        title: "To settle".into(),
        section: Some(Section::Machines),
        today: Section::Today.path().into(),
        block: TitleBlock::new([("Shop", shop), ("To settle", open.to_string()), ("Settled", settled.to_string())]),
        body: html! {
            h1 { "To settle in the whole shop" }
            @if machines.is_empty() {
                (Empty { says: "No machine is in this shop yet, so there is nothing to settle.".into(), first: None })
            }
            @for machine in machines {
                h2 { (machine.name) }
                @if machine.open.is_empty() {
                    p.quiet { "Nothing is open here." }
                } @else {
                    div.two { @for one in &machine.open { (one) } }
                }
                (Link::new(format!("{}#new", machine.findings), "Found something? Write it down"))
                @if !machine.settled.is_empty() {
                    (Fold::shut(
                        format!("{} settled", words::count(machine.settled.len(), "finding")),
                        html! { div.two { @for one in &machine.settled { (one) } } },
                    ))
                }
            }
        },
    }
}
