//! The seam at which tests let a write fail: every statement and every step with a file asks here first. Outside of the crate's
//! own tests there is nothing to ask.

use std::path::Path;

use crate::error::Result;

/// May the next step be done?
#[cfg(not(test))]
pub(crate) fn step(_: &Path) -> Result<()> {
    Ok(())
}

/// May the next step be done? Not when it is the one that a test chose.
#[cfg(test)]
pub(crate) fn step(path: &Path) -> Result<()> {
    LEFT.with(|left| match left.get() {
        None => Ok(()),
        Some(0) => Err(crate::error::Error::io(path, "the fuse of the test is out")),
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
    use std::fs;
    use std::path::PathBuf;

    use jiff::Timestamp;
    use shop::id::Id;
    use shop::logbook::{Body, EntryId, NewEntry, Subject};
    use shop::shelf::Shelf;
    use tempfile::TempDir;

    use super::*;
    use crate::db::values;
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
    }

    impl Bench {
        async fn new() -> Self {
            let folder = TempDir::new().expect("a temporary folder");
            let store = Store::create(&folder.path().join("s"), &Settings::any(), AT).await.expect("a free name");
            store.add_chart(&id("m"), CHART, AT, "keeper").await.expect("a chart without faults");
            store.record(&[dosed("a", None)]).await.expect("an entry that can be kept");
            store.backup(&folder.path().join("old")).await.expect("a free name");
            store.export_csv(&folder.path().join("old.csv")).await.expect("a free name");
            Self { folder, store }
        }

        fn path(&self, name: &str) -> PathBuf {
            self.folder.path().join(name)
        }

        async fn deed(&self, deed: Deed) -> Result<()> {
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
                Deed::Restore => Store::restore(&self.path("old"), &self.path("new")).await,
                Deed::Export => store.export_csv(&self.path("new")).await,
                Deed::Import => Store::import_csv(&self.path("old.csv"), &self.path("new")).await,
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
            let bench = Bench::new().await;
            let before = bench.seen().await;
            let mut steps = 0;
            loop {
                after(Some(steps));
                let done = bench.deed(deed).await;
                after(None);
                if done.is_ok() {
                    break;
                }
                assert!(matches!(done, Err(Error::Io { .. })), "{deed:?} at step {steps}: {done:?}");
                assert_eq!(bench.seen().await, before, "{deed:?} at step {steps}");
                steps += 1;
            }
            assert!(steps > 3, "{deed:?} has more steps than {steps}");
            assert_ne!(bench.seen().await, before, "{deed:?}, once it is let");
            assert_eq!(bench.store.verify().await, Ok(vec![]), "{deed:?}");
        }
    }

    #[tokio::test]
    async fn creating_that_fails_at_any_step_leaves_nothing() {
        let folder = TempDir::new().expect("a temporary folder");
        let path = folder.path().join("s");
        let mut steps = 0;
        loop {
            after(Some(steps));
            let made = Store::create(&path, &Settings::any(), AT).await;
            after(None);
            if let Ok(store) = made {
                assert_eq!(store.verify().await, Ok(vec![]));
                break;
            }
            assert_eq!(fs::read_dir(folder.path()).map(Iterator::count).ok(), Some(0), "at step {steps}");
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
                let done = bench.deed(deed).await;
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
