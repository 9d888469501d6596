//! `shop new`: the data file of a new shop, or its tables in a database.

use std::ffi::OsString;
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
    /// Make a data file, or the tables of a shop in a database; what is there already is never overwritten.
    New(New),
}

#[derive(Debug, Args)]
pub(crate) struct New {
    /// The file to make, or the database to use, such as postgres://keeper@server/shop; --shop names it too.
    #[arg(value_name = "FILE")]
    shop: Option<OsString>,
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
        let at = crate::shop_file::named(self.shop.as_deref().or(shared.shop.as_deref()))?;
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
        let from = moment::instant(shared.at.as_deref(), &zone)?;
        let settings = Settings {
            name: self.name,
            zone,
            units: shared.units.map_or(Units::Metric, Units::from),
            hours: hours(&self.hours)?,
            conditions: Conditions::default(),
        };
        Store::create(&at, &settings, from).await?.close().await?;
        // A shell would take an address apart.
        let typed = at.file().map_or_else(|| format!("\"{at}\""), |_| at.to_string());
        say::line(&format!("Made {at} for \"{}\". Next: oilwright --shop {typed} chart import FILE", settings.name))?;
        Ok(ExitCode::SUCCESS)
    }
}
