//! Why the physics has no answer, in a sentence.

use tribology::Error;
use tribology::quantity::Units;

use super::step::measured;

/// Beyond this a limit only means that there is none.
const NO_LIMIT: f64 = 1e300;

/// The reason as a sentence without its full stop: what is wrong, and what would be right.
#[must_use]
pub fn no_answer(error: &Error) -> String {
    match error {
        Error::OutOfRange { name, value, low, high, unit } => {
            let said = |number: f64| measured(number, unit, Units::Metric);
            let wanted = match (*low < f64::MIN_POSITIVE * 2.0, *high > NO_LIMIT) {
                // The smallest number above nought stands for nought left out.
                (true, true) if *low > 0.0 => format!("it must be above {}", said(0.0)),
                (true, false) if *low > 0.0 => format!("it must be above {} and at most {}", said(0.0), said(*high)),
                (_, true) => format!("it must be at least {}", said(*low)),
                _ => format!("it must be {} to {}", said(*low), said(*high)),
            };
            let value = match *value {
                value if value.is_finite() => said(value),
                value if value.is_nan() => "no number".to_owned(),
                _ => "beyond all numbers".to_owned(),
            };
            format!("the {name} is {value}; {wanted}")
        }
        Error::NotBracketed { name, .. } => {
            format!("nothing fits: no {name} agrees with what was given; look at the numbers again")
        }
        Error::NotConverged { name, iterations, .. } => {
            format!(
                "the {name} was not found in {iterations} steps; look at the numbers again, they may be far from life"
            )
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tribology::quantity::{KinematicViscosity, Temperature};

    #[test]
    fn a_reason_names_value_and_limits_in_units_of_the_workshop() {
        let kelvin = Error::quantity_positive("temperature", Temperature::from_celsius(-300.0))
            .map_err(|error| no_answer(&error));
        assert_eq!(kelvin, Err("the temperature is -300 °C; it must be above -273.1 °C".to_owned()));
        let mm2_s = KinematicViscosity::from_mm2_s;
        let thin = Error::quantity_within(
            "viscosity at 100 °C",
            mm2_s(1.9),
            mm2_s(2.0),
            KinematicViscosity::from_m2_s(f64::MAX),
        );
        let says = "the viscosity at 100 °C is 1.9 mm²/s; it must be at least 2 mm²/s";
        assert_eq!(thin.map_err(|error| no_answer(&error)), Err(says.to_owned()));
        let sum = Error::unless_within("sum of the shares", 1.1, 0.999, 1.001).map_err(|error| no_answer(&error));
        assert_eq!(sum, Err("the sum of the shares is 1.1; it must be 0.999 to 1.001".to_owned()));
    }
}
