//! Fills the snapshot that the reasoning borrows: a fixed number of statements, however many machines.

mod contents;

use std::collections::{BTreeMap, HashMap};

use jiff::Timestamp;
use shop::chart::Chart;
use shop::id::Id;
use shop::logbook::{Body, EntryId, Kind};
use shop::snapshot::{MachineSnapshot, Mark, Moment, PointHistory, Run, ShopSnapshot};

use crate::db::{Row, Tx, Value, json_of_pairs, micros, pairs, places, values};
use crate::error::Result;
use crate::store::Store;
use crate::{chart, due, logbook, settings, shelf};

/// Where the last acts are taken from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Source {
    /// The projection: what is so now.
    Projection,
    /// The logbook: what was so at the moment.
    Logbook,
}

impl Store {
    /// The whole shop at an instant: only what was recorded by then.
    ///
    /// # Errors
    /// [`Error::Corrupt`](crate::Error::Corrupt) when something in the file cannot be read.
    pub async fn snapshot(&self, at: Timestamp) -> Result<ShopSnapshot> {
        let tx = self.db.read().await?;
        let snapshot = taken(&tx, &self.charts, None, at).await?;
        tx.commit().await?;
        Ok(snapshot)
    }

    /// The shop at an instant with only these of its machines.
    ///
    /// # Errors
    /// [`Error::NotFound`](crate::Error::NotFound) when one of them was not there then.
    pub async fn snapshot_of(&self, machines: &[Id], at: Timestamp) -> Result<ShopSnapshot> {
        let tx = self.db.read().await?;
        let snapshot = taken(&tx, &self.charts, Some(machines), at).await?;
        tx.commit().await?;
        match machines.iter().find(|id| snapshot.machine(id).is_none()) {
            Some(missing) => Err(chart::unknown(missing)),
            None => Ok(snapshot),
        }
    }
}

async fn taken(tx: &Tx, charts: &chart::Memory, only: Option<&[Id]>, at: Timestamp) -> Result<ShopSnapshot> {
    let later = "SELECT count(*) AS later FROM (SELECT 1 FROM entry WHERE recorded > $1 LIMIT 1) one";
    let later = tx.one(later, values![micros(at)]).await?.map_or(Ok(0), |row| row.get::<i64>("later"))?;
    let source = if later == 0 { Source::Projection } else { Source::Logbook };
    taken_from(tx, charts, source, only, at).await
}

/// The snapshot with its last acts from a given source. The projection only serves when nothing was recorded later.
pub(crate) async fn taken_from(
    tx: &Tx,
    charts: &chart::Memory,
    source: Source,
    only: Option<&[Id]>,
    at: Timestamp,
) -> Result<ShopSnapshot> {
    let settings = settings::in_force(tx, at).await?;
    let shelf = shelf::in_force(tx, at).await?;
    let mut machines = charted(tx, charts, only, at).await?;
    for row in acts(tx, source, only, at).await? {
        if let Some(machine) = machines.get_mut(&row.id("machine")?) {
            note(machine.points.entry(row.id("point")?).or_default(), &row)?;
        }
    }
    for row in runs(tx, &machines, at).await? {
        if let Some(machine) = machines.get_mut(&row.id("machine")?) {
            machine.runs.push(run(&row)?);
        }
    }
    contents::fill_in(tx, &mut machines, only, at).await?;
    Ok(ShopSnapshot {
        moment: Moment { instant: at, zone: settings.zone },
        conditions: settings.conditions,
        shelf,
        machines: machines.into_values().collect(),
    })
}

/// The machines with the chart then in force and nothing logged yet. Only texts that were not read before are fetched.
async fn charted(
    tx: &Tx,
    charts: &chart::Memory,
    only: Option<&[Id]>,
    at: Timestamp,
) -> Result<BTreeMap<Id, MachineSnapshot>> {
    let mut values = values![micros(at)];
    let sql = format!(
        "SELECT r.machine, r.number, r.sha256 FROM machine m JOIN chart_revision r ON r.machine = m.id AND r.number = \
         (SELECT max(x.number) FROM chart_revision x WHERE x.machine = m.id AND x.recorded <= $1) WHERE {}",
        among("m.id", only, &mut values)
    );
    let rows = tx.all(&sql, values).await?;
    let (mut known, mut unknown) = (HashMap::new(), BTreeMap::new());
    for row in &rows {
        let print: String = row.get("sha256")?;
        match charts.chart(&print) {
            Some(chart) => drop(known.insert(print, chart)),
            None => drop(unknown.insert(print, (row.get::<String>("machine")?, row.get::<i64>("number")?))),
        }
    }
    let unknown: Vec<(String, i64)> = unknown.into_values().collect();
    let sql = format!(
        "SELECT r.machine, r.number, r.sha256, r.text FROM {} p \
         CROSS JOIN chart_revision r WHERE r.machine = p.word AND r.number = p.whole",
        pairs(tx.engine(), "$1")
    );
    for row in tx.all(&sql, values![json_of_pairs(&unknown)]).await? {
        let (machine, number, print): (String, i64, String) =
            (row.get("machine")?, row.get("number")?, row.get("sha256")?);
        let chart = charts.read(&print, &row.get::<String>("text")?).ok_or_else(|| {
            row.corrupt(format!(
                "revision {number} of the chart of \"{machine}\" cannot be read, or is not what was kept"
            ))
        })?;
        known.insert(print, chart);
    }
    let mut machines = BTreeMap::new();
    for row in &rows {
        let (id, revision, print) = (row.id("machine")?, row.get("number")?, row.get::<String>("sha256")?);
        let chart = known.get(&print).ok_or_else(|| row.corrupt(format!("the chart of \"{id}\" is gone")))?;
        let (chart, points, runs, contents) = (Chart::clone(chart), BTreeMap::new(), Vec::new(), BTreeMap::new());
        machines.insert(id.clone(), MachineSnapshot { id, revision, chart, points, runs, contents });
    }
    Ok(machines)
}

/// The last living act of each kind at each point.
async fn acts(tx: &Tx, source: Source, only: Option<&[Id]>, at: Timestamp) -> Result<Vec<Row>> {
    const COLUMNS: &str =
        "e.machine, e.point, e.kind, e.id, e.happened, e.said_by, e.idempotency_key, e.body, e.body_version";
    match source {
        Source::Projection => {
            let mut values = values![];
            let among = among("d.machine", only, &mut values);
            let sql = format!("SELECT {COLUMNS} FROM due d JOIN entry e ON e.id = d.entry WHERE {among}");
            tx.all(&sql, values).await
        }
        Source::Logbook => {
            let mut values = values![micros(at)];
            let sql = format!(
                "SELECT {COLUMNS} FROM \
                 (SELECT DISTINCT machine, point, kind FROM entry WHERE kind IN ({}) AND point IS NOT NULL AND {}) k \
                 JOIN entry e ON e.id = (SELECT x.id FROM entry x \
                 WHERE x.machine = k.machine AND x.point = k.point AND x.kind = k.kind AND x.recorded <= $1 \
                 AND NOT EXISTS (SELECT 1 FROM entry s WHERE s.supersedes = x.id AND s.recorded <= $1) \
                 ORDER BY x.happened DESC, x.id DESC LIMIT 1)",
                due::acts_in_sql(),
                among("machine", only, &mut values)
            );
            tx.all(&sql, values).await
        }
    }
}

/// The living runs of each machine since the oldest of the last dosings at the points of its chart. A point that was never dosed
/// is due anyway and needs none; one that is no longer on the chart needs none either.
async fn runs(tx: &Tx, machines: &BTreeMap<Id, MachineSnapshot>, at: Timestamp) -> Result<Vec<Row>> {
    let oldest = |machine: &MachineSnapshot| {
        let dosings = machine.chart.points_here().filter_map(|point| machine.points.get(&point.id)?.dosed.as_ref());
        dosings.map(|mark| mark.happened).min()
    };
    let since: Vec<(&str, i64)> =
        machines.iter().filter_map(|(id, machine)| oldest(machine).map(|from| (id.as_str(), micros(from)))).collect();
    let sql = format!(
        "SELECT e.machine, e.id, e.happened, e.kind, e.body, e.body_version FROM {} p \
         CROSS JOIN entry e WHERE e.machine = p.word AND e.kind = '{}' AND e.happened >= p.whole \
         AND e.recorded <= $1 AND NOT EXISTS (SELECT 1 FROM entry s WHERE s.supersedes = e.id AND s.recorded <= $1) \
         ORDER BY e.machine, e.happened, e.id",
        pairs(tx.engine(), "$2"),
        Kind::Ran
    );
    tx.all(&sql, values![micros(at), json_of_pairs(&since)]).await
}

fn note(history: &mut PointHistory, row: &Row) -> Result<()> {
    let mark = Mark {
        entry: EntryId(row.get("id")?),
        happened: row.instant("happened")?,
        by: row.get("said_by")?,
        key: row.get("idempotency_key")?,
    };
    match body(row)? {
        Body::Dosed { .. } => history.dosed = Some(mark),
        Body::SignSeen { .. } => history.sign_seen = Some(mark),
        Body::SignMissing { .. } => history.sign_missing = Some(mark),
        Body::NotReached { reason } => history.not_reached = Some((mark, reason)),
        other => return Err(row.corrupt(format!("entry {}: a \"{}\" is no act at a point", mark.entry, other.kind()))),
    }
    Ok(())
}

fn run(row: &Row) -> Result<Run> {
    match body(row)? {
        Body::Ran { hours, job } => Ok(Run { happened: row.instant("happened")?, hours, job }),
        other => Err(row.corrupt(format!("a \"{}\" is no run", other.kind()))),
    }
}

fn body(row: &Row) -> Result<Body> {
    let (id, json): (i64, String) = (row.get("id")?, row.get("body")?);
    let body = logbook::read_body(row.choice("kind")?, row.get("body_version")?, &json);
    body.map_err(|what| row.corrupt(format!("entry {id}: {what}")))
}

/// A condition that holds for these machines, or for all.
fn among(column: &str, only: Option<&[Id]>, values: &mut Vec<Value>) -> String {
    match only {
        None => "1 = 1".to_owned(),
        Some([]) => "1 = 0".to_owned(),
        Some(ids) => {
            let first = values.len() + 1;
            values.extend(ids.iter().map(|id| Value::from(id.as_str())));
            format!("{column} IN ({})", places(first, ids.len()))
        }
    }
}
