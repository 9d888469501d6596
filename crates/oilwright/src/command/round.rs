//! `round`: what to oil before today's job, and what to do after it.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use advice::round::{Plan, after_use, cans, cold, round, shared, within};
use clap::Args;
use jiff::tz::TimeZone;
use shop::amount::read_minutes;
use shop::fault::nearest;
use shop::id::Id;
use shop::reading::{says_minutes, says_quantity};
use shop::shelf::Shelf;
use shop::snapshot::{MachineSnapshot, Moment};
use tribology::quantity::{Kind, Temperature, Time, Units, typed};

use crate::failure::Failure;
use crate::{moment, say, shop_file};

use super::{Shared, hours};

/// The hours planned where nobody says so and no shop does.
const USUAL_HOURS: f64 = 3.0;

#[derive(Debug, Args)]
pub(crate) struct Round {
    /// Machines by id or name; all of the shop when left out.
    machine: Vec<String>,
    /// Today's job, by its id or name on the chart; of several machines, for those that have it.
    #[arg(long)]
    job: Option<String>,
    /// How long the machine will run: 3, 3 h, 90 min; the shop's usual when left out.
    #[arg(long)]
    hours: Option<String>,
    /// Only so many minutes for the round, of all machines together: the points that matter most, and what is left undone.
    #[arg(long, value_name = "N")]
    minutes: Option<String>,
    /// What to do after the work instead: chips, drips, wicks, covers.
    #[arg(long)]
    after: bool,
    /// The temperature of the shop, 8C or 46 F: names the ways of oiling that will not deliver, and what to do.
    #[arg(long, value_name = "8C")]
    temperature: Option<String>,
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
        let minutes = self.minutes.as_deref().map(minutes).transpose()?;
        let temperature = self.temperature.as_deref().map(temperature).transpose()?;
        let source = match &self.chart {
            Some(file) => self.of_files(file, shared)?,
            None => self.of_shop(shared).await?,
        };
        let hours = match &self.hours {
            Some(text) => hours(text)?,
            None => source.hours,
        };
        let jobs = self.jobs(&source.machines)?;
        let planned = source.machines.iter().zip(jobs).map(|(machine, job)| (machine, Plan { job, hours }));
        let planned: Vec<_> = planned.collect();
        let answers = source.rounds(&planned, minutes).into_iter().zip(&source.machines).map(|(mut round, machine)| {
            let cans = cans(machine, &source.shelf, &mut round.answer.value);
            let after = self.after.then(|| after_use(machine));
            let cold = temperature.map(|temperature| cold(machine, &source.shelf, temperature));
            say::Answered { round, after, cans, cold }
        });
        let how = say::How {
            json: shared.json,
            working: shared.working,
            units: shared.units.map_or(source.units, Units::from),
        };
        say::answers(&answers.collect::<Vec<_>>(), how)?;
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
    fn of_files(&self, file: &Path, shared: &Shared) -> Result<Source, Failure> {
        let chart = super::chart::read(file)?;
        let shelf = self.shelf.as_ref().map_or(Ok(Shelf::default()), |file| super::shelf::read(file))?;
        let zone = TimeZone::system();
        let moment = Moment { instant: moment::instant(shared.at.as_deref(), &zone)?, zone };
        let id = super::chart::machine_id(file, &chart)?;
        let machine = MachineSnapshot {
            id,
            revision: 1,
            chart,
            points: Default::default(),
            runs: Vec::new(),
            contents: Default::default(),
        };
        let hours = Time::from_hours(USUAL_HOURS);
        Ok(Source { machines: vec![machine], shelf, moment, hours, units: Units::Metric })
    }

    /// The job by its id or name, for each machine that has it.
    fn jobs(&self, machines: &[MachineSnapshot]) -> Result<Vec<Option<Id>>, Failure> {
        let Some(wanted) = &self.job else { return Ok(vec![None; machines.len()]) };
        let of_machine = |machine: &MachineSnapshot| {
            let jobs = &machine.chart.jobs;
            let found = jobs.iter().find(|job| job.id.as_str() == wanted || job.name.eq_ignore_ascii_case(wanted));
            found.map(|job| job.id.clone())
        };
        let jobs: Vec<Option<Id>> = machines.iter().map(of_machine).collect();
        match (machines, jobs.iter().all(Option::is_none)) {
            ([], _) | (_, false) => Ok(jobs),
            ([only], true) => Err(no_such_job(&only.chart.machine.name, wanted, std::slice::from_ref(only))),
            (several, true) => Err(no_such_job("shop", wanted, several)),
        }
    }
}

impl Source {
    fn rounds(
        &self,
        planned: &[(&MachineSnapshot, Plan)],
        minutes: Option<u32>,
    ) -> Vec<advice::Reasoned<advice::Round>> {
        let (shelf, moment) = (&self.shelf, &self.moment);
        match (planned, minutes) {
            ([(machine, plan)], Some(minutes)) => vec![within(machine, shelf, moment, plan, minutes)],
            (several, Some(minutes)) => shared(several, shelf, moment, minutes),
            (all, None) => all.iter().map(|(machine, plan)| round(machine, shelf, moment, plan)).collect(),
        }
    }
}

fn no_such_job(whose: &str, wanted: &str, machines: &[MachineSnapshot]) -> Failure {
    let ids: Vec<&str> = machines.iter().flat_map(|machine| &machine.chart.jobs).map(|job| job.id.as_str()).collect();
    let hint = match nearest(wanted, ids.iter().copied()) {
        Some(near) => format!("did you mean {near}?"),
        None if ids.is_empty() => "its chart names none".to_owned(),
        None => format!("it has {}", ids.join(", ")),
    };
    Failure::Use(format!("the {whose} has no job \"{wanted}\": {hint}"))
}

/// Minutes as people type them: `10`, `10 min`.
fn minutes(text: &str) -> Result<u32, Failure> {
    read_minutes(text).map_err(|fault| Failure::Use(says_minutes("the number of minutes", &fault)))
}

/// A temperature as people type it: `8C`, `46 F`.
fn temperature(text: &str) -> Result<Temperature, Failure> {
    let says = |fault| Failure::Use(says_quantity("the temperature", &fault, Kind::Temperature));
    typed::<Temperature>(text).map(|typed| typed.value).map_err(says)
}
