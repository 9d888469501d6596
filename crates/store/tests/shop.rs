//! A small invented shop in a folder or a database of its own, and the words in which the tests speak of it.

use std::ffi::OsStr;
use std::path::{Path, PathBuf};

use ::shop::id::Id;
use ::shop::logbook::{Body, Entry, EntryId, NewEntry, Subject};
use ::shop::snapshot::Conditions;
use jiff::tz::TimeZone;
use jiff::{SignedDuration, Timestamp};
use sea_orm::{ConnectionTrait as _, DatabaseConnection};
use store::{Address, Settings, Store};
use tempfile::TempDir;
use tribology::quantity::{Temperature, Time, Units};

use crate::server::{TestDatabase, connected};

/// Where the shops of a test binary are kept: all its tests run on one of the two.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Engine {
    Sqlite,
    Postgres,
}

/// The one of this binary.
pub(crate) const ENGINE: Engine = match env!("CARGO_CRATE_NAME").as_bytes() {
    b"postgres" => Engine::Postgres,
    _ => Engine::Sqlite,
};

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

/// A place for a shop, and a folder for what a test writes beside it. Both go away with it.
pub(crate) struct Shop {
    pub(crate) folder: TempDir,
    pub(crate) store: Store,
    database: Option<TestDatabase>,
}

impl Shop {
    /// A shop without machines, created at minute zero.
    pub(crate) async fn empty() -> Self {
        let folder = TempDir::new().expect("the tests may write to a temporary folder");
        let database = match ENGINE {
            Engine::Sqlite => None,
            Engine::Postgres => Some(TestDatabase::new().await),
        };
        let at =
            database.as_ref().map_or_else(|| folder.path().join("shop.db").into(), |database| of(&database.address()));
        let store = Store::create(at, &settings(), minute(0)).await.expect("a free place");
        Self { folder, store, database }
    }

    /// A shop with these machines, each with the chart above, added at minute zero.
    pub(crate) async fn with(machines: &[&str]) -> Self {
        let shop = Self::empty().await;
        for machine in machines {
            shop.store.add_chart(&id(machine), CHART, minute(0), "keeper").await.expect("a chart without faults");
        }
        shop
    }

    /// Where it is.
    pub(crate) fn address(&self) -> Address {
        self.store.address().clone()
    }

    /// The address of its database, with the password.
    pub(crate) fn secret_address(&self) -> String {
        self.database.as_ref().map(TestDatabase::address).expect("a shop in a database")
    }

    /// A name for something beside it.
    pub(crate) fn beside(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// Runs a statement as another program; how many rows it changed, or the error as text.
    pub(crate) async fn tamper(&self, sql: &str) -> Result<u64, String> {
        match ENGINE {
            Engine::Sqlite => run(stranger(&self.beside("shop.db")).await, sql).await,
            Engine::Postgres => {
                let connection = connected(&self.secret_address()).await;
                connection.execute_unprepared("SET search_path = oilwright").await.expect("SQL");
                run(connection, sql).await
            }
        }
    }

    /// The same, with the triggers out of its way that hold other programs to what we promise.
    pub(crate) async fn force(&self, table: &str, sql: &str) {
        let (off, on) = match ENGINE {
            Engine::Sqlite => {
                let drop = |what: &str| format!("DROP TRIGGER IF EXISTS {table}_is_never_{what};");
                (format!("PRAGMA foreign_keys = OFF; {} {}", drop("changed"), drop("removed")), String::new())
            }
            // What is not as a reference wants it is not looked at again when the triggers are back.
            Engine::Postgres => (
                format!("ALTER TABLE {table} DISABLE TRIGGER ALL;"),
                format!("; ALTER TABLE {table} ENABLE TRIGGER ALL"),
            ),
        };
        self.tamper(&format!("{off} {sql}{on}")).await.expect("SQL");
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

/// The address that a text spells.
pub(crate) fn of(text: &str) -> Address {
    Address::read(OsStr::new(text)).expect("an address")
}

/// Bytes as the engine's SQL writes them.
pub(crate) fn hex(bytes: &[u8]) -> String {
    let digits: String = bytes.iter().map(|byte| format!("{byte:02x}")).collect();
    match ENGINE {
        Engine::Sqlite => format!("x'{digits}'"),
        Engine::Postgres => format!("'\\x{digits}'"),
    }
}

/// A connection of another program to a file, with nothing of ours set on it.
pub(crate) async fn stranger(path: &Path) -> DatabaseConnection {
    connected(&format!("sqlite:{}?mode=rwc", path.display())).await
}

/// Runs a statement on a connection and closes it; how many rows it changed, or the error as text.
pub(crate) async fn run(connection: DatabaseConnection, sql: &str) -> Result<u64, String> {
    let done = connection.execute_unprepared(sql).await;
    connection.close().await.expect("a connection closes");
    done.map(|done| done.rows_affected()).map_err(|error| error.to_string())
}
