//! A length of time as people type it: `3`, `3 h`, `90 min`.

use tribology::quantity::{Kind, Time, TypedFault, Unit, typed_in};

/// The most that a machine runs in a day.
const LONGEST_HOURS: f64 = 24.0;

/// The time that this text spells.
///
/// # Errors
/// One sentence: what is wrong and what a right one looks like.
pub(crate) fn read(text: &str) -> Result<Time, String> {
    let unit = Unit::find(Kind::Time, "h").expect("the table of units holds the hour");
    let time = typed_in::<Time>(text, unit).map_err(|fault| says(text.trim(), &fault))?.value;
    if time.hours() <= 0.0 {
        return Err(format!("\"{}\" is no time at all. Write how long, like 3, 3 h or 90 min.", text.trim()));
    }
    if time.hours() > LONGEST_HOURS {
        return Err(format!("\"{}\" is more than a day of 24 hours. Write at most 24 h.", text.trim()));
    }
    Ok(time)
}

/// `3 h`, `2.5 h`.
pub(crate) fn said(time: Time) -> String {
    format!("{} h", (time.hours() * 10.0).round() / 10.0)
}

fn says(text: &str, fault: &TypedFault) -> String {
    match fault {
        TypedFault::Empty => "Nothing was written. Write how long, like 3, 3 h or 90 min.".to_owned(),
        TypedFault::UnclearComma { .. } => {
            format!("In \"{text}\" the comma is not clear. Write it with a point, like 2.5 h.")
        }
        _ => format!("\"{text}\" is no length of time. Write it like 3, 3 h or 90 min."),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hours_are_read_as_people_type_them() {
        for (text, hours) in [("3", 3.0), (" 3 h ", 3.0), ("90 min", 1.5), ("24", 24.0), ("0.1 h", 0.1)] {
            let read = read(text).map(Time::hours);
            assert!(read.as_ref().is_ok_and(|read| (read - hours).abs() < 1e-9), "{text}: {read:?}");
        }
    }

    #[test]
    fn what_is_no_run_of_a_day_is_refused_in_a_sentence() {
        for text in ["", "two", "0", "-1", "25", "24.1 h", "3 L", "1,000", "3 h 20"] {
            let said = read(text).expect_err(text);
            assert!(said.ends_with('.') && said.contains(" h"), "{text}: {said}");
        }
    }
}
