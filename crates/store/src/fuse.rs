//! The seam at which tests let a write fail: every statement and every step with a file asks here first. Outside of the crate's
//! own tests there is nothing to ask.

use crate::address::Address;
use crate::error::Result;

/// May the next step be done?
#[cfg(not(test))]
pub(crate) fn step(_: &Address) -> Result<()> {
    Ok(())
}

/// May the next step be done? Not when it is the one that a test chose.
#[cfg(test)]
pub(crate) fn step(at: &Address) -> Result<()> {
    LEFT.with(|left| match left.get() {
        None => Ok(()),
        Some(0) => Err(crate::error::Error::io(at, "the fuse of the test is out")),
        Some(more) => {
            left.set(Some(more - 1));
            Ok(())
        }
    })
}

/// Lets so many steps of this thread pass and all later ones fail; `None` lets all pass.
#[cfg(test)]
pub(crate) fn after(steps: Option<usize>) {
    LEFT.with(|left| left.set(steps));
}

#[cfg(test)]
thread_local! {
    static LEFT: std::cell::Cell<Option<usize>> = const { std::cell::Cell::new(None) };
}

#[cfg(test)]
mod tests {
    use std::ffi::OsStr;
    use std::fs;
    use std::path::PathBuf;

    use jiff::Timestamp;
    use shop::id::Id;
    use shop::logbook::{Body, EntryId, NewEntry, Subject};
    use shop::shelf::Shelf;
    use tempfile::TempDir;

    use super::*;
    use crate::db::values;
    use crate::server::TestDatabase;
    use crate::{Error, NewPicture, PictureId, Settings, Store, Superseded, Wanted};

    const AT: Timestamp = Timestamp::UNIX_EPOCH;
    const CHART: &str =
        "chart = 1\n[machine]\nname = \"Drill\"\n[[point]]\nid = \"1\"\nname = \"Quill\"\nmethod = \"cup\"\n";

    /// What can be done to a shop. Each writes enough that it needs room of its own in the file.
    #[derive(Clone, Copy, Debug, PartialEq)]
    enum Deed {
        AddChart,
        AddShelf,
        Record,
        SetSettings,
        AddPicture,
        Backup,
        Restore,
        Export,
        Import,
    }

    const ALL: [Deed; 9] = [
        Deed::AddChart,
        Deed::AddShelf,
        Deed::Record,
        Deed::SetSettings,
        Deed::AddPicture,
        Deed::Backup,
        Deed::Restore,
        Deed::Export,
        Deed::Import,
    ];

    struct Bench {
        folder: TempDir,
        store: Store,
        database: Option<TestDatabase>,
    }

    impl Bench {
        /// A shop in a file.
        async fn new() -> Self {
            Self::made(None).await
        }

        /// A shop in a database.
        async fn on_a_server() -> Self {
            Self::made(Some(TestDatabase::new().await)).await
        }

        async fn made(database: Option<TestDatabase>) -> Self {
            let folder = TempDir::new().expect("a temporary folder");
            let at = database.as_ref().map_or_else(|| folder.path().join("s").into(), address);
            let store = Store::create(at, &Settings::any(), AT).await.expect("a free place");
            store.add_chart(&id("m"), CHART, AT, "keeper").await.expect("a chart without faults");
            store.record(&[dosed("a", None)]).await.expect("an entry that can be kept");
            store.backup(&folder.path().join("old")).await.expect("a free name");
            store.export_csv(&folder.path().join("old.csv")).await.expect("a free name");
            Self { folder, store, database }
        }

        /// Where a new shop is to be made: beside this one.
        async fn new_place(&self) -> Place {
            match self.database {
                None => Place { at: self.path("new").into(), _database: None },
                Some(_) => {
                    let database = TestDatabase::new().await;
                    Place { at: address(&database), _database: Some(database) }
                }
            }
        }

        fn path(&self, name: &str) -> PathBuf {
            self.folder.path().join(name)
        }

        async fn deed(&self, deed: Deed, new: &Address) -> Result<()> {
            let long = "long ".repeat(4000);
            let store = &self.store;
            match deed {
                Deed::AddChart => {
                    let left =
                        NewPicture { machine: id("n"), name: "left.png".to_owned(), taken: None, bytes: picture() };
                    let text = format!("{CHART}# {long}\n");
                    store.add_chart_with(&id("n"), &text, vec![left], AT, "keeper").await.map(drop)
                }
                Deed::AddShelf => {
                    let text = format!(
                        "shelf = 1\n[[oil]]\nid = \"o\"\nname = \"{long}\"\nfamily = \"way\"\nstock = \"1 L\"\n\
                         [[can]]\nid = \"c\"\nstroke = \"1 mL\"\n"
                    );
                    let shelf = Shelf::read(&text).value.expect("a shelf without faults");
                    store.add_shelf(&shelf, AT, "keeper").await
                }
                Deed::Record => {
                    let note = NewEntry { body: Body::Note { text: long }, ..dosed("b", None) };
                    // One that replaces another goes through more statements.
                    store.record(&[note, dosed("c", Some(EntryId(1)))]).await.map(drop)
                }
                Deed::SetSettings => {
                    store.set_settings(&Settings { name: long, ..Settings::any() }, AT, "keeper").await
                }
                Deed::AddPicture => {
                    let (machine, name) = (id("m"), "left.png".to_owned());
                    store.add_picture(NewPicture { machine, name, taken: None, bytes: picture() }, AT).await.map(drop)
                }
                Deed::Backup => store.backup(&self.path("new")).await,
                Deed::Restore => Store::restore(&self.path("old"), new).await,
                Deed::Export => store.export_csv(&self.path("new")).await,
                Deed::Import => Store::import_csv(&self.path("old.csv"), new).await,
            }
        }

        /// All that can be seen of the shop, and the names in its folder.
        async fn seen(&self) -> String {
            let all = Wanted { most: usize::MAX, superseded: Superseded::Shown, ..Wanted::default() };
            let names = fs::read_dir(self.folder.path()).expect("the folder of the test");
            let mut names: Vec<_> = names
                .map(|entry| entry.expect("an entry of it").file_name().to_string_lossy().into_owned())
                .filter(|name| !name.starts_with("s-"))
                .collect();
            names.sort();
            format!(
                "{names:?} {:?} {:?} {:?} {:?} {:?}",
                self.store.settings().await,
                self.store.machines().await,
                self.store.entries(&all).await,
                self.store.shelf_at(Timestamp::MAX).await,
                self.store.picture(PictureId(1)).await.map(|picture| picture.sha256),
            )
        }
    }

    /// A place for a new shop.
    struct Place {
        at: Address,
        _database: Option<TestDatabase>,
    }

    fn address(database: &TestDatabase) -> Address {
        Address::read(OsStr::new(&database.address())).expect("an address")
    }

    fn id(text: &str) -> Id {
        Id::new(text).expect("a letter")
    }

    fn dosed(key: &str, supersedes: Option<EntryId>) -> NewEntry {
        NewEntry {
            happened: AT,
            recorded: AT,
            zone: "UTC".into(),
            by: "helper".into(),
            subject: Subject::Point(id("m"), id("1")),
            body: Body::Dosed { oil: None, can: None, amount: None },
            supersedes,
            idempotency_key: key.into(),
        }
    }

    /// A picture without any order in it, which no packing makes small.
    fn picture() -> Vec<u8> {
        let noise = |x: u32, y: u32| (x * 100 + y + 1).wrapping_mul(2_654_435_761).to_le_bytes();
        let image = image::RgbaImage::from_fn(100, 100, |x, y| image::Rgba(noise(x, y)));
        let mut bytes = std::io::Cursor::new(Vec::new());
        image.write_to(&mut bytes, image::ImageFormat::Png).expect("memory takes what is written");
        bytes.into_inner()
    }

    #[tokio::test]
    async fn a_failure_at_any_step_leaves_the_old_state() {
        for deed in ALL {
            fails_at_any_step(Bench::new().await, deed, 1).await;
        }
    }

    #[tokio::test]
    async fn a_failure_at_any_step_leaves_the_old_state_on_a_server() {
        for deed in ALL {
            // What goes through the whole shop has many steps of one kind there, and each trial makes all tables anew.
            let long = matches!(deed, Deed::Backup | Deed::Restore | Deed::Import);
            fails_at_any_step(Bench::on_a_server().await, deed, if long { 4 } else { 1 }).await;
        }
    }

    async fn fails_at_any_step(bench: Bench, deed: Deed, stride: usize) {
        let before = bench.seen().await;
        let new = bench.new_place().await;
        let makes = matches!(deed, Deed::Restore | Deed::Import);
        let mut steps = 0;
        loop {
            after(Some(steps));
            let done = bench.deed(deed, &new.at).await;
            after(None);
            if done.is_ok() {
                break;
            }
            assert!(matches!(done, Err(Error::Io { .. })), "{deed:?} at step {steps}: {done:?}");
            assert_eq!(bench.seen().await, before, "{deed:?} at step {steps}");
            if makes {
                let there = Store::open(&new.at).await.map(drop);
                assert!(matches!(there, Err(Error::Missing(_))), "{deed:?} at step {steps}: {there:?}");
            }
            steps += stride;
        }
        assert!(steps > 3, "{deed:?} has more steps than {steps}");
        let made = if makes { Some(Store::open(&new.at).await.expect("it was made")) } else { None };
        assert!(makes || bench.seen().await != before, "{deed:?}, once it is let");
        for store in made.iter().chain([&bench.store]) {
            assert_eq!(store.verify().await, Ok(vec![]), "{deed:?}");
        }
    }

    #[tokio::test]
    async fn creating_that_fails_at_any_step_leaves_nothing() {
        let folder = TempDir::new().expect("a temporary folder");
        let at = folder.path().join("s").into();
        creating_fails_at_any_step(&at, || {
            assert_eq!(fs::read_dir(folder.path()).map(Iterator::count).ok(), Some(0));
        })
        .await;
    }

    #[tokio::test]
    async fn creating_that_fails_at_any_step_leaves_nothing_on_a_server() {
        let database = TestDatabase::new().await;
        creating_fails_at_any_step(&address(&database), || {}).await;
    }

    async fn creating_fails_at_any_step(at: &Address, look: impl Fn()) {
        let mut steps = 0;
        loop {
            after(Some(steps));
            let made = Store::create(at, &Settings::any(), AT).await;
            after(None);
            if let Ok(store) = made {
                assert_eq!(store.verify().await, Ok(vec![]));
                break;
            }
            look();
            let there = Store::open(at).await.map(drop);
            assert!(matches!(there, Err(Error::Missing(_))), "at step {steps}: {there:?}");
            steps += 1;
        }
        assert!(steps > 3);
    }

    /// SQLite's own way to a full disk: the file may not grow beyond so many pages, one more at each trial.
    #[tokio::test]
    async fn a_full_disk_leaves_the_old_state_and_says_so() {
        for deed in [Deed::AddChart, Deed::AddShelf, Deed::Record, Deed::SetSettings, Deed::AddPicture] {
            let bench = Bench::new().await;
            let before = bench.seen().await;
            let tx = bench.store.db.read().await.expect("an open file");
            let row = tx.one("SELECT page_count FROM pragma_page_count", values![]).await.expect("a pragma of SQLite");
            let full: i64 = row.expect("one row").get("page_count").expect("a number");
            tx.commit().await.expect("an open file");
            let mut room = 0;
            loop {
                bench.store.db.pragma(&format!("PRAGMA max_page_count = {}", full + room)).await.expect("a pragma");
                let done = bench.deed(deed, bench.store.address()).await;
                if done.is_ok() {
                    break;
                }
                let what = |error: &Error| matches!(error, Error::Io { what, .. } if what == "the disk is full");
                assert!(done.as_ref().is_err_and(what), "{deed:?} with {room} pages: {done:?}");
                assert_eq!(bench.seen().await, before, "{deed:?} with {room} pages");
                room += 1;
            }
            assert!(room > 2, "{deed:?} needs more room than {room} pages");
            assert_eq!(bench.store.verify().await, Ok(vec![]), "{deed:?}");
        }
    }
}
