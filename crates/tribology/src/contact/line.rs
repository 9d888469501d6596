//! A line of working of a contact, and the symbols in it. Quantities bring their own base unit; plain numbers have none.

use crate::quantity::Quantity;
use crate::working::{Standing, Step, Symbol};

/// A quantity as a symbol.
pub(super) fn measured<Q: Quantity>(symbol: &'static str, value: Q) -> Symbol {
    Symbol { symbol, si: value.si(), unit: Q::KIND.si_symbol() }
}

/// A plain number as a symbol.
pub(super) fn number(symbol: &'static str, value: f64) -> Symbol {
    Symbol { symbol, si: value, unit: "" }
}

/// A line of working.
pub(super) fn line(
    name: &'static str,
    formula: &'static str,
    symbols: Vec<Symbol>,
    result: Symbol,
    source: &'static str,
    standing: Standing,
) -> Step {
    Step { name, formula, symbols, result, source, standing }
}
