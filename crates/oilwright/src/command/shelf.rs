//! `shelf`: taking in a shelf file, writing down one oil, what came and went of it, and what is left.

mod add;
mod moved;

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use advice::stock::{Stock, stock};
use advice::words;
use clap::{Args, Subcommand};
use shop::shelf::Amount;
use tribology::quantity::Units;

use crate::failure::Failure;
use crate::{say, shop_file};

use super::Shared;
use super::chart::{refused, text_of};

#[derive(Debug, Subcommand)]
pub(crate) enum Shelf {
    /// Take a shelf file into the shop; what is in stock becomes its opening entry.
    Import(Import),
    /// Write down a new oil or grease as its can and its data sheet tell it, and show its grade.
    Add(Box<add::Add>),
    /// What is left of each oil, counted by the log.
    Stock,
    /// An oil was bought.
    Bought(moved::Bought),
    /// An oil was counted; the log goes on from there.
    Counted(moved::Moved),
    /// Some of an oil was used for something that is on no chart.
    Used(moved::Moved),
    /// Some of an oil was thrown away.
    ThrownAway(moved::Moved),
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
        match self {
            Self::Import(import) => import.run(shared).await,
            Self::Add(add) => add.run(shared).await,
            Self::Stock => show_stock(shared).await,
            Self::Bought(bought) => bought.run(shared).await,
            Self::Counted(moved) => moved.run(shared, moved::What::Counted).await,
            Self::Used(moved) => moved.run(shared, moved::What::Used).await,
            Self::ThrownAway(moved) => moved.run(shared, moved::What::ThrownAway).await,
        }
    }
}

impl Import {
    async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        let shelf = read(&self.file)?;
        let open = shop_file::open(shared.shop.as_deref(), shared.at.as_deref()).await?;
        open.store.add_shelf(&shelf, open.at, &self.by).await?;
        open.store.close().await?;
        let (oils, cans) = (shelf.oils.len(), shelf.cans.len());
        say::line(&format!("{} and {} taken in", words::count(oils, "oil"), words::count(cans, "can")))?;
        Ok(ExitCode::SUCCESS)
    }
}

async fn show_stock(shared: &Shared) -> Result<ExitCode, Failure> {
    let open = shop_file::open(shared.shop.as_deref(), shared.at.as_deref()).await?;
    let shelf = open.store.shelf_at(open.at).await?;
    let movements = open.store.movements(open.at).await?;
    let units = shared.units.map_or(open.settings.units, Units::from);
    open.store.close().await?;
    let all: Vec<(&shop::shelf::Oil, Stock)> =
        shelf.oils.iter().map(|oil| (oil, stock(oil, &shelf, &movements))).collect();
    if shared.json {
        let rows = all.iter().map(|(oil, stock)| {
            let (litres, kilograms) = match stock.left {
                Some(Amount::Volume(volume)) => (Some(volume.litres()), None),
                Some(Amount::Mass(mass)) => (None, Some(mass.kg())),
                None => (None, None),
            };
            serde_json::json!({ "oil": oil.id.as_str(), "left_l": litres, "left_kg": kilograms, "uncounted": stock.uncounted })
        });
        say::json(&serde_json::json!({ "stock": rows.collect::<Vec<_>>() }))?;
    } else {
        for (oil, stock) in &all {
            let sums = words::stock_sums(stock, units);
            say::line(&format!("{}: {} ({sums})", oil.name, words::stock_left(stock, units)))?;
        }
    }
    Ok(ExitCode::SUCCESS)
}

/// The shelf in a file; faults are wrong input, all told.
pub(super) fn read(file: &Path) -> Result<shop::shelf::Shelf, Failure> {
    let text = text_of(file)?;
    let read = shop::shelf::Shelf::read(&text);
    read.value.ok_or_else(|| refused(file, &text, &read.faults))
}
