//! `csv`: everything in the shop as tables for a spreadsheet, and a new shop from such tables.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::Subcommand;
use store::Store;

use crate::failure::Failure;
use crate::{say, shop_file};

use super::Shared;

#[derive(Debug, Subcommand)]
pub(crate) enum Csv {
    /// Write every table into a new folder, with the pictures beside them.
    Export {
        /// The folder to make.
        folder: PathBuf,
    },
    /// Make the shop that --shop names from such a folder; one that is there already is never overwritten.
    Import {
        /// The folder.
        folder: PathBuf,
    },
}

impl Csv {
    pub(crate) async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        match self {
            Self::Export { folder } => {
                let open = shop_file::open(shared.shop.as_deref(), shared.at.as_deref()).await?;
                open.store.export_csv(&folder).await?;
                open.store.close().await?;
                say::line(&format!("Wrote {}", folder.display()))?;
            }
            Self::Import { folder } => {
                let to = shop_file::named(shared.shop.as_deref())?;
                Store::import_csv(&folder, &to).await?;
                say::line(&format!("Made {to} from {}", folder.display()))?;
            }
        }
        Ok(ExitCode::SUCCESS)
    }
}
