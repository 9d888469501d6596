//! `GET /calc`: the sums that can be asked for by themselves; each is a page made from the list of topics.

mod topic;

pub(crate) use topic::{bands, coldest, marks, show as show_topic, thickness};

use advice::topic::TOPICS;
use axum::extract::State;
use maud::{Markup, Render, html};

use crate::Error;
use crate::parts::{Page, Section, TitleBlock};
use crate::shop_state::Shop;

/// `GET /calc`
pub(crate) async fn show(State(shop): State<Shop>) -> Result<Markup, Error> {
    let settings = shop.store.settings().await?;
    let page = Page {
        title: "Work it out".into(),
        section: Some(Section::Shelf),
        today: Section::Today.path().into(),
        block: TitleBlock::new([("Shop", settings.name), ("Sums", TOPICS.len().to_string())]),
        body: html! {
            h1 { "Work it out" }
            div.two {
                @for topic in TOPICS {
                    section.stack {
                        h2 { a href=(address(topic.name)) { (topic.title) } }
                        p { (topic.about) }
                    }
                }
            }
        },
    };
    Ok(page.render())
}

/// The page of a topic.
pub(crate) fn address(topic: &str) -> String {
    format!("/calc/{topic}")
}
