//! `shop new`: the data file of a new shop.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Args, Subcommand};
use jiff::tz::TimeZone;
use shop::snapshot::Conditions;
use store::{Settings, Store};
use tribology::quantity::Units;

use crate::failure::Failure;
use crate::{moment, say};

use super::{Shared, hours};

#[derive(Debug, Subcommand)]
pub(crate) enum Shop {
    /// Make a data file; one that is there already is never overwritten.
    New(New),
}

#[derive(Debug, Args)]
pub(crate) struct New {
    /// The file to make; --shop names it too.
    file: Option<PathBuf>,
    /// What the shop is called.
    #[arg(long, default_value = "Our shop")]
    name: String,
    /// The shop's time zone by its name, such as Europe/Lisbon; the computer's own when left out.
    #[arg(long)]
    zone: Option<String>,
    /// The usual length of a day's work at one machine.
    #[arg(long, default_value = "3 h")]
    hours: String,
}

impl Shop {
    pub(crate) async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        let Self::New(new) = self;
        new.run(shared).await
    }
}

impl New {
    async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        let file = crate::shop_file::named(self.file.as_deref().or(shared.shop.as_deref()))?;
        let zone = match &self.zone {
            None => TimeZone::system(),
            Some(name) => TimeZone::get(name).map_err(|_| {
                Failure::Use(format!(
                    "\"{name}\" is no time zone; write its name like Europe/Lisbon or America/Chicago"
                ))
            })?,
        };
        // A computer without a named zone keeps the shop's clock in UTC rather than failing.
        let zone = if zone.iana_name().is_some() { zone } else { TimeZone::UTC };
        let at = moment::instant(shared.at.as_deref(), &zone)?;
        let settings = Settings {
            name: self.name,
            zone,
            units: shared.units.map_or(Units::Metric, Units::from),
            hours: hours(&self.hours)?,
            conditions: Conditions::default(),
        };
        Store::create(&file, &settings, at).await?.close().await?;
        say::line(&format!(
            "Made {} for \"{}\". Next: oilwright --shop {} chart import FILE",
            file.display(),
            settings.name,
            file.display()
        ))?;
        Ok(ExitCode::SUCCESS)
    }
}
