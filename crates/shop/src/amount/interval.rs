//! How often a point wants its oil, and by which clock it counts: by use, by running hours, or by the calendar.

use tribology::quantity::{Time, TypedFault, number_and_unit, typed};

/// An interval as it was typed.
#[derive(Clone, Debug, PartialEq)]
pub struct Interval {
    /// How long, and by which clock.
    pub clock: Clock,
    /// The text as it was typed.
    pub typed: String,
}

/// What an interval counts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Clock {
    /// Uses of the machine.
    Uses(u32),
    /// Running hours.
    Running(Time),
    /// Days on the calendar; a week is seven.
    Days(u32),
    /// Months on the calendar; a year is twelve.
    Months(u32),
}

/// Why an interval is not one.
#[derive(Clone, Debug, PartialEq)]
pub enum IntervalFault {
    /// The quantity itself is faulty.
    Typed(TypedFault),
    /// Uses, days, weeks, months and years are counted whole and from one.
    NotWhole,
}

impl Interval {
    /// The interval that this text spells: `1 use`, `4 h`, `2 days`, `1 week`, `6 months`, `1 year`.
    ///
    /// # Errors
    /// [`IntervalFault`] when the text is no quantity, or counts uses or days by halves.
    pub fn read(text: &str) -> Result<Self, IntervalFault> {
        let (number, unit) = number_and_unit(text).map_err(IntervalFault::Typed)?;
        let clock = match unit.trim() {
            "use" | "uses" => Clock::Uses(whole(number, 1)?),
            "d" | "day" | "days" => Clock::Days(whole(number, 1)?),
            "week" | "weeks" => Clock::Days(whole(number, 7)?),
            "month" | "months" => Clock::Months(whole(number, 1)?),
            "year" | "years" => Clock::Months(whole(number, 12)?),
            _ => {
                let time = typed::<Time>(text).map_err(IntervalFault::Typed)?.value;
                if time.hours() <= 0.0 {
                    return Err(IntervalFault::NotWhole);
                }
                Clock::Running(time)
            }
        };
        Ok(Self { clock, typed: text.trim().to_owned() })
    }
}

fn whole(number: f64, times: u32) -> Result<u32, IntervalFault> {
    // Ten thousand days is past any machine's keeper; the bound keeps calendar arithmetic in range.
    let fits = number.fract() == 0.0 && (1.0..=10_000.0).contains(&number);
    if fits { Ok(number as u32 * times) } else { Err(IntervalFault::NotWhole) }
}
