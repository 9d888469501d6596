//! A program that writes the logbook, of a file and of a database, is killed at any moment, some hundred times, and no entry that it was
//! told is kept may be lost or kept twice. `cargo xtask kills` kills oftener. `limits` does what else wants a program of its own. This
//! binary is its own child: with a shop's address in `OILWRIGHT_KILLED_CHILD` it writes until it is killed. It has its own `main` so
//! that nothing of a test runner stands in the child's way.
//!
//! The kill is the system's: it takes the program and leaves the system, whose memory of what was written survives, and the server. So
//! this says nothing about a power loss; see the crate's page for what is promised there.

#[cfg(unix)]
mod limits;
mod server;

use std::collections::BTreeMap;
use std::ffi::{OsStr, OsString};
use std::io::{BufRead as _, BufReader, Write as _};
use std::process::{Command, Stdio};

use jiff::Timestamp;
use jiff::tz::TimeZone;
use sea_orm::{ConnectionTrait as _, Statement};
use shop::id::Id;
use shop::logbook::{Body, EntryId, NewEntry, Subject};
use shop::snapshot::Conditions;
use store::{Address, Settings, Store, Superseded, Wanted};
use tempfile::TempDir;
use tribology::quantity::{Time, Units};

use server::{TestDatabase, connected};

const CHILD: &str = "OILWRIGHT_KILLED_CHILD";
/// How many kills one shop lives through: each looks through the whole file, so that longer ones cost the square.
const PER_FILE: usize = 50;
const CHART: &str =
    "chart = 1\n[machine]\nname = \"Drill\"\n[[point]]\nid = \"1\"\nname = \"Quill\"\nmethod = \"cup\"\n";

const ON_A_FILE: &str = "what_was_acknowledged_survives_any_kill";
const ON_A_SERVER: &str = "what_was_acknowledged_survives_any_kill_on_a_server";

/// The tests, as a runner would list them.
#[cfg(unix)]
const TESTS: [&str; 6] = [
    ON_A_FILE,
    ON_A_SERVER,
    "a_disk_that_is_full_at_any_place_leaves_what_was_there",
    "a_folder_that_takes_no_files_is_said_to",
    "two_programs_write_one_file_and_nothing_is_lost",
    "what_a_killed_backup_leaves_is_swept_by_the_next",
];
#[cfg(not(unix))]
const TESTS: [&str; 2] = [ON_A_FILE, ON_A_SERVER];

fn main() {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().expect("a runtime");
    if let Some(address) = std::env::var_os(CHILD) {
        return runtime.block_on(write_until_killed(&address));
    }
    #[cfg(unix)]
    if let Ok(deed) = std::env::var(limits::DEED) {
        return runtime.block_on(limits::child(&deed));
    }
    // A runner that wants the list says in which form, as `--format terse`; that word is the name of no test.
    let words: Vec<String> = std::env::args().skip(1).filter(|word| word != "terse").collect();
    let (flags, names): (Vec<String>, Vec<String>) = words.into_iter().partition(|word| word.starts_with('-'));
    let has = |flag: &str| flags.iter().any(|given| given == flag);
    let wanted = |test: &str| {
        let named = |name: &String| if has("--exact") { name == test } else { test.contains(name.as_str()) };
        !has("--ignored") && (names.is_empty() || names.iter().any(named))
    };
    for test in TESTS.into_iter().filter(|test| wanted(test)) {
        if has("--list") {
            writeln!(std::io::stdout(), "{test}: test").expect("somebody reads the list");
            continue;
        }
        runtime.block_on(async {
            match test {
                #[cfg(unix)]
                "a_disk_that_is_full_at_any_place_leaves_what_was_there" => {
                    limits::a_disk_that_is_full_at_any_place_leaves_what_was_there().await;
                }
                #[cfg(unix)]
                "a_folder_that_takes_no_files_is_said_to" => limits::a_folder_that_takes_no_files_is_said_to().await,
                #[cfg(unix)]
                "what_a_killed_backup_leaves_is_swept_by_the_next" => {
                    limits::what_a_killed_backup_leaves_is_swept_by_the_next().await;
                }
                #[cfg(unix)]
                "two_programs_write_one_file_and_nothing_is_lost" => {
                    limits::two_programs_write_one_file_and_nothing_is_lost().await;
                }
                ON_A_SERVER => what_was_acknowledged_survives_any_kill(Place::on_a_server, 60).await,
                _ => what_was_acknowledged_survives_any_kill(Place::on_a_file, 200).await,
            }
        });
        writeln!(std::io::stdout(), "test {test} ... ok").expect("somebody reads");
    }
}

/// The child: keeps one act of one to three entries after the other and says each on a line once it is kept.
async fn write_until_killed(address: &OsStr) {
    let store = Store::open(at(address)).await.expect("a whole shop, whatever became of the last writer");
    let life = store.entries(&Wanted { most: usize::MAX, ..Wanted::default() }).await.expect("a whole file").len();
    for act in 0_usize.. {
        let entries: Vec<NewEntry> = (0..=act % 3).map(|number| entry(&format!("{life}-{act}/{number}"))).collect();
        let ids = store.record(&entries).await.expect("nothing else writes");
        let said: String =
            ids.iter().zip(&entries).map(|(id, entry)| format!("{id} {} ", entry.idempotency_key)).collect();
        let mut out = std::io::stdout().lock();
        if writeln!(out, "{said}.").and_then(|()| out.flush()).is_err() {
            return;
        }
    }
}

/// Where the shop of the writers is, in the words by which they are told.
struct Place {
    address: OsString,
    _folder: TempDir,
    database: Option<TestDatabase>,
}

impl Place {
    async fn on_a_file() -> Self {
        let folder = TempDir::new().expect("a temporary folder");
        Self { address: folder.path().join("shop.db").into(), _folder: folder, database: None }
    }

    async fn on_a_server() -> Self {
        let (folder, database) = (TempDir::new().expect("a temporary folder"), TestDatabase::new().await);
        Self { address: database.address().into(), _folder: folder, database: Some(database) }
    }
}

impl Place {
    /// Waits until the server has done with the last word of a writer that is gone: what came before its end is carried out, or not,
    /// only now.
    async fn alone(&self) {
        let Some(database) = &self.database else { return };
        let watch = connected(&database.address()).await;
        let others = "SELECT 1 FROM pg_stat_activity WHERE datname = current_database() AND pid <> pg_backend_pid()";
        let others = Statement::from_string(watch.get_database_backend(), others);
        while !watch.query_all_raw(others.clone()).await.expect("SQL").is_empty() {
            tokio::task::yield_now().await;
        }
        watch.close().await.expect("it closes");
    }
}

fn at(address: &OsStr) -> Address {
    Address::read(address).expect("an address")
}

/// The parent.
async fn what_was_acknowledged_survives_any_kill(place: impl AsyncFn() -> Place, usual: usize) {
    let kills = std::env::var("OILWRIGHT_KILLS").map_or(usual, |count| count.parse().expect("a count, such as 10000"));
    let mut chance = Chance(20_261_125);
    let (mut left, mut acknowledged, mut unsaid) = (kills, 0, 0);
    while left > 0 {
        let place = place().await;
        let store = Store::create(at(&place.address), &settings(), Timestamp::UNIX_EPOCH).await.expect("a free place");
        store.add_chart(&id("m"), CHART, Timestamp::UNIX_EPOCH, "keeper").await.expect("a chart without faults");
        store.close().await.expect("it closes");
        let mut told = BTreeMap::new();
        for _ in 0..left.min(PER_FILE) {
            let before = told.len();
            killed(&place.address, &mut chance, &mut told);
            place.alone().await;
            acknowledged += told.len() - before;
            unsaid += looked_at(&place.address, &mut told).await;
        }
        left -= left.min(PER_FILE);
    }
    writeln!(std::io::stderr(), "{kills} kills, {acknowledged} entries acknowledged, {unsaid} kept and not yet said")
        .expect("somebody reads");
    assert!(acknowledged > kills, "the child was killed before it could write anything worth losing");
}

/// Lets a child write and kills it at a moment by chance; notes what it said was kept.
fn killed(address: &OsStr, chance: &mut Chance, told: &mut BTreeMap<String, EntryId>) {
    let this = std::env::current_exe().expect("the system knows what runs");
    let mut child = Command::new(this).env(CHILD, address).stdout(Stdio::piped()).spawn().expect("this binary runs");
    let mut lines = BufReader::new(child.stdout.take().expect("it was asked for")).lines();
    let mut said = Vec::new();
    // Some are killed while they open the file, most at some act.
    for _ in 0..chance.below(9) {
        said.push(lines.next().expect("it writes until it is killed").expect("text"));
    }
    for _ in 0..chance.below(200_000) {
        std::hint::spin_loop();
    }
    child.kill().expect("a child of ours");
    child.wait().expect("a child of ours");
    // What it said before it died is still in the pipe; a line without its end was not said.
    said.extend(lines.map_while(Result::ok).filter(|line| line.ends_with('.')));
    for line in said {
        let words: Vec<&str> = line.trim_end_matches('.').split_whitespace().collect();
        for pair in words.chunks_exact(2) {
            let number = EntryId(pair[0].parse().expect("a number"));
            assert_eq!(told.insert(pair[1].to_owned(), number), None, "said twice");
        }
    }
}

/// Opens the shop again and holds it against what was said. At most the one act that was under way may be there unsaid, whole; how
/// many entries that is.
async fn looked_at(address: &OsStr, told: &mut BTreeMap<String, EntryId>) -> usize {
    let store = Store::open(at(address)).await.expect("a killed writer leaves a whole shop");
    let all = Wanted { most: usize::MAX, superseded: Superseded::Shown, ..Wanted::default() };
    let entries = store.entries(&all).await.expect("a whole file");
    let kept: BTreeMap<String, EntryId> =
        entries.iter().map(|entry| (entry.said.idempotency_key.clone(), entry.id)).collect();
    assert_eq!(kept.len(), entries.len(), "an entry is kept twice");
    for (key, number) in &*told {
        assert_eq!(kept.get(key), Some(number), "an acknowledged entry is lost");
    }
    let unsaid: Vec<&String> = kept.keys().filter(|key| !told.contains_key(*key)).collect();
    if let Some(first) = unsaid.first() {
        let (batch, _) = first.split_once('/').expect("our keys have a slash");
        let act: usize = batch.split_once('-').and_then(|(_, act)| act.parse().ok()).expect("our keys have an act");
        assert!(unsaid.iter().all(|key| key.starts_with(&format!("{batch}/"))), "more than one act unsaid: {unsaid:?}");
        assert_eq!(unsaid.len(), act % 3 + 1, "an act is torn: {unsaid:?}");
    }
    assert_eq!(store.verify().await, Ok(vec![]));
    store.close().await.expect("it closes");
    let count = unsaid.len();
    *told = kept;
    count
}

/// Numbers by chance, the same at each run: the generator of Marsaglia, "Xorshift RNGs" (2003), with his triple 13, 7, 17.
struct Chance(u64);

impl Chance {
    fn below(&mut self, limit: u64) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0 % limit
    }
}

fn entry(key: &str) -> NewEntry {
    NewEntry {
        happened: Timestamp::UNIX_EPOCH,
        recorded: Timestamp::UNIX_EPOCH,
        zone: "UTC".to_owned(),
        by: "helper".to_owned(),
        subject: Subject::Point(id("m"), id("1")),
        body: Body::Dosed { oil: None, can: None, amount: Some("2 strokes".to_owned()) },
        supersedes: None,
        idempotency_key: key.to_owned(),
    }
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

fn id(text: &str) -> Id {
    Id::new(text).expect("an id that the test chose well")
}
