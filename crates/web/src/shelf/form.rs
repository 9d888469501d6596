//! `GET /shelf/new` and `GET /shelf/{oil}/edit`: an oil as its can and its data sheet tell it, in whatever units they do. The same form asked
//! for by its address shows at once what it would be: the grade and the curve. `POST` to `/shelf` keeps it.

use advice::data_sheet::{DataSheet, Stated};
use advice::words;
use axum::extract::{Form, Path, Query, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use draw::{Oil as Drawn, viscosity_chart};
use maud::{Markup, PreEscaped, Render, html};
use serde::Deserialize;
use shop::choice::Choice as _;
use shop::id::Id;
use shop::shelf::{Family, Oil, Shelf, Stated as Said, oil_from};
use std::collections::BTreeMap;
use store::Settings;
use tribology::oil::classified;
use tribology::quantity::{Kind, Quantity as _, Temperature, said, usual_unit};

use crate::calc::{bands, coldest, marks, thickness};
use crate::hand::Hand;
use crate::parts::{Choice, Entry, Field, Figure, Link, Page, Section, TitleBlock};
use crate::phrase::capital;
use crate::shop_state::Shop;
use crate::{Error, FormKey, address};

/// What was typed, by the names of the questions.
type Answers = BTreeMap<String, String>;

/// The form as it is sent.
#[derive(Deserialize)]
pub(crate) struct Sent {
    key: FormKey,
    #[serde(flatten)]
    answers: Answers,
}

/// The keys that are asked for as they are kept, with their questions; the viscosities are asked for as a sheet gives them.
const LINES: [(&str, &str, &str); 6] = [
    ("symbol", "Which class stands on the label?", "Such as ISO-L-HM or API GL-5. It supplies what it implies."),
    ("density", "How dense is it?", "Such as 875 kg/m3."),
    ("pour_point", "At which temperature does it stop pouring?", "Such as −27 °C or −16 °F."),
    ("flash_point", "At which temperature does it flash?", "Such as 210 °C or 410 °F."),
    ("copper_strip", "How did the copper strip come out?", "Such as 1a or 1b, at 100 °C."),
    ("note", "Note", "Anything worth saying."),
];
const GREASE: [(&str, &str, &str); 3] = [
    ("thickener", "Of a grease: which soap?", "Such as lithium or calcium."),
    ("nlgi", "Of a grease: how stiff, by NLGI number?", "Such as 2."),
    ("base_v40", "Of a grease: how thick is its oil at 40 °C?", "Such as 150 mm2/s."),
];
const PROPERTIES: [(&str, &str); 6] = [
    ("ep_sulphur", "Active sulphur for extreme pressure"),
    ("detergent", "Detergent"),
    ("tackifier", "Tackifier"),
    ("friction_modifier", "Friction modifier"),
    ("fatty", "Fatty oil"),
    ("solids", "Graphite or other powder"),
];
/// The viscosities of a sheet: value and temperature, two of each.
const READINGS: [(&str, &str); 2] = [("visc_1", "at_1"), ("visc_2", "at_2")];

/// The form for a new oil.
pub(crate) const NEW: &str = "/shelf/new";

/// The form that mends an oil.
pub(crate) fn address(oil: &Id) -> String {
    format!("{}/edit", address::oil(oil))
}

/// `GET /shelf/new`
pub(crate) async fn show_new(
    State(shop): State<Shop>,
    hand: Hand,
    Query(answers): Query<Answers>,
) -> Result<Markup, Error> {
    let settings = shop.store.settings().await?;
    Ok(page(&settings, &hand, None, &answers, &[], &FormKey::fresh()?).render())
}

/// `GET /shelf/{oil}/edit`
pub(crate) async fn show_edit(
    State(shop): State<Shop>,
    hand: Hand,
    Path(asked): Path<String>,
    Query(typed): Query<Answers>,
) -> Result<Markup, Error> {
    let settings = shop.store.settings().await?;
    let snapshot = shop.store.snapshot(shop.clock.now()).await?;
    let oil = super::named(&snapshot.shelf, &asked)?;
    let answers = if typed.is_empty() { kept(oil) } else { typed };
    Ok(page(&settings, &hand, Some(oil), &answers, &[], &FormKey::fresh()?).render())
}

/// `POST /shelf`
pub(crate) async fn write(State(shop): State<Shop>, hand: Hand, Form(sent): Form<Sent>) -> Result<Response, Error> {
    let settings = shop.store.settings().await?;
    let snapshot = shop.store.snapshot(shop.clock.now()).await?;
    let was = sent.answers.get("was").map(|was| super::named(&snapshot.shelf, was)).transpose()?;
    match oil(&sent.answers, was, &snapshot.shelf) {
        Ok(oil) => {
            let id = oil.id.clone();
            shop.store.add_shelf(&Shelf { oils: vec![oil], cans: Vec::new() }, shop.clock.now(), hand.name()).await?;
            Ok(Redirect::to(&address::oil(&id)).into_response())
        }
        Err(wrong) => {
            let page = page(&settings, &hand, was, &sent.answers, &wrong, &sent.key);
            Ok((StatusCode::UNPROCESSABLE_ENTITY, page.render()).into_response())
        }
    }
}

/// What is wrong with an answer, by the name of its question.
type Wrong = Vec<(String, String)>;

/// The oil that the answers describe.
fn oil(answers: &Answers, was: Option<&Oil>, shelf: &Shelf) -> Result<Oil, Wrong> {
    let mut wrong = Wrong::new();
    let stated = sheet(answers).stated().unwrap_or_else(|refused| {
        wrong.push((READINGS[0].0.to_owned(), capital(&refused.to_string()) + "."));
        None
    });
    let mut kept: Vec<(&str, String)> = answers.iter().map(|(name, answer)| (name.as_str(), answer.clone())).collect();
    let id = match was {
        Some(oil) => oil.id.to_string(),
        None => {
            let id = answers.get("id").map(|id| id.trim()).filter(|id| !id.is_empty());
            let id = id.map_or_else(
                || {
                    id_of(answers.get("name").map_or("", String::as_str), |id| {
                        shelf.oils.iter().any(|oil| oil.id.as_str() == id)
                    })
                },
                str::to_owned,
            );
            if shelf.oils.iter().any(|oil| oil.id.as_str() == id) {
                wrong.push((
                    "name".to_owned(),
                    format!("An oil called \"{id}\" is on the shelf already. Give this one another name."),
                ));
            }
            id
        }
    };
    kept.retain(|(name, _)| *name != "id" && *name != "index");
    kept.push(("id", id));
    if let Some(stated) = stated {
        kept.push(("v40", stated.v40));
        kept.extend(stated.v100.map(|v100| ("v100", v100)));
        kept.extend(stated.index.map(|index| ("index", index.to_string())));
        if let Some(says) = stated.note {
            let note = kept.iter_mut().find(|(name, _)| *name == "note");
            match note {
                Some((_, note)) if note.contains(&says) => {}
                Some((_, note)) => *note = format!("{says} {note}").trim().to_owned(),
                None => kept.push(("note", says)),
            }
        }
    }
    match oil_from(&kept) {
        // What was in stock when it was written down is not on the form.
        Ok(oil) if wrong.is_empty() => match was {
            Some(was) => Ok(Oil { stock: was.stock.clone(), stock_mass: was.stock_mass.clone(), ..oil }),
            None => Ok(oil),
        },
        Ok(_) => Err(wrong),
        Err(more) => {
            let asked =
                |key: &str| if matches!(key, "v40" | "v100" | "index") { READINGS[0].0 } else { key }.to_owned();
            wrong.extend(more.into_iter().map(|(key, says)| (asked(key), capital(&says) + ".")));
            Err(wrong)
        }
    }
}

/// An id from a name: `Way oil 68, the tin` becomes `way-oil-68-the-tin`, with a number behind it when that is taken.
pub(super) fn id_of(name: &str, is_taken: impl Fn(&str) -> bool) -> String {
    let letter = |letter: char| if letter.is_ascii_alphanumeric() { letter } else { '-' };
    let letters: String = name.to_lowercase().chars().map(letter).collect();
    let words: Vec<&str> = letters.split('-').filter(|word| !word.is_empty()).take(6).collect();
    let id = words.join("-");
    let numbered = (2..).map(|number| format!("{id}-{number}"));
    std::iter::once(id.clone()).chain(numbered).find(|id| !is_taken(id)).unwrap_or(id)
}

/// What the sheet says, as it was typed.
fn sheet(answers: &Answers) -> DataSheet {
    let typed = |name: &str| answers.get(name).map(|text| text.trim().to_owned()).filter(|text| !text.is_empty());
    let reading = |(value, at): (&str, &str)| {
        let value = typed(value)?;
        let at = typed(at).unwrap_or_default();
        Some((at, value))
    };
    DataSheet { readings: READINGS.into_iter().filter_map(reading).collect(), index: typed("index") }
}

/// The answers that a kept oil gives.
fn kept(oil: &Oil) -> Answers {
    let text = |text: &Option<String>| text.clone().unwrap_or_default();
    let mut answers = Answers::new();
    let mut put = |name: &str, answer: String| {
        if !answer.is_empty() {
            answers.insert(name.to_owned(), answer);
        }
    };
    put("name", oil.name.clone());
    put("family", oil.family.to_string());
    put("symbol", text(&oil.symbol));
    for ((value, at), (typed, celsius)) in READINGS.into_iter().zip([(&oil.v40, "40 °C"), (&oil.v100, "100 °C")]) {
        if let Some(typed) = typed {
            put(value, typed.text.clone());
            put(at, celsius.to_owned());
        }
    }
    put("index", oil.index.map(|index| index.to_string()).unwrap_or_default());
    put("density", oil.density.as_ref().map(|typed| typed.text.clone()).unwrap_or_default());
    put("pour_point", oil.pour_point.as_ref().map(|typed| typed.text.clone()).unwrap_or_default());
    put("flash_point", oil.flash_point.as_ref().map(|typed| typed.text.clone()).unwrap_or_default());
    put("copper_strip", text(&oil.copper_strip));
    put("thickener", text(&oil.grease.thickener));
    put("nlgi", text(&oil.grease.nlgi));
    put("base_v40", oil.grease.base_v40.as_ref().map(|typed| typed.text.clone()).unwrap_or_default());
    put("packs", oil.packs.iter().map(|pack| pack.text.as_str()).collect::<Vec<_>>().join("\n"));
    put("note", text(&oil.note));
    let stated = [oil.ep_sulphur, oil.detergent, oil.tackifier, oil.friction_modifier, oil.fatty, oil.solids];
    for ((name, _), stated) in PROPERTIES.into_iter().zip(stated) {
        put(name, stated.to_string());
    }
    answers
}

fn fields(answers: &Answers, wrong: &[(String, String)]) -> Vec<Field> {
    let field = |name: &str, label: &str, hint: &str, entry: Entry| Field {
        name: name.into(),
        label: label.into(),
        hint: hint.into(),
        entry,
        value: answers.get(name).cloned().unwrap_or_default(),
        fault: wrong.iter().find(|(of, _)| of == name).map(|(_, says)| says.clone()),
        ..Field::default()
    };
    let families = Family::words().into_iter().map(|word| Choice::new(word, capital(word))).collect();
    let stated = || Said::words().into_iter().rev().map(|word| Choice::new(word, capital(word))).collect();
    let mut fields = vec![
        field("name", "What stands on the can?", "Such as Way oil 68, the square tin.", Entry::Line),
        field("family", "What sort is it?", "", Entry::List(families)),
        field("visc_1", "How thick is it?", "With its unit, such as 68 mm2/s, 68 cSt or 315 SUS.", Entry::Quantity),
        field("at_1", "At which temperature?", "Such as 40 °C or 100 °F.", Entry::Quantity),
        field(
            "visc_2",
            "And at another temperature?",
            "Leave this empty when the sheet gives the viscosity index.",
            Entry::Quantity,
        ),
        field("at_2", "At which other temperature?", "Such as 100 °C or 210 °F.", Entry::Quantity),
        field("index", "Which viscosity index?", "A bare number, such as 95.", Entry::Quantity),
    ];
    fields.extend(LINES.map(|(name, label, hint)| field(name, label, hint, Entry::Line)));
    fields.push(field(
        "packs",
        "In which packs is it sold?",
        "One to a line, with the price when you know it: 20 L at 85 EUR.",
        Entry::Text,
    ));
    fields.extend(GREASE.map(|(name, label, hint)| field(name, label, hint, Entry::Line)));
    fields.extend(PROPERTIES.map(|(name, label)| field(name, label, "", Entry::List(stated()))));
    fields
}

fn page(
    settings: &Settings,
    hand: &Hand,
    was: Option<&Oil>,
    answers: &Answers,
    wrong: &[(String, String)],
    key: &FormKey,
) -> Page {
    let here = was.map_or_else(|| NEW.to_owned(), |oil| address(&oil.id));
    let back = was.map_or_else(|| Section::Shelf.path().to_owned(), |oil| address::oil(&oil.id));
    let title = was.map_or_else(|| "A new oil or grease".to_owned(), |oil| oil.name.clone());
    Page {
        title: title.clone(),
        section: Some(Section::Shelf),
        today: Section::Today.path().into(),
        block: TitleBlock::new([("Shelf", title.clone())]).and_link("By", Link::new("/hand", hand.name())),
        body: html! {
            h1 { (title) }
            p { "Copy what the can and its data sheet say, in the units in which they say it. What they leave out is not stated, which is not no." }
            (preview(settings, answers))
            form.form method="post" action="/shelf" {
                (key)
                @if !wrong.is_empty() {
                    div.form-mend role="alert" {
                        h2 { "Nothing was written down yet" }
                        ul { @for (name, says) in wrong { li { a href={ "#" (name) } { (says) } } } }
                    }
                }
                @if let Some(oil) = was { input type="hidden" name="was" value=(oil.id); }
                @for field in fields(answers, wrong) { (field) }
                div.form-acts {
                    button.button formmethod="get" formaction=(here) { "Look at it first" }
                    button.button.button-main { "Keep it" }
                    (Link::new(back, "Leave it"))
                }
            }
        },
    }
}

/// What the answers make of the oil: its grade and its curve; nothing before any viscosity is typed.
fn preview(settings: &Settings, answers: &Answers) -> Markup {
    match sheet(answers).stated() {
        Ok(None) => html! {},
        Err(refused) => html! {
            div.form-mend role="alert" { h2 { "No curve yet" } p { (capital(&refused.to_string())) "." } }
        },
        Ok(Some(Stated { line, warnings, note, .. })) => {
            let v40 = line.at(Temperature::from_celsius(40.0));
            let grade = classified(v40).ok().map(|found| match found.value.grade {
                Some(grade) => format!("ISO VG {}", grade.number()),
                None => format!("between grades, nearest ISO VG {}", found.value.nearest.number()),
            });
            let drawn = [Drawn { name: "this oil".into(), line }];
            html! {
                            h2 #preview { "What that makes" }
                            @if let Some(grade) = grade { p { "At 40\u{a0}°C " (said(v40, usual_unit(Kind::KinematicViscosity, settings.units, v40.si()), 3)) ": " (grade) "." } }
                            @if let Some(note) = note { p.quiet { (note) } }
                            @for warning in &warnings { p.note { "Mind: " (words::warning(warning)) "." } }
                            (Figure {
                                drawing: PreEscaped(viscosity_chart(&drawn, &marks(settings), &bands()).svg("chart")),
                                caption: "The warmer, the thinner. Grey: what a wick still lifts, and where can, starting pump and splash begin to fail.".into(),
                            })
                            (thickness(&drawn, settings.units))
            (coldest(&drawn, settings.units))
                        }
        }
    }
}
