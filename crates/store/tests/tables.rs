//! Everything goes out as CSV and comes back equal; what a spreadsheet would take for a formula is guarded on the way.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use ::shop::logbook::{Body, NewEntry};
use ::shop::shelf::Shelf;
use store::{Error, PictureId, Settings, Store};
use tribology::quantity::Units;

use crate::shop::{CHART, Shop, dosed, entry, id, minute, point, ran, settings, withdrawn};

/// Texts that are hard on a CSV file or a spreadsheet.
const HARD: [&str; 9] = ["=1+1", "+2", "-3", "@x", "'quoted", "", "two\r\nlines, \"and\" more", "\ttab", "''"];

async fn full() -> Shop {
    let shop = Shop::with(&["m", "n"]).await;
    let changed = CHART.replace("Ram way", "=Ram way");
    shop.store.add_chart(&id("m"), &changed, minute(1), "-keeper").await.expect("a chart without faults");
    let shelf = Shelf::read(include_str!("../../../demo/shelf.toml")).value.expect("a shelf without faults");
    shop.store.add_shelf(&shelf, minute(2), "keeper").await.expect("a shelf that can be kept");
    let changed = Settings { name: "@ the mill".into(), units: Units::Us, ..settings() };
    shop.store.set_settings(&changed, minute(3), "keeper").await.expect("settings that can be kept");
    let first = shop.record(dosed(4, "a", "1")).await;
    shop.record(withdrawn(5, "b", first, point("m", "1"))).await;
    shop.record(NewEntry { happened: minute(-90), ..dosed(6, "c", "1") }).await;
    shop.record(ran(7, "d")).await;
    for (number, text) in HARD.iter().enumerate() {
        let note = NewEntry {
            by: (*text).to_owned(),
            ..entry(8, &format!("{text}/{number}"), point("m", "2"), Body::Note { text: (*text).to_owned() })
        };
        shop.record(note).await;
    }
    shop.store.add_picture(crate::pictures::jpeg("left.jpg"), minute(9)).await.expect("a whole picture");
    shop
}

/// The files of a folder with their bytes.
pub(crate) fn files(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let mut files = BTreeMap::new();
    for part in ["", "pictures"] {
        for found in fs::read_dir(folder.join(part)).expect("the folder of the export") {
            let path = found.expect("an entry of it").path();
            if path.is_file() {
                files.insert(format!("{part}/{}", path.display()), fs::read(&path).expect("the file"));
            }
        }
    }
    files.into_iter().map(|(name, bytes)| (name.replace(&folder.display().to_string(), ""), bytes)).collect()
}

#[tokio::test]
async fn everything_comes_back_and_goes_out_the_same_again() {
    let shop = full().await;
    let at = |name: &str| shop.beside(name);
    shop.store.export_csv(&at("out")).await.expect("a free name");
    Store::import_csv(&at("out"), &at("back.shop")).await.expect("a whole export");
    let back = Store::open(&at("back.shop")).await.expect("a whole file");
    crate::backup::same(&shop.store, &back).await;
    for minutes in [0, 1, 3, 4, 5, 6, 7] {
        assert_eq!(back.snapshot(minute(minutes)).await, shop.store.snapshot(minute(minutes)).await);
    }
    assert_eq!(back.shelf_at(minute(9)).await, shop.store.shelf_at(minute(9)).await);
    assert_eq!(back.chart(&id("m"), minute(0)).await, shop.store.chart(&id("m"), minute(0)).await);
    assert_eq!(back.picture(PictureId(1)).await, shop.store.picture(PictureId(1)).await);
    assert_eq!(back.thumbnail(PictureId(1)).await, shop.store.thumbnail(PictureId(1)).await);
    assert_eq!(back.verify().await, Ok(vec![]));
    back.export_csv(&at("again")).await.expect("a free name");
    let out = files(&at("out"));
    assert_eq!(out.len(), 8, "seven tables and a picture");
    assert_eq!(files(&at("again")), out);
    assert_eq!(shop.store.export_csv(&at("out")).await, Err(Error::Exists(at("out").into())));
    assert_eq!(Store::import_csv(&at("out"), shop.address()).await, Err(Error::Exists(shop.address())));
}

/// Which characters start a formula: OWASP, "CSV Injection" (from memory).
#[tokio::test]
async fn no_cell_of_free_text_begins_like_a_formula() {
    let shop = full().await;
    let out = shop.beside("out");
    shop.store.export_csv(&out).await.expect("a free name");
    let mut said = Vec::new();
    for table in ["setting", "machine", "chart_revision", "oil_revision", "can_revision", "entry", "picture"] {
        let mut reader = csv::Reader::from_path(out.join(format!("{table}.csv"))).expect("the file");
        let by = reader.headers().expect("names").iter().position(|name| name == "said_by");
        for record in reader.records() {
            let record = record.expect("a row");
            assert!(record.iter().all(|cell| !cell.starts_with(['=', '+', '-', '@', '\t', '\r'])), "{record:?}");
            said.extend(by.filter(|_| table == "entry").map(|by| record[by].to_owned()));
        }
    }
    for text in HARD {
        let bare = text.starts_with("two");
        assert!(said.contains(&if bare { text.to_owned() } else { format!("'{text}") }), "{text:?} in {said:?}");
    }
    let entries = fs::read_to_string(out.join("entry.csv")).expect("the file");
    assert!(entries.contains(",2026-03-02T08:04:00.000000Z,"), "instants as RFC 3339 writes them");
}

#[tokio::test]
async fn what_cannot_be_taken_in_is_said_with_its_line_and_leaves_nothing() {
    let shop = full().await;
    let at = |name: &str| shop.beside(name);
    shop.store.export_csv(&at("out")).await.expect("a free name");
    let spoilt = async |file: &str, from: &str, to: &str| {
        let path = at("out").join(file);
        let whole = fs::read_to_string(&path).expect("the file");
        assert!(whole.contains(from));
        fs::write(&path, whole.replacen(from, to, 1)).expect("a file of our own");
        let error = Store::import_csv(&at("out"), &at("new")).await.expect_err("it must be refused");
        fs::write(&path, whole).expect("a file of our own");
        assert!(!at("new").exists());
        error.to_string()
    };
    let says = spoilt("entry.csv", "2026-03-02T08:04:00.000000Z", "yesterday").await;
    assert!(says.contains("entry.csv, line ") && says.contains("\"yesterday\""), "{says}");
    let says = spoilt("setting.csv", "said_by", "by").await;
    assert!(says.contains("setting.csv, line 1,") && says.contains("said_by"), "{says}");
    let says = spoilt("picture.csv", "1.jpg", "../../shop.db").await;
    assert!(says.contains("\"../../shop.db\""), "{says}");
    let says = spoilt("chart_revision.csv", "Clapper pin", "Clapper pen").await;
    assert!(says.contains("fingerprint"), "{says}");
}

#[tokio::test]
async fn a_folder_lets_no_picture_in_that_a_form_would_not() {
    let at = |shop: &Shop, name: &str| shop.beside(name);
    let svg = Shop::with(&["m"]).await;
    crate::pictures::keep_raw(&svg, "left.svg", b"<svg onload='x()'/>").await;
    svg.store.export_csv(&at(&svg, "out")).await.expect("a free name");
    let error = Store::import_csv(&at(&svg, "out"), &at(&svg, "new")).await.expect_err("it must be refused");
    assert!(error.to_string().contains("picture.csv, line 2,"), "{error}");
    assert!(error.to_string().contains("only plain lines and words are taken"), "{error}");
    assert!(!at(&svg, "new").exists());
    // One that was kept unlooked at is made clean on its way.
    let noted = Shop::with(&["m"]).await;
    crate::pictures::keep_raw(&noted, "left.jpg", &crate::pictures::noted()).await;
    noted.store.export_csv(&at(&noted, "out")).await.expect("a free name");
    Store::import_csv(&at(&noted, "out"), &at(&noted, "new")).await.expect("a whole export");
    let new = Store::open(&at(&noted, "new")).await.expect("a whole file");
    let bytes = new.picture(PictureId(1)).await.expect("it is there").given.bytes;
    assert!(!crate::pictures::holds(&bytes, b"Exif"));
    assert_eq!(new.verify().await, Ok(vec![]));
}
