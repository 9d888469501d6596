//! `chart`: checking a chart file and taking it into the shop.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::{Args, Subcommand};
use shop::audit::audit;
use shop::fault::{Fault, Severity};
use shop::id::Id;

use crate::failure::Failure;
use crate::{say, shop_file};

use super::Shared;

#[derive(Debug, Subcommand)]
pub(crate) enum Chart {
    /// Say what is wrong with a chart file, each fault with its line.
    Check(Check),
    /// Take a chart file into the shop, as a new machine or as the next revision of one.
    Import(Import),
}

#[derive(Debug, Args)]
pub(crate) struct Check {
    /// The chart file.
    file: PathBuf,
    /// Show every remark of the audit, not only the five that matter most.
    #[arg(long)]
    all: bool,
}

#[derive(Debug, Args)]
pub(crate) struct Import {
    /// The chart file.
    file: PathBuf,
    /// The machine's id in the shop; the file's name when left out.
    #[arg(long)]
    machine: Option<String>,
    /// Who says so.
    #[arg(long, default_value = "keeper")]
    by: String,
}

impl Chart {
    pub(crate) async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        match self {
            Self::Check(check) => check.run(shared),
            Self::Import(import) => import.run(shared).await,
        }
    }
}

impl Check {
    fn run(&self, shared: &Shared) -> Result<ExitCode, Failure> {
        let text = text_of(&self.file)?;
        let read = shop::chart::Chart::read(&text);
        let file = self.file.display().to_string();
        let remarks = read.value.as_ref().map(audit).unwrap_or_default();
        say::check(
            &say::Checked { file: &file, text: &text, faults: &read.faults, remarks: &remarks },
            self.all,
            shared.json,
        )?;
        let faulty = read.faults.iter().any(|fault| fault.severity == Severity::Fault);
        Ok(if faulty { ExitCode::FAILURE } else { ExitCode::SUCCESS })
    }
}

impl Import {
    async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        let text = text_of(&self.file)?;
        let read = shop::chart::Chart::read(&text);
        let Some(chart) = read.value else { return Err(refused(&self.file, &text, &read.faults)) };
        let open = shop_file::open(shared.shop.as_deref(), shared.at.as_deref()).await?;
        let machine = match &self.machine {
            Some(id) => Id::new(id).map_err(|fault| Failure::Use(fault.to_string()))?,
            None => machine_id(&self.file, &chart)?,
        };
        let revision = open.store.add_chart(&machine, &text, open.at, &self.by).await?;
        open.store.close().await?;
        say::line(&format!("{machine}: {}, {} points, revision {revision}", chart.machine.name, chart.points.len()))?;
        Ok(ExitCode::SUCCESS)
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

pub(super) fn text_of(file: &Path) -> Result<String, Failure> {
    std::fs::read_to_string(file).map_err(|error| {
        let hint = match error.kind() {
            std::io::ErrorKind::NotFound => "there is no such file",
            std::io::ErrorKind::InvalidData => "it is no text in UTF-8",
            std::io::ErrorKind::IsADirectory => "it is a folder; name the file in it",
            _ => "the system would not let it be read",
        };
        Failure::Use(format!("{} could not be read: {hint}", file.display()))
    })
}

pub(super) fn refused(file: &Path, text: &str, faults: &[Fault]) -> Failure {
    let file = file.display().to_string();
    let shown: Vec<String> = faults.iter().map(|fault| fault.shown(&file, text)).collect();
    Failure::Use(format!("{file} was not taken; nothing was changed.\n{}", shown.join("\n")))
}
