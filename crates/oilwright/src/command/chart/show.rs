//! `chart show`: the chart of a machine as its keepers wrote it.

use std::process::ExitCode;

use clap::Args;

use crate::command::Shared;
use crate::failure::Failure;
use crate::{say, shop_file};

#[derive(Debug, Args)]
pub(crate) struct Show {
    /// The machine, by id or name.
    machine: String,
}

impl Show {
    pub(super) async fn run(&self, shared: &Shared) -> Result<ExitCode, Failure> {
        let open = shop_file::open(shared.shop.as_deref(), shared.at.as_deref()).await?;
        let machine = open.machine(&self.machine).await?;
        let (revision, text) = open.store.chart(&machine.id, open.at).await?;
        if shared.json {
            say::json(&serde_json::json!({ "machine": machine.id.as_str(), "revision": revision, "text": text }))?;
        } else {
            say::text(&text)?;
        }
        Ok(ExitCode::SUCCESS)
    }
}
