//! A small invented shop in a folder of its own, and the words in which the tests speak of it.

use std::path::{Path, PathBuf};

use ::shop::id::Id;
use ::shop::logbook::{Body, Entry, EntryId, NewEntry, Subject};
use ::shop::snapshot::Conditions;
use jiff::tz::TimeZone;
use jiff::{SignedDuration, Timestamp};
use sea_orm::{ConnectOptions, ConnectionTrait, Database, DatabaseConnection};
use store::{Settings, Store};
use tempfile::TempDir;
use tribology::quantity::{Temperature, Time, Units};

/// A chart with three points, of which the last belongs to another way of building the machine.
pub(crate) const CHART: &str = r#"chart = 1

[machine]
name = "20-inch crank shaper"
kind = "shaper"

[[option]]
id = "ram-oiling"
question = "Is there a hand plunger pump low on the operator's side?"
choices = ["oil holes", "plunger pump"]
here = "oil holes"

[[point]]
id = "1"
name = "Ram way"
method = "oil hole"
every = ["4 h"]

[[point]]
id = "2"
name = "Clapper pin"
method = "oil hole"

[[point]]
id = "3"
name = "Plunger pump"
method = "one-shot"
when = { ram-oiling = "plunger pump" }
"#;

/// A shop's file in a folder that goes away with it.
pub(crate) struct Shop {
    pub(crate) folder: TempDir,
    pub(crate) store: Store,
}

impl Shop {
    /// A shop without machines, created at minute zero.
    pub(crate) async fn empty() -> Self {
        let folder = TempDir::new().expect("the tests may write to a temporary folder");
        let store = Store::create(&folder.path().join("shop.db"), &settings(), minute(0)).await.expect("a free name");
        Self { folder, store }
    }

    /// A shop with these machines, each with the chart above, added at minute zero.
    pub(crate) async fn with(machines: &[&str]) -> Self {
        let shop = Self::empty().await;
        for machine in machines {
            shop.store.add_chart(&id(machine), CHART, minute(0), "keeper").await.expect("a chart without faults");
        }
        shop
    }

    /// The file.
    pub(crate) fn path(&self) -> PathBuf {
        self.folder.path().join("shop.db")
    }

    /// Keeps one entry.
    pub(crate) async fn record(&self, entry: NewEntry) -> EntryId {
        let ids = self.store.record(&[entry]).await.expect("an entry that can be kept");
        ids[0]
    }

    /// Reads one entry.
    pub(crate) async fn entry(&self, id: EntryId) -> Entry {
        self.store.entry(id).await.expect("an entry that is kept")
    }
}

pub(crate) fn settings() -> Settings {
    Settings {
        name: "Mill shop".to_owned(),
        zone: TimeZone::get("Etc/GMT-1").expect("a zone of the bundled table"),
        units: Units::Metric,
        hours: Time::from_hours(7.5),
        conditions: Conditions { cold: Some(Temperature::from_celsius(5.0)), usual: None, warm: None },
    }
}

/// So many minutes after the shop was created.
pub(crate) fn minute(minutes: i64) -> Timestamp {
    let start: Timestamp = "2026-03-02T08:00:00Z".parse().expect("an instant as RFC 3339 writes it");
    start + SignedDuration::from_mins(minutes)
}

pub(crate) fn id(text: &str) -> Id {
    Id::new(text).expect("an id that the test chose well")
}

pub(crate) fn point(machine: &str, point: &str) -> Subject {
    Subject::Point(id(machine), id(point))
}

/// An entry that happened at a minute and was recorded at once.
pub(crate) fn entry(at: i64, key: &str, subject: Subject, body: Body) -> NewEntry {
    NewEntry {
        happened: minute(at),
        recorded: minute(at),
        zone: "Etc/GMT-1".to_owned(),
        by: "helper".to_owned(),
        subject,
        body,
        supersedes: None,
        idempotency_key: key.to_owned(),
    }
}

/// Oil given at a point of the machine `m`.
pub(crate) fn dosed(at: i64, key: &str, at_point: &str) -> NewEntry {
    entry(at, key, point("m", at_point), Body::Dosed { oil: None, can: None, amount: None })
}

/// The machine `m` ran for an hour.
pub(crate) fn ran(at: i64, key: &str) -> NewEntry {
    entry(at, key, Subject::Machine(id("m")), Body::Ran { hours: Time::from_hours(1.0), job: None })
}

/// The withdrawal of an entry.
pub(crate) fn withdrawn(at: i64, key: &str, of: EntryId, subject: Subject) -> NewEntry {
    NewEntry { supersedes: Some(of), ..entry(at, key, subject, Body::Withdrawn) }
}

/// A connection of another program to a file, with nothing of ours set on it.
pub(crate) async fn stranger(path: &Path) -> DatabaseConnection {
    let url = format!("sqlite:{}?mode=rwc", path.display());
    let mut options = ConnectOptions::new(url);
    options.max_connections(1).sqlx_logging(false);
    Database::connect(options).await.expect("SQLite takes the file")
}

/// Runs a statement as another program; the error as text.
pub(crate) async fn tamper(path: &Path, sql: &str) -> Result<u64, String> {
    let connection = stranger(path).await;
    let done = connection.execute_unprepared(sql).await;
    connection.close().await.expect("a connection closes");
    done.map(|done| done.rows_affected()).map_err(|error| error.to_string())
}
