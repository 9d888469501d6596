//! `GET /rules`: the rules by which oils are judged, each with what it caps, how far it is to be trusted and where it is from.

use advice::rules::RULES;
use advice::words;
use axum::extract::State;
use maud::{Markup, Render, html};

use crate::Error;
use crate::machines::point::judged::word;
use crate::parts::{Cell, Column, Page, Section, Style, Table, TitleBlock};
use crate::phrase::capital;
use crate::shop_state::Shop;

/// The page of the rules.
pub(crate) const ADDRESS: &str = "/rules";

/// `GET /rules`
pub(crate) async fn show(State(shop): State<Shop>) -> Result<Markup, Error> {
    let settings = shop.store.settings().await?;
    let rows = RULES.iter().map(|rule| {
        vec![
            Cell::from(rule.id.to_owned()),
            Cell::from(capital(&rule.looks.iter().map(|look| words::look(*look)).collect::<Vec<_>>().join(", "))),
            Cell::Part(word(rule.cap).render()),
            Cell::from(capital(rule.says)),
            Cell::Part(rule.not_stated.map_or_else(|| html! { "does not matter" }, |cap| word(cap).render())),
            Cell::from(capital(&words::known(rule.standing, rule.source))),
        ]
    });
    let headings = ["Rule", "Looks at", "At best", "Why", "Where nobody states it", "How we know"];
    let page = Page {
        title: "How oils are judged".into(),
        section: Some(Section::Shelf),
        today: Section::Today.path().into(),
        block: TitleBlock::new([("Shop", settings.name), ("Rules", RULES.len().to_string())]),
        body: html! {
            h1 { "How oils are judged" }
            p { "An oil is held against what each moving pair wants: its sort, its body at 40\u{a0}°C, and these rules. Each can only lower the \
                 word; the strictest wins. Never comes from a rule alone. What nobody states is not a no." }
            (Table {
                caption: "The rules".into(),
                columns: headings.map(|heading| Column::Words(heading.into())).into(),
                rows: rows.collect(),
                style: Style::Wide,
            })
            p.quiet { "Some oil is better than none, and leaving the machine stopped harms nothing." }
        },
    };
    Ok(page.render())
}
