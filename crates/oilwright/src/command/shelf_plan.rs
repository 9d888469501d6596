//! `shelf-plan`: the fewest oils that serve the machines, who suffers by it, and what to buy.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use advice::shelf_plan::fewest::Effort;
use advice::shelf_plan::{Asked, Buying, Year};
use clap::Args;
use shop::logbook::Movement;
use shop::shelf::Shelf;
use shop::snapshot::MachineSnapshot;
use tribology::quantity::{Time, Units};

use crate::failure::Failure;
use crate::{say, shop_file};

use super::{Shared, hours};

#[derive(Debug, Args)]
pub(crate) struct ShelfPlan {
    /// Machines by id or name; all of the shop when left out.
    machine: Vec<String>,
    /// At most so many oils; greases are not counted.
    #[arg(long, value_name = "K")]
    most: Option<usize>,
    /// Choose also from a catalogue of oils as open standards name them, not only from the shelf.
    #[arg(long)]
    buy: bool,
    /// For what is bought: how often each machine is used in a year.
    #[arg(long, value_name = "N", default_value_t = Year::USUAL.uses)]
    uses: u32,
    /// How long each time: 3, 3 h, 90 min; the shop's usual when left out.
    #[arg(long)]
    hours: Option<String>,
    /// A chart file instead of machines of the shop.
    #[arg(long, value_name = "FILE", conflicts_with = "machine")]
    chart: Option<PathBuf>,
    /// The shelf file that goes with the chart file.
    #[arg(long, value_name = "FILE", requires = "chart")]
    shelf: Option<PathBuf>,
}

/// What is planned for: a shop, or files.
struct Source {
    machines: Vec<MachineSnapshot>,
    shelf: Shelf,
    movements: Vec<Movement>,
    units: Units,
    hours: Time,
}

impl ShelfPlan {
    pub(crate) async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        if self.most == Some(0) {
            return Err(Failure::Use("--most 0 leaves no oil to choose; write a whole number from 1 on".into()));
        }
        let source = match &self.chart {
            Some(file) => self.of_files(file)?,
            None => self.of_shop(shared).await?,
        };
        let asked = Asked {
            machines: &source.machines,
            shelf: &source.shelf,
            movements: &source.movements,
            buying: if self.buy { Buying::Catalogue } else { Buying::ShelfOnly },
            most: self.most,
            effort: Effort::USUAL,
        };
        let hours = self.hours.as_deref().map_or(Ok(source.hours), hours)?;
        let planned = say::Planned::of(&asked, &Year { uses: self.uses, hours });
        let units = shared.units.map_or(source.units, Units::from);
        if shared.json {
            say::json(&say::plan_json(&planned, units))?;
        } else {
            say::plan(&planned, units, shared.working)?;
        }
        Ok(if planned.reasoned.value().is_there() { ExitCode::SUCCESS } else { ExitCode::FAILURE })
    }

    async fn of_shop(&self, shared: &Shared) -> Result<Source, Failure> {
        let open = shop_file::open(shared.shop.as_deref(), shared.at.as_deref()).await?;
        let snapshot = if self.machine.is_empty() {
            open.store.snapshot(open.at).await?
        } else {
            open.store.snapshot_of(&open.machine_ids(&self.machine).await?, open.at).await?
        };
        let movements = open.store.movements(open.at).await?;
        let (units, hours) = (open.settings.units, open.settings.hours);
        open.store.close().await?;
        Ok(Source { machines: snapshot.machines, shelf: snapshot.shelf, movements, units, hours })
    }

    fn of_files(&self, file: &Path) -> Result<Source, Failure> {
        let chart = super::chart::read(file)?;
        let shelf = self.shelf.as_deref().map(super::shelf::read).transpose()?.unwrap_or_default();
        let id = super::chart::machine_id(file, &chart)?;
        let machine = MachineSnapshot {
            id,
            revision: 1,
            chart,
            points: Default::default(),
            contents: Default::default(),
            runs: Vec::new(),
        };
        Ok(Source {
            machines: vec![machine],
            shelf,
            movements: Vec::new(),
            units: Units::Metric,
            hours: Year::USUAL.hours,
        })
    }
}
