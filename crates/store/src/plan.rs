//! How the database goes about each statement that a page needs, asked of SQLite and of PostgreSQL: none may look through the whole
//! logbook, and none may be run once a machine. Only tests look here.

use std::cell::RefCell;
use std::collections::BTreeMap;

use jiff::{SignedDuration, Timestamp};
use shop::id::Id;
use shop::logbook::{BatchKey, Body, EntryId, Kind, NewEntry, Subject};
use shop::shelf::Shelf;
use tribology::quantity::Time;

use crate::db::{Engine, Value, values};
use crate::server::TestDatabase;
use crate::{About, Address, Settings, Store, Superseded, Wanted};

const AT: Timestamp = Timestamp::UNIX_EPOCH;

/// A statement and its values.
type Noted = (String, Vec<Value>);

thread_local! {
    static NOTED: RefCell<Vec<Noted>> = const { RefCell::new(Vec::new()) };
}

/// Notes a statement of this thread.
pub(crate) fn note(sql: &str, values: &[Value]) {
    NOTED.with(|noted| noted.borrow_mut().push((sql.to_owned(), values.to_vec())));
}

/// The statements that were run on this thread since this was last asked.
fn taken() -> Vec<Noted> {
    NOTED.with(|noted| std::mem::take(&mut *noted.borrow_mut()))
}

fn id(text: &str) -> Id {
    Id::new(text).expect("letters and digits")
}

fn entry(key: &str, subject: Subject, body: Body, supersedes: Option<EntryId>) -> NewEntry {
    let (zone, by) = ("UTC".into(), "keeper".into());
    NewEntry { happened: AT, recorded: AT, zone, by, subject, body, supersedes, idempotency_key: key.into() }
}

/// A shop of so many machines, each with points that were oiled, runs, and a correction.
async fn shop_of(at: impl Into<Address>, machines: usize) -> Store {
    let store = Store::create(at, &Settings::any(), AT).await.expect("a free place");
    for number in 0..machines {
        let machine = id(&format!("m{number}"));
        let chart = format!(
            "chart = 1\n[machine]\nname = \"M{number}\"\n[[point]]\nid = \"1\"\nname = \"P\"\nmethod = \"cup\"\n"
        );
        store.add_chart(&machine, &chart, AT, "keeper").await.expect("a chart without faults");
        let at_point = Subject::Point(machine.clone(), id("1"));
        let dosed = Body::Dosed { oil: None, can: None, amount: None };
        let ran = Body::Ran { hours: Time::from_hours(1.0), job: None };
        let first = entry(&format!("{number}/0"), at_point.clone(), dosed.clone(), None);
        let ids = store.record(&[first]).await.expect("an entry that can be kept");
        let more = [
            entry(&format!("{number}/1"), at_point, dosed, Some(ids[0])),
            entry(&format!("{number}/2"), Subject::Machine(machine), ran, None),
        ];
        store.record(&more).await.expect("entries that can be kept");
    }
    store
}

/// Every question that a page asks about now.
async fn all_that_pages_ask(store: &Store) {
    let (machine, at_point) = (id("m0"), id("1"));
    store.snapshot(AT).await.expect("a whole file");
    store.snapshot_of(std::slice::from_ref(&machine), AT).await.expect("a whole file");
    for about in [
        About::Shop,
        About::Machine(machine.clone()),
        About::Point(machine.clone(), at_point),
        About::Reservoir(machine.clone(), id("r")),
    ] {
        for kind in [None, Some(Kind::Ran)] {
            for superseded in [Superseded::LeftOut, Superseded::Shown] {
                for before in [None, Some(EntryId(1))] {
                    for (from, to) in [(None, None), (Some(AT), None), (None, Some(AT)), (Some(AT), Some(AT))] {
                        let about = about.clone();
                        let wanted = Wanted { about, kind, from, to, before, superseded, ..Wanted::default() };
                        store.entries(&wanted).await.expect("a question that can be answered");
                    }
                }
            }
        }
    }
    store.entry(EntryId(1)).await.expect("it is there");
    store.batch(&BatchKey::new("0").expect("a key")).await.expect("a whole file");
    store.chart(&machine, AT).await.expect("it is there");
    store.machines().await.expect("a whole file");
    store.shelf_at(AT).await.expect("a whole file");
    store.settings().await.expect("a whole file");
    assert!(store.picture_named(&machine, "none.jpg").await.is_err());
    let shelf = Shelf::read("shelf = 1\n[[oil]]\nid = \"o\"\nname = \"O\"\nfamily = \"way\"\nstock = \"1 L\"\n");
    store.add_shelf(&shelf.value.expect("a shelf without faults"), AT, "keeper").await.expect("it can be kept");
    store.add_chart(&machine, "chart = 1\n[machine]\nname = \"N\"\n", AT, "keeper").await.expect("no faults");
    let withdrawn = entry("w", Subject::Machine(machine), Body::Withdrawn, Some(EntryId(2)));
    store.record(&[withdrawn]).await.expect("an entry that can be kept");
}

/// The steps by which the database goes through the whole logbook for a statement. To walk an index from one end is no such
/// step when a limit stops it, or when only the first or last row is asked for.
async fn whole_walks(store: &Store, (sql, values): &Noted) -> Vec<String> {
    let stopped = sql.contains(" LIMIT ") || sql.contains("SELECT coalesce(max(id), 0)");
    match store.db.engine() {
        Engine::Sqlite => whole_walks_of_sqlite(store, sql, stopped).await,
        Engine::Postgres => whole_walks_of_postgres(store, sql, values.clone(), stopped).await,
    }
}

async fn whole_walks_of_sqlite(store: &Store, sql: &str, stopped: bool) -> Vec<String> {
    let tx = store.db.read().await.expect("an open file");
    let names = tx.all(&format!("EXPLAIN QUERY PLAN {sql}"), values![]).await.expect("a statement of ours");
    let steps: Vec<String> = names.iter().map(|row| row.get("detail").expect("a text")).collect();
    tx.commit().await.expect("an open file");
    // A list in JSON that is not gone through first is gone through once for every row of the others.
    if sql.contains("json_each") && !steps[0].starts_with("SCAN json_each") {
        return steps;
    }
    let entry = |step: &str| {
        step.strip_prefix("SCAN ").is_some_and(|rest| {
            let named = rest.split(' ').next().unwrap_or_default();
            ["entry", "e", "s", "x"].contains(&named) && !(stopped && (rest == "entry" || rest.contains("INDEX")))
        })
    };
    steps.into_iter().filter(|step| entry(step)).collect()
}

/// Of a few rows the server would rather read all, also for a join, so it is told that this is dear; what it reads through nevertheless, or by an index
/// without asking anything of it, it would read through in a large shop.
async fn whole_walks_of_postgres(store: &Store, sql: &str, values: Vec<Value>, stopped: bool) -> Vec<String> {
    let tx = store.db.read().await.expect("a server");
    let dear = ["seqscan", "mergejoin", "hashjoin"].map(|way| format!("SET LOCAL enable_{way} = off"));
    tx.script(&dear.join("; ")).await.expect("settings of the server");
    let lines = tx.all(&format!("EXPLAIN {sql}"), values).await.expect("a statement of ours");
    let lines: Vec<String> = lines.iter().map(|row| row.get("QUERY PLAN").expect("a text")).collect();
    tx.commit().await.expect("a server");
    let steps = lines.iter().enumerate().filter(|(_, line)| line.contains("Scan ") && line.contains(" on entry"));
    let asks = |at: usize| {
        let mut below = lines[at + 1..].iter().take_while(|line| !line.contains("->"));
        below.any(|line| line.contains("Index Cond:"))
    };
    let walks = steps.filter(|(at, line)| line.contains("Seq Scan ") || !(stopped || asks(*at)));
    walks.map(|(_, line)| line.trim().to_owned()).collect()
}

#[tokio::test]
async fn no_page_looks_through_the_whole_logbook() {
    let folder = tempfile::TempDir::new().expect("the tests may write to a temporary folder");
    let store = shop_of(folder.path().join("s"), 3).await;
    no_whole_walk(&store).await;
    // The check itself: what does look through everything is seen.
    for (sql, walk) in [("", "SCAN e"), (" LIMIT 1", "SCAN e")] {
        let noted = (format!("SELECT body FROM entry e WHERE e.body = 'x'{sql}"), vec![]);
        assert_eq!(whole_walks(&store, &noted).await, [walk]);
    }
}

#[tokio::test]
async fn no_page_looks_through_the_whole_logbook_on_a_server() {
    let database = TestDatabase::new().await;
    let store = shop_of(Address::read(database.address().as_ref()).expect("an address"), 3).await;
    no_whole_walk(&store).await;
    for sql in ["SELECT body FROM entry e WHERE e.body = 'x' LIMIT 1", "SELECT body FROM entry e ORDER BY e.id"] {
        let walks = whole_walks(&store, &(sql.to_owned(), vec![])).await;
        assert_eq!(walks.len(), 1, "{sql}: {walks:?}");
    }
}

async fn no_whole_walk(store: &Store) {
    taken();
    all_that_pages_ask(store).await;
    let noted = taken().into_iter().filter(|(sql, _)| sql.contains("entry") || sql.contains("json"));
    let statements: BTreeMap<String, Vec<Value>> = noted.collect();
    assert!(statements.len() > 60, "{} statements were looked at", statements.len());
    for noted in statements {
        assert_eq!(whole_walks(store, &noted).await, Vec::<String>::new(), "{}", noted.0);
    }
}

#[tokio::test]
async fn more_machines_need_no_more_statements() {
    let mut counts = Vec::new();
    for machines in [1, 12] {
        let folder = tempfile::TempDir::new().expect("the tests may write to a temporary folder");
        let store = shop_of(folder.path().join("s"), machines).await;
        let mut of_this = Vec::new();
        // Once with nothing remembered, once with every chart remembered, once about the past.
        for at in [AT, AT, AT - SignedDuration::from_secs(1)] {
            taken();
            let snapshot = store.snapshot(at).await.expect("a whole file");
            assert_eq!(snapshot.machines.len(), if at == AT { machines } else { 0 });
            of_this.push(taken().len());
        }
        counts.push(of_this);
    }
    assert_eq!(counts[0], counts[1]);
}
