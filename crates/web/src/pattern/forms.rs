//! The forms of the pattern page: one that came back with faults, one that nobody has touched.

use crate::FormKey;
use crate::parts::{Choice, Entry, Field, Form, Link};

pub(super) fn faulty(key: &FormKey) -> Form {
    Form {
        to: "/pattern".into(),
        key: key.clone(),
        hidden: Vec::new(),
        fields: vec![
            Field {
                name: "clearance".into(),
                form: String::new(),
                label: "Clearance on the diameter".into(),
                hint: "With its unit, as in 0.09 mm or 0.004 in.".into(),
                entry: Entry::Quantity,
                value: "0.09".into(),
                fault: Some("0.09 has no unit. Write 0.09 mm or 0.09 in.".into()),
            },
            Field {
                name: "behaviour".into(),
                label: "Does the box hold its oil or use it?".into(),
                entry: Entry::Pick(vec![
                    Choice::new("holds", "It holds: the level should stay"),
                    Choice::new("uses", "It uses: the level should fall as the machine runs"),
                ]),
                fault: Some("Choose one of the two.".into()),
                ..Field::default()
            },
        ],
        words: "Write it down".into(),
        wrong: vec![
            "The chart was changed after you opened this form. Look at it once more, then send it again.".into(),
        ],
        back: Some(Link::new("#sheet", "Leave it as it is")),
    }
}

pub(super) fn fresh(key: &FormKey) -> Form {
    let cans = vec![Choice::new("short", "Short can"), Choice::new("long", "Long spout")];
    let kept = vec![Choice::new("yes", "Yes"), Choice::new("no", "No"), Choice::new("not-stated", "Not stated")];
    Form {
        to: "/pattern".into(),
        key: key.clone(),
        hidden: Vec::new(),
        fields: vec![
            Field {
                name: "oil-name".into(),
                label: "What the label says".into(),
                value: "Way oil 68".into(),
                ..Field::default()
            },
            Field {
                name: "machines".into(),
                label: "On which machines?".into(),
                entry: Entry::Several(vec![Choice::new("drill", "Bench drill"), Choice::new("shaper", "Hand shaper")]),
                value: "drill".into(),
                ..Field::default()
            },
            Field {
                name: "can".into(),
                label: "Which can".into(),
                entry: Entry::List(cans),
                value: "long".into(),
                ..Field::default()
            },
            Field { name: "opened".into(), label: "Opened on".into(), entry: Entry::Day, ..Field::default() },
            Field {
                name: "tackifier".into(),
                label: "Does it have a tackifier?".into(),
                hint: "\"Not stated\" is an answer too: the label is silent.".into(),
                entry: Entry::Pick(kept),
                value: "not-stated".into(),
                ..Field::default()
            },
            Field {
                name: "place".into(),
                form: "shelf".into(),
                label: "Where it stands".into(),
                entry: Entry::Offered(["By the door", "On the top shelf"].map(str::to_owned).into()),
                ..Field::default()
            },
            Field { name: "remark".into(), label: "Remark".into(), entry: Entry::Text, ..Field::default() },
        ],
        words: "Put it on the shelf".into(),
        wrong: Vec::new(),
        back: None,
    }
}
