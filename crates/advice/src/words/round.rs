//! The round in sentences: how much there is to do, the state of the machine, the usual cautions.

use std::collections::BTreeSet;

use shop::amount::Interval;
use shop::chart::State;

use crate::round::{Caution, KeptApart, Later, Round, RoundPoint, Unsuited, WipeAt};
use crate::verdict::Verdict;

use super::due::hours;
use super::{count, join, list};

/// `11 points at 3 places, about 5 minutes. Two cans: the short can, the long spout.`
#[must_use]
pub fn summary(round: &Round) -> String {
    let left = round.left();
    if left == 0 {
        return "Nothing is left to oil before this job.".to_owned();
    }
    let open = round.stands.iter().filter(|at| at.points.iter().any(|point| !point.is_done()));
    let places: BTreeSet<_> = open.map(|at| &at.stand).collect();
    let cans: Vec<&str> = round.cans().iter().map(|can| can.name.as_str()).collect();
    let with = match cans.as_slice() {
        [] => String::new(),
        [only] => format!(" One can: {only}."),
        cans => format!(" {} cans: {}.", number(cans.len()), join(cans)),
    };
    format!(
        "{} at {}, about {}.{with}",
        count(left, "point"),
        count(places.len(), "place"),
        count(round.minutes as usize, "minute")
    )
}

/// The state of the machine and the caution that goes with it, as sentences.
#[must_use]
pub fn caution(state: State) -> &'static str {
    match state {
        State::Stopped => {
            "Machine stopped, switched off and held off, so that nobody can start it while your hands are in it. Local rules come first."
        }
        State::Running => {
            "Guards on, sleeves tight, no rag in hand. Look from outside the guards; hands stay clear of everything that moves."
        }
    }
}

/// What to take care of at a point, as a sentence.
#[must_use]
pub fn caution_at(caution: Caution) -> &'static str {
    match caution {
        Caution::CanIntoRunning => {
            "Never put the can into a running machine: stop it for this point, whatever the chart says."
        }
        Caution::TurnedByHand => {
            "Turn it by hand with the switch locked off; fingers clear of teeth, belts and spokes."
        }
        Caution::HotOil => "It ran not long ago: the oil may be hot, and the level stands wrong until it has settled.",
        Caution::HighUp => "High up: shaft stopped, ladder footed, or the long spout from the floor.",
        Caution::HarmfulOil => {
            "Do not give this oil here, whatever the chart says: it does harm. What to take instead stands at the head of the round."
        }
        Caution::Gun => "Hands and eyes away from the mouth of the gun: grease can go through the skin.",
    }
}

/// Why the oil that the chart leads to is not good enough at a point, and what to take: `14 Worm: Gear 220 is never right here: active
/// sulphur eats bronze. Take Compounded 460; it suits.`
#[must_use]
pub fn unsuited(found: &Unsuited) -> String {
    let oil = match (&found.oil, &found.why) {
        (Some((oil, verdict)), why) => {
            let word = if *verdict == Verdict::Never { "does harm here" } else { "is a stopgap here" };
            let why = why.as_ref().map(|why| format!(": {}", why.says)).unwrap_or_default();
            format!("{} {word}{why}", oil.name)
        }
        (None, _) => "the chart leads to no oil of the shelf".to_owned(),
    };
    let rather = match &found.rather {
        Some((oil, Verdict::Stopgap)) => format!("Take {} for a while; it is a stopgap.", oil.name),
        Some((oil, verdict)) => format!("Take {}; it {verdict}.", oil.name),
        None if matches!(found.oil, Some((_, Verdict::Stopgap))) => "Nothing on the shelf does better.".to_owned(),
        None => "Nothing on the shelf will do: leave the machine stopped.".to_owned(),
    };
    format!("{} {}: {oil}. {rather}", found.id, found.name)
}

/// Where a can of the round must never be set: `Gun: never at 3, 5 and 7`, and of one that does harm at many, where alone it may be.
#[must_use]
pub fn kept_apart(found: &KeptApart) -> String {
    const MANY: usize = 6;
    let can = capital(&found.can.name);
    match (found.from.len() > MANY, found.at.is_empty()) {
        (false, _) => format!("{can}: never at {}", list(&found.from)),
        (true, false) => {
            format!(
                "{can}: only at {}; it does harm at {} other points of this round",
                list(&found.at),
                found.from.len()
            )
        }
        (true, true) => format!("{can}: leave it here; it does harm at {} points of this round", found.from.len()),
    }
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// What is done before a point, behind one another: `ram wound fully back and rear cover off`.
#[must_use]
pub fn first(point: &RoundPoint) -> Option<String> {
    let first: Vec<&str> = point.first.iter().map(|setup| setup.text.as_str()).collect();
    (!first.is_empty()).then(|| join(&first))
}

/// What is wiped from a stand: `ram way left and ram way right`.
#[must_use]
pub fn wipe(at: &WipeAt) -> String {
    let what: Vec<&str> = at.what.iter().map(String::as_str).collect();
    join(&what)
}

/// The covers to put back before the start, as a sentence.
#[must_use]
pub fn covers_back(round: &Round) -> Option<String> {
    let covers: Vec<&str> = round.covers.iter().map(String::as_str).collect();
    (!covers.is_empty()).then(|| format!("Put back before it runs: {}.", join(&covers)))
}

/// A stop in the middle of the job: `after 4 h of running, about 13:10: 3 Ram way and 7 Pivot`.
#[must_use]
pub fn later(later: &Later) -> String {
    let points: Vec<String> = later.points.iter().map(|(id, name)| format!("{id} {name}")).collect();
    let points: Vec<&str> = points.iter().map(String::as_str).collect();
    format!("after {} of running, about {}: {}", hours(later.after), later.clock.strftime("%-H:%M"), join(&points))
}

/// Intervals behind one another: `1 use or 4 h, whichever comes first`.
#[must_use]
pub fn short_interval(every: &[Interval]) -> Option<String> {
    match every {
        [] => None,
        [only] => Some(only.typed.clone()),
        more => {
            let typed: Vec<&str> = more.iter().map(|interval| interval.typed.as_str()).collect();
            Some(format!("{}, whichever comes first", typed.join(" or ")))
        }
    }
}

fn number(number: usize) -> String {
    match number {
        2 => "Two".to_owned(),
        3 => "Three".to_owned(),
        4 => "Four".to_owned(),
        5 => "Five".to_owned(),
        more => more.to_string(),
    }
}
