//! The viscosity line of an oil on the shelf, from what its can or its sheet says, with what had to be assumed for it.

use shop::shelf::Oil;
use tribology::oil::{USUAL_INDEX, ViscosityLine};
use tribology::quantity::Temperature;

/// The line of an oil.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OilLine {
    /// The line.
    pub line: ViscosityLine,
    /// Where its slope comes from.
    pub slope: Slope,
}

/// Where the slope of an oil's line comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slope {
    /// From two viscosities, or from one and an index, as stated.
    Stated,
    /// From the usual viscosity index, for nothing is stated (common practice).
    UsualIndex,
}

/// The line of an oil: through both its viscosities, or through one with its index; else with the usual index. Of a grease, that of the
/// oil in it.
///
/// - returns: nothing when no viscosity at 40 °C is stated, or when what is stated cannot be together.
#[must_use]
pub fn oil_line(oil: &Oil) -> Option<OilLine> {
    let v40 = oil.v40.as_ref().or(oil.grease.base_v40.as_ref())?.value;
    let [forty, hundred] = [40.0, 100.0].map(Temperature::from_celsius);
    let (line, slope) = match (&oil.v100, oil.index) {
        (Some(v100), _) => (ViscosityLine::through((forty, v40), (hundred, v100.value)), Slope::Stated),
        (None, Some(index)) => (ViscosityLine::with_index(v40, index), Slope::Stated),
        (None, None) => (ViscosityLine::with_index(v40, USUAL_INDEX), Slope::UsualIndex),
    };
    line.ok().map(|line| OilLine { line: line.value, slope })
}

#[cfg(test)]
mod tests {
    use shop::shelf::Shelf;

    use super::*;

    fn of(stated: &str) -> Option<OilLine> {
        let text = format!("shelf = 1\n[[oil]]\nid = \"o\"\nname = \"O\"\nfamily = \"way\"\n{stated}");
        let shelf = Shelf::read(&text).value.expect("a shelf without faults");
        oil_line(&shelf.oils[0])
    }

    /// OP-S32 of `reference/oil-properties.csv`: 68 mm²/s at 40 °C and an index of 95 are 8.53 mm²/s at 100 °C.
    #[test]
    fn what_is_stated_makes_the_line_and_the_rest_is_said() {
        let at_100 = |stated: &str| {
            of(stated).map(|found| (found.line.at(Temperature::from_celsius(100.0)).mm2_s(), found.slope))
        };
        let near = |found: Option<(f64, Slope)>, v100: f64, slope| {
            assert!(found.is_some_and(|found| (found.0 - v100).abs() < 0.02 && found.1 == slope), "{found:?}");
        };
        near(at_100("v40 = \"68 mm2/s\"\nindex = 95"), 8.53, Slope::Stated);
        near(at_100("v40 = \"68 mm2/s\"\nv100 = \"9 mm2/s\""), 9.0, Slope::Stated);
        near(at_100("v40 = \"68 mm2/s\""), 8.53, Slope::UsualIndex);
        assert_eq!(of(""), None);
    }
}
