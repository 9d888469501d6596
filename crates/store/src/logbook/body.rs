//! What an entry says, as JSON in the file. These types are the file's own and never change once written: a new form gets a new
//! version and the old one stays readable.

use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use shop::id::Id;
use shop::logbook::{Body, Kind};
use tribology::quantity::Time;

/// The version that is written.
pub(crate) const VERSION: i64 = 1;

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Dosed {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    oil: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    can: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    amount: Option<String>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Noted {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    note: Option<String>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct NotReached {
    reason: String,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Ran {
    hours_s: f64,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    job: Option<String>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Level {
    reading: String,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Filled {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    oil: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    amount: Option<String>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Opening {
    amount: String,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Counted {
    amount: String,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Bought {
    amount: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    price: Option<String>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Gone {
    amount: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    note: Option<String>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Note {
    text: String,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Withdrawn {}

/// The JSON of a body, in the version that is written.
pub(crate) fn write(body: &Body) -> String {
    let text = |id: &Option<Id>| id.as_ref().map(Id::to_string);
    match body {
        Body::Dosed { oil, can, amount } => json(&Dosed { oil: text(oil), can: text(can), amount: amount.clone() }),
        Body::SignSeen { note } | Body::SignMissing { note } | Body::Drained { note } => {
            json(&Noted { note: note.clone() })
        }
        Body::NotReached { reason } => json(&NotReached { reason: reason.clone() }),
        Body::Ran { hours, job } => json(&Ran { hours_s: hours.seconds(), job: text(job) }),
        Body::Level { reading } => json(&Level { reading: reading.clone() }),
        Body::Filled { oil, amount } => json(&Filled { oil: text(oil), amount: amount.clone() }),
        Body::Opening { amount } => json(&Opening { amount: amount.clone() }),
        Body::Counted { amount } => json(&Counted { amount: amount.clone() }),
        Body::Bought { amount, price } => json(&Bought { amount: amount.clone(), price: price.clone() }),
        Body::Used { amount, note } | Body::ThrownAway { amount, note } => {
            json(&Gone { amount: amount.clone(), note: note.clone() })
        }
        Body::Note { text } => json(&Note { text: text.clone() }),
        Body::Withdrawn => json(&Withdrawn {}),
    }
}

/// The body that a kind, a version and their JSON spell; else what is wrong with them.
pub(crate) fn read(kind: Kind, version: i64, json: &str) -> Result<Body, String> {
    if version != VERSION {
        return Err(format!("a body of version {version}, which this program does not know"));
    }
    Ok(match kind {
        Kind::Dosed => {
            let Dosed { oil, can, amount } = parsed(json)?;
            Body::Dosed { oil: id(oil)?, can: id(can)?, amount }
        }
        Kind::SignSeen => Body::SignSeen { note: parsed::<Noted>(json)?.note },
        Kind::SignMissing => Body::SignMissing { note: parsed::<Noted>(json)?.note },
        Kind::NotReached => Body::NotReached { reason: parsed::<NotReached>(json)?.reason },
        Kind::Ran => {
            let Ran { hours_s, job } = parsed(json)?;
            Body::Ran { hours: Time::from_seconds(hours_s), job: id(job)? }
        }
        Kind::Level => Body::Level { reading: parsed::<Level>(json)?.reading },
        Kind::Filled => {
            let Filled { oil, amount } = parsed(json)?;
            Body::Filled { oil: id(oil)?, amount }
        }
        Kind::Drained => Body::Drained { note: parsed::<Noted>(json)?.note },
        Kind::Opening => Body::Opening { amount: parsed::<Opening>(json)?.amount },
        Kind::Counted => Body::Counted { amount: parsed::<Counted>(json)?.amount },
        Kind::Bought => {
            let Bought { amount, price } = parsed(json)?;
            Body::Bought { amount, price }
        }
        Kind::Used => {
            let Gone { amount, note } = parsed(json)?;
            Body::Used { amount, note }
        }
        Kind::ThrownAway => {
            let Gone { amount, note } = parsed(json)?;
            Body::ThrownAway { amount, note }
        }
        Kind::Note => Body::Note { text: parsed::<Note>(json)?.text },
        Kind::Withdrawn => {
            let Withdrawn {} = parsed(json)?;
            Body::Withdrawn
        }
    })
}

fn json(body: &impl Serialize) -> String {
    serde_json::to_string(body).expect("a struct of texts and one number always has a JSON form")
}

fn parsed<T: DeserializeOwned>(json: &str) -> Result<T, String> {
    serde_json::from_str(json).map_err(|error| format!("a body that cannot be read: {error}"))
}

fn id(text: Option<String>) -> Result<Option<Id>, String> {
    text.map(|text| Id::new(&text).map_err(|_| format!("\"{text}\" is no id"))).transpose()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What version 1 looks like in files that are out there: these lines may be added to and never changed.
    #[test]
    fn version_one_is_read_and_written_for_ever() {
        let id = |text| Id::new(text).ok();
        let some = |text: &str| Some(text.to_owned());
        let forms = [
            (
                r#"{"oil":"way-68","can":"gun","amount":"2 strokes"}"#,
                "dosed",
                Body::Dosed { oil: id("way-68"), can: id("gun"), amount: some("2 strokes") },
            ),
            ("{}", "dosed", Body::Dosed { oil: None, can: None, amount: None }),
            (r#"{"note":"wet line"}"#, "sign seen", Body::SignSeen { note: some("wet line") }),
            ("{}", "sign missing", Body::SignMissing { note: None }),
            (r#"{"reason":"cover rusted on"}"#, "not reached", Body::NotReached { reason: "cover rusted on".into() }),
            (
                r#"{"hours_s":5400.0,"job":"threading"}"#,
                "ran",
                Body::Ran { hours: Time::from_seconds(5400.0), job: id("threading") },
            ),
            (r#"{"reading":"middle"}"#, "level", Body::Level { reading: "middle".into() }),
            (
                r#"{"oil":"drum-68","amount":"0.5 L"}"#,
                "filled",
                Body::Filled { oil: id("drum-68"), amount: some("0.5 L") },
            ),
            (r#"{"note":"grey, 3 L"}"#, "drained", Body::Drained { note: some("grey, 3 L") }),
            (r#"{"amount":"14 L"}"#, "opening", Body::Opening { amount: "14 L".into() }),
            (r#"{"amount":"3.1 L"}"#, "counted", Body::Counted { amount: "3.1 L".into() }),
            (
                r#"{"amount":"20 L","price":"85 EUR"}"#,
                "bought",
                Body::Bought { amount: "20 L".into(), price: some("85 EUR") },
            ),
            (r#"{"amount":"1 L"}"#, "used", Body::Used { amount: "1 L".into(), note: None }),
            (
                r#"{"amount":"2 L","note":"water in it"}"#,
                "thrown away",
                Body::ThrownAway { amount: "2 L".into(), note: some("water in it") },
            ),
            (r#"{"text":"new belt"}"#, "note", Body::Note { text: "new belt".into() }),
            ("{}", "withdrawn", Body::Withdrawn),
        ];
        for (json, word, body) in forms {
            let kind = <Kind as shop::choice::Choice>::from_word(word).expect("the word is in files and must stay");
            assert_eq!(read(kind, 1, json), Ok(body.clone()), "{json}");
            assert_eq!(write(&body), json);
            assert_eq!(body.kind(), kind);
        }
    }

    #[test]
    fn what_makes_no_sense_is_said() {
        assert!(read(Kind::Dosed, 2, "{}").is_err_and(|what| what.contains("version 2")));
        assert!(read(Kind::NotReached, 1, "{}").is_err_and(|what| what.contains("reason")));
        assert!(read(Kind::Dosed, 1, r#"{"oil":"a b"}"#).is_err_and(|what| what.contains("no id")));
        assert!(read(Kind::Note, 1, r#"{"text":"x","more":1}"#).is_err_and(|what| what.contains("more")));
    }
}
