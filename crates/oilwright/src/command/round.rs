//! `round`: what to oil before today's job.

use std::path::PathBuf;
use std::process::ExitCode;

use advice::round::{Plan, round};
use clap::Args;
use jiff::tz::TimeZone;
use shop::fault::nearest;
use shop::id::Id;
use shop::shelf::Shelf;
use shop::snapshot::{MachineSnapshot, Moment};
use tribology::quantity::{Time, Units};

use crate::failure::Failure;
use crate::{moment, say, shop_file};

use super::{Shared, hours};

/// The hours planned where nobody says so and no shop does.
const USUAL_HOURS: f64 = 3.0;

#[derive(Debug, Args)]
pub(crate) struct Round {
    /// Machines by id or name; all of the shop when left out.
    machine: Vec<String>,
    /// Today's job, by its id or name on the chart.
    #[arg(long)]
    job: Option<String>,
    /// How long the machine will run: 3, 3 h, 90 min; the shop's usual when left out.
    #[arg(long)]
    hours: Option<String>,
    /// A chart file instead of a machine of the shop.
    #[arg(long, value_name = "FILE")]
    chart: Option<PathBuf>,
    /// The shelf file that goes with the chart file.
    #[arg(long, value_name = "FILE", requires = "chart")]
    shelf: Option<PathBuf>,
}

/// Where a round is worked out from: a shop, or files.
struct Source {
    machines: Vec<MachineSnapshot>,
    shelf: Shelf,
    moment: Moment,
    hours: Time,
    units: Units,
}

impl Round {
    pub(crate) async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        let source = match &self.chart {
            Some(file) => self.of_files(file, shared)?,
            None => self.of_shop(shared).await?,
        };
        let hours = match &self.hours {
            Some(text) => hours(text)?,
            None => source.hours,
        };
        let mut rounds = Vec::with_capacity(source.machines.len());
        for machine in &source.machines {
            let plan = Plan { job: self.job_of(machine)?, hours };
            rounds.push(round(machine, &source.shelf, &source.moment, &plan));
        }
        let how = say::How {
            json: shared.json,
            working: shared.working,
            units: shared.units.map_or(source.units, Units::from),
        };
        say::rounds(&rounds, how)?;
        Ok(ExitCode::SUCCESS)
    }

    async fn of_shop(&self, shared: &Shared) -> Result<Source, Failure> {
        let open = shop_file::open(shared.shop.as_deref(), shared.at.as_deref()).await?;
        let snapshot = if self.machine.is_empty() {
            open.store.snapshot(open.at).await?
        } else {
            open.store.snapshot_of(&open.machine_ids(&self.machine).await?, open.at).await?
        };
        let (hours, units) = (open.settings.hours, open.settings.units);
        Ok(Source { machines: snapshot.machines, shelf: snapshot.shelf, moment: snapshot.moment, hours, units })
    }

    /// A round straight from a chart file: nothing was ever logged, so that every point with an interval is due.
    fn of_files(&self, file: &std::path::Path, shared: &Shared) -> Result<Source, Failure> {
        let chart = super::chart::read(file)?;
        let shelf = self.shelf.as_ref().map_or(Ok(Shelf::default()), |file| super::shelf::read(file))?;
        let zone = TimeZone::system();
        let moment = Moment { instant: moment::instant(shared.at.as_deref(), &zone)?, zone };
        let id = super::chart::machine_id(file, &chart)?;
        let machine = MachineSnapshot { id, revision: 1, chart, points: Default::default(), runs: Vec::new() };
        let hours = Time::from_hours(USUAL_HOURS);
        Ok(Source { machines: vec![machine], shelf, moment, hours, units: Units::Metric })
    }

    /// The job by its id or name.
    fn job_of(&self, machine: &MachineSnapshot) -> Result<Option<Id>, Failure> {
        let Some(wanted) = &self.job else { return Ok(None) };
        let jobs = &machine.chart.jobs;
        let found = jobs.iter().find(|job| job.id.as_str() == wanted || job.name.eq_ignore_ascii_case(wanted));
        found.map(|job| Some(job.id.clone())).ok_or_else(|| {
            let ids: Vec<&str> = jobs.iter().map(|job| job.id.as_str()).collect();
            let hint = match nearest(wanted, ids.iter().copied()) {
                Some(near) => format!("did you mean {near}?"),
                None if ids.is_empty() => "its chart names none".to_owned(),
                None => format!("it has {}", ids.join(", ")),
            };
            Failure::Use(format!("the {} has no job \"{wanted}\": {hint}", machine.chart.machine.name))
        })
    }
}
