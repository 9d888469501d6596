//! The settings of a shop: its name, its zone, how it measures, how long it works, how warm it is.

use jiff::Timestamp;
use jiff::tz::TimeZone;
use shop::snapshot::Conditions;
use tribology::quantity::{Temperature, Time, Units};

use crate::db::{Row, Tx, Value, micros, values};
use crate::error::{Error, Result};
use crate::seal;
use crate::store::Store;

/// The settings of a shop.
#[derive(Clone, Debug, PartialEq)]
pub struct Settings {
    /// What the shop is called.
    pub name: String,
    /// Its time zone, which must have a name.
    pub zone: TimeZone,
    /// How it measures.
    pub units: Units,
    /// The usual length of a day's work.
    pub hours: Time,
    /// How warm it is.
    pub conditions: Conditions,
}

/// The words that the file keeps for the habits of measuring.
const UNITS: [(&str, Units); 2] = [("metric", Units::Metric), ("us", Units::Us)];

impl Settings {
    /// The name of the zone.
    pub(crate) fn zone_name(&self) -> Result<&str> {
        self.zone.iana_name().ok_or(Error::NamelessZone)
    }
}

impl Store {
    /// The settings in force now.
    ///
    /// # Errors
    /// [`Error::Corrupt`] when they cannot be read.
    pub async fn settings(&self) -> Result<Settings> {
        let tx = self.db.read().await?;
        let settings = in_force(&tx, Timestamp::MAX).await?;
        tx.commit().await?;
        Ok(settings)
    }

    /// Changes the settings; answers about the time before keep the old ones.
    ///
    /// # Errors
    /// [`Error::NamelessZone`] when the zone has no name.
    pub async fn set_settings(&self, settings: &Settings, at: Timestamp, by: &str) -> Result<()> {
        let tx = self.db.write().await?;
        if in_force(&tx, Timestamp::MAX).await? != *settings {
            write(&tx, settings, at, by).await?;
        }
        tx.commit().await
    }
}

/// The settings in force at an instant; for one before the shop was created, those that it was created with.
pub(crate) async fn in_force(tx: &Tx, at: Timestamp) -> Result<Settings> {
    let sql = "SELECT name, zone, units, hours_s, cold_k, usual_k, warm_k FROM setting \
               WHERE recorded <= $1 OR number = 1 ORDER BY number DESC LIMIT 1";
    let row = tx.one(sql, values![micros(at)]).await?;
    read(&row.ok_or_else(|| tx.corrupt("its settings are missing"))?)
}

/// Writes the settings as the newest.
pub(crate) async fn write(tx: &Tx, settings: &Settings, at: Timestamp, by: &str) -> Result<()> {
    let units = UNITS.iter().find(|(_, units)| *units == settings.units).map(|(word, _)| *word);
    let kelvin = |temperature: Option<Temperature>| Value::from(temperature.map(Temperature::kelvin));
    let last = tx.one("SELECT coalesce(max(number), 0) AS last FROM setting", values![]).await?;
    let last = last.map_or(Ok(0), |row| row.get::<i64>("last"))?;
    let Conditions { cold, usual, warm } = settings.conditions;
    let row = vec![
        ("number", Value::from(last + 1)),
        ("name", settings.name.as_str().into()),
        ("zone", settings.zone_name()?.into()),
        ("units", units.expect("every habit of measuring has a word in the table above").into()),
        ("hours_s", settings.hours.seconds().into()),
        ("cold_k", kelvin(cold)),
        ("usual_k", kelvin(usual)),
        ("warm_k", kelvin(warm)),
        ("recorded", micros(at).into()),
        ("said_by", by.into()),
    ];
    seal::insert(tx, "setting", row).await
}

pub(crate) fn read(row: &Row) -> Result<Settings> {
    let zone: String = row.get("zone")?;
    let units: String = row.get("units")?;
    let kelvin = |column| row.get::<Option<f64>>(column).map(|kelvin| kelvin.map(Temperature::from_kelvin));
    Ok(Settings {
        name: row.get("name")?,
        zone: TimeZone::get(&zone).map_err(|_| row.corrupt(format!("\"{zone}\" is no time zone")))?,
        units: UNITS
            .iter()
            .find(|(word, _)| *word == units)
            .map(|(_, units)| *units)
            .ok_or_else(|| row.corrupt(format!("\"{units}\" is no habit of measuring")))?,
        hours: Time::from_seconds(row.get("hours_s")?),
        conditions: Conditions { cold: kelvin("cold_k")?, usual: kelvin("usual_k")?, warm: kelvin("warm_k")? },
    })
}

#[cfg(test)]
impl Settings {
    /// The settings of a shop in a test that does not look at them.
    pub(crate) fn any() -> Self {
        Self {
            name: "Shop".into(),
            zone: TimeZone::UTC,
            units: Units::Metric,
            hours: Time::from_hours(8.0),
            conditions: Conditions::default(),
        }
    }
}
