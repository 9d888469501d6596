//! A small machine to try things on: a chart in few lines, and acts at moments of one week.

use advice::round::{Plan, Round, RoundPoint, round};
use advice::working::Reasoned;
use jiff::civil::DateTime;
use jiff::tz::TimeZone;
use shop::chart::Chart;
use shop::id::Id;
use shop::logbook::EntryId;
use shop::shelf::Shelf;
use shop::snapshot::{MachineSnapshot, Mark, Moment, PointHistory, Run};
use tribology::quantity::Time;

pub(crate) const SHELF: &str = r#"shelf = 1
[[oil]]
id = "way-68"
name = "Way 68"
family = "way"
v40 = "68 mm2/s"
[[can]]
id = "short-can"
oil = "way-68"
stroke = "0.8 mL"
"#;

pub(crate) struct Bench {
    pub(crate) machine: MachineSnapshot,
    pub(crate) shelf: Shelf,
    number: i64,
}

#[track_caller]
pub(crate) fn id(text: &str) -> Id {
    Id::new(text).expect("a test writes right ids")
}

/// A moment in the test's own zone, as `2026-11-25T09:00`.
#[track_caller]
pub(crate) fn at(text: &str) -> Moment {
    let zone = TimeZone::get("Europe/Berlin").expect("the bundled zones hold it");
    let clock: DateTime = text.parse().expect("a test writes right moments");
    Moment { instant: clock.to_zoned_datetime(zone.clone()).expect("a moment of the shop's clock").timestamp(), zone }
}

impl Bench {
    /// A machine whose points are these lines of TOML.
    #[track_caller]
    pub(crate) fn new(rest: &str) -> Self {
        let text = format!("chart = 1\n[machine]\nname = \"drill\"\n{rest}");
        let read = Chart::read(&text);
        let chart = read.value.unwrap_or_else(|| panic!("{:?}", read.faults));
        let machine = MachineSnapshot {
            id: id("drill"),
            revision: 1,
            chart,
            points: Default::default(),
            runs: Vec::new(),
            contents: Default::default(),
        };
        Self { machine, shelf: Shelf::read(SHELF).value.expect("the shelf is right"), number: 0 }
    }

    pub(crate) fn history(&mut self, point: &str) -> &mut PointHistory {
        self.machine.points.entry(id(point)).or_default()
    }

    pub(crate) fn mark(&mut self, when: &str) -> Mark {
        self.number += 1;
        Mark {
            entry: EntryId(self.number),
            happened: at(when).instant,
            by: "pupil".to_owned(),
            key: format!("k/{}", self.number),
        }
    }

    pub(crate) fn dosed(&mut self, point: &str, when: &str) -> &mut Self {
        let mark = self.mark(when);
        self.history(point).dosed = Some(mark);
        self
    }

    pub(crate) fn ran(&mut self, when: &str, hours: f64, job: Option<&str>) -> &mut Self {
        self.machine.runs.push(Run { happened: at(when).instant, hours: Time::from_hours(hours), job: job.map(id) });
        self
    }

    pub(crate) fn round(&self, when: &str, hours: f64, job: Option<&str>) -> Reasoned<Round> {
        let plan = Plan { job: job.map(id), hours: Time::from_hours(hours) };
        round(&self.machine, &self.shelf, &at(when), &plan)
    }

    /// The points still to be done, in the round's order.
    pub(crate) fn left(&self, when: &str, hours: f64, job: Option<&str>) -> Vec<String> {
        points(self.round(when, hours, job).value()).filter(|p| !p.is_done()).map(|p| p.id.to_string()).collect()
    }
}

pub(crate) fn points(round: &Round) -> impl Iterator<Item = &RoundPoint> {
    round.stands.iter().flat_map(|at| &at.points)
}
