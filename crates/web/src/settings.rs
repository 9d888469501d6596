//! `GET /settings`: what holds for the whole shop: its name, how it measures, its clock, its usual hours and how warm it is. `POST` to the
//! same address writes it down; answers about the time before keep the old settings.

use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use jiff::tz::TimeZone;
use maud::{Markup, Render, html};
use serde::Deserialize;
use shop::reading::says_quantity;
use shop::snapshot::Conditions;
use store::Settings;
use tribology::quantity::{Kind, Temperature, Units, said, typed, usual_unit};

use crate::hand::Hand;
use crate::parts::{Choice, Entry, Field, Form as Questions, Link, Page, Section, TitleBlock};
use crate::shop_state::Shop;
use crate::{Error, FormKey, hours};

/// The longest name of a shop, in characters.
const LONGEST: usize = 80;

/// The habits of measuring: what is sent, the habit, and the words.
const UNITS: [(&str, Units, &str); 2] =
    [("metric", Units::Metric, "Metric: millimetres, litres, °C"), ("us", Units::Us, "US: inches, gallons, °F")];

/// The form as it is sent.
#[derive(Clone, Debug, Deserialize)]
pub(crate) struct Sent {
    key: FormKey,
    #[serde(flatten)]
    answers: Answers,
}

/// The answers as they were typed.
#[derive(Clone, Debug, Deserialize)]
struct Answers {
    name: String,
    #[serde(default)]
    units: String,
    zone: String,
    hours: String,
    cold: String,
    usual: String,
    warm: String,
}

/// What is wrong with an answer, by the name of its question.
type Wrong = Vec<(&'static str, String)>;

/// `GET /settings`
pub(crate) async fn show(State(shop): State<Shop>, hand: Hand) -> Result<Markup, Error> {
    let answers = Answers::of(&shop.store.settings().await?);
    Ok(page(&hand, &answers, &[], FormKey::fresh()?).render())
}

/// `POST /settings`
pub(crate) async fn write(State(shop): State<Shop>, hand: Hand, Form(sent): Form<Sent>) -> Result<Response, Error> {
    match sent.answers.read() {
        Ok(settings) => {
            shop.store.set_settings(&settings, shop.clock.now(), hand.name()).await?;
            Ok(Redirect::to(Section::Machines.path()).into_response())
        }
        Err(wrong) => {
            let page = page(&hand, &sent.answers, &wrong, sent.key);
            Ok((StatusCode::UNPROCESSABLE_ENTITY, page.render()).into_response())
        }
    }
}

impl Answers {
    fn of(settings: &Settings) -> Self {
        let said = |temperature: Option<Temperature>| {
            temperature.map_or_else(String::new, |temperature| {
                let unit = usual_unit(Kind::Temperature, settings.units, temperature.kelvin());
                said(temperature, unit, 3)
            })
        };
        let units = UNITS.iter().find(|(_, units, _)| *units == settings.units);
        Self {
            name: settings.name.clone(),
            units: units.map_or("", |(word, ..)| word).to_owned(),
            zone: settings.zone.iana_name().unwrap_or_default().to_owned(),
            hours: advice::words::hours(settings.hours),
            cold: said(settings.conditions.cold),
            usual: said(settings.conditions.usual),
            warm: said(settings.conditions.warm),
        }
    }

    fn read(&self) -> Result<Settings, Wrong> {
        let mut wrong = Wrong::new();
        let name = self.name.trim();
        if name.is_empty() || name.chars().count() > LONGEST || name.chars().any(char::is_control) {
            wrong.push(("name", format!("Write a name of up to {LONGEST} letters, like \"Mill museum repair shop\".")));
        }
        let units = UNITS.iter().find(|(word, ..)| *word == self.units).map(|(_, units, _)| *units);
        if units.is_none() {
            wrong.push(("units", "Choose one of the two.".to_owned()));
        }
        let zone = TimeZone::get(self.zone.trim()).ok().filter(|zone| zone.iana_name().is_some());
        if zone.is_none() {
            wrong.push((
                "zone",
                format!(
                    "\"{}\" is no time zone. Write its name like Europe/Lisbon or America/Chicago.",
                    self.zone.trim()
                ),
            ));
        }
        let hours = hours::read(&self.hours).map_err(|says| wrong.push(("hours", says))).ok();
        let mut temperature = |name: &'static str, text: &str| {
            let text = text.trim();
            if text.is_empty() {
                return None;
            }
            let says = |fault| says_quantity("What was typed here", &fault, Kind::Temperature) + ".";
            typed::<Temperature>(text).map(|typed| typed.value).map_err(|fault| wrong.push((name, says(fault)))).ok()
        };
        let conditions = Conditions {
            cold: temperature("cold", &self.cold),
            usual: temperature("usual", &self.usual),
            warm: temperature("warm", &self.warm),
        };
        let known: Vec<f64> = [conditions.cold, conditions.usual, conditions.warm]
            .into_iter()
            .flatten()
            .map(Temperature::kelvin)
            .collect();
        if !known.is_sorted() {
            wrong.push((
                "usual",
                "The cold morning is the coldest and the warm day the warmest of the three.".to_owned(),
            ));
        }
        match (units, zone, hours) {
            (Some(units), Some(zone), Some(hours)) if wrong.is_empty() => {
                Ok(Settings { name: name.to_owned(), zone, units, hours, conditions })
            }
            _ => Err(wrong),
        }
    }
}

fn page(hand: &Hand, answers: &Answers, wrong: &[(&'static str, String)], key: FormKey) -> Page {
    let field = |name: &str, label: &str, hint: &str, entry: Entry, value: &str| Field {
        name: name.into(),
        label: label.into(),
        hint: hint.into(),
        entry,
        value: value.into(),
        fault: wrong.iter().find(|(of, _)| *of == name).map(|(_, says)| says.clone()),
        ..Field::default()
    };
    let units = UNITS.map(|(word, _, words)| Choice::new(word, words)).into();
    let degrees = "Such as 8 °C or 46 °F; may be left empty.";
    Page {
        title: "The shop".into(),
        section: Some(Section::Machines),
        today: Section::Today.path().into(),
        block: TitleBlock::new([("Sheet", "The shop")]).and_link("By", Link::new("/hand", hand.name())),
        body: html! {
            h1 { "What holds for the whole shop" }
            (Questions {
                to: "/settings".into(),
                key,
                hidden: Vec::new(),
                fields: vec![
                    field("name", "What is the shop called?", "", Entry::Line, &answers.name),
                    field(
                        "units", "How do you measure?", "What was typed in another measure stays as it was typed.",
                        Entry::Pick(units), &answers.units,
                    ),
                    field("hours", "How long does a machine usually run in a day?", "Such as 3 h.", Entry::Quantity, &answers.hours),
                    field("cold", "How cold is the shop on a cold morning?", degrees, Entry::Quantity, &answers.cold),
                    field("usual", "How warm is it usually?", degrees, Entry::Quantity, &answers.usual),
                    field("warm", "How warm is it on a warm day?", degrees, Entry::Quantity, &answers.warm),
                    field(
                        "zone", "Whose clock does it go by?", "The name of a time zone, such as Europe/Lisbon.",
                        Entry::Line, &answers.zone,
                    ),
                ],
                wrong: Vec::new(),
                words: "Keep this".into(),
                back: Some(Link::new(Section::Machines.path(), "Leave it as it is")),
            })
        },
    }
}
