//! A backup is one whole file, taken while others write; what it gives back is equal; it never overwrites and leaves nothing half.

use std::fs;
use std::path::Path;

use store::{Error, Store, Superseded, Wanted};

use crate::shop::{Shop, dosed, hex, minute, point, withdrawn};

/// The names in a folder.
fn names(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).expect("the folder of the test");
    let mut names: Vec<String> =
        entries.map(|entry| entry.expect("an entry of it").file_name().to_string_lossy().into_owned()).collect();
    names.sort();
    names
}

pub(crate) async fn same(one: &Store, other: &Store) {
    let all = Wanted { most: usize::MAX, superseded: Superseded::Shown, ..Wanted::default() };
    let entries = one.entries(&all).await.expect("a whole file");
    assert!(!entries.is_empty());
    assert_eq!(other.entries(&all).await, Ok(entries));
    assert_eq!(other.snapshot(minute(99)).await, one.snapshot(minute(99)).await);
    assert_eq!(other.settings().await, one.settings().await);
    assert_eq!(other.machines().await, one.machines().await);
}

#[tokio::test]
async fn a_backup_gives_back_an_equal_shop() {
    let shop = Shop::with(&["m", "n"]).await;
    let first = shop.record(dosed(1, "a", "1")).await;
    shop.record(dosed(2, "b", "2")).await;
    shop.record(withdrawn(3, "c", first, point("m", "1"))).await;
    let (to, back) = (shop.beside("copy.shop"), shop.beside("back.shop"));
    shop.store.backup(&to).await.expect("a free name");
    Store::restore(&to, &back).await.expect("a whole backup");
    let before = fs::read(&to).expect("the backup");
    let restored = Store::open(&back).await.expect("a whole file");
    same(&shop.store, &restored).await;
    assert_eq!(restored.verify().await, Ok(vec![]));
    restored.close().await.expect("it closes");
    assert_eq!(fs::read(&to).expect("the backup"), before, "restoring leaves the backup as it is");
    let names = names(shop.folder.path());
    assert!(
        names.iter().all(|name| ["back.shop", "copy.shop"].contains(&name.as_str()) || name.starts_with("shop.db"))
    );
}

#[tokio::test]
async fn nothing_is_overwritten() {
    let shop = Shop::with(&["m"]).await;
    let at = |name: &str| shop.beside(name);
    shop.store.backup(&at("whole")).await.expect("a free name");
    fs::write(at("there"), b"precious").expect("a file of our own");
    fs::write(at("lost-wal"), b"somebody's commits").expect("a file of our own");
    for (name, in_the_way) in [("there", "there"), ("lost", "lost-wal")] {
        let exists = Err(Error::Exists(at(in_the_way).into()));
        assert_eq!(shop.store.backup(&at(name)).await, exists);
        assert_eq!(Store::restore(&at("whole"), &at(name)).await, exists);
    }
    if let Some(file) = shop.address().file() {
        assert_eq!(shop.store.backup(file).await, Err(Error::Exists(shop.address())));
    }
    assert_eq!(fs::read(at("there")).ok().as_deref(), Some(&b"precious"[..]));
    assert!(matches!(shop.store.backup(&at("no/folder")).await, Err(Error::Io { .. })));
    assert!(!names(shop.folder.path()).iter().any(|name| name.starts_with('.')), "nothing half is left");
}

#[tokio::test]
async fn a_backup_is_one_moment_of_a_shop_that_is_being_written() {
    let shop = Shop::with(&["m"]).await;
    // Bytes enough that the copy takes many pages while the others write.
    let bytes = vec![7; 2_000_000];
    crate::pictures::keep_raw(&shop, "big.jpg", &bytes).await;
    let writes = async {
        for act in 0..40 {
            let pair = [dosed(act, &format!("k{act}/0"), "1"), dosed(act, &format!("k{act}/1"), "2")];
            shop.store.record(&pair).await.expect("entries that can be kept");
        }
    };
    let backups = async {
        for number in 0..4 {
            shop.store.backup(&shop.beside(&format!("{number}.shop"))).await.expect("a free name");
        }
    };
    tokio::join!(writes, backups);
    let all = Wanted { most: usize::MAX, ..Wanted::default() };
    let mut last = 0;
    for number in 0..4 {
        let copy = Store::open(&shop.beside(&format!("{number}.shop"))).await.expect("a whole file");
        let count = copy.entries(&all).await.expect("a whole file").len();
        assert!(count % 2 == 0 && count >= last, "no act is torn and none is lost: {count} after {last}");
        assert_eq!(copy.verify().await, Ok(vec![]));
        last = count;
    }
}

#[tokio::test]
async fn what_is_no_whole_backup_is_not_restored() {
    let shop = Shop::with(&["m"]).await;
    shop.record(dosed(1, "a", "1")).await;
    let at = |name: &str| shop.beside(name);
    let refused = async |from: &str| {
        let error = Store::restore(&at(from), &at("new")).await.expect_err("it must be refused");
        assert!(!at("new").exists());
        error
    };
    assert!(matches!(refused("nothing").await, Error::Missing(_)));
    shop.store.backup(&at("whole")).await.expect("a free name");
    let whole = fs::read(at("whole")).expect("the backup");
    let in_use = Store::open(at("whole")).await.expect("a whole file");
    assert!(matches!(refused("whole").await, Error::Conflict(_)), "it is open");
    in_use.close().await.expect("it closes");
    fs::write(at("short"), &whole[..whole.len() / 2]).expect("a file of our own");
    let mut flipped = whole.clone();
    let place = whole.windows(7).position(|seven| seven == b"Ram way").expect("the chart's text is in it");
    flipped[place] ^= 1;
    fs::write(at("flipped"), &flipped).expect("a file of our own");
    for name in ["short", "flipped"] {
        let error = refused(name).await;
        assert!(matches!(&error, Error::Corrupt { at: which, .. } if *which == at(name).into()), "{error}");
    }
}

#[tokio::test]
async fn a_damaged_shop_makes_no_backup() {
    let shop = Shop::with(&["m"]).await;
    let sql = format!("UPDATE picture SET bytes = {}", hex(&[0]));
    crate::pictures::keep_raw(&shop, "ram.jpg", b"some bytes").await;
    shop.tamper(&sql).await.expect("SQL");
    let to = shop.beside("copy");
    let error = shop.store.backup(&to).await.expect_err("damage is not handed on");
    assert!(matches!(&error, Error::Corrupt { at, .. } if *at == shop.address()), "{error}");
    assert!(!to.exists());
}

#[tokio::test]
async fn a_folder_of_backups_keeps_the_newest_and_touches_nothing_else() {
    let shop = Shop::with(&["m"]).await;
    let folder = shop.beside("backups");
    assert!(matches!(shop.store.keep_backups(&folder, minute(0), 2, 0).await, Err(Error::Io { .. })));
    fs::create_dir(&folder).expect("a folder of our own");
    let others =
        ["backup-2026-02-30.shop", "backup-2026-01-01.shop.txt", "notes", "backup-.shop", "backup-20260101.shop"];
    for name in others {
        fs::write(folder.join(name), b"mine").expect("a file of our own");
    }
    // The shop's zone is an hour ahead: 23:30 there is the next day here.
    let days = ["2026-03-02T22:30:00Z", "2026-03-02T23:30:00Z", "2026-03-03T12:00:00Z", "2026-03-05T12:00:00Z"];
    let mut removed = Vec::new();
    for day in days {
        let at = day.parse().expect("an instant as RFC 3339 writes it");
        removed.push(shop.store.keep_backups(&folder, at, 2, 2).await.expect("it keeps them").removed);
    }
    assert_eq!(removed, [vec![], vec![], vec![], vec![folder.join("backup-2026-03-02.shop")]]);
    // However few are wanted, the newest stays, also when it is old.
    let at = "2026-03-05T13:00:00Z".parse().expect("an instant as RFC 3339 writes it");
    let kept = shop.store.keep_backups(&folder, at, 0, 0).await.expect("it keeps them");
    assert_eq!(kept.today, folder.join("backup-2026-03-05.shop"));
    assert_eq!(kept.removed, [folder.join("backup-2026-03-03.shop")]);
    let mut left: Vec<String> = others.iter().map(ToString::to_string).collect();
    left.push("backup-2026-03-05.shop".to_owned());
    left.sort();
    assert_eq!(names(&folder), left);
}
