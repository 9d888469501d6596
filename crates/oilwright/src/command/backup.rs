//! `backup` and `restore`: the shop to a safe place and back.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::Args;
use store::Store;

use crate::failure::Failure;
use crate::{say, shop_file};

use super::Shared;

#[derive(Debug, Args)]
pub(crate) struct Backup {
    /// The file to write; one that is there already is never overwritten.
    file: PathBuf,
}

#[derive(Debug, Args)]
pub(crate) struct Restore {
    /// The backup. It is looked through before anything is written to the file or database that --shop names, which must hold no
    /// shop yet.
    backup: PathBuf,
}

impl Backup {
    /// Backs the shop up while others may be writing in it.
    pub(crate) async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        let open = shop_file::open(shared.shop.as_deref(), shared.at.as_deref()).await?;
        open.store.backup(&self.file).await?;
        open.store.close().await?;
        say::line(&format!("Wrote {}. Keep it on another disk.", self.file.display()))?;
        Ok(ExitCode::SUCCESS)
    }
}

impl Restore {
    /// Makes a shop from a backup.
    pub(crate) async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        let to = shop_file::named(shared.shop.as_deref())?;
        Store::restore(&self.backup, &to).await?;
        say::line(&format!("Made {to} from {}.", self.backup.display()))?;
        Ok(ExitCode::SUCCESS)
    }
}
