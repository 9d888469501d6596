//! What an entry says as questions on a form, and the answers as what an entry says: one place for every kind.

use std::collections::BTreeMap;

use shop::chart::Chart;
use shop::id::Id;
use shop::logbook::{Body, Kind};
use shop::shelf::{Amount, Price, Shelf};

use crate::hours;
use crate::parts::{Choice, Entry, Field};

/// The answers by the names of their questions.
pub(super) type Answers = BTreeMap<String, String>;

/// The questions of a kind of entry, filled with what `body` says. None for a kind that is only taken back.
pub(super) fn questions(body: &Body, chart: Option<&Chart>, shelf: &Shelf) -> Option<Vec<Field>> {
    let line = |name: &str, label: &str, hint: &str, value: &Option<String>| Field {
        name: name.to_owned(),
        label: label.to_owned(),
        hint: hint.to_owned(),
        value: value.clone().unwrap_or_default(),
        ..Field::default()
    };
    let list = |name: &str, label: &str, choices: Vec<Choice>, value: &Option<Id>| Field {
        name: name.to_owned(),
        label: label.to_owned(),
        entry: Entry::List([Choice::new("", "Not said")].into_iter().chain(choices).collect()),
        value: value.as_ref().map(Id::to_string).unwrap_or_default(),
        ..Field::default()
    };
    let oils = || shelf.oils.iter().map(|oil| Choice::new(oil.id.as_str(), &*oil.name)).collect();
    // What stands on a shelf is measured or weighed; strokes say nothing of it.
    let on_shelf = |amount: &String| line("amount", "How much?", "Such as 3.2 L or 400 g.", &Some(amount.clone()));
    let how_much = |amount| line("amount", "How much?", "Such as 60 mL, 3.5 L or 2 strokes.", amount);
    let text = |label: &str, value: &str| vec![line("text", label, "", &Some(value.to_owned()))];
    Some(match body {
        Body::Dosed { oil, can, amount } => {
            let cans = shelf.cans.iter().map(|can| Choice::new(can.id.as_str(), can.called())).collect();
            vec![how_much(amount), list("oil", "Which oil?", oils(), oil), list("can", "Which can or gun?", cans, can)]
        }
        Body::SignSeen { note } | Body::SignMissing { note } => {
            vec![line("text", "How did it look?", "May be left empty.", note)]
        }
        Body::NotReached { reason } => text("What was in the way?", reason),
        Body::Ran { hours, job } => {
            let jobs = chart.into_iter().flat_map(|chart| &chart.jobs);
            let jobs = jobs.map(|job| Choice::new(job.id.as_str(), &*job.name)).collect();
            let typed = Some(advice::words::hours(*hours));
            vec![
                line("hours", "How long did it run?", "Such as 3 h or 90 min.", &typed),
                list("job", "At which job?", jobs, job),
            ]
        }
        Body::Level { reading } => {
            vec![line(
                "text",
                "What did you read?",
                "Such as middle of the glass, or 62 mm on the stick.",
                &Some(reading.clone()),
            )]
        }
        Body::Filled { oil, amount } => vec![how_much(amount), list("oil", "Which oil?", oils(), oil)],
        Body::Drained { note } => {
            vec![line("text", "How much came out, and how did it look?", "May be left empty.", note)]
        }
        Body::Opening { amount } | Body::Counted { amount } => vec![on_shelf(amount)],
        Body::Bought { amount, price } => {
            vec![on_shelf(amount), line("price", "What did it cost?", "Such as 85 EUR; may be left empty.", price)]
        }
        Body::Used { amount, note } => {
            vec![on_shelf(amount), line("text", "For what?", "May be left empty.", note)]
        }
        Body::ThrownAway { amount, note } => {
            vec![on_shelf(amount), line("text", "Why?", "May be left empty.", note)]
        }
        Body::Note { text: said } => text("What is to be noted?", said),
        Body::Withdrawn => return None,
    })
}

/// What the answers say.
///
/// # Errors
/// Each wrong answer by the name of its question, with a sentence.
pub(super) fn read(
    kind: Kind,
    answers: &Answers,
    chart: Option<&Chart>,
    shelf: &Shelf,
) -> Result<Body, Vec<(&'static str, String)>> {
    let said = |name: &str| answers.get(name).map(|text| text.trim().to_owned()).filter(|text| !text.is_empty());
    let mut wrong = Vec::new();
    let mut one_of = |name: &'static str, known: &dyn Fn(&str) -> Option<Id>| {
        let asked = said(name)?;
        let found = known(&asked);
        if found.is_none() {
            wrong.push((name, format!("There is no \"{asked}\". Choose one from the list.")));
        }
        found
    };
    let oil = one_of("oil", &|asked| shelf.oils.iter().find(|oil| oil.id.as_str() == asked).map(|oil| oil.id.clone()));
    let can = one_of("can", &|asked| shelf.cans.iter().find(|can| can.id.as_str() == asked).map(|can| can.id.clone()));
    let job = one_of("job", &|asked| {
        chart.and_then(|chart| chart.jobs.iter().find(|job| job.id.as_str() == asked)).map(|job| job.id.clone())
    });
    let mut must = |name: &'static str, like: &str| {
        said(name).unwrap_or_else(|| {
            wrong.push((name, format!("Nothing was written. Write something like \"{like}\".")));
            String::new()
        })
    };
    let body = match kind {
        Kind::Dosed => Body::Dosed { oil, can, amount: said("amount") },
        Kind::SignSeen => Body::SignSeen { note: said("text") },
        Kind::SignMissing => Body::SignMissing { note: said("text") },
        Kind::NotReached => Body::NotReached { reason: must("text", "the cover would not come off") },
        Kind::Ran => match hours::read(&said("hours").unwrap_or_default()) {
            Ok(hours) => Body::Ran { hours, job },
            Err(says) => {
                wrong.push(("hours", says));
                return Err(wrong);
            }
        },
        Kind::Level => Body::Level { reading: must("text", "middle of the glass") },
        Kind::Filled => Body::Filled { oil, amount: said("amount") },
        Kind::Drained => Body::Drained { note: said("text") },
        Kind::Opening | Kind::Counted | Kind::Bought | Kind::Used | Kind::ThrownAway => {
            let amount = must("amount", "5 L");
            if let Err(says) = Amount::read(&amount)
                && !amount.is_empty()
            {
                wrong.push(("amount", format!("{says}.")));
            }
            let price = said("price");
            if let Some(Err(says)) = price.as_deref().map(Price::read) {
                wrong.push(("price", format!("{says}.")));
            }
            match kind {
                Kind::Bought => Body::Bought { amount, price },
                Kind::Used => Body::Used { amount, note: said("text") },
                Kind::ThrownAway => Body::ThrownAway { amount, note: said("text") },
                Kind::Counted => Body::Counted { amount },
                _ => Body::Opening { amount },
            }
        }
        Kind::Note | Kind::Withdrawn => Body::Note { text: must("text", "the glass looks milky") },
    };
    if wrong.is_empty() { Ok(body) } else { Err(wrong) }
}

/// The questions with the answers as they were sent and what is wrong with each.
pub(super) fn answered(mut fields: Vec<Field>, answers: &Answers, wrong: &[(&'static str, String)]) -> Vec<Field> {
    for field in &mut fields {
        if let Some(answer) = answers.get(&field.name) {
            field.value.clone_from(answer);
        }
        field.fault = wrong.iter().find(|(name, _)| *name == field.name).map(|(_, says)| says.clone());
    }
    fields
}
