//! What is in a reservoir or greased point, and what to do about it, in sentences.

use shop::chart::Chart;
use shop::id::Id;
use shop::shelf::Shelf;

use crate::contents::{Act, Fit, GONE_AFTER, Harm, Holds, Inside};

/// What is in, and since when.
///
/// - `since`: the day from which on it is what it is, as the shop writes days.
#[must_use]
pub fn contents(inside: &Inside, shelf: &Shelf, since: Option<&str>) -> String {
    let since = since.map(|day| format!(", since {day}")).unwrap_or_default();
    match &inside.holds {
        Holds::NeverEntered => "Nobody has written down yet what is in it.".to_owned(),
        Holds::Nothing => {
            format!(
                "Nothing is in it: it was drained{}, and no fill was written down after that.",
                since.replace(", since", " on")
            )
        }
        Holds::Known(ids) if ids.len() == 1 => format!("In it is {}{since}.", oils(ids, shelf)),
        Holds::Known(ids) => format!("In it is a mixture of {}{since}.", oils(ids, shelf)),
        Holds::Partly(ids) if ids.is_empty() => "Something was put in, and nobody has written down what.".to_owned(),
        Holds::Partly(ids) => {
            format!("{} was put in, on top of something that nobody has written down.", oils(ids, shelf))
        }
    }
}

/// Whether it does and what to do: the answer after what is in.
#[must_use]
pub fn contents_act(inside: &Inside) -> String {
    let why = inside.harms.first().filter(|_| inside.fit() == Fit::Wrong);
    let why = why.map(|harm| format!(": {}", harm.reason.says)).unwrap_or_default();
    match (inside.act, inside.fit()) {
        (Act::DoNotRun, _) => format!("Do not run the machine{why}. Drain it first; standing still harms nothing."),
        (Act::Drain, _) => format!("It is the wrong one here{why}. Drain it when convenient, the sooner the better."),
        (Act::NextChange, Fit::Wrong) => format!("It is not the right one{why}. Run it to the next change, then fill what suits."),
        (Act::NextChange, _) => "It serves. Run it to the next change, then fill what suits.".to_owned(),
        (Act::Fill, _) => "Fill it before the machine runs.".to_owned(),
        (Act::Sample, _) => "Take a sample and look at it: colour, smell, water, glitter. Until then treat it as unknown; that is no alarm.".to_owned(),
        (Act::Leave, _) => "It is right.".to_owned(),
    }
}

/// Of which oil and which pair a reason is told, and what to do for it: `Axle oil, at trip worm: do not run`.
#[must_use]
pub fn contents_harm(harm: &Harm, chart: &Chart, shelf: &Shelf) -> String {
    let of = oils(&harm.oils, shelf);
    match harm.pair.as_ref().and_then(|id| chart.pair(id)) {
        Some(pair) => {
            let name = pair.name.clone().unwrap_or_else(|| pair.id.as_str().replace('-', " "));
            format!("{of}, at {name}: {}", harm.act)
        }
        None => format!("{of}: {}", harm.act),
    }
}

/// What was taken for used up, and by which rule of thumb; nothing where nothing was.
#[must_use]
pub fn contents_replaced(inside: &Inside) -> Option<String> {
    let times = inside.replaced?.times;
    Some(format!(
        "What was in it before is taken for used up: at least {} times what it holds was put in since, and {} times count as enough. A \
         topping up that nobody measured is taken for a tenth (rule of thumb, from memory).",
        tribology::quantity::digits_of(times, 2),
        tribology::quantity::digits_of(GONE_AFTER, 1)
    ))
}

/// One word for programs: `right`, `serves`, `wrong`, `unknown` or `empty`.
#[must_use]
pub const fn fit(fit: Fit) -> &'static str {
    match fit {
        Fit::Right => "right",
        Fit::Serves => "serves",
        Fit::Wrong => "wrong",
        Fit::Unknown => "unknown",
        Fit::Empty => "empty",
    }
}

/// What to mind when a reservoir is drained, as is usual.
#[must_use]
pub const fn draining() -> &'static str {
    "Lock the switch. Drain warm, but let it cool below 50 °C: hot oil scalds. Waste oil goes into a closed, labelled can, never mixed with \
     solvent or coolant; local rules say where to."
}

fn oils(ids: &[Id], shelf: &Shelf) -> String {
    let names: Vec<String> = ids
        .iter()
        .map(|id| {
            shelf.oil(id).map_or_else(|| format!("{id}, which is no longer on the shelf"), |oil| oil.name.clone())
        })
        .collect();
    super::join(&names.iter().map(String::as_str).collect::<Vec<_>>())
}
