//! `GET /shelf/blend`: two oils of the shelf mixed to a body that no can has, with the jar test before it.

use advice::blend::{Blend, blend};
use advice::words;
use axum::extract::{Query, State};
use draw::{Oil as Drawn, viscosity_chart};
use maud::{Markup, PreEscaped, Render, html};
use serde::Deserialize;
use shop::shelf::{Family, Shelf};
use store::Settings;
use tribology::oil::GRADES;
use tribology::quantity::{KinematicViscosity, digits_of};

use crate::calc::{bands, coldest, marks, thickness};
use crate::parts::{Choice, Entry, Field, Figure, Filter, Fold, Link, Note, Page, Section, TitleBlock};
use crate::phrase::capital;
use crate::shop_state::Shop;
use crate::{Error, calc};

/// What is mixed.
#[derive(Debug, Default, Deserialize)]
pub(crate) struct Asked {
    #[serde(default)]
    one: String,
    #[serde(default)]
    other: String,
    /// The ISO grade that is wanted.
    #[serde(default)]
    grade: String,
}

/// `GET /shelf/blend`
pub(crate) async fn show(State(shop): State<Shop>, Query(asked): Query<Asked>) -> Result<Markup, Error> {
    let settings = shop.store.settings().await?;
    let snapshot = shop.store.snapshot(shop.clock.now()).await?;
    Ok(page(&settings, &snapshot.shelf, &asked)?.render())
}

fn page(settings: &Settings, shelf: &Shelf, asked: &Asked) -> Result<Page, Error> {
    let oils = || shelf.oils.iter().filter(|oil| oil.family != Family::Grease);
    let list = |name: &str, label: &str, choices: Vec<Choice>, value: &str| Field {
        name: name.into(),
        label: label.into(),
        entry: Entry::List(choices),
        value: value.into(),
        ..Field::default()
    };
    let names = || oils().map(|oil| Choice::new(oil.id.as_str(), &*oil.name)).collect::<Vec<_>>();
    let grades =
        GRADES.iter().map(|grade| Choice::new(grade.number().to_string(), format!("ISO VG {}", grade.number())));
    let answer = if asked.one.is_empty() {
        html! {}
    } else {
        answered(settings, shelf, asked)?
    };
    Ok(Page {
        title: "Mix two oils".into(),
        section: Some(Section::Shelf),
        today: Section::Today.path().into(),
        block: TitleBlock::new([("Shelf", "Mix two oils")]),
        body: html! {
            h1 { "Mix two oils" }
            (answer)
            (Filter {
                to: "/shelf/blend".into(),
                hidden: Vec::new(),
                fields: vec![
                    list("one", "One oil", names(), &asked.one),
                    list("other", "The other", names(), &asked.other),
                    list("grade", "What it is to be", grades.collect(), if asked.grade.is_empty() { "68" } else { &asked.grade }),
                ],
                words: "How much of each?".into(),
            })
            div.row {
                (Link::new(calc::address("blend"), "By numbers, without the shelf"))
                (Link::new(Section::Shelf.path(), "The whole shelf"))
            }
        },
    })
}

fn answered(settings: &Settings, shelf: &Shelf, asked: &Asked) -> Result<Markup, Error> {
    let (one, other) = (super::named(shelf, &asked.one)?, super::named(shelf, &asked.other)?);
    let grade: f64 = asked.grade.parse().map_err(|_| Error::WrongForm)?;
    let found = match blend(one, other, KinematicViscosity::from_mm2_s(grade)) {
        Ok(found) => found,
        Err(refused) => {
            return Ok(html! {
                div.form-mend role="alert" { h2 { "That cannot be mixed" } p { (capital(&refused.to_string())) "." } }
            });
        }
    };
    let Blend { thick, line, against, warnings, steps } = found;
    let (thin_oil, thick_oil) = {
        let at = |oil| {
            advice::oil_line::oil_line(oil)
                .map(|found| found.line.at(tribology::quantity::Temperature::from_celsius(40.0)))
        };
        if at(one) <= at(other) { (one, other) } else { (other, one) }
    };
    let millilitres = |share: f64| digits_of(1000.0 * share, 3);
    let drawn =
        |name: &str, oil| advice::oil_line::oil_line(oil).map(|found| Drawn { name: name.into(), line: found.line });
    let lines: Vec<Drawn> =
        [drawn("thin", thin_oil), Some(Drawn { name: "mixed".into(), line }), drawn("thick", thick_oil)]
            .into_iter()
            .flatten()
            .collect();
    Ok(html! {
            p { "For one litre: " strong { (millilitres(thick)) " mL" } " of " (thick_oil.name) " and "
                strong { (millilitres(1.0 - thick)) " mL" } " of " (thin_oil.name) ". Take the body as right to about 6 parts in a hundred." }
            @if against.is_empty() {
                p { "Nothing on the two labels speaks against it. The jar still comes first." }
            } @else {
                (Note {
                    caution: "These two may not bear each other.".into(),
                    rest: format!("{}.", capital(&against.iter().map(|one| words::against(*one)).collect::<Vec<_>>().join("; "))),
                    ..Note::default()
                })
            }
            h2 { "The jar first" }
            p { "Mix a glassful in the same shares, keep it warm for a week beside a glass of each, and look: haze, threads, flakes or \
                something at the bottom mean no. Write on the can what is in it and when (common practice, no source). Never for a close, \
                fast spindle, and never a way to use up an oil that has been in a machine." }
            @for warning in &warnings { p.note { "Mind: " (words::warning(warning)) "." } }
            (Figure {
                drawing: PreEscaped(viscosity_chart(&lines, &marks(settings), &bands()).svg("chart")),
                caption: "The warmer, the thinner. Grey: what a wick still lifts, and where can, starting pump and splash begin to fail.".into(),
            })
            (thickness(&lines, settings.units))
    (coldest(&lines, settings.units))
            (Fold::shut("How this was worked out", html! {
                ol { @for step in &steps { li { (words::step(step, settings.units)) } } }
            }))
        })
}
