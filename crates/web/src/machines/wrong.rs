//! Why a chart would not take what was typed, laid beside the fields that it is about.

use shop::document::Refused;
use shop::fault::Severity;
use shop::id::Id;

use crate::phrase::capital;

/// The faults of a refused edit that are not yet beside a field.
#[derive(Default)]
pub(crate) struct Wrong(Vec<Placed>);

/// A fault with the line that it stands on.
struct Placed {
    id: String,
    key: String,
    says: String,
}

impl Wrong {
    pub(crate) fn of(refused: &Refused) -> Self {
        match refused {
            Refused::Faulty { text, faults } => {
                let faults = faults.iter().filter(|fault| fault.severity == Severity::Fault);
                Self(faults.map(|fault| Placed::at(text, fault.span.start, &fault.says)).collect())
            }
            other => Self(vec![Placed { id: String::new(), key: String::new(), says: sentence(&other.to_string()) }]),
        }
    }

    /// Takes what is wrong with this key of this element.
    pub(crate) fn beside(&mut self, id: &Id, key: &str) -> Option<String> {
        let (here, rest) = std::mem::take(&mut self.0).into_iter().partition(|p| p.id == id.as_str() && p.key == key);
        self.0 = rest;
        let here: Vec<String> = Vec::<Placed>::into_iter(here).map(Placed::beside).collect();
        (!here.is_empty()).then(|| here.join(" "))
    }

    /// What no field has taken.
    pub(crate) fn rest(self) -> Vec<String> {
        self.0.into_iter().map(|placed| placed.says).collect()
    }
}

impl Placed {
    /// The sentence as it stands beside its field, where "`dose` of the point "1" is…" is said by "This is…".
    fn beside(self) -> String {
        let named = self.says.strip_prefix(&format!("`{}` of the ", self.key));
        let rest = named.and_then(|rest| rest.split_once(&format!("\"{}\" ", self.id)));
        rest.map_or(self.says.clone(), |(_, rest)| format!("This {rest}"))
    }

    /// Reads the key from the fault's own line and the id from the table around it: a value that we write stands on one line.
    fn at(text: &str, at: usize, says: &str) -> Self {
        let at = text.floor_char_boundary(at.min(text.len()));
        let header = |line: &&str| line.trim_start().starts_with('[');
        let start = text[..at].rfind('\n').map_or(0, |newline| newline + 1);
        let line = text[start..].lines().next().unwrap_or_default();
        let before: Vec<&str> = text[..start].lines().rev().take_while(|line| !header(line)).collect();
        let after = text[start..].lines().take_while(|line| !header(line));
        let id = before.into_iter().rev().chain(after).find_map(|line| value_of(line, "id"));
        let key = line.split_once('=').map_or("", |(key, _)| key.trim());
        Self { id: id.unwrap_or_default().to_owned(), key: key.to_owned(), says: sentence(says) }
    }
}

/// The quoted value of a key on a line.
fn value_of<'l>(line: &'l str, key: &str) -> Option<&'l str> {
    let (name, value) = line.split_once('=')?;
    (name.trim() == key).then(|| value.split(['"', '\'']).nth(1)).flatten()
}

fn sentence(says: &str) -> String {
    let stop = if says.ends_with(['.', '?', '!']) { "" } else { "." };
    format!("{}{stop}", capital(says))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fault_is_laid_beside_the_key_of_its_own_element() {
        let text = "[[point]]\nid = \"1\"\ndose = \"2\"\n\n[[point]]\nid = \"2\"\ndose = \"3\"\n";
        let second = Placed::at(text, text.rfind("\"3\"").expect("written above"), "has no unit");
        assert_eq!((second.id.as_str(), second.key.as_str(), second.says.as_str()), ("2", "dose", "Has no unit."));
        let first = Placed::at(text, text.find("\"2\"").expect("written above"), "has no unit");
        assert_eq!((first.id.as_str(), first.key.as_str()), ("1", "dose"));
        assert_eq!(Placed::at(text, usize::MAX, "is odd").id, "2", "beyond the end is the last element");
    }
}
