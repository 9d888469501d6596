//! Where the system says no, to a program of its own: a disk that takes no more bytes, a folder that takes no files, another program
//! on the same file. Each is said in one sentence, and what was there is there afterwards.
//!
//! The full disk is `ulimit -f`: beyond it the system refuses to let any file grow, be it the data file, its log or a copy. It is
//! raised until the deed is done, so that the deed fails at one place after the other.

use std::collections::BTreeMap;
use std::fs;
use std::io::Write as _;
use std::os::unix::fs::{MetadataExt as _, PermissionsExt as _};
use std::os::unix::process::CommandExt as _;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use std::time::Duration;

use jiff::Timestamp;
use shop::logbook::{Body, NewEntry};
use shop::shelf::Shelf;
use store::{Error, NewPicture, PictureId, Store, Superseded, Wanted};
use tempfile::TempDir;

use crate::{CHART, entry, id, settings};

/// The deed that a child is to do, in the folder that it is started in.
pub(crate) const DEED: &str = "OILWRIGHT_CHILD_DEED";
/// What the keys of a child begin with.
const KEYS: &str = "OILWRIGHT_CHILD_KEYS";

/// How many acts each of two programs writes at the same time.
const ACTS: usize = 40;
/// By how much the limit is raised, in the blocks of `ulimit`, which has half a kilobyte or a whole one.
const BLOCKS: usize = 24;
/// A user who owns nothing.
const NOBODY: u32 = 65_534;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Deed {
    Create,
    AddChart,
    AddShelf,
    Record,
    SetSettings,
    AddPicture,
    Backup,
    Restore,
    Export,
    Import,
    Write,
}

const ALL: [Deed; 10] = [
    Deed::Create,
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

/// The child: does its deed and says on its output why it could not.
pub(crate) async fn child(word: &str) {
    let every = ALL.iter().chain([&Deed::Write]);
    let deed = every.copied().find(|deed| format!("{deed:?}") == word).expect("a deed that is in the list");
    if let Err(error) = done(deed).await {
        writeln!(std::io::stdout(), "{error}").expect("somebody reads");
        std::process::exit(1);
    }
}

async fn done(deed: Deed) -> Result<(), Error> {
    let (at, new) = (Timestamp::UNIX_EPOCH, Path::new("new"));
    let long = "long ".repeat(4000);
    match deed {
        Deed::Create => return Store::create(new, &settings(), at).await.map(drop),
        Deed::Restore => return Store::restore(Path::new("old.shop"), new).await,
        Deed::Import => return Store::import_csv(Path::new("old.csv"), new).await,
        _ => {}
    }
    let store = Store::open(Path::new("shop.db")).await?;
    match deed {
        Deed::AddChart => store.add_chart(&id("n"), &format!("{CHART}# {long}\n"), at, "keeper").await.map(drop),
        Deed::AddShelf => {
            let text =
                format!("shelf = 1\n[[oil]]\nid = \"o\"\nname = \"{long}\"\nfamily = \"way\"\nstock = \"1 L\"\n");
            store.add_shelf(&Shelf::read(&text).value.expect("a shelf without faults"), at, "keeper").await
        }
        Deed::Record => {
            let note = NewEntry { body: Body::Note { text: long }, ..entry("deed/0") };
            store.record(&[note, entry("deed/1")]).await.map(drop)
        }
        Deed::SetSettings => store.set_settings(&store::Settings { name: long, ..settings() }, at, "keeper").await,
        Deed::AddPicture => store.add_picture(picture("right.png"), at).await.map(drop),
        Deed::Backup => store.backup(new).await,
        Deed::Export => store.export_csv(new).await,
        Deed::Write => {
            let keys = std::env::var(KEYS).expect("the parent gave it");
            for act in 0..ACTS {
                store.record(&[entry(&format!("{keys}/{act}/0")), entry(&format!("{keys}/{act}/1"))]).await?;
            }
            Ok(())
        }
        Deed::Create | Deed::Restore | Deed::Import => Ok(()),
    }
    // Closing tidies up and may find the disk full too: the deed is done then nevertheless.
}

/// A folder with a shop, a backup and an export of it.
struct Bench {
    folder: TempDir,
}

impl Bench {
    async fn new() -> Self {
        let folder = TempDir::new().expect("a temporary folder");
        let at = Timestamp::UNIX_EPOCH;
        let store = Store::create(&folder.path().join("shop.db"), &settings(), at).await.expect("a free name");
        store.add_chart(&id("m"), CHART, at, "keeper").await.expect("a chart without faults");
        store.record(&[entry("first")]).await.expect("an entry that can be kept");
        store.add_picture(picture("left.png"), at).await.expect("a whole picture");
        store.backup(&folder.path().join("old.shop")).await.expect("a free name");
        store.export_csv(&folder.path().join("old.csv")).await.expect("a free name");
        store.close().await.expect("it closes");
        Self { folder }
    }

    fn path(&self) -> &Path {
        self.folder.path()
    }

    /// All that can be seen of the shop, and the names beside it.
    async fn seen(&self) -> String {
        let store = Store::open(&self.path().join("shop.db")).await.expect("a whole file");
        assert_eq!(store.verify().await, Ok(vec![]));
        let all = Wanted { most: usize::MAX, superseded: Superseded::Shown, ..Wanted::default() };
        let seen = format!(
            "{:?} {:?} {:?} {:?} {:?}",
            store.settings().await,
            store.machines().await,
            store.entries(&all).await,
            store.shelf_at(Timestamp::MAX).await,
            store.picture(PictureId(2)).await.map(|picture| picture.sha256),
        );
        store.close().await.expect("it closes");
        format!("{:?} {seen}", files(self.path()).keys())
    }
}

fn picture(name: &str) -> NewPicture {
    let noise = |x: u32, y: u32| (x * 100 + y + 1).wrapping_mul(2_654_435_761).to_le_bytes();
    let mut bytes = std::io::Cursor::new(Vec::new());
    let image = image::RgbaImage::from_fn(100, 100, |x, y| image::Rgba(noise(x, y)));
    image.write_to(&mut bytes, image::ImageFormat::Png).expect("memory takes what is written");
    NewPicture { machine: id("m"), name: name.to_owned(), taken: None, bytes: bytes.into_inner() }
}

/// Every file below a folder with its bytes.
fn files(folder: &Path) -> BTreeMap<PathBuf, Vec<u8>> {
    let mut found = BTreeMap::new();
    let mut open = vec![folder.to_owned()];
    while let Some(here) = open.pop() {
        for one in fs::read_dir(here).expect("the folder of the test") {
            let path = one.expect("an entry of it").path();
            if path.is_dir() {
                open.push(path);
            } else {
                found.insert(path.clone(), fs::read(&path).expect("a file that can be read"));
            }
        }
    }
    found
}

/// Whether a child did its deed; when not, it must have said in one sentence why.
fn told(deed: Deed, output: &Output) -> bool {
    let says = String::from_utf8_lossy(&output.stdout);
    assert!(matches!(output.status.code(), Some(0 | 1)), "{deed:?}: {output:?}");
    if !output.status.success() {
        assert!(says.contains("; ") && says.lines().count() == 1, "{deed:?} says: {says}");
    }
    output.status.success()
}

fn this() -> PathBuf {
    std::env::current_exe().expect("the system knows what runs")
}

pub(crate) async fn a_disk_that_is_full_at_any_place_leaves_what_was_there() {
    for deed in ALL {
        let mut limits = 0;
        loop {
            let bench = Bench::new().await;
            let before = bench.seen().await;
            let shell = "trap '' XFSZ; ulimit -f \"$0\"; exec \"$1\"";
            let output = Command::new("sh")
                .args(["-c", shell, &(limits * BLOCKS).to_string()])
                .arg(this())
                .env(DEED, format!("{deed:?}"))
                .current_dir(bench.path())
                .output()
                .expect("every system of this kind has a shell");
            if told(deed, &output) {
                assert_ne!(bench.seen().await, before, "{deed:?}");
                let new = bench.path().join("new");
                if new.is_file() {
                    let store = Store::open(&new).await.expect("a whole file");
                    assert_eq!(store.verify().await, Ok(vec![]), "{deed:?}");
                }
                break;
            }
            assert_eq!(bench.seen().await, before, "{deed:?} with {limits} times {BLOCKS} blocks");
            limits += 1;
        }
        assert!(limits > 2, "{deed:?} was not hindered");
    }
}

pub(crate) async fn a_folder_that_takes_no_files_is_said_to() {
    let bench = Bench::new().await;
    let mode = |path: &Path, mode| {
        fs::set_permissions(path, fs::Permissions::from_mode(mode)).expect("a file or folder of our own");
    };
    // Permissions do not hold for root, so the child is then nobody, who must be able to reach this program.
    let root = bench.path().metadata().expect("the folder").uid() == 0;
    let away = TempDir::new().expect("a temporary folder");
    let program = away.path().join("program");
    fs::copy(this(), &program).expect("room for a copy");
    mode(&program, 0o755);
    mode(away.path(), 0o755);
    // The files may be written, and the folder takes no companions.
    for path in files(bench.path()).keys() {
        mode(path, 0o666);
    }
    for folder in ["old.csv/pictures", "old.csv", ""] {
        mode(&bench.path().join(folder), 0o555);
    }
    let before = files(bench.path());
    for deed in ALL {
        let mut command = Command::new(&program);
        command.env(DEED, format!("{deed:?}")).current_dir(bench.path());
        if root {
            command.uid(NOBODY).gid(NOBODY);
        }
        assert!(!told(deed, &command.output().expect("this program runs")), "{deed:?}");
        assert_eq!(files(bench.path()), before, "{deed:?}");
    }
    for folder in ["", "old.csv", "old.csv/pictures"] {
        mode(&bench.path().join(folder), 0o755);
    }
}

/// The hidden folders beside the shop that were begun and are held or were.
fn begun(folder: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder).expect("the folder of the test");
    let paths = entries.map(|entry| entry.expect("an entry of it").path());
    paths.filter(|path| path.join("held").exists()).collect()
}

pub(crate) async fn what_a_killed_backup_leaves_is_swept_by_the_next() {
    let bench = Bench::new().await;
    let left = loop {
        let mut command = Command::new(this());
        command.env(DEED, format!("{:?}", Deed::Backup)).current_dir(bench.path());
        let mut child = command.spawn().expect("this program runs");
        while begun(bench.path()).is_empty() && child.try_wait().expect("a child of ours").is_none() {
            std::hint::spin_loop();
        }
        child.kill().expect("a child of ours");
        child.wait().expect("a child of ours");
        if let Some(left) = begun(bench.path()).pop() {
            break left;
        }
        // It was done before it could be killed.
        let _ = fs::remove_file(bench.path().join("new"));
    };
    let store = Store::open(&bench.path().join("shop.db")).await.expect("a whole file");
    store.backup(&bench.path().join("soon")).await.expect("a free name");
    assert!(left.exists(), "what was begun within a minute may be somebody's");
    let held = fs::File::options().write(true).open(left.join("held")).expect("a file that nobody holds");
    let then = held.metadata().and_then(|held| held.modified()).expect("a time") - Duration::from_secs(3600);
    held.set_modified(then).expect("a file of our own");
    store.backup(&bench.path().join("later")).await.expect("a free name");
    assert!(!left.exists());
    assert_eq!(begun(bench.path()), Vec::<PathBuf>::new());
}

pub(crate) async fn two_programs_write_one_file_and_nothing_is_lost() {
    let bench = Bench::new().await;
    let writer = |keys: &str| {
        let mut command = Command::new(this());
        command.env(DEED, format!("{:?}", Deed::Write)).env(KEYS, keys).current_dir(bench.path());
        command.spawn().expect("this program runs")
    };
    let mut writers = [writer("a"), writer("b")];
    let store = Store::open(&bench.path().join("shop.db")).await.expect("a whole file");
    for act in 0..ACTS {
        store.record(&[entry(&format!("c/{act}/0")), entry(&format!("c/{act}/1"))]).await.expect("it waits its turn");
    }
    for writer in &mut writers {
        assert!(writer.wait().expect("a child of ours").success());
    }
    let all = Wanted { most: usize::MAX, ..Wanted::default() };
    let mut entries = store.entries(&all).await.expect("a whole file");
    entries.sort_by_key(|entry| entry.id);
    let keys: Vec<&str> = entries.iter().map(|entry| entry.said.idempotency_key.as_str()).collect();
    assert_eq!(keys.len(), 1 + 3 * 2 * ACTS);
    for pair in keys[1..].chunks_exact(2) {
        let (act, other) = (pair[0].strip_suffix("/0"), pair[1].strip_suffix("/1"));
        assert!(act.is_some() && act == other, "an act stands together: {pair:?}");
    }
    assert_eq!(store.verify().await, Ok(vec![]));
}
