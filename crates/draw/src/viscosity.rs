//! The viscosity chart: oils as straight lines, on axes that stretch as ASTM D341 stretches them.

use tribology::math;
use tribology::oil::ViscosityLine;
use tribology::quantity::Temperature;

use crate::axis::Axis;
use crate::plot::{Across, Band, Curve, Mark, Plot};

/// An oil on the chart.
#[derive(Clone, Debug)]
pub struct Oil {
    /// Its name.
    pub name: String,
    /// Its line.
    pub line: ViscosityLine,
}

/// The coldest and the warmest of the chart, °C.
const TEMPERATURES: [f64; 2] = [-10.0, 100.0];
/// The thinnest and the thickest, mm²/s.
const VISCOSITIES: [f64; 2] = [2.0, 10_000.0];

/// A chart of oils.
///
/// - `oils`: their lines.
/// - `marks`: temperatures to be marked, with what they are.
/// - `bands`: what can be done with oils of these viscosities in mm²/s.
#[must_use]
pub fn viscosity_chart(oils: &[Oil], marks: &[(String, Temperature)], bands: &[Band]) -> Plot {
    let names: Vec<&str> = oils.iter().map(|oil| oil.name.as_str()).collect();
    let degrees = (-1..=10).map(|ten| f64::from(ten) * 10.0);
    let named =
        [-10.0, 0.0, 20.0, 40.0, 60.0, 80.0, 100.0].map(|celsius| (celsius, format!("{celsius:.0}").replace('-', "−")));
    let thick = [2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 1000.0, 10_000.0];
    let fine = vec![3.0, 4.0, 30.0, 300.0, 500.0, 2000.0, 3000.0, 5000.0];
    let curve = |oil: &Oil| {
        let at = |celsius: f64| (celsius, oil.line.at(Temperature::from_celsius(celsius)).mm2_s());
        // A straight line on these axes needs its two ends, and a few between for the thin end.
        let steps = (0..=22).map(|step| TEMPERATURES[0] + f64::from(step) * 5.0);
        Curve { name: oil.name.clone(), points: steps.map(at).collect() }
    };
    Plot {
        title: format!("Viscosity and temperature: {}", names.join(", ")),
        description: "Each oil is a straight line that falls from left to right: the warmer, the thinner. The table beside it has \
                      the same figures."
            .to_owned(),
        across: Axis::by("°C", TEMPERATURES, named.into(), |celsius| math::log10(celsius + 273.15))
            .with_fine(degrees.collect()),
        up: Axis::by(
            "mm²/s",
            VISCOSITIES,
            thick.map(|mm2_s| (mm2_s, if mm2_s < 10_000.0 { mm2_s.to_string() } else { "10 000".to_owned() })).into(),
            |mm2_s| math::log10(math::log10(mm2_s + 0.7)),
        )
        .with_fine(fine),
        bands: bands.to_vec(),
        marks: marks
            .iter()
            .map(|(name, at)| Mark { name: name.clone(), at: Across::At(at.celsius()) })
            .collect(),
        curves: oils.iter().map(curve).collect(),
    }
}
