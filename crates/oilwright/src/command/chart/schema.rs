//! `chart schema`: the JSON Schema of chart files, or of shelf files.

use std::process::ExitCode;

use clap::Args;
use shop::schema::schema;

use crate::failure::Failure;
use crate::say;

#[derive(Debug, Args)]
pub(crate) struct Schema {
    /// The schema of shelf files instead.
    #[arg(long)]
    shelf: bool,
}

impl Schema {
    pub(super) fn run(&self) -> Result<ExitCode, Failure> {
        let root = if self.shelf { &shop::shelf::ROOT } else { &shop::chart::ROOT };
        say::json(&schema(root))?;
        Ok(ExitCode::SUCCESS)
    }
}
