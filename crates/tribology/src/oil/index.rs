//! Viscosity index after ASTM D2270: how little an oil thins as it warms, beside two reference oils. The standard's table is
//! interpolated; its quadratics do not meet, so that an index worked out from them can fall where it should rise.

mod table;

use super::{step, symbol, viscosity};
use crate::quantity::KinematicViscosity;
use crate::root::root;
use crate::{Answer, Error, Standing, math};

use table::ROWS;

/// The lowest viscosity at 100 °C, in mm²/s, for which the index is defined.
const DEFINED_FROM: f64 = 2.0;
/// Up to here, in mm²/s at 100 °C, the table holds; above, the formulas do.
const TABLE_TO: f64 = 70.0;
/// The indices that an oil may have: beyond, somebody has mistyped.
const INDICES: [f64; 2] = [-200.0, 500.0];
const SOURCE: &str = "astm-d2270";
const THICKEST: KinematicViscosity = KinematicViscosity::from_m2_s(f64::MAX);

/// The viscosities at 40 °C of the two oils that an oil is held against.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReferenceOils {
    /// `L`: of the reference oil with index 0.
    pub index_0: KinematicViscosity,
    /// `H`: of the reference oil with index 100.
    pub index_100: KinematicViscosity,
}

/// The reference oils that have this viscosity at 100 °C.
///
/// Up to 70 mm²/s the table of the standard with straight lines between its rows; above,
/// `L = 0.8353 Y² + 14.67 Y − 216`, `H = 0.1684 Y² + 11.85 Y − 97`.
///
/// - `v100`: kinematic viscosity at 100 °C, `Y`.
/// - returns: their viscosities at 40 °C.
///
/// # Range
/// From 2 mm²/s up. At 70 mm²/s table and formula are 0.03 % apart.
///
/// # Errors
/// [`Error::OutOfRange`] below 2 mm²/s, where the standard gives none.
///
/// # Source
/// `astm-d2270`
///
/// # Example
/// ```
/// use tribology::{oil::reference_oils, quantity::KinematicViscosity};
/// let oils = reference_oils(KinematicViscosity::from_mm2_s(8.86)).map(|answer| answer.value);
/// assert!(oils.is_ok_and(|oils| (oils.index_0.mm2_s() - 119.94).abs() < 0.05));
/// ```
pub fn reference_oils(v100: KinematicViscosity) -> Result<Answer<ReferenceOils>, Error> {
    let low = KinematicViscosity::from_mm2_s(DEFINED_FROM * (1.0 - 1e-12));
    Error::quantity_within("viscosity at 100 °C", v100, low, THICKEST)?;
    let (l, h) = l_and_h(v100.mm2_s());
    let from_mm2_s = KinematicViscosity::from_mm2_s;
    let oils = ReferenceOils { index_0: from_mm2_s(l), index_100: from_mm2_s(h) };
    let formula = if v100.mm2_s() <= TABLE_TO {
        "L and H from table 1 of the standard, straight lines between its rows"
    } else {
        "L = 0.8353 Y² + 14.67 Y − 216, H = 0.1684 Y² + 11.85 Y − 97, in mm²/s"
    };
    let inputs = vec![viscosity("Y", v100.mm2_s()), viscosity("L", l)];
    let found = step("Reference oils at 40 °C", formula, inputs, viscosity("H", h), SOURCE, Standing::Standard);
    Ok(Answer::of(oils, found))
}

/// The viscosity index of an oil.
///
/// `(L − U) / (L − H) · 100` where `U >= H`; else `100 + (10^N − 1) / 0.00715`, `N = log(H / U) / log Y`
///
/// - `v40`: kinematic viscosity at 40 °C, `U`.
/// - `v100`: kinematic viscosity at 100 °C, `Y`.
/// - returns: the index, not rounded; the standard reports it rounded to a whole number.
///
/// # Range
/// From 2 mm²/s at 100 °C up.
///
/// # Errors
/// [`Error::OutOfRange`] below 2 mm²/s at 100 °C, where the index is not defined, and where the oil does not thin as it warms.
///
/// # Source
/// `astm-d2270`, procedures A and B
///
/// # Example
/// ```
/// use tribology::{oil::viscosity_index, quantity::KinematicViscosity};
/// let mm2_s = KinematicViscosity::from_mm2_s;
/// let index = viscosity_index(mm2_s(73.30), mm2_s(8.86)).map(|answer| answer.value.round());
/// assert_eq!(index, Ok(92.0));
/// ```
pub fn viscosity_index(v40: KinematicViscosity, v100: KinematicViscosity) -> Result<Answer<f64>, Error> {
    let oils = reference_oils(v100)?;
    let above = KinematicViscosity::from_m2_s(v100.m2_s().next_up());
    Error::quantity_within("viscosity at 40 °C", v40, above, THICKEST)?;
    let (u, y) = (v40.mm2_s(), v100.mm2_s());
    let (l, h) = (oils.value.index_0.mm2_s(), oils.value.index_100.mm2_s());
    let index = index_of(u, y, l, h);
    let (formula, inputs) = if u >= h {
        ("VI = 100 (L − U) / (L − H)", vec![viscosity("U", u), viscosity("L", l), viscosity("H", h)])
    } else {
        let inputs = vec![viscosity("U", u), viscosity("H", h), viscosity("Y", y), symbol("N", exponent(u, y, h), "")];
        ("VI = 100 + (10^N − 1) / 0.00715, N = log(H / U) / log Y", inputs)
    };
    let found = step("Viscosity index", formula, inputs, symbol("VI", index, ""), SOURCE, Standing::Standard);
    Ok(Answer::of(index, found).after(oils))
}

/// The viscosity at 100 °C of an oil of which the viscosity at 40 °C and the index are known.
///
/// The `Y` at which [`viscosity_index`] gives the index, found between 2 mm²/s and the viscosity at 40 °C.
///
/// - `v40`: kinematic viscosity at 40 °C.
/// - `index`: viscosity index.
/// - returns: the kinematic viscosity at 100 °C.
///
/// # Range
/// Indices of −200 to 500, and results from 2 mm²/s up.
///
/// # Errors
/// [`Error::OutOfRange`] for other indices, for a `v40` not above 2 mm²/s, and when `v100` would come out below 2 mm²/s, where
/// the index is not defined.
///
/// # Source
/// `astm-d2270`, solved for the viscosity at 100 °C
///
/// # Example
/// ```
/// use tribology::{oil::v100_of_index, quantity::KinematicViscosity};
/// let v100 = v100_of_index(KinematicViscosity::from_mm2_s(68.0), 95.0).map(|answer| answer.value);
/// assert!(v100.is_ok_and(|v100| (v100.mm2_s() - 8.53).abs() < 0.02));
/// ```
pub fn v100_of_index(v40: KinematicViscosity, index: f64) -> Result<Answer<KinematicViscosity>, Error> {
    check_index(index)?;
    let lowest = KinematicViscosity::from_m2_s((DEFINED_FROM * super::MM2_S).next_up());
    Error::quantity_within("viscosity at 40 °C", v40, lowest, THICKEST)?;
    let u = v40.mm2_s();
    let lowest_index = unchecked(u, DEFINED_FROM);
    let y = if index > lowest_index {
        root("viscosity at 100 °C", [DEFINED_FROM, u], 0.0, |y| unchecked(u, y) - index)?.at
    } else if index >= lowest_index - 1e-9 {
        // The last digit of an index must not decide whether the thinnest oil of all has one.
        DEFINED_FROM
    } else {
        // An oil as thick at 40 °C with a lower index would be thinner than 2 mm²/s at 100 °C.
        return Err(Error::OutOfRange {
            name: "viscosity index",
            value: index,
            low: lowest_index,
            high: INDICES[1],
            unit: "",
        });
    };
    let inputs = vec![viscosity("U", u), symbol("VI", index, "")];
    let formula = "Y such that VI(U, Y) is the index";
    let result = viscosity("Y", y);
    let found_step = step("Viscosity at 100 °C", formula, inputs, result, SOURCE, Standing::Standard);
    Ok(Answer::of(KinematicViscosity::from_mm2_s(y), found_step))
}

/// The viscosity at 40 °C of an oil of which the viscosity at 100 °C and the index are known.
///
/// `U = L − VI (L − H) / 100` up to index 100; above, `U = H / Y^N`, `N = log(1 + 0.00715 (VI − 100))`
///
/// - `v100`: kinematic viscosity at 100 °C, `Y`.
/// - `index`: viscosity index.
/// - returns: the kinematic viscosity at 40 °C.
///
/// # Range
/// Indices of −200 to 500; from 2 mm²/s at 100 °C up.
///
/// # Errors
/// [`Error::OutOfRange`] for other indices and thinner oils.
///
/// # Source
/// `astm-d2270`, solved for the viscosity at 40 °C
///
/// # Example
/// ```
/// use tribology::{oil::v40_of_index, quantity::KinematicViscosity};
/// let v40 = v40_of_index(KinematicViscosity::from_mm2_s(8.53), 95.0).map(|answer| answer.value);
/// assert!(v40.is_ok_and(|v40| (v40.mm2_s() - 68.0).abs() < 0.2));
/// ```
pub fn v40_of_index(v100: KinematicViscosity, index: f64) -> Result<Answer<KinematicViscosity>, Error> {
    check_index(index)?;
    let oils = reference_oils(v100)?;
    let (y, l, h) = (v100.mm2_s(), oils.value.index_0.mm2_s(), oils.value.index_100.mm2_s());
    let (formula, u) = if index <= 100.0 {
        ("U = L − VI (L − H) / 100", l - index * (l - h) / 100.0)
    } else {
        ("U = H / Y^N, N = log(1 + 0.00715 (VI − 100))", h / math::pow(y, math::log10(1.0 + B * (index - 100.0))))
    };
    let inputs = vec![viscosity("Y", y), viscosity("L", l), viscosity("H", h), symbol("VI", index, "")];
    let found = step("Viscosity at 40 °C", formula, inputs, viscosity("U", u), SOURCE, Standing::Standard);
    Ok(Answer::of(KinematicViscosity::from_mm2_s(u), found).after(oils))
}

/// The constant of procedure B.
///
/// Source: `astm-d2270`.
const B: f64 = 0.00715;

fn check_index(index: f64) -> Result<f64, Error> {
    Error::unless_within("viscosity index", index, INDICES[0], INDICES[1])
}

fn unchecked(u: f64, y: f64) -> f64 {
    let (l, h) = l_and_h(y);
    index_of(u, y, l, h)
}

/// Which procedure holds is told by `U` and `H`, not by a first index: they meet at 100 with unlike slopes.
fn index_of(u: f64, y: f64, l: f64, h: f64) -> f64 {
    if u >= h { 100.0 * (l - u) / (l - h) } else { 100.0 + (math::exp10(exponent(u, y, h)) - 1.0) / B }
}

fn exponent(u: f64, y: f64, h: f64) -> f64 {
    math::log10(h / u) / math::log10(y)
}

fn l_and_h(y: f64) -> (f64, f64) {
    if y > TABLE_TO {
        return (0.8353 * y * y + 14.67 * y - 216.0, 0.1684 * y * y + 11.85 * y - 97.0);
    }
    let above = ROWS.partition_point(|row| row.0 <= y).clamp(1, ROWS.len() - 1);
    let ((y0, l0, h0), (y1, l1, h1)) = (ROWS[above - 1], ROWS[above]);
    let part = (y - y0) / (y1 - y0);
    (l0 + part * (l1 - l0), h0 + part * (h1 - h0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_rises_without_a_gap() {
        assert_eq!((ROWS[0].0, ROWS[ROWS.len() - 1].0), (DEFINED_FROM, TABLE_TO));
        for pair in ROWS.windows(2) {
            let steps = pair[1].0 - pair[0].0;
            assert!((0.099..0.501).contains(&steps), "{pair:?}");
            assert!(pair[1].1 > pair[0].1 && pair[1].2 > pair[0].2 && pair[1].1 > pair[1].2, "{pair:?}");
        }
    }

    /// The quadratics of the standard (from memory), which its own table was fitted by: a slip of a digit in a row would show.
    #[test]
    fn every_row_lies_by_its_quadratic() {
        const PIECES: [(f64, [f64; 6]); 15] = [
            (3.8, [1.14673, 1.7576, -0.109, 0.84155, 1.5521, -0.077]),
            (4.4, [3.38095, -15.4952, 33.196, 0.78571, 1.7929, -0.183]),
            (5.0, [2.50000, -7.2143, 13.812, 0.82143, 1.5679, 0.119]),
            (6.4, [0.10100, 16.6350, -45.469, 0.04985, 9.1613, -18.557]),
            (7.0, [3.35714, -23.5643, 78.466, 0.22619, 7.7369, -16.656]),
            (7.7, [0.01191, 21.4750, -72.870, 0.79762, -0.7321, 14.610]),
            (9.0, [0.41858, 16.1558, -56.040, 0.05794, 10.5156, -28.240]),
            (12.0, [0.88779, 7.5527, -16.600, 0.26665, 6.7015, -10.810]),
            (15.0, [0.76720, 10.7972, -38.180, 0.20073, 8.4658, -22.490]),
            (18.0, [0.97305, 5.3135, -2.200, 0.28889, 5.9741, -4.930]),
            (22.0, [0.97256, 5.2500, -0.980, 0.24504, 7.4160, -16.730]),
            (28.0, [0.91413, 7.4759, -21.820, 0.20323, 9.1267, -34.230]),
            (40.0, [0.87031, 9.7157, -50.770, 0.18411, 10.1015, -46.750]),
            (55.0, [0.84703, 12.6752, -133.310, 0.17029, 11.4866, -80.620]),
            (70.1, [0.85921, 11.1009, -83.190, 0.17130, 11.3680, -76.940]),
        ];
        for (y, l, h) in ROWS {
            let piece = PIECES.iter().find(|(to, _)| y <= *to).expect("the pieces reach to the end");
            let [a, b, c, d, e, f] = piece.1;
            let (l_fit, h_fit) = (a * y * y + b * y + c, d * y * y + e * y + f);
            assert!(
                (l_fit / l - 1.0).abs() < 1.3e-3 && (h_fit / h - 1.0).abs() < 1.5e-3,
                "{y}: {l} {l_fit}, {h} {h_fit}"
            );
        }
    }

    #[test]
    fn procedures_meet_at_a_hundred() {
        for y in [2.5, 5.0, 10.0, 40.0, 90.0] {
            let (l, h) = l_and_h(y);
            let (a, b) = (index_of(h * (1.0 + 1e-9), y, l, h), index_of(h * (1.0 - 1e-9), y, l, h));
            assert!((a - 100.0).abs() < 1e-5 && (b - 100.0).abs() < 1e-5, "{y}: {a} {b}");
        }
    }

    #[test]
    fn what_cannot_be_is_refused() {
        let mm2_s = KinematicViscosity::from_mm2_s;
        assert!(matches!(viscosity_index(mm2_s(5.0), mm2_s(1.9)), Err(Error::OutOfRange { .. })));
        assert!(matches!(viscosity_index(mm2_s(8.0), mm2_s(68.0)), Err(Error::OutOfRange { .. })));
        assert!(matches!(v100_of_index(mm2_s(68.0), -400.0), Err(Error::OutOfRange { .. })));
        assert!(matches!(v100_of_index(mm2_s(5.0), 0.0), Err(Error::OutOfRange { .. })));
        assert!(matches!(v100_of_index(mm2_s(1.9), 95.0), Err(Error::OutOfRange { .. })));
    }
}
