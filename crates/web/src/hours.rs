//! A length of time as people type it into a form: `3`, `3 h`, `90 min`.

use shop::amount::read_run;
use shop::reading::says_run;
use tribology::quantity::Time;

/// The time that this text spells.
///
/// # Errors
/// One sentence: what is wrong and what a right one looks like.
pub(crate) fn read(text: &str) -> Result<Time, String> {
    read_run(text).map_err(|fault| says_run("What was typed here", &fault) + ".")
}
