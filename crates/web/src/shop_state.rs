//! What every page of the shop stands on: the data file, the clock, and one look at a machine at one moment.

use std::fmt;
use std::sync::Arc;

use advice::round::{Plan, Round, round};
use advice::working::Reasoned;
use jiff::{Timestamp, ZonedDateTime};
use shop::chart::Point;
use shop::fault::nearest;
use shop::id::Id;
use shop::shelf::Shelf;
use shop::snapshot::{MachineSnapshot, Moment};
use store::{MachineRow, Settings, Store};

use crate::{Error, address};

/// The shop that the pages show: its data file, and the clock by which they are told.
#[derive(Clone, Debug)]
pub struct Shop {
    /// The data file.
    pub store: Store,
    /// The clock.
    pub clock: Clock,
}

/// The clock of the shop. The pages never read any other.
#[derive(Clone)]
pub struct Clock(Arc<dyn Fn() -> Timestamp + Send + Sync>);

impl Clock {
    /// A clock that tells what `now` answers.
    pub fn new(now: impl Fn() -> Timestamp + Send + Sync + 'static) -> Self {
        Self(Arc::new(now))
    }

    /// The instant.
    #[must_use]
    pub fn now(&self) -> Timestamp {
        (self.0)()
    }
}

impl fmt::Debug for Clock {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Clock")
    }
}

/// One machine at one moment, with the shelf that serves it.
pub(crate) struct View {
    pub(crate) moment: Moment,
    pub(crate) settings: Settings,
    pub(crate) shelf: Shelf,
    pub(crate) machine: MachineSnapshot,
    pub(crate) all: Vec<MachineRow>,
}

impl Shop {
    /// The machine of this id as it is now; the first of the shop when none is named.
    ///
    /// # Errors
    /// [`Error::Unknown`] with the nearest id when there is none of that id; nothing in the shop gives `Ok(None)`.
    pub(crate) async fn view_or_first(&self, asked: &str) -> Result<Option<View>, Error> {
        let all = self.store.machines().await?;
        let found = if asked.is_empty() { all.first() } else { all.iter().find(|row| row.id.as_str() == asked) };
        let Some(found) = found else {
            return if asked.is_empty() { Ok(None) } else { Err(unknown_machine(asked, &all)) };
        };
        let settings = self.store.settings().await?;
        let snapshot = self.store.snapshot_of(std::slice::from_ref(&found.id), self.clock.now()).await?;
        let machine = snapshot.machines.into_iter().next();
        let machine = machine.ok_or_else(|| Error::broken("the machine's chart is not in the snapshot"))?;
        Ok(Some(View { moment: snapshot.moment, settings, shelf: snapshot.shelf, machine, all }))
    }

    /// Machines as they are now, at one moment, in the order of the shop; the first of the shop when none is named.
    ///
    /// # Errors
    /// [`Error::Unknown`] with the nearest id when there is none of one of these ids.
    pub(crate) async fn views(&self, asked: &[&str]) -> Result<Vec<View>, Error> {
        let all = self.store.machines().await?;
        if let Some(unknown) = asked.iter().find(|asked| all.iter().all(|row| row.id.as_str() != **asked)) {
            return Err(unknown_machine(unknown, &all));
        }
        let found = all.iter().filter(|row| asked.contains(&row.id.as_str())).map(|row| row.id.clone());
        let mut ids: Vec<Id> = found.collect();
        if ids.is_empty() {
            ids.extend(all.first().map(|row| row.id.clone()));
        }
        let settings = self.store.settings().await?;
        let snapshot = self.store.snapshot_of(&ids, self.clock.now()).await?;
        let view = |machine: MachineSnapshot| View {
            moment: snapshot.moment.clone(),
            settings: settings.clone(),
            shelf: snapshot.shelf.clone(),
            machine,
            all: all.clone(),
        };
        let mut views: Vec<View> = snapshot.machines.into_iter().map(view).collect();
        views.sort_by_key(|view| ids.iter().position(|id| *id == view.machine.id));
        Ok(views)
    }

    /// The machine of this id as it is now.
    ///
    /// # Errors
    /// [`Error::Unknown`] with the nearest id.
    pub(crate) async fn view(&self, asked: &str) -> Result<View, Error> {
        let none = || Error::Unknown { what: "machine", asked: asked.to_owned(), near: None };
        if asked.is_empty() {
            return Err(none());
        }
        self.view_or_first(asked).await?.ok_or_else(none)
    }
}

impl View {
    /// The point of this id on this example.
    ///
    /// # Errors
    /// [`Error::Unknown`] with the nearest id.
    pub(crate) fn point(&self, asked: &str) -> Result<&Point, Error> {
        let chart = &self.machine.chart;
        chart.points_here().find(|point| point.id.as_str() == asked).ok_or_else(|| {
            let near =
                nearest(asked, chart.points_here().map(|point| point.id.as_str())).and_then(|id| Id::new(id).ok());
            Error::Unknown {
                what: "oiling point",
                asked: asked.to_owned(),
                near: near.map(|id| (address::point(&self.machine.id, &id), format!("point {id}"))),
            }
        })
    }

    /// The round for what is planned.
    pub(crate) fn round(&self, plan: &Plan) -> Reasoned<Round> {
        round(&self.machine, &self.shelf, &self.moment, plan)
    }

    pub(crate) fn name(&self) -> &str {
        &self.machine.chart.machine.name
    }
}

/// When something happened, as short as the day allows: `today, 9:12`, or `24 November 2026, 9:12`.
pub(crate) fn when(moment: &Moment, instant: Timestamp) -> String {
    let clock = on_clock(moment, instant);
    let day = clock.date();
    let hour = clock.strftime("%-H:%M");
    if day == moment.day() {
        format!("today, {hour}")
    } else if moment.day().yesterday().is_ok_and(|yesterday| yesterday == day) {
        format!("yesterday, {hour}")
    } else {
        format!("{}, {hour}", day.strftime("%-d %B %Y"))
    }
}

/// An instant on the shop's clock.
pub(crate) fn on_clock(moment: &Moment, instant: Timestamp) -> ZonedDateTime {
    instant.to_zoned_datetime(moment.zone.clone())
}

fn unknown_machine(asked: &str, all: &[MachineRow]) -> Error {
    let near = nearest(asked, all.iter().map(|row| row.id.as_str()));
    let near = near.and_then(|id| all.iter().find(|row| row.id.as_str() == id));
    Error::Unknown {
        what: "machine",
        asked: asked.to_owned(),
        near: near.map(|row| (address::machine(&row.id), row.name.clone())),
    }
}
