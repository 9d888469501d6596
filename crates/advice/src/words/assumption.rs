//! What was assumed, each in a sentence.

use crate::working::Assumption;

use super::due::hours;
use super::{count as count_of, list};

/// An assumption as a sentence without its full stop.
#[must_use]
pub fn assumption(assumption: &Assumption) -> String {
    match assumption {
        Assumption::HoursPlanned(time) => format!("the machine will run {} today", hours(*time)),
        Assumption::MinutesByRuleOfThumb => {
            "20 seconds to oil a point, 60 to read a level and top it up, 10 to look for a sign, 20 to wipe a way, 45 to take a \
             cover off and put it back, 30 to move a slide, 15 for a plug or the lock of the switch, 5 to change the can, 10 to \
             come to rest at a stand, and a metre of walking a second (common practice, no source)"
                .to_owned()
        }
        Assumption::OwnPace(pace) => format!(
            "the shop's own pace: {} points of its last round took {} where the rule of thumb gives {}",
            pace.points,
            minutes(pace.taken),
            minutes(pace.expected)
        ),
        Assumption::ColdByLimits => {
            "each way of oiling moves oil up to so thick, within about a third: a wick, felt or drip 300 mm²/s, a ring, hand pump or \
             meter unit 450, a running pump behind a strainer 500, a can 1000, a pump at its start 1600, splash 5000 (common \
             practice and memory, no source)"
                .to_owned()
        }
        Assumption::BodyUnknown(points) => format!(
            "for {} {} nobody says how thick the oil is; it was taken for a grade 68",
            points_word(points.len()),
            list(points)
        ),
        Assumption::SetupsRead(setups) => {
            let read: Vec<String> =
                setups.iter().map(|setup| format!("\"{}\" is {}", setup.text, setup.reading)).collect();
            format!("what the chart says about setting the machine was read so: {}", read.join("; "))
        }
        Assumption::Order { is_proven: true } => {
            "the order is the shortest walk round the machine with each stand visited once in each phase, covers opened once and \
             slides moved once; proven by going through all orders. The machine is taken to fill the middle, out to six tenths of \
             the way to the nearest stand"
                .to_owned()
        }
        Assumption::Order { is_proven: false } => {
            "the order is a good one, and nobody has proven that none is shorter: there are too many stands, or a slide has to be \
             moved more than once"
                .to_owned()
        }
        Assumption::Chosen { is_proven: true } => {
            "no other choice of points that fits into the time matters more".to_owned()
        }
        Assumption::Chosen { is_proven: false } => {
            "the choice of points is a good one, and nobody has proven that none is better".to_owned()
        }
        Assumption::OilByChart { asked, oil: Some(oil), points } => format!(
            "for {} {}: the chart states \"{asked}\", and \"{oil}\" is the nearest of that sort on the shelf",
            points_word(points.len()),
            list(points)
        ),
        Assumption::OilByChart { asked, oil: None, points } => format!(
            "for {} {}: the chart states \"{asked}\", and the shelf has nothing of that sort",
            points_word(points.len()),
            list(points)
        ),
        Assumption::OilNotCharted(points) => {
            format!("for {} {} the chart states no oil yet; look at the plate", points_word(points.len()), list(points))
        }
        Assumption::StandNotCharted(points) => {
            format!("for {} {} the chart does not say where to stand", points_word(points.len()), list(points))
        }
        Assumption::NoInterval(points) => format!(
            "{} {} {} no interval on the chart, so the round cannot call for {}",
            points_word(points.len()),
            list(points),
            if points.len() == 1 { "has" } else { "have" },
            if points.len() == 1 { "it" } else { "them" }
        ),
        Assumption::UnknownHole(points) => format!(
            "{} {} {} left out until it is settled what {}",
            points_word(points.len()),
            list(points),
            if points.len() == 1 { "is" } else { "are" },
            if points.len() == 1 { "it feeds" } else { "they feed" }
        ),
        Assumption::OptionNotSettled(option) => {
            format!("how this example is built is not settled for \"{option}\", so the points of every choice are in the round")
        }
        Assumption::HarmByOwnNumbers => {
            "of a plan of the shelf: what suits counts nothing, what serves 1, a stopgap 10, and what does harm is never given; each times \
             the weight of its point, which is 1, and 2 more where the part cannot be bought again, 1 more where the oil stays as a bath, 2 \
             more for a close, fast spindle or a hot worm. A can with active sulphur that would do harm at any \
             point counts 20, for sooner or later it is taken for another, and one that has to be bought counts 3. One more can is advised \
             where it saves 10. These numbers are our own choice; no source gives any"
                .to_owned()
        }
        Assumption::UnknownFollowsTheShelf(count) => format!(
            "of {} nobody knows what {}: planned like the others, where any clean mineral oil without strong medicine serves until it is \
             settled; nothing is bought for that",
            count_of(*count, "point"),
            if *count == 1 { "it feeds" } else { "they feed" }
        ),
        Assumption::OnlyLookedAt(count) => {
            format!("{} only looked at, and {} nothing", is_or_are(*count), if *count == 1 { "gets" } else { "get" })
        }
        Assumption::TypicalOfItsClass => {
            "oils that are not on the shelf are taken to be what is typical of their class (from memory, not looked up); hold the data sheet \
             against it before buying"
                .to_owned()
        }
        Assumption::YearOf { uses, hours: each } => {
            format!("what is bought is for a year in which each machine is used {uses} times, {} each time", hours(*each))
        }
        Assumption::UseByRuleOfThumb => {
            "for a year's use each bath is changed once and filled to its capacity; a point without an interval is oiled at each use; where no \
             dose is charted a hole or ball oiler takes 4 drops, a cup, wick, drip or bottle 3 mL, and a tank that uses its oil is empty after \
             50 running hours; an unmeasured stroke of a can gives 0.7 mL, of a grease gun 1.2 mL, and 30 drops make 1 mL (common practice, \
             no source). What drips beside is not counted"
                .to_owned()
        }
        Assumption::NotCounted(points) => {
            format!("{} not counted in what is bought, for nobody says how much", is_or_are(*points))
        }
        Assumption::DropSize => "30 drops make 1 mL, falling in air (common practice, no source)".to_owned(),
    }
}

/// `4.5 minutes`.
fn minutes(seconds: u32) -> String {
    format!("{:.1} minutes", f64::from(seconds) / 60.0)
}

fn is_or_are(count: usize) -> String {
    format!("{} {}", count_of(count, "point"), if count == 1 { "is" } else { "are" })
}

fn points_word(count: usize) -> &'static str {
    if count == 1 { "point" } else { "points" }
}
