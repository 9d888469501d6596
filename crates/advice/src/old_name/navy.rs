//! Oils of the US Navy of about 1920: names, and symbols of four figures whose last three are Saybolt seconds.

use super::spec::Wanted;

/// Names with Saybolt seconds at 130 °F.
const NAMES: [(&[&str], f64, f64); 6] = [
    (&["ice", "machine"], 65.0, 75.0),
    (&["extra", "heavy"], 240.0, 260.0),
    (&["ultra", "heavy"], 300.0, 320.0),
    (&["light"], 100.0, 115.0),
    (&["medium"], 125.0, 145.0),
    (&["heavy"], 180.0, 200.0),
];

/// How far the seconds of a symbol may be off, as a part: the specifications gave ranges of about this width.
const WIDTH: f64 = 0.06;

/// What a text that speaks of the Navy asks for: a symbol, else a name.
pub(super) fn wanted(words: &[&str], numbers: &[f64]) -> Option<Wanted> {
    if !words.contains(&"navy") {
        return None;
    }
    let symbol = numbers.iter().find_map(|number| symbol(*number));
    symbol.or_else(|| {
        let (_, low, high) = NAMES.iter().find(|(name, _, _)| name.iter().all(|word| words.contains(word)))?;
        Some(Wanted::Navy { low: *low, high: *high, fahrenheit: 130.0 })
    })
}

/// 2135: the series, and 135 seconds. The second series was measured at 130 °F, the third and fourth at 210 °F.
pub(super) fn symbol(number: f64) -> Option<Wanted> {
    if number.fract() != 0.0 {
        return None;
    }
    let seconds = number % 1000.0;
    let fahrenheit = match (number / 1000.0).trunc() as u32 {
        2 if (60.0..700.0).contains(&seconds) => 130.0,
        3 | 4 if (40.0..200.0).contains(&seconds) => 210.0,
        _ => return None,
    };
    Some(Wanted::Navy { low: seconds * (1.0 - WIDTH), high: seconds * (1.0 + WIDTH), fahrenheit })
}
