//! Friction of a slideway by speed, thickness of oil and load: where it falls as the speed grows, the way sticks and slips.

use crate::contact::line::{line, measured, number};
use crate::quantity::{DynamicViscosity, LineLoad, Velocity};
use crate::{Answer, Error, Standing, math};

const SOURCE: &str = "stribeck-form";

/// How friction lies over the Hersey number: `f = f₁ + (f₀ − f₁) exp(−(H/H₁)^δ) + k H`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stribeck {
    /// Friction at rest, `f₀`.
    pub boundary: f64,
    /// What is left once the peaks are carried, without the drag of the film, `f₁`.
    pub carried: f64,
    /// The Hersey number within which the peaks are carried, `H₁`.
    pub scale: f64,
    /// How sharply, `δ`; one half to two in texts.
    pub sharpness: f64,
    /// How fast the drag of the film grows, `k`.
    pub drag: f64,
}

/// The Hersey number of a slideway.
///
/// `H = μ U / p′`
///
/// - `viscosity`: dynamic viscosity of the oil on the way, `μ`.
/// - `speed`: sliding speed, `U`.
/// - `load`: load over the length of the way, `p′`.
/// - returns: the number, dimensionless.
///
/// # Range
/// Any; the form with the load over the length. Others divide by the mean pressure and have a length left over.
/// No printed value was found to hold it against.
///
/// # Errors
/// [`Error::OutOfRange`] when an input is not above zero.
///
/// # Source
/// `stribeck-form`
///
/// # Example
/// ```
/// use tribology::contact::slideway::hersey_number;
/// use tribology::quantity::{DynamicViscosity, LineLoad, Velocity};
/// let (viscosity, speed) = (DynamicViscosity::from_mpa_s(80.0), Velocity::from_mm_s(20.0));
/// let found = hersey_number(viscosity, speed, LineLoad::from_n_per_m(1600.0));
/// assert!(found.is_ok_and(|found| (found.value - 1e-6).abs() < 1e-15));
/// ```
pub fn hersey_number(viscosity: DynamicViscosity, speed: Velocity, load: LineLoad) -> Result<Answer<f64>, Error> {
    let mu = Error::quantity_positive("viscosity", viscosity)?.pa_s();
    let u = Error::quantity_positive("speed", speed)?.m_s();
    let p = Error::quantity_positive("load", load)?.n_per_m();
    let found = mu * u / p;
    let inputs = vec![measured("μ", viscosity), measured("U", speed), measured("p′", load)];
    let result = number("H", found);
    Ok(Answer::of(found, line("Hersey number", "H = μ U / p′", inputs, result, SOURCE, Standing::OwnCalculation)))
}

impl Stribeck {
    /// Friction at a Hersey number.
    ///
    /// `f = f₁ + (f₀ − f₁) exp(−(H/H₁)^δ) + k H`
    ///
    /// - `hersey`: the Hersey number, `H`, dimensionless.
    /// - returns: the coefficient of friction.
    ///
    /// # Range
    /// A shape that is laid through measured friction, from memory; without measurements of the way itself its numbers say nothing.
    /// No printed value was found to hold it against.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a constant cannot be, or the Hersey number is below zero.
    ///
    /// # Source
    /// `stribeck-form`
    ///
    /// # Example
    /// ```
    /// use tribology::contact::slideway::Stribeck;
    /// let way = Stribeck { boundary: 0.2, carried: 0.05, scale: 1e-6, sharpness: 1.0, drag: 1e3 };
    /// assert!(way.friction(0.0).is_ok_and(|found| (found.value - 0.2).abs() < 1e-12));
    /// ```
    pub fn friction(&self, hersey: f64) -> Result<Answer<f64>, Error> {
        self.checked(hersey)?;
        let peaks = (self.boundary - self.carried) * math::exp(-math::pow(hersey / self.scale, self.sharpness));
        let found = self.carried + peaks + self.drag * hersey;
        let formula = "f = f1 + (f0 − f1) exp(−(H/H1)^δ) + k H";
        let step = line(
            "Friction of the way",
            formula,
            self.symbols(hersey),
            number("f", found),
            SOURCE,
            Standing::FromMemory,
        );
        Ok(Answer::of(found, step))
    }

    /// How friction changes with the Hersey number; below zero the way may stick and slip.
    ///
    /// `df/dH = k − (f₀ − f₁) (δ/H) (H/H₁)^δ exp(−(H/H₁)^δ)`
    ///
    /// - `hersey`: the Hersey number, `H`, dimensionless.
    /// - returns: the slope, dimensionless.
    ///
    /// # Range
    /// As [`friction`](Self::friction), without the way at rest. Whether a way really sticks depends on its drive and its weight too.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a constant cannot be, or the Hersey number is not above zero.
    ///
    /// # Source
    /// `stribeck-form`
    ///
    /// # Example
    /// ```
    /// use tribology::contact::slideway::Stribeck;
    /// let way = Stribeck { boundary: 0.2, carried: 0.05, scale: 1e-6, sharpness: 1.0, drag: 1e3 };
    /// assert!(way.slope(1e-7).is_ok_and(|found| found.value < 0.0));
    /// ```
    pub fn slope(&self, hersey: f64) -> Result<Answer<f64>, Error> {
        Error::unless_positive("Hersey number", hersey)?;
        self.checked(hersey)?;
        let reduced = math::pow(hersey / self.scale, self.sharpness);
        let falling = (self.boundary - self.carried) * self.sharpness / hersey * reduced * math::exp(-reduced);
        let found = self.drag - falling;
        let formula = "df/dH = k − (f0 − f1) (δ/H) (H/H1)^δ exp(−(H/H1)^δ); below zero the way may stick and slip";
        let result = number("df/dH", found);
        let step = line("Slope of friction", formula, self.symbols(hersey), result, SOURCE, Standing::FromMemory);
        Ok(Answer::of(found, step))
    }

    fn checked(&self, hersey: f64) -> Result<(), Error> {
        Error::unless_within("Hersey number", hersey, 0.0, f64::MAX)?;
        Error::unless_within("friction once carried", self.carried, 0.0, f64::MAX)?;
        Error::unless_within("friction at rest", self.boundary, self.carried, f64::MAX)?;
        Error::unless_positive("scale of the Hersey number", self.scale)?;
        Error::unless_positive("sharpness", self.sharpness)?;
        Error::unless_within("drag", self.drag, 0.0, f64::MAX).map(drop)
    }

    fn symbols(&self, hersey: f64) -> Vec<crate::Symbol> {
        vec![
            number("H", hersey),
            number("f0", self.boundary),
            number("f1", self.carried),
            number("H1", self.scale),
            number("δ", self.sharpness),
            number("k", self.drag),
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_cannot_be_is_named() {
        let way = Stribeck { boundary: 0.2, carried: 0.05, scale: 1e-6, sharpness: 1.0, drag: 1e3 };
        for (wrong, name) in [
            (Stribeck { boundary: 0.01, ..way }, "friction at rest"),
            (Stribeck { carried: -0.1, ..way }, "friction once carried"),
            (Stribeck { scale: 0.0, ..way }, "scale of the Hersey number"),
            (Stribeck { sharpness: 0.0, ..way }, "sharpness"),
            (Stribeck { drag: -1.0, ..way }, "drag"),
        ] {
            assert!(
                matches!(wrong.friction(1e-6), Err(Error::OutOfRange { name: named, .. }) if named == name),
                "{name}"
            );
        }
        assert!(way.friction(-1.0).is_err() && way.slope(0.0).is_err());
        let (thin, slow) = (DynamicViscosity::from_mpa_s(80.0), Velocity::from_mm_s(20.0));
        assert!(hersey_number(thin, slow, LineLoad::from_n_per_m(0.0)).is_err());
        assert!(hersey_number(thin, Velocity::from_mm_s(0.0), LineLoad::from_n_per_m(9.0)).is_err());
    }
}
