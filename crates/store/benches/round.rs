//! How long what a round needs takes to read, for shops of 1, 100 and 10 000 machines with forty points and forty entries each, beside
//! the same rows fetched by SQL alone. At the end stands how much our own reading adds. Nothing is asserted about a time.

#![allow(missing_docs)]

use std::collections::BTreeMap;
use std::io::Write as _;
use std::path::Path;
use std::sync::{Mutex, PoisonError};
use std::time::{Duration, Instant};

use divan::{Bencher, black_box};
use jiff::tz::TimeZone;
use jiff::{SignedDuration, Timestamp};
use sea_orm::{ConnectOptions, ConnectionTrait as _, Database, DatabaseConnection, Statement};
use shop::id::Id;
use shop::logbook::{Body, NewEntry, Subject};
use shop::snapshot::Conditions;
use store::{Settings, Store};
use tempfile::TempDir;
use tokio::runtime::Runtime;
use tribology::quantity::{Time, Units};

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

/// A shop of so many machines.
struct Shop {
    _folder: TempDir,
    runtime: Runtime,
    store: Store,
    alone: DatabaseConnection,
}

static SHOPS: Mutex<BTreeMap<usize, &'static Shop>> = Mutex::new(BTreeMap::new());

fn main() {
    divan::main();
    if !measured() {
        return;
    }
    let mut out = std::io::stdout();
    for size in sizes() {
        let shop = Shop::of(size);
        let (alone, warm, cold) = (
            quickest(|| shop.rows()),
            quickest(|| shop.snapshot()),
            quickest(|| shop.runtime.block_on(async { first_snapshot(shop.store.path()).await })),
        );
        let ratio = |of: Duration| of.as_secs_f64() / alone.as_secs_f64();
        let line = format!(
            "{size:>6} machines: SQL alone {alone:.1?}; snapshot {warm:.1?}, {:.1} times that; first snapshot after opening \
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

fn sizes() -> Vec<usize> {
    if measured() { vec![1, 100, 10_000] } else { vec![1, 3] }
}

#[divan::bench(args = sizes(), sample_count = 5, sample_size = 1)]
fn snapshot(bencher: Bencher<'_, '_>, size: usize) {
    let shop = Shop::of(size);
    assert_eq!(shop.snapshot(), size);
    bencher.bench(|| black_box(shop.snapshot()));
}

#[divan::bench(args = sizes(), sample_count = 5, sample_size = 1)]
fn sql_alone(bencher: Bencher<'_, '_>, size: usize) {
    let shop = Shop::of(size);
    // Each machine has a chart, an act at all of its points but one, and a run.
    assert_eq!(shop.rows(), size * (1 + POINTS - 1 + 1));
    bencher.bench(|| black_box(shop.rows()));
}

impl Shop {
    fn of(size: usize) -> &'static Self {
        let mut shops = SHOPS.lock().unwrap_or_else(PoisonError::into_inner);
        shops.entry(size).or_insert_with(|| Box::leak(Box::new(Self::made(size))))
    }

    fn made(size: usize) -> Self {
        let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().expect("a runtime");
        let folder = TempDir::new().expect("a temporary folder");
        let path = folder.path().join("shop");
        let (store, alone) = runtime.block_on(async {
            let store = Store::create(&path, &settings(), AT).await.expect("a free name");
            for number in 0..size {
                store.add_chart(&machine(number), &chart(number), AT, "keeper").await.expect("a chart without faults");
            }
            for number in (0..size).step_by(250) {
                let entries: Vec<NewEntry> = (number..(number + 250).min(size)).flat_map(entries).collect();
                store.record(&entries).await.expect("entries that can be kept");
            }
            let mut options = ConnectOptions::new(format!("sqlite:{}", path.display()));
            options.max_connections(1).sqlx_logging(false);
            (store, Database::connect(options).await.expect("a whole file"))
        });
        Self { _folder: folder, runtime, store, alone }
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

async fn first_snapshot(path: &Path) -> usize {
    let store = Store::open(path).await.expect("a whole file");
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
