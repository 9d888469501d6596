//! `demo`: an invented shop in a fresh folder, its round, its pages.

use std::process::ExitCode;
use std::time::Instant;

use advice::round::{Plan, cans, round};
use clap::Args;
use jiff::Timestamp;
use store::Store;
use tempfile::TempDir;
use tribology::quantity::Units;
use web::Clock;

use crate::failure::Failure;
use crate::{demo, moment, say};

use super::Shared;
use super::serve::{Listen, serve};

#[derive(Debug, Args)]
pub(crate) struct Demo {
    /// Print the round and stop; nothing is left behind.
    #[arg(long)]
    print: bool,
    #[command(flatten)]
    listen: Listen,
}

impl Demo {
    pub(crate) async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        let folder = tempfile::Builder::new().prefix("oilwright-demo-").tempdir()?;
        let file = folder.path().join("mill-museum.shop");
        let (settings, start) = (demo::settings(), demo::start());
        let store = demo::build(&file).await?;
        let at = match &shared.at {
            Some(text) => moment::instant(Some(text), &settings.zone)?,
            None => start,
        };
        let snapshot = store.snapshot(at).await?;
        let plan = Plan { job: None, hours: settings.hours };
        let answers = snapshot.machines.iter().map(|machine| {
            let mut round = round(machine, &snapshot.shelf, &snapshot.moment, &plan);
            let cans = cans(machine, &snapshot.shelf, &mut round.answer.value);
            say::Answered { round, after: None, cans, cold: None }
        });
        let units = shared.units.map_or(settings.units, Units::from);
        let how = say::How { json: shared.json, working: shared.working, units };
        say::answers(&answers.collect::<Vec<_>>(), how)?;
        // One object on standard output is for a program, which would wait for ever on a server.
        if self.print || shared.json {
            store.close().await?;
            return Ok(ExitCode::SUCCESS);
        }
        self.serve(store, folder, start).await
    }

    async fn serve(self, store: Store, folder: TempDir, start: Timestamp) -> Result<ExitCode, Failure> {
        let folder = folder.keep();
        say::line("")?;
        say::line(&format!("An invented shop. Its data file: {}", folder.join("mill-museum.shop").display()))?;
        let began = Instant::now();
        let clock = Clock::new(move || start + began.elapsed());
        serve(store, clock, self.listen).await
    }
}
