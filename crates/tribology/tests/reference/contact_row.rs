//! A row of `reference/contacts-and-circuits.csv` as the tests of contacts read it: its inputs by name, and what was found held against
//! what it expects, by its tolerance and its kind.

use tribology::quantity::{Kind, Quantity, Unit, number_and_unit, typed};
use tribology::{Answer, Error, Standing};

use super::{Row, rows};

/// What a row asks about, in the row's own unit: one number, or from and to.
#[derive(Debug)]
pub(super) struct Found {
    low: f64,
    high: f64,
    standing: Standing,
}

impl Found {
    /// One number, with the standing of the last step that led to it.
    pub(super) fn number<T>(answer: Result<Answer<T>, Error>, number: impl FnOnce(&T) -> f64) -> Self {
        Self::span(answer, |value| {
            let number = number(value);
            (number, number)
        })
    }

    /// From and to, with the standing of the last step that led to them.
    pub(super) fn span<T>(answer: Result<Answer<T>, Error>, span: impl FnOnce(&T) -> (f64, f64)) -> Self {
        let answer = answer.expect("a row asks what can be answered");
        let (low, high) = span(&answer.value);
        Self { low, high, standing: answer.steps.last().expect("an answer has its working").standing }
    }
}

/// A row with its inputs written out: "same" and "as above" speak of the row before.
pub(super) struct Given<'r> {
    pub(super) row: &'r Row,
    inputs: String,
}

impl Given<'_> {
    /// The text of an input, behind an equals sign or a space.
    pub(super) fn text(&self, name: &str) -> &str {
        let mut parts = self.inputs.split(';').map(str::trim);
        let found = parts.find_map(|part| {
            let rest = part.strip_prefix(name)?;
            rest.strip_prefix(['=', ' ']).map(|rest| rest.rsplit('=').next().unwrap_or(rest).trim())
        });
        found.unwrap_or_else(|| panic!("{}: no {name} in {}", self.row.id, self.inputs))
    }

    /// An input as a quantity; one without a unit is in base SI units.
    pub(super) fn quantity<Q: Quantity>(&self, name: &str) -> Q {
        self.read(self.text(name))
    }

    /// An input as a plain number.
    pub(super) fn plain(&self, name: &str) -> f64 {
        number_and_unit(self.text(name)).unwrap_or_else(|fault| panic!("{}: {fault:?}", self.row.id)).0
    }

    /// A text as a quantity; one without a unit is in base SI units.
    pub(super) fn read<Q: Quantity>(&self, text: &str) -> Q {
        match number_and_unit(text) {
            Ok((number, "")) => Q::from_si(number),
            _ => typed(text).unwrap_or_else(|fault| panic!("{}: {text}: {fault:?}", self.row.id)).value,
        }
    }

    /// A size in base SI units in the unit of the row.
    pub(super) fn in_its_unit(&self, kind: Kind, si: f64) -> f64 {
        Unit::find(kind, &self.row.unit).unwrap_or_else(|| panic!("{}: {}", self.row.id, self.row.unit)).from_si(si)
    }

    #[track_caller]
    fn check(&self, found: &Found) {
        let Row { id, inputs, expected, tolerance, kind, .. } = self.row;
        let says = || format!("{id}: {inputs}: {found:?}, not {expected} within {tolerance}");
        let number = |text: &str| text.trim().parse::<f64>().unwrap_or_else(|_| panic!("{id}: {text}"));
        let near = |found: f64, wanted: f64, part: f64| (found - wanted).abs() <= part * wanted.abs();
        match (tolerance.split_once(' '), expected.split_once(" to ")) {
            // The row gives the whole range: ours is the same.
            (None, Some((low, high))) if tolerance == "range" => {
                assert!(near(found.low, number(low), 1e-9) && near(found.high, number(high), 1e-9), "{}", says());
            }
            (None, None) if tolerance == "exact" => {
                assert!(found.low == found.high && near(found.low, number(expected), 1e-12), "{}", says());
            }
            // The row gives a number and the range in which others lie: ours is in it and holds the number.
            (Some(("range", range)), None) => {
                let (low, high) = range.split_once(" to ").expect("a range has two ends");
                assert!(number(low) <= found.low && found.high <= number(high), "{}", says());
                let holds =
                    found.low <= number(expected) * (1.0 + 1e-9) && number(expected) * (1.0 - 1e-9) <= found.high;
                assert!(holds, "{}", says());
            }
            (Some(("rel", part)), None) => {
                assert!(found.low == found.high && near(found.low, number(expected), number(part)), "{}", says());
            }
            _ => panic!("{id}: {tolerance} for {expected} is no tolerance that is known here"),
        }
        // An answer may not claim to stand more firmly than the row that holds it.
        let stands = match kind.as_str() {
            "published" => matches!(found.standing, Standing::Standard | Standing::Handbook),
            "common-practice" => found.standing == Standing::CommonPractice,
            "from-memory" => found.standing == Standing::FromMemory,
            "own-numerical-solution" => true,
            other => panic!("{id}: no kind {other}"),
        };
        assert!(stands, "{id}: a row of kind {kind} is answered as {}", found.standing.words());
    }
}

/// Holds every row whose id begins so against what is found for it; the count guards against rows lost.
#[track_caller]
pub(super) fn hold(prefix: &str, count: usize, found: impl Fn(&Given<'_>) -> Found) {
    let rows = rows("contacts-and-circuits.csv");
    let mut before = String::new();
    let mut held = 0;
    for row in rows.iter().filter(|row| row.id.starts_with(prefix)) {
        let inputs = match row.inputs.strip_prefix("as above").or_else(|| row.inputs.strip_prefix("same")) {
            Some(rest) => format!("{before}{rest}"),
            None => row.inputs.clone(),
        };
        before.clone_from(&inputs);
        let given = Given { row, inputs };
        given.check(&found(&given));
        held += 1;
    }
    assert_eq!(held, count, "the table has lost or won rows {prefix}");
}
