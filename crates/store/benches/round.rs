//! How long what a round needs takes to read, for shops of 1, 100 and 10 000 machines with forty points and forty entries each, beside
//! the same rows fetched by SQL alone; in a file, and in a database where the tests' server is there. At the end stands how much our
//! own reading adds. Nothing is asserted about a time.

#![allow(missing_docs)]

#[path = "../tests/server.rs"]
mod server;

use std::collections::BTreeMap;
use std::ffi::OsStr;
use std::fmt;
use std::io::Write as _;
use std::sync::{Mutex, PoisonError};
use std::time::{Duration, Instant};

use divan::{Bencher, black_box};
use jiff::tz::TimeZone;
use jiff::{SignedDuration, Timestamp};
use sea_orm::{ConnectionTrait as _, DatabaseConnection, DbBackend, Statement};
use shop::id::Id;
use shop::logbook::{Body, NewEntry, Subject};
use shop::snapshot::Conditions;
use store::{Address, Settings, Store};
use tempfile::TempDir;
use tokio::runtime::Runtime;
use tribology::quantity::{Time, Units};

use server::{SERVER, TestDatabase, connected};

const POINTS: usize = 40;
const AT: Timestamp = Timestamp::UNIX_EPOCH;

/// What a snapshot fetches: the charts in force, the last acts and the runs. The forty texts of a machine are left out, because a
/// store that is open for a while has read them.
const ROWS: [&str; 3] = [
    "SELECT r.machine, r.number, r.sha256 FROM machine m JOIN chart_revision r ON r.machine = m.id AND r.number = \
     (SELECT max(x.number) FROM chart_revision x WHERE x.machine = m.id)",
    "SELECT e.machine, e.point, e.kind, e.id, e.happened, e.said_by, e.idempotency_key, e.body, e.body_version \
     FROM due d JOIN entry e ON e.id = d.entry",
    "SELECT e.machine, e.id, e.happened, e.kind, e.body, e.body_version FROM entry e WHERE e.kind = 'ran'",
];

/// Which shop is measured.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Case {
    machines: usize,
    place: Place,
}

/// Where it is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Place {
    File,
    Database,
}

/// A shop of so many machines.
struct Shop {
    _folder: TempDir,
    _database: Option<TestDatabase>,
    runtime: Runtime,
    store: Store,
    alone: DatabaseConnection,
}

static SHOPS: Mutex<BTreeMap<Case, &'static Shop>> = Mutex::new(BTreeMap::new());

fn main() {
    divan::main();
    if !measured() {
        return;
    }
    let mut out = std::io::stdout();
    for case in cases() {
        let shop = Shop::of(case);
        let (alone, warm, cold) = (
            quickest(|| shop.rows()),
            quickest(|| shop.snapshot()),
            quickest(|| shop.runtime.block_on(async { first_snapshot(shop.store.address()).await })),
        );
        let ratio = |of: Duration| of.as_secs_f64() / alone.as_secs_f64();
        let line = format!(
            "{case}: SQL alone {alone:.1?}; snapshot {warm:.1?}, {:.1} times that; first snapshot after opening \
             {cold:.1?}, {:.1} times that",
            ratio(warm),
            ratio(cold)
        );
        writeln!(out, "{line}").expect("somebody reads");
    }
}

/// Whether this is `cargo bench`. The tests run each benchmark once, to see that it still runs.
fn measured() -> bool {
    std::env::args().any(|argument| argument == "--bench")
}

fn cases() -> Vec<Case> {
    let sizes = if measured() { vec![1, 100, 10_000] } else { vec![1, 3] };
    let server = std::env::var_os(SERVER).map(|_| Place::Database);
    let of = |place| sizes.iter().map(move |machines| Case { machines: *machines, place });
    std::iter::once(Place::File).chain(server).flat_map(of).collect()
}

impl fmt::Display for Case {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:?} of {:>6} machines", self.place, self.machines)
    }
}

#[divan::bench(args = cases(), sample_count = 5, sample_size = 1)]
fn snapshot(bencher: Bencher<'_, '_>, case: Case) {
    let shop = Shop::of(case);
    assert_eq!(shop.snapshot(), case.machines);
    bencher.bench(|| black_box(shop.snapshot()));
}

#[divan::bench(args = cases(), sample_count = 5, sample_size = 1)]
fn sql_alone(bencher: Bencher<'_, '_>, case: Case) {
    let shop = Shop::of(case);
    // Each machine has a chart, an act at all of its points but one, and a run.
    assert_eq!(shop.rows(), case.machines * (1 + POINTS - 1 + 1));
    bencher.bench(|| black_box(shop.rows()));
}

impl Shop {
    fn of(case: Case) -> &'static Self {
        let mut shops = SHOPS.lock().unwrap_or_else(PoisonError::into_inner);
        shops.entry(case).or_insert_with(|| Box::leak(Box::new(Self::made(case))))
    }

    fn made(Case { machines: size, place }: Case) -> Self {
        let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().expect("a runtime");
        let folder = TempDir::new().expect("a temporary folder");
        let path = folder.path().join("shop");
        let (database, store, alone) = runtime.block_on(async {
            let database = match place {
                Place::File => None,
                Place::Database => Some(TestDatabase::new().await),
            };
            let url = database.as_ref().map_or_else(|| format!("sqlite:{}", path.display()), TestDatabase::address);
            let at = match place {
                Place::File => Address::from(&path),
                Place::Database => Address::read(OsStr::new(&url)).expect("an address"),
            };
            let store = Store::create(at, &settings(), AT).await.expect("a free place");
            for number in 0..size {
                store.add_chart(&machine(number), &chart(number), AT, "keeper").await.expect("a chart without faults");
            }
            for number in (0..size).step_by(250) {
                let entries: Vec<NewEntry> = (number..(number + 250).min(size)).flat_map(entries).collect();
                store.record(&entries).await.expect("entries that can be kept");
            }
            let alone = connected(&url).await;
            if alone.get_database_backend() == DbBackend::Postgres {
                alone.execute_unprepared("SET search_path = oilwright").await.expect("SQL");
            }
            (database, store, alone)
        });
        Self { _folder: folder, _database: database, runtime, store, alone }
    }

    fn snapshot(&self) -> usize {
        self.runtime.block_on(async { self.store.snapshot(later()).await.expect("a whole file").machines.len() })
    }

    fn rows(&self) -> usize {
        let backend = self.alone.get_database_backend();
        self.runtime.block_on(async {
            let mut count = 0;
            for sql in ROWS {
                let rows = self.alone.query_all_raw(Statement::from_string(backend, sql)).await;
                count += rows.expect("a whole file").len();
            }
            count
        })
    }
}

async fn first_snapshot(at: &Address) -> usize {
    let store = Store::open(at).await.expect("a whole file");
    let machines = store.snapshot(later()).await.expect("a whole file").machines.len();
    store.close().await.expect("it closes");
    machines
}

fn quickest<T>(mut what: impl FnMut() -> T) -> Duration {
    let one = |_| {
        let start = Instant::now();
        black_box(what());
        start.elapsed()
    };
    (0..3).map(one).min().unwrap_or_default()
}

fn settings() -> Settings {
    Settings {
        name: "Mill shop".to_owned(),
        zone: TimeZone::UTC,
        units: Units::Metric,
        hours: Time::from_hours(8.0),
        conditions: Conditions::default(),
    }
}

fn later() -> Timestamp {
    AT + SignedDuration::from_hours(24)
}

fn machine(number: usize) -> Id {
    Id::new(&format!("m{number}")).expect("a letter and digits")
}

fn chart(number: usize) -> String {
    let mut text = format!("chart = 1\n\n[machine]\nname = \"Lathe {number}\"\nkind = \"lathe\"\n");
    for point in 0..POINTS {
        text.push_str(&format!(
            "\n[[point]]\nid = \"p{point}\"\nname = \"Point {point}\"\nmethod = \"oil hole\"\nwhere = \"behind the cover\"\n\
             dose = \"3 drops\"\nevery = [\"1 use\", \"4 h\"]\nsign = \"oil sinks within a minute\"\n"
        ));
    }
    text
}

/// Oil at all points but one, and a run: forty entries.
fn entries(number: usize) -> Vec<NewEntry> {
    let entry = |key: usize, subject, body| NewEntry {
        happened: AT + SignedDuration::from_secs(key as i64),
        recorded: AT + SignedDuration::from_secs(key as i64),
        zone: "UTC".to_owned(),
        by: "keeper".to_owned(),
        subject,
        body,
        supersedes: None,
        idempotency_key: format!("{number}/{key}"),
    };
    let dosed = (0..POINTS - 1).map(|point| {
        let id = Id::new(&format!("p{point}")).expect("a letter and digits");
        let amount = Some("3 drops".to_owned());
        entry(point, Subject::Point(machine(number), id), Body::Dosed { oil: None, can: None, amount })
    });
    let ran = Body::Ran { hours: Time::from_hours(1.0), job: None };
    dosed.chain([entry(POINTS, Subject::Machine(machine(number)), ran)]).collect()
}
