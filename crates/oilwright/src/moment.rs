//! The moment of a command: `--at` where it is given, the clock otherwise. Only this file and the server's start read the clock.

use jiff::civil::DateTime;
use jiff::tz::TimeZone;
use jiff::{Timestamp, ZonedDateTime};

use crate::failure::Failure;

/// The moment that `--at` names, or now. `2026-11-25T09:00` is read on the shop's clock; one with an offset is read as it is.
pub(crate) fn instant(at: Option<&str>, zone: &TimeZone) -> Result<Timestamp, Failure> {
    let Some(text) = at else { return Ok(Timestamp::now()) };
    if let Ok(instant) = text.parse::<Timestamp>() {
        return Ok(instant);
    }
    if let Ok(zoned) = text.parse::<ZonedDateTime>() {
        return Ok(zoned.timestamp());
    }
    let clock = text.parse::<DateTime>().ok().and_then(|clock| clock.to_zoned_datetime(zone.clone()).ok());
    clock.map(|zoned| zoned.timestamp()).ok_or_else(|| {
        Failure::Use(format!("\"{text}\" is no moment; write day and time like 2026-11-25T09:00, on the shop's clock"))
    })
}
