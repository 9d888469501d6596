//! The logbook of the invented shop, day by day from a fixed seed: on working days somebody oils what the round asks for, looks
//! for some of the signs, sometimes cannot reach a point, and logs how long the machine ran. All of it is invented.

mod story;

use advice::round::{Act, Plan, Round, round};
use jiff::civil::{Date, Weekday};
use jiff::tz::TimeZone;
use jiff::{SignedDuration, Timestamp, ToSpan as _};
use rand_pcg::Pcg32;
use rand_pcg::rand_core::Rng as _;
use shop::chart::Behaviour;
use shop::id::Id;
use shop::logbook::{BatchKey, Body, EntryId, NewEntry, Subject};
use shop::snapshot::{MachineSnapshot, Mark, Moment, Run, ShopSnapshot};
use tribology::quantity::Time;

/// The seed; another one gives another shop.
const SEED: (u64, u64) = (1886, 1940);

/// The first day of the logbook, in days before the visitor comes: fourteen months.
const DAYS: i64 = 426;

/// Who works in the shop.
const HANDS: [&str; 3] = ["the keeper", "the apprentice", "the Saturday helper"];

/// Why a point could not be reached, as people write it.
const REASONS: [&str; 4] = ["cover stuck", "can was empty", "job set up on the table", "hole packed with chips"];

/// The entries of the logbook up to a moment, oldest first; `before` are in it already.
pub(super) fn entries(shop: ShopSnapshot, before: usize, until: Timestamp) -> Vec<NewEntry> {
    let zone = shop.moment.zone.clone();
    let mut diary = Diary { chance: Pcg32::new(SEED.0, SEED.1), written: Vec::new(), before, shop, acts: 0 };
    let today = until.to_zoned_datetime(zone.clone()).date();
    for ago in (1..=DAYS).rev() {
        let day = today.saturating_sub(ago.days());
        diary.reservoirs(day, &zone);
        for machine in 0..diary.shop.machines.len() {
            if !diary.works(machine, day.weekday()) {
                continue;
            }
            let morning = day.at(8, 35, 0, 0).to_zoned_datetime(zone.clone()).expect("a morning exists on every day");
            diary.session(machine, morning.timestamp() + SignedDuration::from_mins(40 * machine as i64));
        }
    }
    diary.written
}

struct Diary {
    chance: Pcg32,
    written: Vec<NewEntry>,
    before: usize,
    shop: ShopSnapshot,
    acts: usize,
}

impl Diary {
    /// Each machine works on a day or two of the week of its own and on some Saturdays.
    fn works(&mut self, machine: usize, day: Weekday) -> bool {
        let usual = match machine {
            0 => matches!(day, Weekday::Tuesday | Weekday::Thursday),
            1 => matches!(day, Weekday::Wednesday | Weekday::Friday),
            2 => matches!(day, Weekday::Monday | Weekday::Thursday),
            3 => matches!(day, Weekday::Thursday),
            4 => matches!(day, Weekday::Monday | Weekday::Wednesday),
            _ => matches!(day, Weekday::Tuesday | Weekday::Friday),
        };
        let rare = day == Weekday::Saturday && self.one_in(3);
        (usual && !self.one_in(12)) || rare
    }

    /// What is read of reservoirs and filled into them on a day.
    fn reservoirs(&mut self, day: Date, zone: &TimeZone) {
        let chance = self.below(100);
        let hand = HANDS[self.below(2)];
        let when = day.at(8, 20, 0, 0).to_zoned_datetime(zone.clone()).expect("a morning exists on every day");
        if let Some((oil, body)) = story::shelf(day) {
            self.act();
            let oil = Subject::Oil(Id::new(oil).expect("the story names ids"));
            self.write(0, when.timestamp(), HANDS[0], oil, body);
        }
        for (machine, reservoir, kept) in story::reservoirs(day, chance) {
            let id = |id| Id::new(id).expect("the story names ids");
            let body = match kept {
                story::Kept::Filled(oil, amount) => Body::Filled { oil: Some(id(oil)), amount: Some(amount) },
                story::Kept::Drained(note) => Body::Drained { note: Some(note.to_owned()) },
                story::Kept::Level(reading) => Body::Level { reading },
                story::Kept::Note(text) => Body::Note { text: text.to_owned() },
            };
            self.act();
            self.write(0, when.timestamp(), hand, Subject::Reservoir(id(machine), id(reservoir)), body);
        }
    }

    /// One session: the round, and the run after it.
    fn session(&mut self, machine: usize, began: Timestamp) {
        let hand = HANDS[self.below(HANDS.len())];
        let hours = Time::from_hours(1.0 + 0.5 * self.below(7) as f64);
        let job = self.job(machine);
        let moment = Moment { instant: began, zone: self.shop.moment.zone.clone() };
        let plan = Plan { job: job.clone(), hours };
        let today = round(&self.shop.machines[machine], &self.shop.shelf, &moment, &plan).answer.value;
        let skipped = story::skips(hand, self.machine(machine).id.as_str());
        let over = if skipped { began } else { self.oil(machine, &today, hand, began) };
        let ran = over + SignedDuration::from_secs(hours.seconds() as i64);
        let subject = Subject::Machine(self.machine(machine).id.clone());
        self.act();
        if self.one_in(30) {
            // A slip of the finger, corrected a minute later by an entry that supersedes it.
            let slip = Body::Ran { hours: Time::from_hours(5.0 * hours.hours()), job: job.clone() };
            let slip = self.write(0, ran, hand, subject.clone(), slip).entry;
            self.act();
            let after = ran + SignedDuration::from_mins(1);
            self.write(0, after, hand, subject, Body::Ran { hours, job: job.clone() });
            let right = self.written.last_mut().expect("it was written just now");
            (right.happened, right.supersedes) = (ran, Some(slip));
        } else {
            self.write(0, ran, hand, subject, Body::Ran { hours, job: job.clone() });
        }
        self.shop.machines[machine].runs.push(Run { happened: ran, hours, job });
    }

    /// Does the round, and says when it was over.
    fn oil(&mut self, machine: usize, today: &Round, hand: &str, began: Timestamp) -> Timestamp {
        let mut now = began;
        for at in &today.stands {
            now += SignedDuration::from_secs(15);
            self.act();
            for (number, point) in at.points.iter().enumerate() {
                now += SignedDuration::from_secs(20);
                let subject = Subject::Point(self.machine(machine).id.clone(), point.id.clone());
                if self.one_in(40) {
                    let reason = REASONS[self.below(REASONS.len())].to_owned();
                    self.write(2 * number, now, hand, subject, Body::NotReached { reason });
                    continue;
                }
                if point.act != Act::Look {
                    let (oil, can) =
                        (point.oil.as_ref().map(|o| o.id.clone()), point.can.as_ref().map(|c| c.id.clone()));
                    let amount = point.dose.clone().filter(|_| point.act == Act::Give);
                    // What holds its oil is looked at and is right; the story says when something goes in.
                    let body = if self.holds(machine, &point.id) {
                        Body::Dosed { oil: None, can: None, amount: None }
                    } else {
                        Body::Dosed { oil, can, amount }
                    };
                    let mark = self.write(2 * number, now, hand, subject.clone(), body);
                    self.history(machine, &point.id).dosed = Some(mark);
                }
                // A look is always made; after oiling only some people wait for the sign.
                if point.sign.is_some() && (point.act == Act::Look || self.one_in(3)) {
                    let day = now.to_zoned_datetime(TimeZone::UTC).date();
                    let missing =
                        story::missing_in_a_hundred(self.machine(machine).id.as_str(), point.id.as_str(), day);
                    if missing > 0 && self.below(100) < missing {
                        let body = Body::SignMissing { note: Some("only damp".to_owned()) };
                        let mark = self.write(2 * number + 1, now, hand, subject, body);
                        self.history(machine, &point.id).sign_missing = Some(mark);
                        continue;
                    }
                    let mark = self.write(2 * number + 1, now, hand, subject, Body::SignSeen { note: None });
                    self.history(machine, &point.id).sign_seen = Some(mark);
                }
            }
        }
        now
    }

    /// Every third session is one of the chart's jobs.
    fn job(&mut self, machine: usize) -> Option<Id> {
        if !self.one_in(3) {
            return None;
        }
        let jobs = self.machine(machine).chart.jobs.len();
        let chosen = if jobs == 0 { return None } else { self.below(jobs) };
        Some(self.machine(machine).chart.jobs[chosen].id.clone())
    }

    fn write(&mut self, number: usize, when: Timestamp, hand: &str, subject: Subject, body: Body) -> Mark {
        let key = BatchKey::new(&format!("demo-{:05}", self.acts)).expect("letters, a hyphen and digits").entry(number);
        self.written.push(NewEntry {
            happened: when,
            recorded: when,
            zone: "Etc/UTC".to_owned(),
            by: hand.to_owned(),
            subject,
            body,
            supersedes: None,
            idempotency_key: key.clone(),
        });
        Mark { entry: EntryId((self.before + self.written.len()) as i64), happened: when, by: hand.to_owned(), key }
    }

    fn act(&mut self) {
        self.acts += 1;
    }

    /// Whether a point tops up a body of oil that should keep its level.
    fn holds(&self, machine: usize, point: &Id) -> bool {
        let chart = &self.machine(machine).chart;
        let reservoir = chart.point(point).and_then(|point| chart.reservoir(point.tops_up()?));
        reservoir.is_some_and(|reservoir| reservoir.behaviour == Some(Behaviour::Holds))
    }

    fn machine(&self, machine: usize) -> &MachineSnapshot {
        &self.shop.machines[machine]
    }

    fn history(&mut self, machine: usize, point: &Id) -> &mut shop::snapshot::PointHistory {
        self.shop.machines[machine].points.entry(point.clone()).or_default()
    }

    fn one_in(&mut self, many: usize) -> bool {
        self.below(many) == 0
    }

    /// A number below a limit. The slight bias of the remainder does not matter for an invented shop.
    fn below(&mut self, limit: usize) -> usize {
        self.chance.next_u32() as usize % limit
    }
}
