//! What only a file can suffer: bits that flip behind the database's back, and a form of many years ago.

use std::fs;
use std::path::Path;

use ::shop::logbook::{Body, NewEntry};
use ::shop::shelf::Shelf;
use jiff::Timestamp;
use sea_orm::ConnectionTrait as _;
use sha2::{Digest as _, Sha256};
use store::{Damage, PictureId, Store, Superseded, Wanted};

use crate::shop::{Shop, dosed, entry, id, minute, point, settings, stranger};

/// One bit in the file itself, behind the database's back.
#[tokio::test]
async fn a_flipped_byte_is_found_wherever_it_stands() {
    let note = Body::Dosed { oil: None, can: None, amount: Some("two small strokes".into()) };
    for (needle, says) in [
        (&b"Clapper pin"[..], "revision 1 of the chart of \"m\""),
        (&b"two small strokes"[..], "entry 1"),
        (&b"bytes of a picture"[..], "picture 1"),
    ] {
        let shop = Shop::with(&["m"]).await;
        shop.record(entry(1, "a", point("m", "1"), note.clone())).await;
        crate::pictures::keep_raw(&shop, "ram.jpg", b"bytes of a picture").await;
        let Shop { folder, store, .. } = shop;
        let path = folder.path().join("shop.db");
        store.close().await.expect("it closes");
        let whole = fs::read(&path).expect("the file");
        let place = whole.windows(needle.len()).position(|part| part == needle).expect("it stands in the file");
        for (at, bit) in [(place, 1), (place + needle.len() - 1, 4), (place + 2, 0x80)] {
            let mut flipped = whole.clone();
            flipped[at] ^= bit;
            fs::write(&path, &flipped).expect("a file of our own");
            let store = Store::open(&path).await.expect("its settings are whole");
            let damage = store.verify().await.expect("damage is no error");
            assert!(damage.iter().any(|one| one.to_string().contains(says)), "{damage:?}");
            store.close().await.expect("it closes");
        }
    }
}

/// Bytes by chance, all over the file. What is not found may only be where nothing stands. Never may it change anything that is said.
#[tokio::test]
async fn what_is_not_found_changes_nothing() {
    let shop = Shop::with(&["m", "n"]).await;
    let shelf = Shelf::read(include_str!("../../../demo/shelf.toml")).value.expect("a shelf without faults");
    shop.store.add_shelf(&shelf, minute(1), "keeper").await.expect("a shelf that can be kept");
    let acts: Vec<NewEntry> = (0..200)
        .map(|number| {
            let text = format!("the drip at the left way, {number} to the minute, and the wick is as it was");
            entry(number, &format!("k/{number}"), point("m", "1"), Body::SignSeen { note: Some(text) })
        })
        .collect();
    shop.store.record(&acts).await.expect("entries that can be kept");
    shop.store.add_picture(crate::pictures::jpeg("left.jpg"), minute(2)).await.expect("a whole picture");
    let Shop { folder, store, .. } = shop;
    store.close().await.expect("it closes");
    let path = folder.path().join("shop.db");
    let whole = fs::read(&path).expect("the file");
    let said = told(&path).await.expect("a whole file");
    let mut chance = 20_261_125_u64;
    let (mut refused, mut found, mut not_found) = (0, 0, 0);
    // The header and the first page are more than by chance, for there the database itself is described.
    let places = (0..100).chain((100..4096).step_by(97)).map(Some).chain(std::iter::repeat_n(None, 150));
    for place in places {
        // Xorshift, by Marsaglia, with his triple 13, 7, 17.
        chance ^= chance << 13;
        chance ^= chance >> 7;
        chance ^= chance << 17;
        let place = place.unwrap_or(chance as usize % whole.len());
        let mut flipped = whole.clone();
        flipped[place] ^= 1 << (chance >> 61);
        for companion in ["shop.db-wal", "shop.db-shm"] {
            let _ = fs::remove_file(folder.path().join(companion));
        }
        fs::write(&path, &flipped).expect("a file of our own");
        match told(&path).await {
            Err(Some(_)) => found += 1,
            Err(None) => refused += 1,
            Ok(same) => {
                assert_eq!(same, said, "byte {place}");
                not_found += 1;
            }
        }
    }
    let counts =
        format!("{refused} refused at opening, {found} found by verify, {not_found} not found and without harm");
    assert!(found > 60 && refused > 20, "{counts}");
    println!("{counts}");
}

/// All that the file says; the damage when some is found, or nothing when it does not open.
async fn told(path: &Path) -> Result<String, Option<Vec<Damage>>> {
    let store = Store::open(path).await.map_err(|_| None)?;
    let damage = store.verify().await;
    let said = match damage {
        Ok(damage) if damage.is_empty() => {
            let all = Wanted { most: usize::MAX, superseded: Superseded::Shown, ..Wanted::default() };
            let entries = store.entries(&all).await;
            let charts = [store.chart(&id("m"), Timestamp::MAX).await, store.chart(&id("n"), Timestamp::MAX).await];
            let machines = store.machines().await;
            let (picture, small) = (store.picture(PictureId(1)).await, store.thumbnail(PictureId(1)).await);
            let (settings, shelf) = (store.settings().await, store.shelf_at(Timestamp::MAX).await);
            let before = store.snapshot(minute(1)).await;
            Ok(format!("{entries:?} {charts:?} {machines:?} {picture:?} {small:?} {settings:?} {shelf:?} {before:?}"))
        }
        Ok(damage) => Err(Some(damage)),
        Err(_) => Err(Some(Vec::new())),
    };
    let _ = store.close().await;
    said
}

/// A file of each old form, as the scripts up to it made it, is brought up and gets its fingerprints.
#[tokio::test]
async fn a_file_of_every_old_form_opens_and_is_whole() {
    let scripts = [
        include_str!("../migrations/0001.sql"),
        include_str!("../migrations/0002.sql"),
        include_str!("../migrations/0003.sql"),
    ];
    for form in 1..=scripts.len() {
        let folder = tempfile::TempDir::new().expect("a temporary folder");
        let path = folder.path().join("old.shop");
        let other = stranger(&path).await;
        let version = format!("PRAGMA application_id = 1332309111; PRAGMA user_version = {form}");
        let rows = [
            "INSERT INTO setting VALUES (1, 'Mill shop', 'UTC', 'metric', 27000.0, NULL, NULL, NULL, 0, '')",
            "INSERT INTO machine VALUES ('m')",
            "INSERT INTO can_revision VALUES ('gun', 1, 0, 'keeper', 0, NULL, NULL, '1 mL', NULL)",
            "INSERT INTO entry VALUES (1, 5, 5, 'UTC', 'helper', 'ran', 'machine/m', 'm', NULL, '{\"hours_s\":3600.0}', 1, NULL, 'k')",
        ];
        for sql in scripts[..form].iter().chain([&version.as_str()]).chain(&rows) {
            other.execute_unprepared(sql).await.expect("SQL");
        }
        if form >= 2 {
            // The program of that form took it when the entry was kept: SHA-256 of the row as a list in JSON.
            let row = r#"[1,5,5,"UTC","helper","ran","machine/m","m",null,"{\"hours_s\":3600.0}",1,null,"k"]"#;
            let print: String = Sha256::digest(row).iter().map(|byte| format!("{byte:02x}")).collect();
            let sql = format!("INSERT INTO fingerprint VALUES (1, '{print}')");
            other.execute_unprepared(&sql).await.expect("SQL");
        }
        other.close().await.expect("it closes");
        let store = Store::open(&path).await.expect("an older form");
        assert_eq!(store.verify().await, Ok(vec![]), "form {form}");
        assert_eq!(store.settings().await.map(|settings| settings.name), Ok(settings().name));
        store.record(&[dosed(1, "a", "1")]).await.expect("an entry that can be kept");
        assert_eq!(store.verify().await, Ok(vec![]));
        assert!(store.snapshot(minute(2)).await.is_ok());
    }
}
