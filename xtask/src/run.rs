//! Runs another program from the root of the repository and says which one, so that every line of the check can be repeated by hand.

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// The folder that holds the workspace.
pub(crate) fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().expect("xtask lies in a folder of the repository").to_path_buf()
}

/// A program about to be run.
pub(crate) struct Run {
    command: Command,
    shown: String,
}

impl Run {
    /// A program with its arguments, to be run in the root of the repository.
    pub(crate) fn new<A: AsRef<str>>(program: &str, arguments: &[A]) -> Run {
        let arguments: Vec<&str> = arguments.iter().map(AsRef::as_ref).collect();
        let mut command = Command::new(program);
        command.args(&arguments).current_dir(root());
        Run { command, shown: format!("{program} {}", arguments.join(" ")) }
    }

    /// Cargo kept off the network: `setup` has fetched every crate already.
    pub(crate) fn cargo(arguments: &str) -> Run {
        let words: Vec<&str> = arguments.split_whitespace().collect();
        Run::new("cargo", &words).env("CARGO_NET_OFFLINE", "true")
    }

    /// Adds one environment variable.
    pub(crate) fn env(mut self, name: &str, value: &str) -> Run {
        self.command.env(name, value);
        self.shown = format!("{name}='{value}' {}", self.shown);
        self
    }

    /// Runs in a folder of the repository instead of its root.
    pub(crate) fn folder(mut self, folder: &str) -> Run {
        self.command.current_dir(root().join(folder));
        self.shown = format!("(in {folder}) {}", self.shown);
        self
    }

    /// Says what is run, runs it with its output in sight, and fails when it fails.
    pub(crate) fn go(mut self) -> Result<(), String> {
        println!("$ {}", self.shown);
        let status = self.command.stdin(Stdio::null()).status().map_err(|error| self.could_not_start(&error))?;
        if status.success() { Ok(()) } else { Err(format!("This failed ({status}): {}", self.shown)) }
    }

    /// Runs it without a word, and says what it was when it fails. A server that it leaves behind must hold none of
    /// our pipes, or whoever reads them would wait for its end.
    pub(crate) fn quiet(mut self) -> Result<(), String> {
        self.command.stdin(Stdio::null()).stdout(Stdio::null()).stderr(Stdio::null());
        let status = self.command.status().map_err(|error| self.could_not_start(&error))?;
        if status.success() { Ok(()) } else { Err(format!("This failed ({status}): {}", self.shown)) }
    }

    /// What the program prints on its standard output.
    pub(crate) fn text(mut self) -> Result<String, String> {
        let output = self.command.stdin(Stdio::null()).output().map_err(|error| self.could_not_start(&error))?;
        if !output.status.success() {
            let says = String::from_utf8_lossy(&output.stderr);
            return Err(format!("This failed ({}): {}\n{says}", output.status, self.shown));
        }
        String::from_utf8(output.stdout).map_err(|_| format!("This printed something that is no text: {}", self.shown))
    }

    fn could_not_start(&self, error: &std::io::Error) -> String {
        format!("This could not be started ({error}): {}", self.shown)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_failing_program_is_an_error_that_names_it() {
        let says = Run::new("git", &["no-such-command"]).text().unwrap_err();
        assert!(says.contains("git no-such-command"), "{says}");
    }

    #[test]
    fn a_missing_program_is_an_error_that_names_it() {
        let says = Run::new("no-such-program", &["at", "all"]).go().unwrap_err();
        assert!(says.contains("no-such-program at all"), "{says}");
    }
}
