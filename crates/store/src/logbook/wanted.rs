//! Which entries are wanted. The statement is made for the question, so that an index answers each.

use jiff::Timestamp;
use shop::id::Id;
use shop::logbook::{EntryId, Kind, Subject};

use super::row;
use crate::db::{Tx, Value, micros, values};
use crate::error::{Error, Result};

/// Which entries are wanted, newest first by when they happened; of those that happened at once, the last recorded first.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wanted {
    /// About what.
    pub about: About,
    /// Of which kind; of every kind when left out.
    pub kind: Option<Kind>,
    /// Happened at this instant or later.
    pub from: Option<Timestamp>,
    /// Happened before this instant.
    pub to: Option<Timestamp>,
    /// Only those that come behind this entry: the last one of the page before.
    pub before: Option<EntryId>,
    /// At most so many.
    pub most: usize,
    /// What to do with superseded ones.
    pub superseded: Superseded,
}

/// What entries are about.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum About {
    /// Anything in the shop.
    #[default]
    Shop,
    /// A machine, its points and its reservoirs.
    Machine(Id),
    /// A point of a machine.
    Point(Id, Id),
    /// A reservoir of a machine. Asked for by kind, it reads only the machine's entries of that kind.
    Reservoir(Id, Id),
}

/// What to do with entries that others have superseded.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Superseded {
    /// They count no more.
    #[default]
    LeftOut,
    /// They are shown too.
    Shown,
}

impl Default for Wanted {
    fn default() -> Self {
        Self {
            about: About::Shop,
            kind: None,
            from: None,
            to: None,
            before: None,
            most: 100,
            superseded: Superseded::LeftOut,
        }
    }
}

impl Wanted {
    /// The statement that answers, with its values.
    pub(super) async fn query(&self, tx: &Tx) -> Result<(String, Vec<Value>)> {
        let mut asked = Asked::default();
        match &self.about {
            About::Shop => {}
            About::Machine(machine) => asked.that("e.machine = $", machine.as_str()),
            About::Point(machine, point) => {
                asked.that("e.machine = $", machine.as_str());
                asked.that("e.point = $", point.as_str());
            }
            About::Reservoir(machine, reservoir) => {
                asked.that("e.machine = $", machine.as_str());
                let subject = Subject::Reservoir(machine.clone(), reservoir.clone());
                asked.that("e.subject = $", subject.to_string());
            }
        }
        if let Some(kind) = self.kind {
            asked.that("e.kind = $", kind.to_string());
        }
        if let Some(from) = self.from {
            asked.that("e.happened >= $", micros(from));
        }
        if let Some(to) = self.to {
            asked.that("e.happened < $", micros(to));
        }
        if let Some(before) = self.before {
            let row = tx.one("SELECT happened FROM entry WHERE id = $1", values![before.0]).await?;
            let row = row.ok_or_else(|| {
                Error::NotFound(format!("there is no entry number {before} in the log; begin again at the newest"))
            })?;
            asked.that_pair("(e.happened, e.id) < ", row.get::<i64>("happened")?, before.0);
        }
        if self.superseded == Superseded::LeftOut {
            asked.conditions.push("NOT EXISTS (SELECT 1 FROM entry s WHERE s.supersedes = e.id)".to_owned());
        }
        Ok(asked.finish(self.most))
    }
}

#[derive(Default)]
struct Asked {
    conditions: Vec<String>,
    values: Vec<Value>,
}

impl Asked {
    fn that(&mut self, condition: &str, value: impl Into<Value>) {
        self.values.push(value.into());
        self.conditions.push(format!("{condition}{}", self.values.len()));
    }

    fn that_pair(&mut self, condition: &str, first: i64, second: i64) {
        self.values.extend(values![first, second]);
        let last = self.values.len();
        self.conditions.push(format!("{condition}(${}, ${last})", last - 1));
    }

    fn finish(mut self, most: usize) -> (String, Vec<Value>) {
        let filter = if self.conditions.is_empty() {
            String::new()
        } else {
            format!(" WHERE {}", self.conditions.join(" AND "))
        };
        self.values.push(Value::from(i64::try_from(most).unwrap_or(i64::MAX)));
        let limit = self.values.len();
        let sql = format!("{}{filter} ORDER BY e.happened DESC, e.id DESC LIMIT ${limit}", row::SELECT);
        (sql, self.values)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::settings::Settings;
    use crate::store::Store;

    fn every_question() -> Vec<Wanted> {
        let id = |text| Id::new(text).expect("letters");
        let mut questions = Vec::new();
        for about in
            [About::Shop, About::Machine(id("m")), About::Point(id("m"), id("p")), About::Reservoir(id("m"), id("r"))]
        {
            for kind in [None, Some(Kind::Ran)] {
                for from in [None, Some(Timestamp::UNIX_EPOCH)] {
                    for superseded in [Superseded::LeftOut, Superseded::Shown] {
                        questions.push(Wanted {
                            about: about.clone(),
                            kind,
                            from,
                            to: from,
                            before: Some(EntryId(1)),
                            superseded,
                            ..Wanted::default()
                        });
                    }
                }
            }
        }
        questions
    }

    /// SQLite tells its way: an index in the order that is wanted, and never a sort of what was found.
    #[tokio::test]
    async fn every_question_has_an_index_in_its_order() {
        let folder = tempfile::TempDir::new().expect("the tests may write to a temporary folder");
        let path = folder.path().join("s");
        let store = Store::create(&path, &Settings::any(), Timestamp::UNIX_EPOCH).await.expect("a free name");
        let oil = shop::logbook::NewEntry {
            happened: Timestamp::UNIX_EPOCH,
            recorded: Timestamp::UNIX_EPOCH,
            zone: "UTC".into(),
            by: String::new(),
            subject: Subject::Oil(Id::new("o").expect("a letter")),
            body: shop::logbook::Body::Note { text: String::new() },
            supersedes: None,
            idempotency_key: "k".into(),
        };
        assert_eq!(store.record(&[oil]).await, Ok(vec![EntryId(1)]));
        let tx = store.db.read().await.expect("an open file");
        for wanted in every_question() {
            let (sql, values) = wanted.query(&tx).await.expect("entry 1 is there");
            let plan = tx.all(&format!("EXPLAIN QUERY PLAN {sql}"), values).await.expect("a statement of ours");
            let plan: Vec<String> = plan.iter().map(|row| row.get("detail").expect("a text")).collect();
            let entries = plan.iter().find(|step| step.contains(" e ")).expect("it reads entries");
            assert!(entries.contains("USING INDEX entry_by_"), "{wanted:?}: {plan:?}");
            assert!(!plan.iter().any(|step| step.contains("TEMP B-TREE")), "{wanted:?}: {plan:?}");
        }
    }
}
