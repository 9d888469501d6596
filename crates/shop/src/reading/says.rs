//! Sentences for mistyped amounts, the same in files, in forms and on the command line.

use tribology::quantity::{Kind, TypedFault};

use crate::amount::{IntervalFault, LONGEST_ROUND, LONGEST_RUN, RunFault};
use crate::fault::either;

/// What is wrong with a quantity, and what a right one looks like. `what` begins the sentence: `the load of the pair "a"`.
#[must_use]
pub fn says_quantity(what: &str, fault: &TypedFault, kind: Kind) -> String {
    says(what, fault, &format!("\"{}\"", kind.example()))
}

/// The same for a number without a unit.
#[must_use]
pub fn says_number(what: &str, fault: &TypedFault) -> String {
    says(what, fault, "95")
}

/// The same for a speed, which may turn or slide.
#[must_use]
pub fn says_speed(what: &str, fault: &TypedFault) -> String {
    says(what, fault, "\"94 rpm\", \"40 strokes/min\" or \"0.3 m/s\"")
}

/// The same for a dose.
#[must_use]
pub fn says_dose(what: &str, fault: &TypedFault) -> String {
    says(what, fault, "\"2 strokes\", \"4 drops\", \"1/2 turn\" or \"1.5 mL\"")
}

/// The same for an interval.
#[must_use]
pub fn says_interval(what: &str, fault: &IntervalFault) -> String {
    const EXAMPLES: &str = "\"1 use\", \"4 h\", \"1 week\", \"6 months\" or \"1 year\"";
    match fault {
        IntervalFault::Typed(fault) => says(what, fault, EXAMPLES),
        IntervalFault::NotWhole => {
            format!(
                "{what} counts nothing whole; uses, days, weeks and months are counted from one, so write it like {EXAMPLES}"
            )
        }
    }
}

/// The same for how long a machine ran or will run.
#[must_use]
pub fn says_run(what: &str, fault: &RunFault) -> String {
    const EXAMPLES: &str = "\"3\", \"2.5 h\" or \"90 min\"";
    match fault {
        RunFault::Typed(fault) => says(what, fault, EXAMPLES),
        RunFault::NoDay => {
            let most = LONGEST_RUN.hours();
            format!("{what} is no day's work; write hours above 0 and at most {most}, like {EXAMPLES}")
        }
    }
}

/// The same for the minutes that there are for a round.
#[must_use]
pub fn says_minutes(what: &str, fault: &RunFault) -> String {
    const EXAMPLES: &str = "\"10\", \"10 min\" or \"1/4 h\"";
    match fault {
        RunFault::Typed(fault) => says(what, fault, EXAMPLES),
        RunFault::NoDay => {
            let most = LONGEST_ROUND.hours();
            format!("{what} is no time for a round; write whole minutes from 1 to {most} hours, like {EXAMPLES}")
        }
    }
}

fn says(what: &str, fault: &TypedFault, example: &str) -> String {
    match fault {
        TypedFault::Empty => {
            format!("{what} is empty; write a number and a unit such as {example}, or leave the key out")
        }
        TypedFault::NotANumber { text } => {
            format!("{what} is \"{text}\", which does not begin with a number; write it like {example}")
        }
        TypedFault::NoUnit { number, .. } => {
            format!("{what} is \"{number}\" without a unit; write the unit too, such as {example}")
        }
        TypedFault::UnknownUnit { unit, nearest: Some(near), .. } => {
            format!(
                "{what} has the unit \"{unit}\", which is not known here; did you mean \"{near}\"? Write it like {example}"
            )
        }
        TypedFault::UnknownUnit { unit, nearest: None, .. } => {
            format!("{what} has the unit \"{unit}\", which is not known here; write it like {example}")
        }
        TypedFault::WrongKind { unit, is, wanted } => {
            format!(
                "{what} has the unit \"{unit}\", which is for a {}, where a {} is wanted; write it like {example}",
                is.name(),
                wanted.name()
            )
        }
        TypedFault::Unclear { unit, choices } => {
            format!(
                "{what} has the unit \"{unit}\", which is not the same everywhere; write {}",
                either(choices.iter().copied())
            )
        }
        TypedFault::UnclearComma { text } => {
            format!(
                "{what} is \"{text}\", where the comma may part thousands or decimals; write it with a point or without the comma, like {example}"
            )
        }
        TypedFault::PairDisagrees { first, second, second_in_first_unit, unit } => format!(
            "{what} says \"{first}\" and \"{second}\", which do not agree: \"{second}\" is {second_in_first_unit:.3} {}; find out which is \
             right and write that one",
            unit.symbol
        ),
    }
}
