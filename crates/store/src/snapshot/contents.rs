//! What is in each reservoir and greased point: when it was last drained, and what was put in since. The database puts together what
//! was written down in the same words, so that a box that is topped up each day for years is a few rows.

use std::collections::BTreeMap;

use jiff::Timestamp;
use shop::contents::{Contents, Fill};
use shop::id::Id;
use shop::logbook::{Body, Kind, Subject};
use shop::snapshot::MachineSnapshot;

use super::{among, body};
use crate::db::{Row, Tx, json_of_words, micros, values, words};
use crate::error::Result;

/// What entries are asked for: each way of filling once.
const COLUMNS: &str = "max(e.id) AS id, e.kind, e.body, e.body_version, count(*) AS times, min(e.happened) AS first_time, max(e.happened) AS last_time";

/// Fills in what is in the reservoirs and greased points of these machines.
pub(super) async fn fill_in(
    tx: &Tx,
    machines: &mut BTreeMap<Id, MachineSnapshot>,
    only: Option<&[Id]>,
    at: Timestamp,
) -> Result<()> {
    for row in drains(tx, only, at).await? {
        if let Some(contents) = of_reservoir(machines, &row)? {
            contents.drained = Some(row.instant("last_time")?);
        }
    }
    for row in fills(tx, only, at).await? {
        if let Some(contents) = of_reservoir(machines, &row)? {
            put_in(contents, &row)?;
        }
    }
    for row in dosings(tx, machines, at).await? {
        let id = row.id("element")?;
        if let Some(machine) = machines.get_mut(&row.id("machine")?) {
            put_in(machine.contents.entry(id).or_default(), &row)?;
        }
    }
    for contents in machines.values_mut().flat_map(|machine| machine.contents.values_mut()) {
        contents.fills.sort_by(|a, b| {
            (a.first, &a.oil, &a.amount, &a.can, a.last).cmp(&(b.first, &b.oil, &b.amount, &b.can, b.last))
        });
    }
    // A point at which a level was only looked at has left nothing behind.
    for machine in machines.values_mut() {
        machine.contents.retain(|_, contents| !contents.is_never_entered());
    }
    Ok(())
}

/// The last draining of each reservoir.
async fn drains(tx: &Tx, only: Option<&[Id]>, at: Timestamp) -> Result<Vec<Row>> {
    let mut values = values![micros(at)];
    let sql = format!(
        "SELECT e.machine, e.subject, max(e.happened) AS last_time FROM entry e WHERE e.kind = '{}' AND {} \
         AND {} GROUP BY e.machine, e.subject",
        Kind::Drained,
        among("e.machine", only, &mut values),
        living("e")
    );
    tx.all(&sql, values).await
}

/// What was written down as filled into reservoirs since they were last drained.
async fn fills(tx: &Tx, only: Option<&[Id]>, at: Timestamp) -> Result<Vec<Row>> {
    let mut values = values![micros(at)];
    let sql = format!(
        "SELECT e.machine, e.subject, {COLUMNS} FROM entry e WHERE e.kind = '{}' AND {} AND {} AND {} \
         GROUP BY e.machine, e.subject, e.kind, e.body, e.body_version",
        Kind::Filled,
        among("e.machine", only, &mut values),
        living("e"),
        not_drained_since("e.subject")
    );
    tx.all(&sql, values).await
}

/// What was put in where levels are topped up, since the reservoir was last drained, and into greased points.
async fn dosings(tx: &Tx, machines: &BTreeMap<Id, MachineSnapshot>, at: Timestamp) -> Result<Vec<Row>> {
    let mut listed = Vec::new();
    for machine in machines.values() {
        for point in machine.chart.points_here() {
            let of = point.tops_up().or_else(|| point.takes_grease().then_some(&point.id));
            listed.extend(of.map(|of| [&machine.id, &point.id, of].map(Id::to_string)));
        }
    }
    let sql = format!(
        "SELECT p.a AS machine, p.c AS element, {COLUMNS} FROM {} p CROSS JOIN entry e \
         WHERE e.machine = p.a AND e.point = p.b AND e.kind = '{}' AND {} AND {} \
         GROUP BY p.a, p.c, e.kind, e.body, e.body_version",
        words(tx.engine(), "$2"),
        Kind::Dosed,
        living("e"),
        not_drained_since("'machine/' || p.a || '/reservoir/' || p.c")
    );
    tx.all(&sql, values![micros(at), json_of_words(&listed)]).await
}

/// That an entry was recorded by the moment and not superseded by then.
fn living(entry: &str) -> String {
    format!(
        "{entry}.recorded <= $1 AND NOT EXISTS \
         (SELECT 1 FROM entry s WHERE s.supersedes = {entry}.id AND s.recorded <= $1)"
    )
}

/// That no draining of this subject came after the entry `e`.
fn not_drained_since(subject: &str) -> String {
    format!(
        "NOT EXISTS (SELECT 1 FROM entry x WHERE x.machine = e.machine AND x.kind = '{}' AND x.subject = {subject} \
         AND x.happened >= e.happened AND (x.happened, x.id) > (e.happened, e.id) AND {})",
        Kind::Drained,
        living("x")
    )
}

/// The contents that a row about a reservoir is of; nothing for one that is no reservoir of these machines.
fn of_reservoir<'m>(machines: &'m mut BTreeMap<Id, MachineSnapshot>, row: &Row) -> Result<Option<&'m mut Contents>> {
    let subject: String = row.get("subject")?;
    let Ok(Subject::Reservoir(machine, reservoir)) = subject.parse::<Subject>() else { return Ok(None) };
    Ok(machines.get_mut(&machine).map(|machine| machine.contents.entry(reservoir).or_default()))
}

fn put_in(contents: &mut Contents, row: &Row) -> Result<()> {
    let (oil, amount, can) = match body(row)? {
        // Neither an oil nor an amount: the level was looked at and was right.
        Body::Dosed { oil: None, amount: None, .. } => return Ok(()),
        Body::Dosed { oil, amount, can } => (oil, amount, can),
        Body::Filled { oil, amount } => (oil, amount, None),
        other => return Err(row.corrupt(format!("a \"{}\" fills nothing", other.kind()))),
    };
    let (first, last) = (row.instant("first_time")?, row.instant("last_time")?);
    let times = usize::try_from(row.get::<i64>("times")?).unwrap_or_default();
    match contents.fills.iter_mut().find(|fill| fill.oil == oil && fill.amount == amount && fill.can == can) {
        Some(fill) => {
            fill.times += times;
            (fill.first, fill.last) = (fill.first.min(first), fill.last.max(last));
        }
        None => contents.fills.push(Fill { oil, amount, can, times, first, last }),
    }
    Ok(())
}
