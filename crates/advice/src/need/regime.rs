//! What a plain bearing's film would be at each of its speeds if it were given all the oil that it wants: boundary, mixed or full. At an oil
//! hole, a cup and a wick it has less by design, so this never sets a verdict. What nobody has measured is taken as usual and told, with what
//! it changes.

use shop::amount::Speed;
use shop::chart::{Pair, PairKind};
use shop::shelf::Oil;
use tribology::contact::journal::{Bearing, Method};
use tribology::contact::{Regime, film_ratio, usual_clearance};
use tribology::oil::{USUAL_DENSITY_KG_M3, dynamic_viscosity};
use tribology::quantity::{Density, DynamicViscosity, Force, Length, Pressure, Rotation, Temperature};

use crate::oil_line::oil_line;

/// The film of a bearing over its speeds.
#[derive(Clone, Debug, PartialEq)]
pub struct Regimes {
    /// Each charted speed with its film, slowest first.
    pub at: Vec<(Rotation, Regime)>,
    /// What was taken as usual.
    pub assumed: Vec<Assumed>,
}

/// Something of a bearing that nobody has measured, as it was taken.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Assumed {
    /// The clearance on the diameter: a thousandth of it.
    Clearance(Length),
    /// The load: so much pressure on the projected bearing.
    Load(Pressure),
    /// The length: as long as its diameter.
    Length(Length),
    /// The roughness of both faces.
    Roughness([Length; 2]),
}

/// A lightly loaded bearing of an old machine tool, MPa on the projected bearing (from memory).
const USUAL_MPA: f64 = 0.5;
/// Turned and ground faces that have run in, Rq in µm (from memory).
const USUAL_RQ_UM: [f64; 2] = [0.8, 0.4];

/// The film of a plain bearing at its charted speeds with an oil at a temperature; nothing for other pairs, without a diameter or a turning
/// speed, and for an oil of unknown body.
#[must_use]
pub fn regimes(pair: &Pair, oil: &Oil, at: Temperature) -> Option<Regimes> {
    let diameter = pair.diameter.as_ref().filter(|_| pair.kind == PairKind::Journal)?.value;
    let mut assumed = Vec::new();
    let length = pair.length.as_ref().map_or_else(
        || {
            assumed.push(Assumed::Length(diameter));
            diameter
        },
        |typed| typed.value,
    );
    let clearance = match &pair.clearance {
        Some(typed) => typed.value,
        None => {
            let usual = usual_clearance(diameter).ok()?.value.usual;
            assumed.push(Assumed::Clearance(usual));
            usual
        }
    };
    let load = pair.load.as_ref().map_or_else(
        || {
            let pressure = Pressure::from_mpa(USUAL_MPA);
            assumed.push(Assumed::Load(pressure));
            Force::from_n(pressure.pa() * diameter.m() * length.m())
        },
        |typed| typed.value,
    );
    let rough = match pair.roughness.as_slice() {
        [first, second, ..] => [first.value, second.value],
        _ => {
            let usual = USUAL_RQ_UM.map(Length::from_um);
            assumed.push(Assumed::Roughness(usual));
            usual
        }
    };
    let density = oil.density.as_ref().map_or(Density::from_kg_m3(USUAL_DENSITY_KG_M3), |typed| typed.value);
    let viscosity: DynamicViscosity = dynamic_viscosity(oil_line(oil)?.line.at(at), density).ok()?.value;
    let mut speeds: Vec<Rotation> = pair
        .speeds
        .iter()
        .filter_map(|speed| match speed {
            Speed::Turning(turning) => Some(*turning),
            Speed::Sliding(_) => None,
        })
        .collect();
    speeds.sort_by(|a, b| a.per_second().total_cmp(&b.per_second()));
    let film = |speed: Rotation| {
        let bearing = Bearing { diameter, length, clearance, load, speed };
        let film = bearing.running(viscosity, Method::Fast).ok()?.value.min_film;
        Some((speed, film_ratio(film, rough[0], rough[1]).ok()?.value.regime))
    };
    let at: Vec<(Rotation, Regime)> = speeds.into_iter().filter_map(film).collect();
    (!at.is_empty()).then_some(Regimes { at, assumed })
}

#[cfg(test)]
mod tests {
    use shop::chart::Chart;
    use shop::shelf::Shelf;

    use super::*;

    fn found(pair: &str, v40: f64, celsius: f64) -> Option<Regimes> {
        let chart = format!("chart = 1\n[machine]\nname = \"M\"\n[[pair]]\nid = \"p\"\nkind = \"journal\"\n{pair}\n");
        let chart = Chart::read(&chart).value.expect("a chart without faults");
        let shelf = format!(
            "shelf = 1\n[[oil]]\nid = \"o\"\nname = \"O\"\nfamily = \"circulating\"\nv40 = \"{v40} mm2/s\"\nindex = 95\n"
        );
        let shelf = Shelf::read(&shelf).value.expect("a shelf without faults");
        regimes(&chart.pairs[0], &shelf.oils[0], Temperature::from_celsius(celsius))
    }

    const SPEEDS: &str = "diameter = \"50 mm\"\nspeeds = [\"600 rpm\", \"6 rpm\", \"60 rpm\"]";

    fn worth(found: &Regimes) -> Vec<u8> {
        found
            .at
            .iter()
            .map(|(_, regime)| match regime {
                Regime::Boundary => 0,
                Regime::Mixed => 1,
                Regime::Full => 2,
            })
            .collect()
    }

    #[test]
    fn a_film_is_never_worse_for_speed_or_body_and_never_better_for_warmth() {
        let loaded = format!("{SPEEDS}\nload = \"10 kN\"");
        let cold = found(&loaded, 68.0, 20.0).expect("a bearing with its speeds");
        assert!(worth(&cold).is_sorted() && cold.at[0].0 < cold.at[1].0);
        assert!(worth(&cold).first() == Some(&0) && worth(&cold).last() == Some(&2), "{cold:?}");
        let (warm, thin) = (found(&loaded, 68.0, 60.0).expect("warm"), found(&loaded, 22.0, 20.0).expect("thin"));
        for other in [&warm, &thin] {
            assert!(worth(other).iter().zip(worth(&cold)).all(|(other, cold)| *other <= cold), "{other:?}");
        }
    }

    #[test]
    fn what_nobody_measured_is_told_and_what_is_measured_is_not() {
        assert_eq!(found(SPEEDS, 68.0, 20.0).map(|found| found.assumed.len()), Some(4));
        let all = format!(
            "{SPEEDS}\nlength = \"60 mm\"\nclearance = \"0.05 mm\"\nload = \"1 kN\"\nroughness = [\"0.8 um\", \"0.4 um\"]"
        );
        assert_eq!(found(&all, 68.0, 20.0).map(|found| found.assumed), Some(Vec::new()));
        assert_eq!(found("diameter = \"50 mm\"", 68.0, 20.0), None, "no speed");
        assert_eq!(found("speeds = [\"60 rpm\"]", 68.0, 20.0), None, "no diameter");
    }
}
