//! What goes wrong in the invented shop, planted so that a watch can be tried on it: a helper who skips the planer, a bearing cap that
//! gets less and less oil, a worm box that leaks more and more, and coolant that finds its way into a spindle sump. What a good watch
//! should find stands in `demo/truth.toml`, which only tests read.

use jiff::civil::{Date, Weekday, date};

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
/// The height of the oil in the spindle sump's glass, in tenths of a millimetre.
const HEIGHT: i64 = 220;

/// Something that is written down about a reservoir.
pub(super) enum Kept {
    /// Filled with so much.
    Filled(String),
    /// The level as it was read.
    Level(String),
    /// What somebody noted.
    Note(&'static str),
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
    if day.weekday() != Weekday::Monday {
        return Vec::new();
    }
    let mut kept = Vec::new();
    // A box that only sweats wants a spoonful a month; one that leaks wants more each week.
    let leaks = day >= LEAKS;
    let fill = 5 + if leaks { 12 * months_since(LEAKS, day) + (chance % 6) as i64 } else { (chance % 3) as i64 };
    if leaks || day.day() <= 7 {
        kept.push(("pillar-drill", "worm-box", Kept::Filled(format!("{fill} mL"))));
    }
    let weeks = if day >= GETS_IN { days_since(GETS_IN, day) / 7 } else { 0 };
    let tenths = HEIGHT + 6 * weeks + (chance % 5) as i64 - 2;
    let reading = format!("{}.{} mm in the glass", tenths / 10, tenths % 10);
    kept.push(("surface-grinder", "spindle-sump", Kept::Level(reading)));
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
