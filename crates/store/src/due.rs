//! What is due follows from the last living act of each kind at each point. That projection of the logbook is kept in the
//! transaction of the entries; [`Store::verify_due`] works it out another way and compares.

use std::collections::{BTreeMap, BTreeSet};

use jiff::Timestamp;
use shop::choice::Choice as _;
use shop::id::Id;
use shop::logbook::{EntryId, Kind, NewEntry};

use crate::db::{Row, Tx, Value, micros, rows_of_places, values};
use crate::error::Result;
use crate::store::Store;

/// The kinds of act that the projection keeps.
pub(crate) const ACTS: [Kind; 4] = [Kind::Dosed, Kind::SignSeen, Kind::SignMissing, Kind::NotReached];

/// How many rows are written by one statement.
const ROWS: usize = 100;

/// A kind of act at a point.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Act {
    pub(crate) machine: Id,
    pub(crate) point: Id,
    pub(crate) kind: Kind,
}

/// Which of two entries of one act is the last: that which happened later, and of two at once that recorded later.
type Last = (i64, i64);

impl Act {
    /// The act that an entry's row is of, when it is of one that is kept here.
    pub(crate) fn in_row(row: &Row) -> Result<Option<Self>> {
        let kind: Kind = row.choice("kind")?;
        let (machine, point) = (row.maybe_id("machine")?, row.maybe_id("point")?);
        Ok(machine.zip(point).filter(|_| ACTS.contains(&kind)).map(|(machine, point)| Self { machine, point, kind }))
    }

    fn of(entry: &NewEntry) -> Option<Self> {
        let kind = entry.body.kind();
        let place = entry.subject.machine().zip(entry.subject.point()).filter(|_| ACTS.contains(&kind));
        place.map(|(machine, point)| Self { machine: machine.clone(), point: point.clone(), kind })
    }

    fn values(&self) -> Vec<Value> {
        values![self.machine.as_str(), self.point.as_str(), self.kind.to_string()]
    }
}

impl Store {
    /// Works out from the logbook what the projection should hold, and says every difference in a sentence; empty when all is
    /// well.
    ///
    /// # Errors
    /// [`Error::Corrupt`](crate::Error::Corrupt) or [`Error::Io`](crate::Error::Io).
    pub async fn verify_due(&self) -> Result<Vec<String>> {
        let tx = self.db.read().await?;
        let differences = differences(&tx).await?;
        tx.commit().await?;
        Ok(differences)
    }
}

/// Every difference between the projection and what follows from the logbook, each in a sentence.
pub(crate) async fn differences(tx: &Tx) -> Result<Vec<String>> {
    let (is, should) = (projected(tx).await?, worked_out(tx).await?);
    let acts: BTreeSet<&Act> = is.keys().chain(should.keys()).collect();
    let says = acts.into_iter().filter(|act| is.get(act) != should.get(act)).map(|act| {
        let entry = |last: Option<&Last>| {
            last.map_or("none".to_owned(), |(happened, id)| {
                let when = Timestamp::from_microsecond(*happened).map_or("no instant".to_owned(), |at| at.to_string());
                format!("entry {id} of {when}")
            })
        };
        let Act { machine, point, kind } = act;
        format!(
            "machine \"{machine}\", point \"{point}\": the last \"{kind}\" is kept as {}, but by the log it is {}",
            entry(is.get(act)),
            entry(should.get(act))
        )
    });
    Ok(says.collect())
}

/// Follows new entries: acts that lost an entry are looked up again, the others only ever move on.
pub(crate) async fn follow(tx: &Tx, fresh: &[(EntryId, &NewEntry)], replaced: BTreeSet<Act>) -> Result<()> {
    for act in &replaced {
        look_up(tx, act).await?;
    }
    let mut last: BTreeMap<Act, Last> = BTreeMap::new();
    for (id, entry) in fresh {
        let Some(act) = Act::of(entry).filter(|act| !replaced.contains(act)) else { continue };
        let this = (micros(entry.happened), id.0);
        let kept = last.entry(act).or_insert(this);
        *kept = this.max(*kept);
    }
    let rows: Vec<(Act, Last)> = last.into_iter().collect();
    for chunk in rows.chunks(ROWS) {
        move_on(tx, chunk).await?;
    }
    Ok(())
}

/// Works the whole projection out anew, into an empty table.
pub(crate) async fn project(tx: &Tx) -> Result<()> {
    let living = |entry: &str| format!("NOT EXISTS (SELECT 1 FROM entry s WHERE s.supersedes = {entry}.id)");
    let sql = format!(
        "INSERT INTO due (machine, point, kind, happened, entry) \
         SELECT k.machine, k.point, k.kind, e.happened, e.id FROM \
         (SELECT DISTINCT machine, point, kind FROM entry WHERE kind IN ({}) AND point IS NOT NULL) k \
         JOIN entry e ON e.id = (SELECT x.id FROM entry x \
         WHERE x.machine = k.machine AND x.point = k.point AND x.kind = k.kind AND {} \
         ORDER BY x.happened DESC, x.id DESC LIMIT 1)",
        acts_in_sql(),
        living("x")
    );
    tx.run(&sql, values![]).await
}

async fn look_up(tx: &Tx, act: &Act) -> Result<()> {
    tx.run("DELETE FROM due WHERE machine = $1 AND point = $2 AND kind = $3", act.values()).await?;
    let sql = "INSERT INTO due (machine, point, kind, happened, entry) \
               SELECT e.machine, e.point, e.kind, e.happened, e.id FROM entry e \
               WHERE e.machine = $1 AND e.point = $2 AND e.kind = $3 \
               AND NOT EXISTS (SELECT 1 FROM entry s WHERE s.supersedes = e.id) \
               ORDER BY e.happened DESC, e.id DESC LIMIT 1";
    tx.run(sql, act.values()).await
}

async fn move_on(tx: &Tx, rows: &[(Act, Last)]) -> Result<()> {
    let sql = format!(
        "INSERT INTO due (machine, point, kind, happened, entry) VALUES {} \
         ON CONFLICT (machine, point, kind) DO UPDATE SET happened = excluded.happened, entry = excluded.entry \
         WHERE (excluded.happened, excluded.entry) > (due.happened, due.entry)",
        rows_of_places(rows.len(), 5)
    );
    let mut all = Vec::with_capacity(rows.len() * 5);
    for (act, (happened, id)) in rows {
        all.extend(act.values());
        all.extend(values![*happened, *id]);
    }
    tx.run(&sql, all).await
}

async fn projected(tx: &Tx) -> Result<BTreeMap<Act, Last>> {
    let rows = tx.all("SELECT machine, point, kind, happened, entry AS id FROM due", values![]).await?;
    folded(&rows)
}

async fn worked_out(tx: &Tx) -> Result<BTreeMap<Act, Last>> {
    let sql = "SELECT machine, point, kind, happened, id FROM entry \
               WHERE point IS NOT NULL AND id NOT IN (SELECT supersedes FROM entry WHERE supersedes IS NOT NULL)";
    folded(&tx.all(sql, values![]).await?)
}

fn folded(rows: &[Row]) -> Result<BTreeMap<Act, Last>> {
    let mut last = BTreeMap::new();
    for row in rows {
        let this: Last = (row.get("happened")?, row.get("id")?);
        if let Some(act) = Act::in_row(row)? {
            let kept = last.entry(act).or_insert(this);
            *kept = this.max(*kept);
        }
    }
    Ok(last)
}

/// `'dosed', 'sign seen', …`: the kept kinds as a list in SQL. They are words of our own, never a person's.
pub(crate) fn acts_in_sql() -> String {
    ACTS.map(|kind| format!("'{}'", kind.word())).join(", ")
}
