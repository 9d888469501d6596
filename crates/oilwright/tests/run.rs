//! Starting the program and taking what it prints.

use std::path::{Path, PathBuf};
use std::process::Command;

use serde_json::Value;
use tempfile::TempDir;

/// What a run printed, and how it ended.
pub(crate) struct Run {
    pub(crate) out: String,
    pub(crate) err: String,
    pub(crate) code: Option<i32>,
}

/// Runs the program with these words, no shop named by the environment.
#[track_caller]
pub(crate) fn run(words: &[&str]) -> Run {
    let output = Command::new(env!("CARGO_BIN_EXE_oilwright"))
        .env_remove("OILWRIGHT_SHOP")
        .args(words)
        .output()
        .expect("the program starts");
    Run {
        out: String::from_utf8(output.stdout).expect("it prints UTF-8"),
        err: String::from_utf8(output.stderr).expect("it prints UTF-8"),
        code: output.status.code(),
    }
}

impl Run {
    #[track_caller]
    pub(crate) fn well(self) -> Self {
        assert_eq!(self.code, Some(0), "{}{}", self.out, self.err);
        self
    }

    /// What is said of a wrong use.
    #[track_caller]
    pub(crate) fn wrong_use(self) -> String {
        assert_eq!(self.code, Some(2), "{}{}", self.out, self.err);
        self.err
    }

    #[track_caller]
    pub(crate) fn json(&self) -> Value {
        serde_json::from_str(&self.out).unwrap_or_else(|error| panic!("{error}: {}", self.out))
    }
}

/// A folder with a shop of one small machine.
pub(crate) struct Bench {
    pub(crate) folder: TempDir,
}

pub(crate) const CHART: &str = r#"chart = 1
[machine]
name = "Bench drill"
kind = "drill"

[[job]]
id   = "tapping"
name = "Tapping"

[[point]]
id     = "1"
name   = "Quill sleeve"
method = "oil hole"
stand  = "front"
dose   = "1.6 mL"
oil    = "way 68"
every  = ["1 use", "4 h"]
sign   = "oil sinks within a minute"

[[point]]
id     = "2"
name   = "Column"
method = "brush"
stand  = "left"
dose   = "3 drops"
every  = "1 week"

[[point]]
id     = "3"
name   = "Tapping clutch"
method = "oil hole"
job    = "tapping"
dose   = "2 drops"
every  = "1 use"
"#;

const SHELF: &str = r#"shelf = 1
[[oil]]
id     = "way-68"
name   = "Way 68"
family = "way"
v40    = "68 mm2/s"
stock  = "5 L"
[[can]]
id     = "short-can"
oil    = "way-68"
stroke = "0.8 mL"
"#;

impl Bench {
    #[track_caller]
    pub(crate) fn new() -> Self {
        let bench = Self { folder: tempfile::tempdir().expect("a folder") };
        bench.write("bench-drill.toml", CHART);
        bench.write("shelf.toml", SHELF);
        let shop = bench.path("our.shop");
        let at = "2026-11-20T08:00";
        run(&["shop", "new", &shop, "--zone", "Europe/Berlin", "--at", at]).well();
        run(&["--shop", &shop, "shelf", "import", &bench.path("shelf.toml"), "--at", at]).well();
        run(&["--shop", &shop, "chart", "import", &bench.path("bench-drill.toml"), "--at", at]).well();
        bench
    }

    pub(crate) fn path(&self, name: &str) -> String {
        self.file(name).display().to_string()
    }

    pub(crate) fn file(&self, name: &str) -> PathBuf {
        Path::new(self.folder.path()).join(name)
    }

    #[track_caller]
    pub(crate) fn write(&self, name: &str, text: &str) {
        std::fs::write(self.file(name), text).expect("the folder can be written");
    }

    /// Runs a command on the shop.
    #[track_caller]
    pub(crate) fn run(&self, words: &[&str]) -> Run {
        let shop = self.path("our.shop");
        let mut all = vec!["--shop", shop.as_str()];
        all.extend(words);
        run(&all)
    }
}
