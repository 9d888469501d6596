//! How stiff two bodies are that press on one another: the one modulus that stands for both.

use crate::contact::line::{line, measured, number};
use crate::quantity::Pressure;
use crate::{Answer, Error, Standing};

/// How stiff a material is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Elastic {
    /// Young's modulus.
    pub modulus: Pressure,
    /// Poisson's ratio.
    pub poisson: f64,
}

/// Steel.
///
/// Source: `stachowiak-batchelor`.
pub const STEEL: Elastic = Elastic { modulus: Pressure::from_gpa(210.0), poisson: 0.3 };

/// The reduced modulus of two bodies that press on one another.
///
/// `2 / E′ = (1 − ν₁²) / E₁ + (1 − ν₂²) / E₂`
///
/// - `first`, `second`: modulus `E` and Poisson's ratio `ν` of each, in any order.
/// - returns: `E′`; some texts call half of it so.
///
/// # Range
/// Bodies that bend and spring back; Poisson's ratio 0 to 0.5.
///
/// # Errors
/// [`Error::OutOfRange`] when a modulus is not above zero, or a Poisson's ratio outside 0 to 0.5.
///
/// # Source
/// `stachowiak-batchelor`
///
/// # Example
/// ```
/// use tribology::contact::gear::{STEEL, reduced_modulus};
/// assert!(reduced_modulus(STEEL, STEEL).is_ok_and(|found| (found.value.gpa() - 230.77).abs() < 0.01));
/// ```
pub fn reduced_modulus(first: Elastic, second: Elastic) -> Result<Answer<Pressure>, Error> {
    let yielding = |body: Elastic| {
        let modulus = Error::quantity_positive("modulus", body.modulus)?.pa();
        let poisson = Error::unless_within("Poisson's ratio", body.poisson, 0.0, 0.5)?;
        Ok((1.0 - poisson * poisson) / modulus)
    };
    let found = Pressure::from_pa(2.0 / (yielding(first)? + yielding(second)?));
    let inputs = vec![
        measured("E1", first.modulus),
        number("ν1", first.poisson),
        measured("E2", second.modulus),
        number("ν2", second.poisson),
    ];
    let formula = "E′ = 2 / ((1 − ν1²) / E1 + (1 − ν2²) / E2)";
    let (result, source) = (measured("E′", found), "stachowiak-batchelor");
    Ok(Answer::of(found, line("Reduced modulus", formula, inputs, result, source, Standing::Handbook)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_softer_body_gives_way() {
        let rubber = Elastic { modulus: Pressure::from_mpa(10.0), poisson: 0.5 };
        let found = reduced_modulus(STEEL, rubber).expect("two bodies").value;
        // Against a body without give, 2/E' is what the soft one alone has: 2 x 10 MPa / 0.75.
        assert!((found.mpa() / (20.0 / 0.75) - 1.0).abs() < 1e-3, "{found:?}");
        assert_eq!(reduced_modulus(rubber, STEEL).map(|found| found.value), Ok(found));
    }

    #[test]
    fn what_cannot_be_is_named() {
        for (modulus, poisson, wrong) in
            [(0.0, 0.3, "modulus"), (-1.0, 0.3, "modulus"), (210.0, 0.6, "Poisson's ratio")]
        {
            let body = Elastic { modulus: Pressure::from_gpa(modulus), poisson };
            let Err(Error::OutOfRange { name, .. }) = reduced_modulus(STEEL, body) else { panic!("{wrong}") };
            assert_eq!(name, wrong);
        }
    }
}
