//! What is in a reservoir or a greased point, held against what all the pairs that it feeds want, and what to do about it. Start at
//! [`in_reservoir`] and [`in_greased_point`]. A wrong oil that is in already is no reason to panic: [`TABLE`] says when the machine
//! stays stopped, when it is drained, and when it runs to the next change.

mod feeding;
pub mod grease;
mod harm;
mod mixing;

pub use feeding::as_point;
pub use harm::{Act, Row, STANDING, TABLE};
pub use mixing::{Floor, into_old, onto};

use jiff::Timestamp;
use shop::chart::{Behaviour, Chart, Point, Reservoir};
use shop::contents::{Contents, Fill};
use shop::id::Id;
use shop::shelf::{Amount, Oil, Shelf};
use tribology::quantity::Volume;

use crate::judge::judged;
use crate::need::{Need, need};
use crate::stock::given;
use crate::verdict::{Reason, Verdict};

/// What is in a body of oil or grease, and what to do about it.
#[derive(Clone, Debug, PartialEq)]
pub struct Inside {
    /// What is in.
    pub holds: Holds,
    /// Since when it is what it is; nothing where that is not known.
    pub since: Option<Timestamp>,
    /// How far what is known of it does, of several the worst; nothing where nothing is known of it.
    pub verdict: Option<Verdict>,
    /// Why no further, the strictest first.
    pub harms: Vec<Harm>,
    /// What to do.
    pub act: Act,
    /// Whether something that was in before was taken for used up.
    pub replaced: Option<Replaced>,
}

/// What is in.
#[derive(Clone, Debug, PartialEq)]
pub enum Holds {
    /// Nobody has ever written it down.
    NeverEntered,
    /// It was drained and nothing was filled in since.
    Nothing,
    /// These, by their ids on the shelf; several are a mixture.
    Known(Vec<Id>),
    /// These, and something of which nobody knows what it is.
    Partly(Vec<Id>),
}

/// Why an oil that is in does no further.
#[derive(Clone, Debug, PartialEq)]
pub struct Harm {
    /// The oils that it is about, one or two.
    pub oils: Vec<Id>,
    /// The pair that it is about; nothing where it is about a mixture, or nobody knows what is fed.
    pub pair: Option<Id>,
    /// The reason.
    pub reason: Reason,
    /// What to do for it.
    pub act: Act,
}

/// Something that was taken for used up, because so much was put in after it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Replaced {
    /// How many times what it holds was put in since, at the least.
    pub times: f64,
}

/// In one word how what is in does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fit {
    /// It is what is wanted.
    Right,
    /// It does.
    Serves,
    /// It is a stopgap or does harm.
    Wrong,
    /// Nobody knows, and what is known does no harm.
    Unknown,
    /// Nothing is in.
    Empty,
}

impl Inside {
    /// In one word how it does.
    #[must_use]
    pub fn fit(&self) -> Fit {
        match (&self.holds, self.verdict) {
            (Holds::Nothing, _) => Fit::Empty,
            (_, Some(Verdict::Never | Verdict::Stopgap)) => Fit::Wrong,
            _ if self.act == Act::Sample => Fit::Unknown,
            (_, Some(Verdict::Serves)) => Fit::Serves,
            (_, Some(Verdict::Suits)) => Fit::Right,
            (_, None) => Fit::Unknown,
        }
    }

    /// The one oil that is in, when it is known and alone.
    #[must_use]
    pub fn only(&self) -> Option<&Id> {
        match &self.holds {
            Holds::Known(oils) => oils.first().filter(|_| oils.len() == 1),
            _ => None,
        }
    }
}

/// What is in a reservoir of this example.
#[must_use]
pub fn in_reservoir(chart: &Chart, reservoir: &Reservoir, contents: &Contents, shelf: &Shelf) -> Inside {
    let point = as_point(chart, reservoir);
    let uses = reservoir.behaviour == Some(Behaviour::Uses);
    let holds = reservoir.capacity.as_ref().map(|capacity| capacity.value);
    inside(&need(chart, &point), contents, shelf, if uses { Keeps::UsesUp(holds) } else { Keeps::Holds })
}

/// What is in a point that is made for grease: fresh grease pushes the old out.
#[must_use]
pub fn in_greased_point(chart: &Chart, point: &Point, contents: &Contents, shelf: &Shelf) -> Inside {
    inside(&need(chart, point), contents, shelf, Keeps::UsesUp(None))
}

/// What to be wary of before an oil is put in on top of what is in: the strictest first.
#[must_use]
pub fn before_topping_up(inside: &Inside, contents: &Contents, fresh: &Oil, shelf: &Shelf) -> Vec<Reason> {
    let floor = if contents.drained.is_some() { Floor::Seen } else { Floor::Unseen };
    let known = match &inside.holds {
        Holds::Known(oils) | Holds::Partly(oils) => oils.as_slice(),
        Holds::NeverEntered | Holds::Nothing => &[],
    };
    let mut says: Vec<Reason> =
        known.iter().filter_map(|id| shelf.oil(id)).flat_map(|inside| onto(inside, fresh)).collect();
    says.extend(into_old(fresh, floor));
    says.sort_by_key(|reason| reason.cap);
    says.dedup_by(|a, b| a.says == b.says);
    says
}

/// Whether a body of oil keeps what is put in.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Keeps {
    /// It does, until it is drained.
    Holds,
    /// It uses it up; nothing where nobody knows how much it holds.
    UsesUp(Option<Volume>),
}

/// Where oil is used up, what was in before counts as gone once so many times of what it holds were put in. Where each fill mixes with
/// the rest, at most a part in e³, five in a hundred, is left of it then (own calculation).
pub const GONE_AFTER: f64 = 3.0;
/// What one topping up is taken for where nobody measured it, in parts of what the reservoir holds (from memory, on the low side).
pub const UNMEASURED: f64 = 0.1;

/// All that was put in of one oil.
struct Part<'c> {
    oil: Option<&'c Id>,
    first: Timestamp,
    last: Timestamp,
}

fn inside(need: &Need<'_>, contents: &Contents, shelf: &Shelf, keeps: Keeps) -> Inside {
    let (holds, since, replaced) = held(contents, shelf, keeps);
    let nothing = |act| Inside { holds: holds.clone(), since, verdict: None, harms: Vec::new(), act, replaced };
    let (ids, is_all) = match &holds {
        Holds::NeverEntered => return nothing(Act::Sample),
        Holds::Nothing => return nothing(Act::Fill),
        Holds::Known(ids) => (ids, true),
        Holds::Partly(ids) => (ids, false),
    };
    let known: Vec<&Oil> = ids.iter().filter_map(|id| shelf.oil(id)).collect();
    let mut harms: Vec<Harm> = known.iter().flat_map(|oil| harms_of(need, oil)).collect();
    for (at, one) in known.iter().enumerate() {
        for other in &known[at + 1..] {
            harms.extend(onto(one, other).into_iter().map(|reason| {
                let act = harm::act(&reason, None);
                Harm { oils: vec![one.id.clone(), other.id.clone()], pair: None, reason, act }
            }));
        }
    }
    harms.sort_by_key(|harm| (harm.reason.cap, std::cmp::Reverse(harm.act)));
    let verdict = harms.iter().map(|harm| harm.reason.cap).min().unwrap_or(Verdict::Suits);
    let act = harms.iter().map(|harm| harm.act).max().unwrap_or(Act::Leave);
    let is_judged = is_all && known.len() == ids.len();
    Inside {
        verdict: (!known.is_empty()).then_some(verdict),
        // What is not known may be worse, but what is known to do harm decides.
        act: if is_judged || act >= Act::Drain { act } else { Act::Sample },
        harms,
        holds,
        since,
        replaced,
    }
}

/// Why an oil does no further, pair by pair.
fn harms_of(need: &Need<'_>, oil: &Oil) -> Vec<Harm> {
    let mut harms: Vec<Harm> = Vec::new();
    for (place, band) in &need.pairs {
        let alone = Need { pairs: vec![(place.clone(), *band)], band: *band, suffer: Vec::new() };
        for reason in judged(&alone, oil).reasons {
            let act = harm::act(&reason, Some(place));
            let pair = place.pair.map(|pair| pair.id.clone());
            // The same of several pairs is told once, of the one for which most is to be done.
            match harms.iter_mut().find(|known| (known.reason.rule, &known.reason.says) == (reason.rule, &reason.says))
            {
                Some(known) if known.act >= act => {}
                Some(known) => (known.pair, known.act) = (pair, act),
                None => harms.push(Harm { oils: vec![oil.id.clone()], pair, reason, act }),
            }
        }
    }
    harms
}

/// What is in, since when, and whether something was taken for used up.
fn held(contents: &Contents, shelf: &Shelf, keeps: Keeps) -> (Holds, Option<Timestamp>, Option<Replaced>) {
    if contents.is_never_entered() {
        return (Holds::NeverEntered, None, None);
    }
    if contents.fills.is_empty() {
        return (Holds::Nothing, contents.drained, None);
    }
    let mut parts: Vec<Part<'_>> = Vec::new();
    for fill in &contents.fills {
        match parts.iter_mut().find(|part| part.oil == fill.oil.as_ref()) {
            Some(part) => (part.first, part.last) = (part.first.min(fill.first), part.last.max(fill.last)),
            None => parts.push(Part { oil: fill.oil.as_ref(), first: fill.first, last: fill.last }),
        }
    }
    let mut replaced: Option<Replaced> = None;
    let mut is_gone = |last: Option<Timestamp>| {
        let Keeps::UsesUp(capacity) = keeps else { return false };
        let times = put_in_after(last, contents, capacity, shelf);
        let gone = times >= GONE_AFTER;
        if gone {
            replaced = Some(Replaced { times: replaced.map_or(times, |known| known.times.min(times)) });
        }
        gone
    };
    let knows_first = contents.drained.is_some() || is_gone(None);
    parts.retain(|part| !is_gone(Some(part.last)));
    let since = parts.iter().map(|part| part.first).max().filter(|_| knows_first);
    let is_said = parts.iter().all(|part| part.oil.is_some());
    let ids: Vec<Id> = parts.iter().filter_map(|part| part.oil.cloned()).collect();
    let holds = if knows_first && is_said { Holds::Known(ids) } else { Holds::Partly(ids) };
    (holds, since, replaced)
}

/// How many times what a reservoir holds was put in after an instant, or in all, at the least: only ways of filling that began later.
fn put_in_after(after: Option<Timestamp>, contents: &Contents, capacity: Option<Volume>, shelf: &Shelf) -> f64 {
    let later = contents.fills.iter().filter(|fill| after.is_none_or(|after| fill.first > after));
    later.map(|fill| fill.times as f64 * share(fill, capacity, shelf)).sum()
}

/// What one filling was, in parts of what the reservoir holds.
fn share(fill: &Fill, capacity: Option<Volume>, shelf: &Shelf) -> f64 {
    let volume = fill.amount.as_deref().and_then(|text| {
        given(text, fill.can.as_ref(), shelf).or_else(|| match Amount::read(text) {
            Ok(Amount::Volume(volume)) => Some(volume),
            _ => None,
        })
    });
    match (volume, capacity) {
        (Some(volume), Some(capacity)) if capacity.m3() > 0.0 => volume.m3() / capacity.m3(),
        _ => UNMEASURED,
    }
}
