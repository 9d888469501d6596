//! A file that is not a shop's, or cannot be worked on, is refused in one sentence and left byte for byte as it was.

use std::collections::BTreeMap;
use std::ffi::OsString;
use std::fs;
use std::path::Path;

use jiff::tz::TimeZone;
use sea_orm::ConnectionTrait as _;
use sha2::{Digest as _, Sha256};
use store::{Error, Settings, Store};
use tempfile::TempDir;
use tribology::quantity::Time;

use crate::shop::{Shop, dosed, minute, run, settings, stranger};

/// Runs a statement as another program.
async fn tamper(path: &Path, sql: &str) -> Result<u64, String> {
    run(stranger(path).await, sql).await
}

/// Every file of a folder with the fingerprint of its bytes; of a folder in it only the name.
fn contents(folder: &Path) -> BTreeMap<OsString, Option<String>> {
    let entries = fs::read_dir(folder).expect("the folder of the test");
    entries
        .map(|entry| entry.expect("an entry of that folder"))
        .map(|entry| {
            (entry.file_name(), fs::read(entry.path()).ok().map(|bytes| format!("{:x}", Sha256::digest(bytes))))
        })
        .collect()
}

/// Opens what must be refused; the folder is afterwards what it was before.
async fn refused(path: &Path) -> Error {
    let folder = path.parent().expect("a file in a folder");
    let before = contents(folder);
    let error = Store::open(path).await.map(drop).expect_err("it must be refused");
    assert_eq!(contents(folder), before, "{error}");
    let says = error.to_string();
    let last = path.file_name().expect("a name").to_string_lossy().into_owned();
    assert!(says.contains(&last), "it says which file: {says}");
    assert!(!says.contains('\n') && says.contains("; "), "it says in one sentence what to do: {says}");
    error
}

/// Creates what must be refused; the folder is afterwards what it was before.
async fn not_created(path: &Path, settings: &Settings) -> Error {
    let folder = path.parent().filter(|folder| folder.exists());
    let before = folder.map(contents);
    let error = Store::create(path, settings, minute(0)).await.map(drop).expect_err("it must be refused");
    assert_eq!(folder.map(contents), before, "{error}");
    error
}

#[tokio::test]
async fn what_is_no_data_file_is_left_alone() {
    let folder = TempDir::new().expect("a temporary folder");
    let at = |name: &str| folder.path().join(name);
    assert_eq!(refused(&at("nothing")).await, Error::Missing(at("nothing").into()));
    fs::create_dir(at("folder")).expect("a folder of our own");
    assert_eq!(refused(&at("folder")).await, Error::Directory(at("folder")));
    fs::write(at("empty"), b"").expect("a file of our own");
    assert_eq!(refused(&at("empty")).await, Error::Empty(at("empty")));
    let noise: Vec<u8> = (0..20_000_u32).map(|n| (n.wrapping_mul(2_654_435_761) >> 24) as u8).collect();
    for (name, bytes) in [("noise", noise.as_slice()), ("short", b"SQLite format 3\0"), ("text", b"chart = 1\n")] {
        fs::write(at(name), bytes).expect("a file of our own");
        assert_eq!(refused(&at(name)).await, Error::NotDatabase(at(name).into()));
    }
}

#[tokio::test]
async fn the_database_of_another_program_is_left_alone() {
    let folder = TempDir::new().expect("a temporary folder");
    for (name, mark) in [("unmarked", ""), ("marked", "PRAGMA application_id = 7;")] {
        let path = folder.path().join(name);
        tamper(&path, &format!("{mark} PRAGMA user_version = 1; CREATE TABLE entry (id INTEGER)")).await.expect("SQL");
        assert_eq!(refused(&path).await, Error::OtherProgram(path.into()));
    }
}

#[tokio::test]
async fn a_newer_form_is_left_alone() {
    let Shop { folder, store, .. } = Shop::with(&["m"]).await;
    store.close().await.expect("it closes");
    let path = folder.path().join("shop.db");
    tamper(&path, "PRAGMA user_version = 99").await.expect("SQL");
    tamper(&path, "PRAGMA wal_checkpoint(TRUNCATE)").await.expect("SQL");
    assert_eq!(refused(&path).await, Error::Newer { at: path.into(), version: 99, newest: 4 });
}

#[tokio::test]
async fn a_read_only_file_is_left_alone() {
    let Shop { folder, store, .. } = Shop::with(&["m"]).await;
    store.close().await.expect("it closes");
    let path = folder.path().join("shop.db");
    let mut permissions = fs::metadata(&path).expect("the file").permissions();
    permissions.set_readonly(true);
    fs::set_permissions(&path, permissions).expect("a file of our own");
    assert_eq!(refused(&path).await, Error::ReadOnly(path.into()));
}

#[tokio::test]
async fn a_file_that_another_program_holds_is_left_alone() {
    let Shop { folder, store, .. } = Shop::with(&["m"]).await;
    store.close().await.expect("it closes");
    let path = folder.path().join("shop.db");
    let other = stranger(&path).await;
    other.execute_unprepared("PRAGMA locking_mode = EXCLUSIVE; BEGIN EXCLUSIVE").await.expect("SQL");
    assert_eq!(refused(&path).await, Error::Locked(path.as_path().into()));
    other.execute_unprepared("ROLLBACK").await.expect("SQL");
    other.close().await.expect("it closes");
    assert!(Store::open(&path).await.is_ok(), "it opens once the other lets go");
}

#[tokio::test]
async fn a_damaged_file_is_left_alone() {
    let Shop { folder, store, .. } = Shop::with(&["m"]).await;
    store.close().await.expect("it closes");
    let path = folder.path().join("shop.db");
    let mut bytes = fs::read(&path).expect("the file");
    bytes[100..].fill(0xA5);
    fs::write(&path, &bytes).expect("a file of our own");
    assert!(matches!(refused(&path).await, Error::Corrupt { .. }));
}

#[tokio::test]
async fn a_file_without_settings_is_damaged() {
    let Shop { folder, store, .. } = Shop::with(&["m"]).await;
    store.close().await.expect("it closes");
    let path = folder.path().join("shop.db");
    tamper(&path, "DROP TRIGGER setting_is_never_removed; DELETE FROM setting").await.expect("SQL");
    let error = Store::open(&path).await.map(drop).expect_err("it must be refused");
    assert!(matches!(error, Error::Corrupt { .. }), "{error}");
}

#[tokio::test]
async fn creating_never_overwrites_and_leaves_nothing_behind() {
    let folder = TempDir::new().expect("a temporary folder");
    let at = |name: &str| folder.path().join(name);
    fs::write(at("there"), b"precious").expect("a file of our own");
    assert_eq!(not_created(&at("there"), &settings()).await, Error::Exists(at("there").into()));
    fs::create_dir(at("folder")).expect("a folder of our own");
    assert_eq!(not_created(&at("folder"), &settings()).await, Error::Exists(at("folder").into()));
    fs::write(at("lost-wal"), b"what is left of somebody's commits").expect("a file of our own");
    assert_eq!(not_created(&at("lost"), &settings()).await, Error::Exists(at("lost-wal").into()));
    assert!(matches!(not_created(&at("no/such/folder"), &settings()).await, Error::Io { .. }));
    let nameless = Settings { zone: TimeZone::fixed(jiff::tz::offset(1)), ..settings() };
    assert_eq!(not_created(&at("nameless"), &nameless).await, Error::NamelessZone);
    // SQLite keeps what is not a number as nothing, which the table refuses: a failure in the midst of the work.
    let endless = Settings { hours: Time::from_hours(f64::NAN), ..settings() };
    assert!(matches!(not_created(&at("half"), &endless).await, Error::Conflict(_)));
}

#[tokio::test]
async fn an_entry_survives_closing_and_opening() {
    let Shop { folder, store, .. } = Shop::with(&["m"]).await;
    let path = folder.path().join("shop.db");
    let ids = store.record(&[dosed(3, "k/1", "1")]).await.expect("an entry that can be kept");
    let kept = store.entry(ids[0]).await.expect("it is there");
    assert_eq!(kept.said, dosed(3, "k/1", "1"));
    // A second opening while the first is open sees the same.
    let second = Store::open(&path).await.expect("two may have it open");
    assert_eq!(second.entry(ids[0]).await, Ok(kept.clone()));
    second.close().await.expect("it closes");
    store.close().await.expect("it closes");
    assert_eq!(contents(folder.path()).len(), 1, "closed, the file stands alone");
    let again = Store::open(&path).await.expect("a whole file");
    assert_eq!(again.entry(ids[0]).await, Ok(kept));
    assert_eq!(again.settings().await, Ok(settings()));
}
