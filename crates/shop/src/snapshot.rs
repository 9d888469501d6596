//! What the reasoning sees of a shop at one moment: digests of the logbook, never the whole of it. A snapshot at T sees only
//! what was recorded by T and the chart then in force, so that every answer can be had again.

use std::collections::BTreeMap;

use jiff::civil::Date;
use jiff::tz::TimeZone;
use jiff::{Timestamp, ZonedDateTime};
use tribology::quantity::{Temperature, Time};

use crate::chart::Chart;
use crate::contents::Contents;
use crate::id::Id;
use crate::logbook::EntryId;
use crate::shelf::Shelf;

/// An instant and the shop's zone.
#[derive(Clone, Debug, PartialEq)]
pub struct Moment {
    /// The instant.
    pub instant: Timestamp,
    /// The shop's zone.
    pub zone: TimeZone,
}

/// The temperatures of the shop.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Conditions {
    /// On a cold morning.
    pub cold: Option<Temperature>,
    /// On a usual day.
    pub usual: Option<Temperature>,
    /// On a warm day.
    pub warm: Option<Temperature>,
}

/// The whole shop at one moment.
#[derive(Clone, Debug, PartialEq)]
pub struct ShopSnapshot {
    /// The moment.
    pub moment: Moment,
    /// The temperatures of the shop.
    pub conditions: Conditions,
    /// What there is to oil with.
    pub shelf: Shelf,
    /// Its machines, by id.
    pub machines: Vec<MachineSnapshot>,
}

/// One machine at one moment.
#[derive(Clone, Debug, PartialEq)]
pub struct MachineSnapshot {
    /// Its id in the shop.
    pub id: Id,
    /// The number of the chart's revision, counted from one.
    pub revision: i64,
    /// The chart then in force.
    pub chart: Chart,
    /// The last of each kind of act at each point.
    pub points: BTreeMap<Id, PointHistory>,
    /// Runs, from the oldest that any point still needs, in the order in which they happened.
    pub runs: Vec<Run>,
    /// What was put into each reservoir and greased point since it was last drained, by its id.
    pub contents: BTreeMap<Id, Contents>,
}

/// The last of each kind of act at one point.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PointHistory {
    /// Oil was given.
    pub dosed: Option<Mark>,
    /// The sign was seen.
    pub sign_seen: Option<Mark>,
    /// The sign was looked for and missing.
    pub sign_missing: Option<Mark>,
    /// The point was not reached, and why.
    pub not_reached: Option<(Mark, String)>,
}

/// An act: when, by whom, and in which entry.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// The entry that records it.
    pub entry: EntryId,
    /// When it happened.
    pub happened: Timestamp,
    /// Who says so.
    pub by: String,
    /// The entry's own key.
    pub key: String,
}

/// The machine ran.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    /// When it was over.
    pub happened: Timestamp,
    /// For how long.
    pub hours: Time,
    /// At which job, when it was said.
    pub job: Option<Id>,
}

impl Moment {
    /// The instant on the shop's clock.
    #[must_use]
    pub fn clock(&self) -> ZonedDateTime {
        self.instant.to_zoned_datetime(self.zone.clone())
    }

    /// The day on the shop's calendar.
    #[must_use]
    pub fn day(&self) -> Date {
        self.day_of(self.instant)
    }

    /// The day on which an instant falls in the shop.
    #[must_use]
    pub fn day_of(&self, instant: Timestamp) -> Date {
        instant.to_zoned_datetime(self.zone.clone()).date()
    }
}

impl ShopSnapshot {
    /// The machine of this id.
    #[must_use]
    pub fn machine(&self, id: &Id) -> Option<&MachineSnapshot> {
        self.machines.iter().find(|machine| machine.id == *id)
    }
}

impl MachineSnapshot {
    /// What is known of a point; an empty history for one of which nothing was ever logged.
    #[must_use]
    pub fn history(&self, point: &Id) -> PointHistory {
        self.points.get(point).cloned().unwrap_or_default()
    }

    /// What was put into a reservoir or a greased point; nothing yet where nothing was ever logged.
    #[must_use]
    pub fn contents(&self, of: &Id) -> Contents {
        self.contents.get(of).cloned().unwrap_or_default()
    }
}
