//! What can be written down on the page of a point: oil given, the sign seen or not seen, not reached. Each is its own press.

use advice::round::{Act, act};
use maud::{Markup, Render, html};
use shop::chart::Point;

use crate::log::obstacles;
use crate::parts::{Action, Entry, Field, Fold, Form};
use crate::today::Choice;
use crate::{Error, FormKey};

/// What every form of the page carries, so that its answer comes back to it.
pub(super) fn carried(choice: &Choice, point: &Point) -> Vec<(String, String)> {
    let mut pairs = choice.pairs();
    pairs.push(("page".to_owned(), point.id.to_string()));
    pairs
}

/// The forms.
pub(super) fn forms(point: &Point, carried: &[(String, String)]) -> Result<Markup, Error> {
    let about = format!("point {}, {}", point.id, point.name);
    let with = |more: &[(&str, &str)]| -> Vec<(String, String)> {
        let more = more.iter().map(|(name, value)| ((*name).to_owned(), (*value).to_owned()));
        carried.iter().cloned().chain([("points".to_owned(), point.id.to_string())]).chain(more).collect()
    };
    let press = |to: &str, words: &str, more: &[(&str, &str)]| -> Result<Action, Error> {
        Ok(Action { hidden: with(more), about: Some(about.clone()), ..Action::new(to, FormKey::fresh()?, words) })
    };
    let given = match act(point) {
        Act::Give => Some(press("/log/dosings", "Oiled", &[])?),
        Act::TopUp => Some(press("/log/dosings", "Topped up", &[])?),
        Act::Look => None,
    };
    let seen = press("/log/signs", "Seen", &[("sign", "seen")])?;
    let missing = Form {
        to: "/log/signs".to_owned(),
        key: FormKey::fresh()?,
        hidden: with(&[("sign", "missing")]),
        fields: vec![Field {
            name: "note".to_owned(),
            form: "sign".to_owned(),
            label: "What did you see instead?".to_owned(),
            hint: "May stay empty.".to_owned(),
            entry: Entry::Line,
            ..Field::default()
        }],
        words: "Not seen".to_owned(),
        wrong: Vec::new(),
        back: None,
    };
    let obstacle =
        obstacles::form(carried.to_vec(), obstacles::PAGE, vec![(&point.id, &point.name)], FormKey::fresh()?);
    Ok(html! {
        div.row {
            @if let Some(given) = given { (given.as_main()) }
            (seen)
        }
        div {
            (Fold::shut("The sign was not there", missing.render()))
            (Fold::shut("Could not reach it", obstacle.render()))
        }
    })
}
