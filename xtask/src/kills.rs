//! The kill test of the store on demand: a program that writes is killed at any moment, many times oftener than in the check, and
//! nothing that it was told is kept may be lost. It prints how many kills and entries there were.

use crate::postgres::{self, Server};
use crate::run::Run;

/// How many kills, of each kind of shop.
const COUNT: u32 = 10_000;

/// Ten thousand, or as many as are asked for.
pub(crate) fn kills(options: &[&str]) -> Result<(), String> {
    let count = match options {
        [] => COUNT,
        ["--count", count] => count.parse().map_err(|_| format!("'{count}' is no number of kills, such as 1000."))?,
        _ => return Err("kills takes --count N and nothing else.".to_owned()),
    };
    let server = Server::start()?;
    let words = "test --locked -p store --test kill -- what_was_acknowledged_survives_any_kill";
    Run::cargo(words).env("OILWRIGHT_KILLS", &count.to_string()).env(postgres::ADDRESS, &server.address()).go()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_no_count_is_refused_before_anything_starts() {
        assert!(kills(&["--count", "many"]).is_err());
        assert!(kills(&["--count"]).is_err());
        assert!(kills(&["10"]).is_err());
    }
}
