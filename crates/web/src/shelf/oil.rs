//! `GET /shelf/{oil}`: one oil, with the chart of its viscosity, the shop's temperatures on it and what can still feed it there.

use advice::oil_line::{OilLine, Slope, oil_line};
use advice::stock::stock;
use axum::extract::{Path, State};
use draw::{Oil as Drawn, viscosity_chart};
use maud::{Markup, PreEscaped, Render, html};
use shop::shelf::{Family, Oil};
use tribology::oil::{USUAL_INDEX, classified};

use super::form;
use crate::calc::{bands, coldest, marks, thickness};
use crate::parts::{Figure, Link, Page, Section, TitleBlock};
use crate::phrase::capital;
use crate::shop_state::Shop;
use crate::{Error, log};

/// `GET /shelf/{oil}`
pub(crate) async fn show(State(shop): State<Shop>, Path(asked): Path<String>) -> Result<Markup, Error> {
    let settings = shop.store.settings().await?;
    let now = shop.clock.now();
    let snapshot = shop.store.snapshot(now).await?;
    let oil = super::named(&snapshot.shelf, &asked)?;
    let left = stock(oil, &snapshot.shelf, &shop.store.movements(now).await?);
    let page = Page {
        title: oil.name.clone(),
        section: Some(Section::Shelf),
        today: Section::Today.path().into(),
        block: TitleBlock::new([
            ("Oil", oil.name.clone()),
            ("Sort", capital(&oil.family.to_string())),
            ("Grade", grade(oil)),
        ]),
        body: html! {
                    h1 { (oil.name) }
                    (super::card(&snapshot, oil, &left, settings.units).facts)
                    div.row {
                        (Link::new(log::stock::address(&oil.id), "Bought, counted, used or thrown away").as_box())
                        (Link::new(form::address(&oil.id), "Mend what is written of it"))
                    }
                    @match oil_line(oil) {
                        Some(OilLine { line, slope }) => {
                            h2 { "How thick it is" }
                            @let drawn = [Drawn { name: "this oil".into(), line }];
                            (Figure {
                                drawing: PreEscaped(viscosity_chart(&drawn, &marks(&settings), &bands()).svg("chart")),
                                caption: "The warmer, the thinner. Grey: what a wick still lifts, and where can, starting pump and splash begin to fail.".into(),
                            })
                            @if slope == Slope::UsualIndex {
                                p.quiet { "Only one viscosity is written down; a viscosity index of " (USUAL_INDEX) " is taken (common practice, no source)." }
                            }
                            (thickness(&drawn, settings.units))
        (coldest(&drawn, settings.units))
                        }
                        None if oil.family == Family::Grease => {
                            p.quiet { "A grease has no line here; its oil inside may, when its viscosity is written down." }
                        }
                        None => p.quiet { "Its viscosity at 40\u{a0}°C is not written down, so nothing can be said of how thick it is." }
                    }
                    (Link::new(Section::Shelf.path(), "The whole shelf"))
                },
    };
    Ok(page.render())
}

/// The ISO grade of an oil, as far as its viscosity tells.
fn grade(oil: &Oil) -> String {
    let found = oil.v40.as_ref().and_then(|v40| classified(v40.value).ok());
    found.map_or_else(
        || "not written down".to_owned(),
        |found| match found.value.grade {
            Some(grade) => format!("ISO VG {}", grade.number()),
            None => format!("between grades, nearest ISO VG {}", found.value.nearest.number()),
        },
    )
}
