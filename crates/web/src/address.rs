//! The addresses of the shop's pages, made in one place.

use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, utf8_percent_encode};
use shop::id::Id;

/// What is written as it is; everything else is escaped (RFC 3986, section 2.3).
const ESCAPED: &AsciiSet = &NON_ALPHANUMERIC.remove(b'-').remove(b'.').remove(b'_').remove(b'~');

/// Any text, fit for a part of an address or a cookie.
pub(crate) fn escaped(text: &str) -> String {
    utf8_percent_encode(text, ESCAPED).to_string()
}

/// An address with what follows the question mark; pairs with nothing to say are left out.
pub(crate) fn with_query(path: &str, pairs: &[(&str, &str)]) -> String {
    let said = pairs.iter().filter(|(_, value)| !value.is_empty());
    let said: Vec<String> = said.map(|(name, value)| format!("{name}={}", escaped(value))).collect();
    if said.is_empty() { path.to_owned() } else { format!("{path}?{}", said.join("&")) }
}

/// The page of a machine.
pub(crate) fn machine(machine: &Id) -> String {
    format!("/machines/{}", escaped(machine.as_str()))
}

/// The page of a point.
pub(crate) fn point(machine: &Id, point: &Id) -> String {
    format!("{}/points/{}", self::machine(machine), escaped(point.as_str()))
}

/// The page of a reservoir.
pub(crate) fn reservoir(machine: &Id, reservoir: &Id) -> String {
    format!("{}/reservoirs/{}", self::machine(machine), escaped(reservoir.as_str()))
}

/// The page of an oil on the shelf.
pub(crate) fn oil(oil: &Id) -> String {
    format!("/shelf/{}", escaped(oil.as_str()))
}

/// What is to settle on a machine.
pub(crate) fn findings(machine: &Id) -> String {
    format!("{}/findings", self::machine(machine))
}

/// The pictures of a machine.
pub(crate) fn pictures(machine: &Id) -> String {
    format!("{}/pictures", self::machine(machine))
}

/// The bytes of a picture of a machine.
pub(crate) fn picture(machine: &Id, number: i64) -> String {
    format!("{}/{number}", pictures(machine))
}

/// What is doubtful about a machine's chart.
pub(crate) fn audit(machine: &Id) -> String {
    format!("{}/audit", self::machine(machine))
}

/// How this example of a machine is built.
pub(crate) fn options(machine: &Id) -> String {
    format!("{}/options", self::machine(machine))
}
