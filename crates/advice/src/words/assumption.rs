//! What was assumed, each in a sentence.

use crate::working::Assumption;

use super::due::hours;
use super::list;

/// An assumption as a sentence without its full stop.
#[must_use]
pub fn assumption(assumption: &Assumption) -> String {
    match assumption {
        Assumption::HoursPlanned(time) => format!("the machine will run {} today", hours(*time)),
        Assumption::MinutesByRuleOfThumb => {
            "20 seconds to oil a point, 60 to look at a level and top it up, 10 to look for a sign, 45 to move a slide or a cover, \
             15 to walk to a stand (common practice, no source)"
                .to_owned()
        }
        Assumption::OilByChart { asked, oil: Some(oil), points } => format!(
            "for {} {}: the chart states \"{asked}\", and \"{oil}\" is the nearest of that sort on the shelf; the round does not \
             judge whether it suits",
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
        Assumption::DropSize => "30 drops make 1 mL, falling in air (common practice, no source)".to_owned(),
    }
}

fn points_word(count: usize) -> &'static str {
    if count == 1 { "point" } else { "points" }
}
