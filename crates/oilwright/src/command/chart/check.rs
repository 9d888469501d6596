//! `chart check`: what is wrong with a chart file, and what is doubtful.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::Args;
use shop::audit::audit;
use shop::fault::Severity;

use crate::command::Shared;
use crate::failure::Failure;
use crate::say;

use super::text_of;

#[derive(Debug, Args)]
pub(crate) struct Check {
    /// The chart file.
    file: PathBuf,
    /// Show every remark of the audit, not only the five that matter most.
    #[arg(long)]
    all: bool,
}

impl Check {
    pub(super) fn run(&self, shared: &Shared) -> Result<ExitCode, Failure> {
        let text = text_of(&self.file)?;
        let read = shop::chart::Chart::read(&text);
        let file = self.file.display().to_string();
        let remarks = read.value.as_ref().map(audit).unwrap_or_default();
        let checked = say::Checked { file: &file, text: &text, faults: &read.faults, remarks: &remarks };
        say::check(&checked, self.all, shared.json)?;
        let faulty = read.faults.iter().any(|fault| fault.severity == Severity::Fault);
        Ok(if faulty { ExitCode::FAILURE } else { ExitCode::SUCCESS })
    }
}
