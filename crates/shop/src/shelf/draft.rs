//! An oil as a form or a command gives it: answers by the keys of the shelf file. They become the text of such a file and are read as one,
//! so that a form refuses what a file refuses, with the same sentence.

use crate::fault::Severity;
use crate::reading::Takes;

use super::{Oil, Shelf, oil};

/// What is wrong with an answer: the key, and one sentence.
pub type Wrong = (&'static str, String);

/// The oil that these answers describe. An empty answer is none; of packs each line is one.
///
/// # Errors
/// Everything that is wrong, each with its key.
pub fn oil_from(answers: &[(&str, String)]) -> Result<Oil, Vec<Wrong>> {
    let mut text = "shelf = 1\n[[oil]]\n".to_owned();
    let mut lines: Vec<&'static str> = vec!["", ""];
    let mut wrong: Vec<Wrong> = Vec::new();
    for key in oil::KEYS.keys {
        let answer = answers.iter().find(|(name, _)| *name == key.name).map_or("", |(_, answer)| answer.trim());
        if answer.is_empty() {
            if matches!(key.need, crate::reading::Need::Must) {
                wrong.push((key.name, format!("nothing was written; write {}", key.says)));
            }
            continue;
        }
        let value = match &key.takes {
            Takes::Number => match answer.parse::<f64>() {
                Ok(number) => toml_edit::value(number),
                Err(_) => {
                    wrong.push((key.name, format!("\"{answer}\" is no bare number; write one like 95")));
                    continue;
                }
            },
            Takes::Texts => {
                let list: toml_edit::Array = answer.lines().map(str::trim).filter(|line| !line.is_empty()).collect();
                toml_edit::value(list)
            }
            _ => toml_edit::value(answer),
        };
        // One answer one line, so that a fault is found again by its line.
        let written = value.to_string();
        let written =
            if written.contains('\n') { toml_edit::value(answer.replace('\n', " ")).to_string() } else { written };
        text.push_str(&format!("{} = {}\n", key.name, written.trim()));
        lines.push(key.name);
    }
    let read = Shelf::read(&text);
    for fault in read.faults.iter().filter(|fault| fault.severity == Severity::Fault) {
        let line = fault.place(&text).line;
        match lines.get(line - 1).copied().filter(|key| !key.is_empty()) {
            Some(key) => wrong.push((key, beside(&fault.says))),
            None if wrong.is_empty() => wrong.push(("id", fault.says.clone())),
            // What is missing was told above.
            None => {}
        }
    }
    match read.value.and_then(|mut shelf| shelf.oils.pop()) {
        Some(oil) if wrong.is_empty() => Ok(oil),
        _ => Err(wrong),
    }
}

/// What a file is told of a key, as it is said beside a question: without the name of the key and of its oil.
fn beside(says: &str) -> String {
    match says
        .strip_prefix('`')
        .and_then(|rest| rest.split_once("` of the oil \""))
        .and_then(|(_, rest)| rest.split_once("\" "))
    {
        Some((_, rest)) => format!("what was typed {rest}"),
        None => says.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn given<'a>(answers: &[(&'a str, &str)]) -> Vec<(&'a str, String)> {
        answers.iter().map(|(key, answer)| (*key, (*answer).to_owned())).collect()
    }

    #[test]
    fn answers_make_the_oil_that_the_file_would() {
        let oil = oil_from(&given(&[
            ("id", "way-68"),
            ("name", "Way oil \"68\",\nthe square tin"),
            ("family", "way"),
            ("v40", "68 mm2/s"),
            ("index", "98"),
            ("tackifier", "yes"),
            ("packs", "5 L at 31.50 EUR\n20 L"),
            ("note", ""),
        ]));
        let oil = oil.expect("right answers");
        assert_eq!((oil.name.as_str(), oil.index, oil.packs.len()), ("Way oil \"68\", the square tin", Some(98.0), 2));
        assert_eq!(oil.tackifier, crate::shelf::Stated::Yes);
    }

    #[test]
    fn every_wrong_answer_is_told_with_its_key() {
        let wrong = oil_from(&given(&[
            ("id", "way 68"),
            ("family", "slippery"),
            ("v40", "300"),
            ("index", "high"),
            ("packs", "a drum"),
            ("pour_point", "cold"),
        ]));
        let keys: Vec<&str> = wrong.expect_err("wrong answers").iter().map(|(key, _)| *key).collect();
        assert_eq!(keys, ["name", "index", "id", "family", "v40", "pour_point", "packs"]);
    }
}
