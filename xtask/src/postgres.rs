//! A PostgreSQL server for the tests, made from Debian's packages in a folder of its own, reached by a socket there, and thrown away
//! with everything in it. It never meets a server that the system runs.

use std::fs;
use std::path::{Path, PathBuf};

use crate::run::Run;

/// Where the tests look for its address.
pub(crate) const ADDRESS: &str = "OILWRIGHT_TEST_POSTGRES";

/// Who may do everything on it.
const USER: &str = "tester";
/// What that user has to say. It is a password so that the tests see that none is ever shown.
const PASSWORD: &str = "a secret";
/// The user that Debian's package makes; the server refuses to run as root.
const SERVANT: &str = "postgres";

/// What the name of a server's folder begins with; the number of the process that uses it follows.
const BEGINNING: &str = "oilwright-postgres-";

/// A running server; dropped, it is gone.
pub(crate) struct Server {
    folder: PathBuf,
    programs: String,
}

impl Server {
    /// Makes and starts one.
    pub(crate) fn start() -> Result<Self, String> {
        let programs = programs()?;
        sweep(&programs)?;
        // A socket's path may have about a hundred bytes, which the target folder may be too long for.
        let folder = std::env::temp_dir().join(format!("{BEGINNING}{}", std::process::id()));
        fs::create_dir(&folder).map_err(|error| format!("{} could not be made: {error}.", folder.display()))?;
        let server = Self { folder, programs };
        server.fill()?;
        Ok(server)
    }

    /// Its address, as the tests want it.
    pub(crate) fn address(&self) -> String {
        let password = PASSWORD.replace(' ', "%20");
        format!("postgres:///postgres?host={}&user={USER}&password={password}", self.folder.display())
    }

    fn fill(&self) -> Result<(), String> {
        let at = |name: &str| self.folder.join(name).display().to_string();
        let failed = |error: std::io::Error| format!("{} could not be filled: {error}.", self.folder.display());
        fs::write(at("password"), PASSWORD).map_err(failed)?;
        if is_root()? {
            Run::new("chown", &["-R", SERVANT, &at("")]).text()?;
        }
        let words = [
            // The older way of asking for a password, which is quick: the tests connect some thousand times.
            "--auth=md5",
            "--encoding=UTF8",
            "--locale=C.UTF-8",
            "--data-checksums",
            "--no-sync",
            &format!("--username={USER}"),
            &format!("--pwfile={}", at("password")),
            &format!("--pgdata={}", at("data")),
        ];
        self.run("initdb", &words)?;
        // Nothing has to outlive the tests, so nothing is synced.
        let options =
            format!("-c listen_addresses= -c unix_socket_directories={} -c fsync=off -c max_connections=200", at(""));
        self.run("pg_ctl", &["start", "--wait", "--pgdata", &at("data"), "--log", &at("log"), "--options", &options])
    }

    fn run(&self, program: &str, words: &[&str]) -> Result<(), String> {
        let program = format!("{}/{program}", self.programs);
        let run = if is_root()? {
            Run::new("runuser", &[&["-u", SERVANT, "--", &program], words].concat())
        } else {
            Run::new(&program, words)
        };
        run.quiet()
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        let data = self.folder.join("data").display().to_string();
        if let Err(says) = self.run("pg_ctl", &["stop", "--wait", "--mode", "immediate", "--pgdata", &data]) {
            println!("{says}");
        }
        if let Err(error) = fs::remove_dir_all(&self.folder) {
            println!("{} could not be removed: {error}.", self.folder.display());
        }
    }
}

/// Stops and removes what a run left behind that was killed.
fn sweep(programs: &str) -> Result<(), String> {
    let folder = std::env::temp_dir();
    let entries = fs::read_dir(&folder).map_err(|error| format!("{} cannot be read: {error}.", folder.display()))?;
    for name in entries.filter_map(|entry| entry.ok()?.file_name().into_string().ok()) {
        let Some(process) = name.strip_prefix(BEGINNING) else { continue };
        // Signal nought asks whether there is such a process, and does nothing to it.
        if Run::new("kill", &["-0", process]).text().is_err() {
            drop(Server { folder: folder.join(name), programs: programs.to_owned() });
        }
    }
    Ok(())
}

/// The folder of the newest server's programs, which Debian keeps out of the way.
fn programs() -> Result<String, String> {
    let listed = Run::new("sh", &["-c", PRESENT]).text();
    let newest = listed.ok().and_then(|listed| listed.lines().last().map(str::to_owned));
    let newest = newest.as_deref().map(Path::new).and_then(Path::parent);
    newest.map(|folder| folder.display().to_string()).ok_or_else(|| {
        "There is no PostgreSQL server for the tests of the store; `cargo xtask setup` installs one.".to_owned()
    })
}

/// A line of shell that lists the programs that make a server, the newest last, and fails where there is none.
pub(crate) const PRESENT: &str =
    "{ ls /usr/lib/postgresql/*/bin/initdb || command -v initdb; } 2>/dev/null | sort -V | grep .";

fn is_root() -> Result<bool, String> {
    Ok(Run::new("id", &["-u"]).text()?.trim() == "0")
}
