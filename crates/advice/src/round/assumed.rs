//! What a round rests on for lack of a statement, gathered while its points are gone through.

use std::collections::BTreeMap;

use shop::chart::Point;
use shop::id::Id;
use shop::snapshot::MachineSnapshot;

use super::act::Act;
use super::serving::Serving;
use super::setup::SetUp;
use super::{Pace, Plan};
use crate::working::Assumption;

#[derive(Default)]
pub(super) struct Assumed {
    oils: BTreeMap<(String, Option<String>), Vec<Id>>,
    no_oil: Vec<Id>,
    pub(super) no_stand: Vec<Id>,
    pub(super) no_interval: Vec<Id>,
    pub(super) holes: Vec<Id>,
    drops: bool,
}

impl Assumed {
    /// Notes what a point's oil and dose rest on.
    pub(super) fn serves(&mut self, point: &Point, what: Act, serving: &Serving) {
        self.drops |= serving.dose.counted_in_drops;
        match &serving.asked {
            Some(asked) => {
                let oil = serving.oil.as_ref().map(|oil| oil.name.clone());
                self.oils.entry((asked.clone(), oil)).or_default().push(point.id.clone());
            }
            None if what != Act::Look => self.no_oil.push(point.id.clone()),
            None => {}
        }
    }

    pub(super) fn told(
        self,
        machine: &MachineSnapshot,
        plan: &Plan,
        setups: &[SetUp],
        pace: Option<Pace>,
    ) -> Vec<Assumption> {
        let mut told = vec![Assumption::HoursPlanned(plan.hours)];
        let open = machine.chart.options.iter().filter(|option| option.here.is_none());
        told.extend(open.map(|option| Assumption::OptionNotSettled(option.id.clone())));
        told.extend(self.oils.into_iter().map(|((asked, oil), points)| Assumption::OilByChart { asked, oil, points }));
        let lists = [
            (self.no_oil, Assumption::OilNotCharted as fn(Vec<Id>) -> Assumption),
            (self.no_stand, Assumption::StandNotCharted),
            (self.no_interval, Assumption::NoInterval),
            (self.holes, Assumption::UnknownHole),
        ];
        told.extend(lists.into_iter().filter(|(ids, _)| !ids.is_empty()).map(|(ids, of)| of(ids)));
        if self.drops {
            told.push(Assumption::DropSize);
        }
        let mut read: Vec<SetUp> = Vec::new();
        for setup in setups {
            if !read.iter().any(|known| known.text == setup.text) {
                read.push(setup.clone());
            }
        }
        if !read.is_empty() {
            told.push(Assumption::SetupsRead(read));
        }
        told.push(Assumption::MinutesByRuleOfThumb);
        told.extend(pace.map(Assumption::OwnPace));
        told
    }
}
