//! What goes wrong in the invented shop, planted so that a watch can be tried on it: a helper who skips the planer, a bearing cap that
//! gets less and less oil, a worm box that leaks more and more, coolant that finds its way into a spindle sump, and the wrong can at a worm
//! box. What a good watch should find stands in `demo/truth.toml`, which only tests read.

use jiff::civil::{Date, Weekday, date};
use shop::logbook::Body;

/// Who does not oil the planer; he logs its runs all the same.
const SKIPS: (&str, &str) = ("the Saturday helper", "planer");
/// The look whose sign is missing more and more.
const BLOCKED: (&str, &str) = ("planer", "22");
/// From here on the pipe narrows.
const NARROWS: Date = date(2026, 5, 18);
/// From here on the box leaks.
const LEAKS: Date = date(2026, 7, 6);
/// From here on coolant gets in.
const GETS_IN: Date = date(2026, 8, 3);
/// When the large sumps were drained and filled.
const CHANGED: Date = date(2026, 4, 11);
/// When somebody took axle oil for gear oil.
const WRONG_CAN: Date = date(2026, 10, 19);
/// The height of the oil in the spindle sump's glass, in tenths of a millimetre.
const HEIGHT: i64 = 220;

/// Something that is written down about a reservoir.
pub(super) enum Kept {
    /// Filled with an oil of the shelf, so much.
    Filled(&'static str, String),
    /// Drained, and how it looked.
    Drained(&'static str),
    /// The level as it was read.
    Level(String),
    /// What somebody noted.
    Note(&'static str),
}

/// What is written down of the shelf on a day: the oil, and what came or went of it.
pub(super) fn shelf(day: Date) -> Option<(&'static str, Body)> {
    let text = str::to_owned;
    let (oil, body) = match (day.year(), day.month(), day.day()) {
        (2026, 1, 12) => ("way-68", Body::Bought { amount: text("5 L"), price: Some(text("34.50 EUR")) }),
        (2026, 4, 10) => ("drum-68", Body::Bought { amount: text("20 L"), price: Some(text("92 EUR")) }),
        (2026, 6, 22) => ("way-68", Body::Bought { amount: text("5 L"), price: Some(text("34.50 EUR")) }),
        (2026, 8, 17) => {
            ("gear-220", Body::Used { amount: text("1.2 L"), note: Some(text("the mill's step bearing")) })
        }
        (2026, 9, 14) => ("axle-90", Body::ThrownAway { amount: text("150 mL"), note: Some(text("water in the can")) }),
        (2026, 10, 5) => ("tub-grease-2", Body::Counted { amount: text("1.1 kg") }),
        _ => return None,
    };
    Some((oil, body))
}

/// Whether this hand leaves this machine dry.
pub(super) fn skips(hand: &str, machine: &str) -> bool {
    (hand, machine) == SKIPS
}

/// In how many looks of a hundred the sign of this point is missing on a day.
pub(super) fn missing_in_a_hundred(machine: &str, point: &str, day: Date) -> usize {
    if (machine, point) != BLOCKED || day < NARROWS {
        return 0;
    }
    (20 + 10 * months_since(NARROWS, day)).min(80) as usize
}

/// What is written down of reservoirs on a day: machine, reservoir and what; `chance` is a number below a hundred.
pub(super) fn reservoirs(day: Date, chance: usize) -> Vec<(&'static str, &'static str, Kept)> {
    let mut kept = planted(day, chance);
    kept.extend(ordinary(day, chance));
    kept
}

/// What a shop writes down when all is well: boxes that use oil are topped up, sumps that hold it are looked at, and changed in spring.
fn ordinary(day: Date, chance: usize) -> Vec<(&'static str, &'static str, Kept)> {
    let spread = |least: usize, most: usize, turn: usize| least + (chance * turn) % (most - least + 1);
    let millilitres = |amount: usize| format!("{amount} mL");
    let first_week = day.day() <= 7;
    let mut kept = Vec::new();
    if day.weekday() == Weekday::Friday {
        kept.push(("knee-mill", "one-shot-tank", Kept::Filled("way-68", millilitres(spread(45, 70, 7)))));
        kept.push(("surface-grinder", "one-shot-tank", Kept::Filled("way-68", millilitres(spread(15, 25, 11)))));
        let glass = ["middle of the glass", "a hair above the middle", "a hair under the middle"];
        kept.push(("crank-shaper", "gear-case", Kept::Level(glass[chance % 3].to_owned())));
        if first_week {
            kept.push(("knee-mill", "column-sump", Kept::Level(glass[chance % 2].to_owned())));
            kept.push(("planer", "way-tray", Kept::Level(format!("{} mm on the stick", spread(61, 65, 3)))));
            kept.push(("crank-shaper", "ram-pump-box", Kept::Filled("way-68", millilitres(spread(70, 95, 13)))));
        }
    }
    if day == CHANGED {
        kept.push((
            "crank-shaper",
            "gear-case",
            Kept::Drained("5.4 L came out, brown and clear, a little bronze on the magnet"),
        ));
        kept.push(("crank-shaper", "gear-case", Kept::Filled("drum-68", "5.5 L".to_owned())));
        kept.push(("knee-mill", "column-sump", Kept::Drained("3.4 L came out, dark, no grit")));
        kept.push(("knee-mill", "column-sump", Kept::Filled("pail-32", "3.5 L".to_owned())));
        kept.push(("knee-mill", "trip-worm-bath", Kept::Drained("thick and black, bronze dust in it")));
        kept.push(("knee-mill", "trip-worm-bath", Kept::Filled("worm-460", "240 mL".to_owned())));
    }
    kept
}

/// What the planted stories leave behind.
fn planted(day: Date, chance: usize) -> Vec<(&'static str, &'static str, Kept)> {
    if day.weekday() != Weekday::Monday {
        return Vec::new();
    }
    let mut kept = Vec::new();
    // A box that only sweats wants a spoonful a month; one that leaks wants more each week.
    let leaks = day >= LEAKS;
    let fill = 5 + if leaks { 12 * months_since(LEAKS, day) + (chance % 6) as i64 } else { (chance % 3) as i64 };
    if leaks || day.day() <= 7 {
        kept.push(("pillar-drill", "worm-box", Kept::Filled("worm-460", format!("{fill} mL"))));
    }
    let weeks = if day >= GETS_IN { days_since(GETS_IN, day) / 7 } else { 0 };
    let tenths = HEIGHT + 6 * weeks + (chance % 5) as i64 - 2;
    let reading = format!("{}.{} mm in the glass", tenths / 10, tenths % 10);
    kept.push(("surface-grinder", "spindle-sump", Kept::Level(reading)));
    if day == WRONG_CAN {
        kept.push(("knee-mill", "trip-worm-bath", Kept::Filled("axle-90", "40 mL".to_owned())));
    }
    if weeks == 13 {
        kept.push(("surface-grinder", "spindle-sump", Kept::Note("the oil in the glass looks milky at the bottom")));
    }
    kept
}

fn days_since(from: Date, day: Date) -> i64 {
    from.until(day).map_or(0, |span| i64::from(span.get_days()))
}

fn months_since(from: Date, day: Date) -> i64 {
    days_since(from, day) / 30
}
