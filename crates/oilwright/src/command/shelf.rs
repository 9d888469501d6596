//! `shelf import`: taking a shelf file into the shop.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::{Args, Subcommand};

use crate::failure::Failure;
use crate::{say, shop_file};

use super::Shared;
use super::chart::{refused, text_of};

#[derive(Debug, Subcommand)]
pub(crate) enum Shelf {
    /// Take a shelf file into the shop; what is in stock becomes its opening entry.
    Import(Import),
}

#[derive(Debug, Args)]
pub(crate) struct Import {
    /// The shelf file.
    file: PathBuf,
    /// Who says so.
    #[arg(long, default_value = "keeper")]
    by: String,
}

impl Shelf {
    pub(crate) async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        let Self::Import(import) = self;
        let shelf = read(&import.file)?;
        let open = shop_file::open(shared.shop.as_deref(), shared.at.as_deref()).await?;
        open.store.add_shelf(&shelf, open.at, &import.by).await?;
        open.store.close().await?;
        let (oils, cans) = (shelf.oils.len(), shelf.cans.len());
        say::line(&format!(
            "{} and {} taken in",
            advice::words::count(oils, "oil"),
            advice::words::count(cans, "can")
        ))?;
        Ok(ExitCode::SUCCESS)
    }
}

/// The shelf in a file; faults are wrong input, all told.
pub(super) fn read(file: &Path) -> Result<shop::shelf::Shelf, Failure> {
    let text = text_of(file)?;
    let read = shop::shelf::Shelf::read(&text);
    read.value.ok_or_else(|| refused(file, &text, &read.faults))
}
