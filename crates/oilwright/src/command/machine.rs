//! `machine new`: a machine of which nothing is charted yet.

use std::process::ExitCode;

use clap::{Args, Subcommand};
use shop::document::Document;
use shop::id::Id;

use crate::failure::Failure;
use crate::{say, shop_file};

use super::Shared;

#[derive(Debug, Subcommand)]
pub(crate) enum Machine {
    /// Begin the chart of a machine, to be filled in on the pages or in the file.
    New(New),
}

#[derive(Debug, Args)]
pub(crate) struct New {
    /// What its keepers call it.
    name: String,
    /// Its kind in one word: lathe, mill, shaper, planer, drill, grinder.
    #[arg(long)]
    kind: Option<String>,
    /// Its id in the shop; made from the name when left out.
    #[arg(long)]
    id: Option<String>,
    /// Who says so.
    #[arg(long, default_value = "keeper")]
    by: String,
}

impl Machine {
    pub(crate) async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        let Self::New(new) = self;
        let document = Document::new(&new.name, new.kind.as_deref()).map_err(|faults| {
            let says: Vec<&str> = faults.iter().map(|fault| fault.says.as_str()).collect();
            Failure::Use(says.join("; "))
        })?;
        let id = match &new.id {
            Some(id) => Id::new(id).map_err(|fault| Failure::Use(fault.to_string()))?,
            None => Id::from_name(&new.name).ok_or_else(|| {
                Failure::Use(format!("\"{}\" gives no id; write one with --id, such as drill", new.name))
            })?,
        };
        let open = shop_file::open(shared.shop.as_deref(), shared.at.as_deref()).await?;
        if open.store.machines().await?.iter().any(|row| row.id == id) {
            return Err(Failure::Use(format!("the shop has a machine {id} already; choose another id with --id")));
        }
        open.store.add_chart(&id, document.text(), open.at, &new.by).await?;
        open.store.close().await?;
        say::line(&format!("{id}: {}. Chart it with: oilwright serve", new.name))?;
        Ok(ExitCode::SUCCESS)
    }
}
