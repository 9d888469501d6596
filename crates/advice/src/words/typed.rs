//! A quantity as somebody typed it, with the shop's own measure before it where that is another.

use tribology::quantity::{Quantity, Typed, Units, is_foreign, said, usual_unit};

/// How many digits of a converted quantity are worth saying.
const DIGITS: usize = 2;

/// `5.5 L`, or in a shop that measures the US way `5.8 US quart (5.5 L)`: what was typed always stays.
///
/// - `typed`: the quantity with its text.
/// - `units`: how the shop measures.
#[must_use]
pub fn typed<Q: Quantity>(typed: &Typed<Q>, units: Units) -> String {
    if !is_foreign(typed.unit, units) {
        return typed.text.clone();
    }
    let unit = usual_unit(typed.unit.kind, units, typed.value.si());
    format!("{} ({})", said(typed.value, unit, DIGITS), typed.text)
}

#[cfg(test)]
mod tests {
    use tribology::quantity::{Units, Volume, typed as read};

    use super::typed;

    /// 1 US gallon = 231 in³ = 3.785 411 784 L: NIST Handbook 44, appendix C.
    #[test]
    fn the_measure_of_the_shop_comes_first_and_the_text_stays() {
        let capacity = read::<Volume>("7.6 L").expect("a volume");
        assert_eq!(typed(&capacity, Units::Metric), "7.6 L");
        assert_eq!(typed(&capacity, Units::Us), "2 US gallon (7.6 L)");
        let capacity = read::<Volume>("1/2 US pint").expect("a volume");
        assert_eq!(typed(&capacity, Units::Us), "1/2 US pint");
        assert_eq!(typed(&capacity, Units::Metric), "240 mL (1/2 US pint)");
    }
}
