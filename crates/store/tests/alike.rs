//! The same deeds on a file and on a server give the same answers, the same tables and the same backup; and a shop goes from one to
//! the other and back.

use std::fs;
use std::path::Path;

use ::shop::logbook::{Body, NewEntry, Subject};
use ::shop::shelf::Shelf;
use store::{Address, Error, PictureId, Settings, Store, Superseded, Wanted};
use tempfile::TempDir;
use tribology::quantity::Units;

use crate::server::TestDatabase;
use crate::shop::{CHART, Shop, dosed, entry, id, minute, of, point, ran, settings, withdrawn};
use crate::tables::files;

/// Ids that a dictionary, a telephone book and the alphabet of bytes put in different orders.
const MACHINES: [&str; 5] = ["m", "b-10", "b9", "ba", "b-a"];

/// A shop in which everything happened that can.
async fn lived(at: impl Into<Address>) -> Store {
    let store = Store::create(at, &settings(), minute(0)).await.expect("a free place");
    for machine in MACHINES {
        store.add_chart(&id(machine), CHART, minute(0), "keeper").await.expect("a chart without faults");
    }
    let changed = CHART.replace("Ram way", "Ram way, Öl “68” 𝛼");
    store.add_chart(&id("m"), &changed, minute(1), "Zoë").await.expect("a chart without faults");
    let shelf = Shelf::read(include_str!("../../../demo/shelf.toml")).value.expect("a shelf without faults");
    store.add_shelf(&shelf, minute(2), "keeper").await.expect("a shelf that can be kept");
    let changed = Settings { name: "The mill".into(), units: Units::Us, ..settings() };
    store.set_settings(&changed, minute(3), "keeper").await.expect("settings that can be kept");
    let mut acts = vec![dosed(4, "a/0", "1"), dosed(4, "a/1", "2"), ran(5, "b/0")];
    for (number, machine) in MACHINES.iter().enumerate() {
        let text = format!("{machine}: a third is {}", 1.0 / 3.0);
        acts.push(entry(6, &format!("c/{number}"), Subject::Machine(id(machine)), Body::Note { text }));
        acts.push(entry(7, &format!("d/{number}"), point(machine, "1"), Body::SignSeen { note: Some("wet".into()) }));
    }
    let ids = store.record(&acts).await.expect("entries that can be kept");
    let late = NewEntry { happened: minute(-90), ..dosed(8, "e", "1") };
    store.record(&[withdrawn(8, "w", ids[0], point("m", "1")), late]).await.expect("entries that can be kept");
    let wrong = store.record(&[withdrawn(9, "x", ids[0], point("m", "1"))]).await;
    assert!(matches!(wrong, Err(Error::Conflict(_))), "{wrong:?}");
    store.add_picture(crate::pictures::jpeg("left.jpg"), minute(9)).await.expect("a whole picture");
    store
}

/// All that can be asked of a shop, as text.
async fn told(store: &Store) -> Vec<String> {
    let mut told = Vec::new();
    for minutes in -1..12 {
        told.push(format!(
            "{:?}",
            store.snapshot(minute(minutes)).await.map(|snapshot| (snapshot.shelf, snapshot.machines))
        ));
    }
    for superseded in [Superseded::LeftOut, Superseded::Shown] {
        let all = Wanted { most: usize::MAX, superseded, ..Wanted::default() };
        told.push(format!("{:?}", store.entries(&all).await));
    }
    told.push(format!("{:?}", store.machines().await));
    told.push(format!("{:?}", store.settings().await));
    told.push(format!("{:?}", store.picture(PictureId(1)).await));
    told.push(format!("{:?}", store.thumbnail(PictureId(1)).await));
    told.push(format!("{:?} {:?}", store.verify().await, store.verify_due().await));
    told
}

async fn exported(store: &Store, to: &Path) -> std::collections::BTreeMap<String, Vec<u8>> {
    store.export_csv(to).await.expect("a free name");
    files(to)
}

#[tokio::test]
async fn a_file_and_a_server_answer_alike() {
    let (folder, database) = (TempDir::new().expect("a temporary folder"), TestDatabase::new().await);
    let at = |name: &str| folder.path().join(name);
    let (file, server) = (lived(at("shop")).await, lived(of(&database.address())).await);
    let said = told(&file).await;
    assert_eq!(told(&server).await, said);
    let ids: Vec<String> = file.machines().await.expect("a whole file").iter().map(|row| row.id.to_string()).collect();
    let mut sorted = MACHINES.map(str::to_owned).to_vec();
    sorted.sort();
    assert_eq!(ids, sorted, "by bytes");
    let out = exported(&file, &at("out-of-file")).await;
    assert_eq!(exported(&server, &at("out-of-server")).await, out);
    // What went out of one comes into the other.
    let (other, third) = (TestDatabase::new().await, at("third"));
    Store::import_csv(&at("out-of-file"), of(&other.address())).await.expect("a whole export");
    Store::import_csv(&at("out-of-server"), &third).await.expect("a whole export");
    for imported in [of(&other.address()), (&third).into()] {
        let imported = Store::open(imported).await.expect("a whole shop");
        assert_eq!(told(&imported).await, said);
    }
}

#[tokio::test]
async fn a_backup_of_either_is_restored_to_either() {
    let (folder, database) = (TempDir::new().expect("a temporary folder"), TestDatabase::new().await);
    let at = |name: &str| folder.path().join(name);
    let (file, server) = (lived(at("shop")).await, lived(of(&database.address())).await);
    let said = told(&file).await;
    let out = exported(&file, &at("out")).await;
    for (number, store) in [&file, &server].into_iter().enumerate() {
        let (backup, back) = (at(&format!("backup-{number}")), TestDatabase::new().await);
        store.backup(&backup).await.expect("a free name");
        let bytes = fs::read(&backup).expect("the backup");
        Store::restore(&backup, of(&back.address())).await.expect("a whole backup");
        Store::restore(&backup, at(&format!("back-{number}"))).await.expect("a whole backup");
        assert_eq!(fs::read(&backup).expect("the backup"), bytes, "restoring leaves it as it is");
        for restored in [of(&back.address()), at(&format!("back-{number}")).into()] {
            let restored = Store::open(restored).await.expect("a whole shop");
            assert_eq!(told(&restored).await, said);
            restored.record(&[dosed(20, "more", "1")]).await.expect("it can be written in");
        }
        let opened = Store::open(&backup).await.expect("a backup is a file like another");
        assert_eq!(exported(&opened, &at(&format!("out-{number}"))).await, out);
        let over = Store::restore(&backup, of(&back.address())).await;
        assert!(matches!(over, Err(Error::Conflict(_) | Error::Exists(_))), "{over:?}");
    }
}

#[tokio::test]
async fn what_is_damaged_makes_no_shop_in_a_database() {
    let shop = Shop::with(&["m"]).await;
    shop.record(dosed(1, "a", "1")).await;
    let at = |name: &str| shop.beside(name);
    shop.store.backup(&at("whole")).await.expect("a free name");
    let mut bytes = fs::read(at("whole")).expect("the backup");
    let place = bytes.windows(7).position(|seven| seven == b"Ram way").expect("the chart's text is in it");
    bytes[place] ^= 1;
    fs::write(at("flipped"), &bytes).expect("a file of our own");
    shop.store.export_csv(&at("out")).await.expect("a free name");
    let entries = fs::read_to_string(at("out").join("entry.csv")).expect("the file");
    fs::write(at("out").join("entry.csv"), entries.replace("machine/m", "machine/n")).expect("a file of our own");
    let database = TestDatabase::new().await;
    let restored = Store::restore(&at("flipped"), of(&database.address())).await;
    assert!(matches!(restored, Err(Error::Corrupt { .. })), "{restored:?}");
    assert!(matches!(Store::open(of(&database.address())).await, Err(Error::Missing(_))), "nothing was left behind");
}

#[tokio::test]
async fn two_programs_write_one_database_and_nothing_is_lost() {
    let shop = Shop::with(&["m"]).await;
    let other = Store::open(shop.address()).await.expect("two may have it open");
    let write = async |store: &Store, who: &str| {
        for act in 0..20 {
            let pair = [dosed(act, &format!("{who}{act}/0"), "1"), dosed(act, &format!("{who}{act}/1"), "2")];
            store.record(&pair).await.expect("it waits its turn");
        }
    };
    tokio::join!(write(&shop.store, "a"), write(&other, "b"), write(&shop.store, "c"));
    let all = Wanted { most: usize::MAX, ..Wanted::default() };
    let mut entries = shop.store.entries(&all).await.expect("a whole shop");
    entries.sort_by_key(|entry| entry.id);
    assert_eq!(entries.len(), 120);
    for pair in entries.chunks_exact(2) {
        let keys = [0, 1].map(|one: usize| pair[one].said.idempotency_key.as_str());
        assert!(keys[0].strip_suffix("/0").is_some_and(|act| keys[1].strip_suffix("/1") == Some(act)), "{keys:?}");
    }
    assert_eq!(shop.store.verify().await, Ok(vec![]));
}
