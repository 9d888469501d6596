//! Viscosity and temperature: the straight line of an oil on the chart of ASTM D341, through two known points or through one and
//! a viscosity index.

use super::{index, step, symbol, viscosity};
use crate::quantity::{KinematicViscosity, Temperature};
use crate::root::root;
use crate::{Answer, Error, Standing, math};

/// The lowest viscosity for which the chart is drawn, mm²/s.
const LOWEST: f64 = 0.21;
/// The highest, mm²/s.
const HIGHEST: f64 = 2e7;
const SOURCE: &str = "astm-d341";

/// The straight line of an oil: `log log Z = A − B log T`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ViscosityLine {
    a: f64,
    b: f64,
}

impl ViscosityLine {
    /// The line through two known points.
    ///
    /// `B = (y₁ − y₂) / (x₂ − x₁)`, `A = y₁ + B x₁`, with `y = log log Z`, `x = log T`
    ///
    /// - `first`, `second`: temperatures with the kinematic viscosities there, in any order.
    /// - returns: the line, with `A` and `B` in its working.
    ///
    /// # Range
    /// Viscosities of 0.21 to 2·10⁷ mm²/s, between the cloud point and the first boiling: the chart knows nothing of wax.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when a temperature is not above 0 K or a viscosity not above zero or too thin for the chart, when
    /// the temperatures are the same, or when the viscosity does not fall as the temperature rises.
    ///
    /// # Source
    /// `astm-d341`
    ///
    /// # Example
    /// ```
    /// use tribology::oil::ViscosityLine;
    /// use tribology::quantity::{KinematicViscosity, Temperature};
    /// let at = |celsius, mm2_s| (Temperature::from_celsius(celsius), KinematicViscosity::from_mm2_s(mm2_s));
    /// let line = ViscosityLine::through(at(40.0, 404.0), at(100.0, 28.0)).map(|answer| answer.value);
    /// let warm = line.and_then(|line| line.viscosity(Temperature::from_celsius(60.0)));
    /// assert!(warm.is_ok_and(|warm| (warm.value.mm2_s() - 132.1).abs() < 0.1));
    /// ```
    pub fn through(
        first: (Temperature, KinematicViscosity),
        second: (Temperature, KinematicViscosity),
    ) -> Result<Answer<Self>, Error> {
        let (cold, warm) = if first.0.kelvin() <= second.0.kelvin() { (first, second) } else { (second, first) };
        let (cold_k, warm_k) = (kelvin(cold.0)?, kelvin(warm.0)?);
        let (thick, thin) = (mm2_s(cold.1)?, mm2_s(warm.1)?);
        if cold_k == warm_k {
            let (name, low, high) = ("second temperature", cold_k.next_up(), f64::MAX);
            return Err(Error::OutOfRange { name, value: warm_k, low, high, unit: "K" });
        }
        let below = KinematicViscosity::from_m2_s(cold.1.m2_s().next_down());
        let none = KinematicViscosity::from_m2_s(f64::MIN_POSITIVE);
        Error::quantity_within("viscosity at the higher temperature", warm.1, none, below)?;
        let (y1, y2) = (log_log_z(thick), log_log_z(thin));
        let (x1, x2) = (math::log10(cold_k), math::log10(warm_k));
        let b = (y1 - y2) / (x2 - x1);
        let line = Self { a: y1 + b * x1, b };
        let inputs = vec![
            symbol("T1", cold_k, "K"),
            viscosity("ν1", thick),
            symbol("T2", warm_k, "K"),
            viscosity("ν2", thin),
            symbol("A", line.a, ""),
        ];
        let formula = "log log Z = A − B log T, Z = ν + 0.7 + exp(−1.47 − 1.84 ν − 0.51 ν²), ν in mm²/s, T in K";
        let result = symbol("B", line.b, "");
        let found = step("Line through two viscosities", formula, inputs, result, SOURCE, Standing::Standard);
        Ok(vouched(vouched(Answer::of(line, found), thick), thin))
    }

    /// The line of an oil of which the viscosity at 40 °C and the viscosity index are known.
    ///
    /// - `v40`: kinematic viscosity at 40 °C.
    /// - `index`: viscosity index.
    /// - returns: the line through 40 °C and the viscosity at 100 °C that the index gives.
    ///
    /// # Range
    /// That of [`v100_of_index`](super::v100_of_index).
    ///
    /// # Errors
    /// Those of [`v100_of_index`](super::v100_of_index).
    ///
    /// # Source
    /// `astm-d2270`, `astm-d341`
    ///
    /// # Example
    /// ```
    /// use tribology::oil::ViscosityLine;
    /// use tribology::quantity::{KinematicViscosity, Temperature};
    /// let line = ViscosityLine::with_index(KinematicViscosity::from_mm2_s(68.0), 95.0).map(|answer| answer.value);
    /// assert!(line.is_ok_and(|line| line.at(Temperature::from_celsius(0.0)).mm2_s() > 1000.0));
    /// ```
    pub fn with_index(v40: KinematicViscosity, index: f64) -> Result<Answer<Self>, Error> {
        let v100 = index::v100_of_index(v40, index)?;
        let at = Temperature::from_celsius;
        let line = Self::through((at(40.0), v40), (at(100.0), v100.value))?;
        Ok(line.after(v100))
    }

    /// The line of an oil of which the viscosity at any one temperature and the viscosity index are known.
    ///
    /// The viscosity at 40 °C whose line, by [`with_index`](Self::with_index), passes through the known one.
    ///
    /// - `known`: a temperature with the kinematic viscosity there.
    /// - `index`: viscosity index.
    /// - returns: the line.
    ///
    /// # Range
    /// Oils of 2 to 10 000 mm²/s at 100 °C; known temperatures of −40 to 200 °C.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] for other indices and temperatures, and [`Error::NotBracketed`] when no such oil has that viscosity there.
    ///
    /// # Source
    /// `astm-d2270`, `astm-d341`
    ///
    /// # Example
    /// ```
    /// use tribology::oil::ViscosityLine;
    /// use tribology::quantity::{KinematicViscosity, Temperature};
    /// let known = (Temperature::from_fahrenheit(100.0), KinematicViscosity::from_mm2_s(64.643));
    /// let line = ViscosityLine::through_with_index(known, 95.0).map(|answer| answer.value);
    /// assert!(line.is_ok_and(|line| (line.at(Temperature::from_celsius(40.0)).mm2_s() - 57.9).abs() < 0.5));
    /// ```
    pub fn through_with_index(known: (Temperature, KinematicViscosity), index: f64) -> Result<Answer<Self>, Error> {
        let [cold, hot] = [-40.0, 200.0].map(Temperature::from_celsius);
        Error::quantity_within("temperature", known.0, cold, hot)?;
        let wanted = mm2_s(known.1)?;
        let end = |v100| index::v40_of_index(KinematicViscosity::from_mm2_s(v100), index);
        let (thin, thick) = (end(2.000_001)?.value.mm2_s(), end(1e4)?.value.mm2_s());
        let through = |ln_v40: f64| {
            let line = Self::with_index(KinematicViscosity::from_mm2_s(math::exp(ln_v40)), index);
            line.map_or(f64::NAN, |line| math::ln(line.value.at(known.0).mm2_s() / wanted))
        };
        let found = root("viscosity at 40 °C", [math::ln(thin), math::ln(thick)], 1e-14, through)?;
        let v40 = KinematicViscosity::from_mm2_s(math::exp(found.at));
        let line = Self::with_index(v40, index)?;
        let inputs = vec![symbol("T", kelvin(known.0)?, "K"), viscosity("ν", wanted), symbol("VI", index, "")];
        let formula = "ν40 such that the line with this index passes through ν at T";
        let result = viscosity("ν40", v40.mm2_s());
        let first =
            step("Viscosity at 40 °C from another temperature", formula, inputs, result, SOURCE, Standing::Standard);
        Ok(line.after(Answer::of((), first)))
    }

    /// The constant `A`.
    #[must_use]
    pub fn a(self) -> f64 {
        self.a
    }

    /// The slope `B`: the larger, the faster the oil thins as it warms.
    #[must_use]
    pub fn b(self) -> f64 {
        self.b
    }

    /// The viscosity at a temperature, without working, warning or error: infinite where it is too cold for the sum.
    ///
    /// Newton's method on `Z(ν)`, to the last digits; under a microsecond.
    ///
    /// - `temperature`: where it is wanted.
    /// - returns: the kinematic viscosity.
    ///
    /// # Range
    /// As [`viscosity`](Self::viscosity), which says when it is left.
    ///
    /// # Source
    /// `astm-d341`
    #[must_use]
    pub fn at(self, temperature: Temperature) -> KinematicViscosity {
        let y = self.a - self.b * math::log10(temperature.kelvin());
        KinematicViscosity::from_mm2_s(viscosity_of_log_log_z(y))
    }

    /// The viscosity at a temperature.
    ///
    /// `log log Z = A − B log T`
    ///
    /// - `temperature`: where it is wanted.
    /// - returns: the kinematic viscosity.
    ///
    /// # Range
    /// Where the result lies within 0.21 to 2·10⁷ mm²/s; beyond, and near the pour point in any case, it is a guess.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when the temperature is not above 0 K, or so low that the sum has no end.
    ///
    /// # Source
    /// `astm-d341`
    ///
    /// # Example
    /// ```
    /// use tribology::oil::ViscosityLine;
    /// use tribology::quantity::{KinematicViscosity, Temperature};
    /// let at = |celsius, mm2_s| (Temperature::from_celsius(celsius), KinematicViscosity::from_mm2_s(mm2_s));
    /// let line = ViscosityLine::through(at(40.0, 68.0), at(100.0, 8.53)).map(|answer| answer.value);
    /// let cold = line.and_then(|line| line.viscosity(Temperature::from_celsius(0.0)));
    /// assert!(cold.is_ok_and(|cold| (cold.value.mm2_s() - 1080.0).abs() < 2.0));
    /// ```
    pub fn viscosity(self, temperature: Temperature) -> Result<Answer<KinematicViscosity>, Error> {
        let value = kelvin(temperature)?;
        let found = self.at(temperature);
        if !found.mm2_s().is_finite() {
            let low = self.kelvin_of(HIGHEST);
            return Err(Error::OutOfRange { name: "temperature", value, low, high: f64::MAX, unit: "K" });
        }
        let inputs = vec![symbol("A", self.a, ""), symbol("B", self.b, ""), symbol("T", value, "K")];
        let formula = "log log Z = A − B log T, ν from Z = ν + 0.7 + exp(−1.47 − 1.84 ν − 0.51 ν²)";
        let result = viscosity("ν", found.mm2_s());
        let found_step = step("Viscosity at the temperature", formula, inputs, result, SOURCE, Standing::Standard);
        Ok(vouched(Answer::of(found, found_step), found.mm2_s()))
    }

    /// The temperature at which the oil has a viscosity.
    ///
    /// `T = 10^((A − log log Z) / B)`
    ///
    /// - `reach`: the kinematic viscosity.
    /// - returns: the temperature.
    ///
    /// # Range
    /// 0.21 to 2·10⁷ mm²/s, between the cloud point and the first boiling.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] when the viscosity is not above zero or too thin for the chart.
    ///
    /// # Source
    /// `astm-d341`
    ///
    /// # Example
    /// ```
    /// use tribology::oil::ViscosityLine;
    /// use tribology::quantity::{KinematicViscosity, Temperature};
    /// let at = |celsius, mm2_s| (Temperature::from_celsius(celsius), KinematicViscosity::from_mm2_s(mm2_s));
    /// let line = ViscosityLine::through(at(40.0, 68.0), at(100.0, 8.53)).map(|answer| answer.value);
    /// let limit = line.and_then(|line| line.temperature(KinematicViscosity::from_mm2_s(1000.0)));
    /// assert!(limit.is_ok_and(|limit| (limit.value.celsius() - 0.83).abs() < 0.1));
    /// ```
    pub fn temperature(self, reach: KinematicViscosity) -> Result<Answer<Temperature>, Error> {
        let wanted = mm2_s(reach)?;
        let found = self.kelvin_of(wanted);
        let inputs = vec![symbol("A", self.a, ""), symbol("B", self.b, ""), viscosity("ν", wanted)];
        let formula = "T = 10^((A − log log Z) / B), Z = ν + 0.7 + exp(−1.47 − 1.84 ν − 0.51 ν²)";
        let result = symbol("T", found, "K");
        let found_step = step("Temperature for the viscosity", formula, inputs, result, SOURCE, Standing::Standard);
        Ok(vouched(Answer::of(Temperature::from_kelvin(found), found_step), wanted))
    }

    /// The temperature of a viscosity in mm²/s, in kelvins; no number where the chart ends.
    pub(crate) fn kelvin_of(self, mm2_s: f64) -> f64 {
        math::exp10((self.a - log_log_z(mm2_s)) / self.b)
    }
}

/// The quantity `Z` of the chart for a viscosity in mm²/s.
fn z(viscosity: f64) -> f64 {
    viscosity + 0.7 + thin_term(viscosity)
}

/// What is added for thin oils; it is gone above 2 mm²/s.
fn thin_term(viscosity: f64) -> f64 {
    math::exp(-1.47 - 1.84 * viscosity - 0.51 * viscosity * viscosity)
}

/// The viscosity in mm²/s whose `Z` is this. The standard's own inverse is a polynomial that is off by up to 3 parts in ten
/// thousand below 3 mm²/s; it is the start, and Newton's method does the rest. The slope of `Z` is never below 0.57.
fn viscosity_of_z(wanted: f64) -> f64 {
    let above = wanted - 0.7;
    if above > 10.0 {
        return above;
    }
    let start = -0.7487 - 3.295 * above + 0.6119 * above * above - 0.3193 * above * above * above;
    let mut found = above - math::exp(start);
    for _ in 0..30 {
        let slope = 1.0 - (1.84 + 1.02 * found) * thin_term(found);
        let change = (z(found) - wanted) / slope;
        found -= change;
        if change.abs() <= 4.0 * f64::EPSILON * found.abs() {
            break;
        }
    }
    found
}

/// The viscosity in mm²/s of a `log log Z`.
pub(super) fn viscosity_of_log_log_z(log_log_z: f64) -> f64 {
    viscosity_of_z(math::exp10(math::exp10(log_log_z)))
}

/// `log log Z` of a viscosity in mm²/s.
pub(super) fn log_log_z(viscosity: f64) -> f64 {
    math::log10(math::log10(z(viscosity)))
}

/// The thinnest viscosity in mm²/s that has a place on the chart: there `Z` is one and its logarithm nought.
const THINNEST: f64 = 0.13;

fn mm2_s(viscosity: KinematicViscosity) -> Result<f64, Error> {
    let (low, high) = (KinematicViscosity::from_mm2_s(THINNEST), KinematicViscosity::from_m2_s(f64::MAX));
    Error::quantity_within("viscosity", viscosity, low, high).map(KinematicViscosity::mm2_s)
}

fn kelvin(temperature: Temperature) -> Result<f64, Error> {
    Error::quantity_positive("temperature", temperature).map(Temperature::kelvin)
}

fn vouched<T>(answer: Answer<T>, mm2_s: f64) -> Answer<T> {
    let [value, low, high] = [mm2_s, LOWEST, HIGHEST].map(KinematicViscosity::from_mm2_s);
    answer.quantity_vouched_within("viscosity", value, low, high)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(celsius: f64, mm2_s: f64) -> (Temperature, KinematicViscosity) {
        (Temperature::from_celsius(celsius), KinematicViscosity::from_mm2_s(mm2_s))
    }

    /// Rows S17 and S18 of `reference/oil-properties.csv` speak of `Z`, which is no public matter.
    #[test]
    fn the_quantity_z_has_its_terms_for_thin_oils() {
        assert!((z(1.0) - 1.72193).abs() < 2e-5 && (z(0.5) - 1.28066).abs() < 2e-5);
    }

    #[test]
    fn z_and_its_inverse_are_a_pair() {
        let mut viscosity = THINNEST;
        while viscosity < 1e9 {
            let back = viscosity_of_z(z(viscosity));
            assert!((back / viscosity - 1.0).abs() < 1e-13, "{viscosity} came back as {back}");
            viscosity *= 1.01;
        }
    }

    #[test]
    fn what_cannot_be_is_refused() {
        for (first, second, named) in [
            (at(40.0, 68.0), at(40.0, 8.5), "second temperature"),
            (at(40.0, 8.5), at(100.0, 68.0), "viscosity at the higher temperature"),
            (at(100.0, 8.5), at(40.0, 8.5), "viscosity at the higher temperature"),
            (at(-300.0, 68.0), at(40.0, 8.5), "temperature"),
            (at(40.0, 0.0), at(100.0, 8.5), "viscosity"),
            (at(40.0, f64::NAN), at(100.0, 8.5), "viscosity"),
        ] {
            let refused = ViscosityLine::through(first, second);
            assert!(matches!(refused, Err(Error::OutOfRange { name, .. }) if name == named), "{named}: {refused:?}");
        }
    }

    #[test]
    fn far_too_cold_is_refused_and_too_thick_is_warned_of() {
        let line = ViscosityLine::through(at(40.0, 68.0), at(100.0, 8.53)).expect("an oil").value;
        assert!(matches!(line.viscosity(Temperature::from_kelvin(30.0)), Err(Error::OutOfRange { .. })));
        assert_eq!(line.viscosity(Temperature::from_celsius(-60.0)).expect("thick").warnings.len(), 1);
        assert_eq!(line.viscosity(Temperature::from_celsius(0.0)).expect("usual").warnings.len(), 0);
    }
}
