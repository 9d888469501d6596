//! `chart export`: the chart of a machine to a file, with its pictures.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::Args;

use crate::command::Shared;
use crate::failure::Failure;
use crate::{say, shop_file};

use super::bundle::Bundle;

#[derive(Debug, Args)]
pub(crate) struct Export {
    /// The machine, by id or name.
    machine: String,
    /// The file to write: NAME.toml, or NAME.zip for the chart and its pictures in one. Nothing is overwritten.
    #[arg(short, long, value_name = "FILE")]
    output: PathBuf,
}

impl Export {
    pub(super) async fn run(&self, shared: &Shared) -> Result<ExitCode, Failure> {
        let open = shop_file::open(shared.shop.as_deref(), shared.at.as_deref()).await?;
        let machine = open.machine(&self.machine).await?;
        let (_, text) = open.store.chart(&machine.id, open.at).await?;
        let mut bundle = Bundle::of(text)?;
        for picture in bundle.chart.pictures.clone() {
            match open.store.picture_named(&machine.id, &picture.file).await {
                Ok(id) => bundle.pictures.push((picture.file, open.store.picture(id).await?.given.bytes)),
                Err(store::Error::NotFound(_)) => bundle.missing.push(picture.file),
                Err(error) => return Err(error.into()),
            }
        }
        let written = bundle.write(&self.output)?;
        for file in written {
            say::line(&format!("Wrote {}", file.display()))?;
        }
        for missing in &bundle.missing {
            say::line(&format!("The shop has no picture {missing}, which the chart names."))?;
        }
        Ok(ExitCode::SUCCESS)
    }
}
