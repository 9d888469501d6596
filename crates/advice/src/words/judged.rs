//! What a point wants and how the oils on hand measure up, in sentences.

use shop::shelf::{Family, Shelf};
use tribology::Standing;
use tribology::oil::classified;

use crate::judge::Judged;
use crate::need::{Band, Need, wanted};
use crate::verdict::{Reason, Verdict};

/// The answer first: the best oil on hand and, where none suits, what to buy; where each does harm, that the machine stays stopped.
#[must_use]
pub fn answer(need: &Need<'_>, judged: &[Judged], shelf: &Shelf) -> String {
    let name = |judged: &Judged| shelf.oil(&judged.oil).map_or_else(|| judged.oil.to_string(), |oil| oil.name.clone());
    let buy = to_buy(need).map(|label| format!(" To buy: {label}.")).unwrap_or_default();
    match judged.first() {
        None => format!("Nothing is on the shelf.{buy}"),
        Some(best) if best.verdict == Verdict::Never => {
            format!("Do not run it: every oil on the shelf would do harm here, and standing still harms nothing.{buy}")
        }
        Some(best) if best.verdict == Verdict::Suits => format!("{} suits.", name(best)),
        Some(best) => {
            let word = if best.verdict == Verdict::Serves { "serves" } else { "is a stopgap" };
            let why = best.reasons.first().map(|reason| format!(": {}", reason.says)).unwrap_or_default();
            format!("Of what is on the shelf {} {word}{why}.{buy}", name(best))
        }
    }
}

/// What a label has to say, in words of open standards; nothing where nobody knows what the point feeds.
#[must_use]
pub fn to_buy(need: &Need<'_>) -> Option<String> {
    let (place, _) = need.pairs.iter().find(|(place, _)| place.pair.is_some())?;
    if place.takes_grease() {
        return Some("a grease of NLGI 2 with lithium soap".to_owned());
    }
    let family = *wanted(place)?.first()?;
    let class = match family {
        Family::Way => "a way oil, class ISO-L-G",
        Family::Spindle => "a spindle oil, class ISO-L-FC or FD",
        Family::Hydraulic => "a hydraulic oil, class ISO-L-HM",
        Family::Compounded => "a compounded oil without active sulphur, AGMA Comp or class ISO-L-CKE",
        Family::Gear => "a gear oil, class ISO-L-CKC",
        Family::Straight | Family::Circulating => "a circulating oil, class ISO-L-CKB",
        _ => return None,
    };
    let grade = need.band.and_then(|band| classified(band.middle()).ok()).map(|found| found.value.nearest.number());
    Some(match grade {
        Some(grade) => format!("{class}, ISO VG {grade}"),
        None => class.to_owned(),
    })
}

/// `46 to 100 mm²/s at 40 °C`.
#[must_use]
pub fn band(band: &Band) -> String {
    let digits = |number: f64| tribology::quantity::digits_of(number, 2);
    format!("{} to {} mm²/s at 40 °C", digits(band.low), digits(band.high))
}

/// How something is known: its standing and where it is from, each said once.
#[must_use]
pub fn known(standing: Standing, source: &str) -> String {
    let words = standing.words();
    if source.to_lowercase().starts_with(words) { source.to_owned() } else { format!("{words}: {source}") }
}

/// A reason as a sentence with where it is from.
#[must_use]
pub fn reason(reason: &Reason) -> String {
    let mut letters = reason.says.chars();
    let says: String = letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect());
    format!("{says} ({}; {})", reason.rule, known(reason.standing, reason.source))
}
