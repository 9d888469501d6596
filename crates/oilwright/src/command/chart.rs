//! `chart`: checking chart files, and taking them in and out of the shop.

mod bundle;
mod check;
mod export;
mod import;
mod schema;
mod show;

use std::path::Path;
use std::process::ExitCode;

use clap::Subcommand;
use shop::fault::Fault;
use shop::id::Id;

use crate::failure::Failure;

use super::Shared;

#[derive(Debug, Subcommand)]
pub(crate) enum Chart {
    /// Say what is wrong with a chart file, each fault with its line; then what is doubtful, and what to do about it.
    Check(check::Check),
    /// Print the JSON Schema of chart files, for editors that help while one is written.
    Schema(schema::Schema),
    /// Print the chart of a machine of the shop as its keepers wrote it.
    Show(show::Show),
    /// Take a chart file into the shop, as a new machine or as the next revision of one, with the pictures beside it or in its zip.
    Import(import::Import),
    /// Write the chart of a machine to a file: TOML with its pictures beside it, or a zip with both.
    Export(export::Export),
}

impl Chart {
    pub(crate) async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        match self {
            Self::Check(check) => check.run(shared),
            Self::Schema(schema) => schema.run(),
            Self::Show(show) => show.run(shared).await,
            Self::Import(import) => import.run(shared).await,
            Self::Export(export) => export.run(shared).await,
        }
    }
}

/// The chart in a file; faults are wrong input, all told.
pub(super) fn read(file: &Path) -> Result<shop::chart::Chart, Failure> {
    let text = text_of(file)?;
    let read = shop::chart::Chart::read(&text);
    read.value.ok_or_else(|| refused(file, &text, &read.faults))
}

/// The id that a machine gets from its file's name, or failing that from its own.
pub(super) fn machine_id(file: &Path, chart: &shop::chart::Chart) -> Result<Id, Failure> {
    let from_file = file.file_stem().and_then(|stem| Id::from_name(&stem.to_string_lossy()));
    from_file.or_else(|| Id::from_name(&chart.machine.name)).ok_or_else(|| {
        Failure::Use(
            "neither the file nor the machine has a name that could be its id; give one with --machine".to_owned(),
        )
    })
}

/// The text of a file.
pub(super) fn text_of(file: &Path) -> Result<String, Failure> {
    std::fs::read_to_string(file).map_err(|error| unreadable(file, &error))
}

/// Why a file could not be read.
pub(super) fn unreadable(file: &Path, error: &std::io::Error) -> Failure {
    let hint = match error.kind() {
        std::io::ErrorKind::NotFound => "there is no such file",
        std::io::ErrorKind::InvalidData => "it is no text in UTF-8",
        std::io::ErrorKind::IsADirectory => "it is a folder; name the file in it",
        _ => "the system would not let it be read",
    };
    Failure::Use(format!("{} could not be read: {hint}", file.display()))
}

/// A file with faults was not taken.
pub(super) fn refused(file: &Path, text: &str, faults: &[Fault]) -> Failure {
    let file = file.display().to_string();
    let shown: Vec<String> = faults.iter().map(|fault| fault.shown(&file, text)).collect();
    Failure::Use(format!("{file} was not taken; nothing was changed.\n{}", shown.join("\n")))
}
