//! The shape of an answer: the value, what to be wary of, and every step by which it came about.
//!
//! Start at [`Answer`]. There is no prose here; `advice` turns steps and warnings into sentences.

use crate::quantity::Quantity;

/// A value with its warnings and its working.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer<T> {
    /// What was asked for.
    pub value: T,
    /// What to be wary of, in the order in which it arose.
    pub warnings: Vec<Warning>,
    /// How the value came about, first step first.
    pub steps: Vec<Step>,
}

/// Something that does not prevent an answer but must be said with it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Warning {
    /// A value outside the range for which the source vouches.
    BeyondSource {
        /// The value's name.
        name: &'static str,
        /// What it was, in `unit`.
        value: f64,
        /// The lowest for which the source vouches.
        low: f64,
        /// The highest for which the source vouches.
        high: f64,
        /// The base SI unit of the three; empty when dimensionless.
        unit: &'static str,
    },
}

/// One line of working.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// What this step finds, in plain words.
    pub name: &'static str,
    /// The formula in the source's symbols.
    pub formula: &'static str,
    /// What went in.
    pub symbols: Vec<Symbol>,
    /// What came out.
    pub result: Symbol,
    /// A key in `docs/sources.toml`.
    pub source: &'static str,
    /// How firmly the formula stands.
    pub standing: Standing,
}

/// A symbol of a formula with its value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Symbol {
    /// As written in the formula.
    pub symbol: &'static str,
    /// The value in `unit`.
    pub si: f64,
    /// The base SI unit; empty when dimensionless.
    pub unit: &'static str,
}

/// How firmly a statement stands, firmest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Standing {
    /// In a published standard.
    Standard,
    /// In a handbook or paper.
    Handbook,
    /// Met again and again in the trade, without one citable text.
    CommonPractice,
    /// Worked out in this project.
    OwnCalculation,
    /// Remembered, not looked up again.
    FromMemory,
}

impl Standing {
    /// The standing in plain words.
    ///
    /// - returns: lower case, fit for brackets behind a statement.
    ///
    /// # Example
    /// ```
    /// use tribology::Standing;
    /// assert_eq!(Standing::OwnCalculation.words(), "own calculation");
    /// ```
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Standing::Standard => "standard",
            Standing::Handbook => "handbook",
            Standing::CommonPractice => "common practice",
            Standing::OwnCalculation => "own calculation",
            Standing::FromMemory => "from memory",
        }
    }
}

impl<T> Answer<T> {
    /// An answer of one step and no warnings.
    ///
    /// - `value`: what was asked for.
    /// - `step`: how it came about.
    /// - returns: the answer.
    pub fn of(value: T, step: Step) -> Self {
        Answer { value, warnings: Vec::new(), steps: vec![step] }
    }

    /// The same answer with the value turned into something else.
    ///
    /// - `change`: from the old value to the new.
    /// - returns: the new value with the same warnings and steps.
    pub fn map<U>(self, change: impl FnOnce(T) -> U) -> Answer<U> {
        Answer { value: change(self.value), warnings: self.warnings, steps: self.steps }
    }

    /// The same answer preceded by the warnings and steps of an answer that it rests on.
    ///
    /// - `earlier`: the answer that gave an input; its value has been used already.
    /// - returns: this value; warnings and steps of `earlier` first.
    #[must_use]
    pub fn after<U>(mut self, earlier: Answer<U>) -> Self {
        self.warnings.splice(0..0, earlier.warnings);
        self.steps.splice(0..0, earlier.steps);
        self
    }

    /// The same answer, with a warning when a number left the range for which the source vouches.
    ///
    /// - `name`: the number's name.
    /// - `value`, `low`, `high`: dimensionless; the limits are included.
    /// - returns: this answer, with [`Warning::BeyondSource`] when `value` is outside or not a number.
    #[must_use]
    pub fn vouched_within(self, name: &'static str, value: f64, low: f64, high: f64) -> Self {
        self.vouched(name, [value, low, high], "")
    }

    /// The same answer, with a warning when a quantity left the range for which the source vouches.
    ///
    /// - `name`: the quantity's name.
    /// - `value`, `low`, `high`: of one kind; the limits are included.
    /// - returns: this answer, with [`Warning::BeyondSource`] when `value` is outside or not a number.
    #[must_use]
    pub fn quantity_vouched_within<Q: Quantity>(self, name: &'static str, value: Q, low: Q, high: Q) -> Self {
        self.vouched(name, [value.si(), low.si(), high.si()], Q::KIND.si_symbol())
    }

    fn vouched(mut self, name: &'static str, [value, low, high]: [f64; 3], unit: &'static str) -> Self {
        if !(low..=high).contains(&value) {
            self.warnings.push(Warning::BeyondSource { name, value, low, high, unit });
        }
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn step(name: &'static str) -> Step {
        let result = Symbol { symbol: "y", si: 2.0, unit: "" };
        Step { name, formula: "y = 2 x", symbols: vec![], result, source: "none", standing: Standing::OwnCalculation }
    }

    #[test]
    fn what_an_answer_rests_on_comes_first() {
        let earlier = Answer::of(1.0, step("first")).vouched_within("x", 9.0, 0.0, 1.0);
        let later = Answer::of(2.0, step("second")).vouched_within("y", f64::NAN, 0.0, 1.0).after(earlier);
        let names: Vec<_> = later.steps.iter().map(|step| step.name).collect();
        assert_eq!((names, later.value), (vec!["first", "second"], 2.0));
        let [Warning::BeyondSource { name: "x", .. }, Warning::BeyondSource { name: "y", .. }] = later.warnings[..]
        else {
            panic!("{:?}", later.warnings);
        };
    }

    #[test]
    fn within_the_range_there_is_nothing_to_say() {
        let answer = Answer::of(1.0, step("only")).vouched_within("x", 1.0, 0.0, 1.0).map(|value| value + 1.0);
        assert_eq!((answer.value, answer.warnings.len(), answer.steps.len()), (2.0, 0, 1));
    }
}
