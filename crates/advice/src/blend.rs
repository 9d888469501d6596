//! Two oils of the shelf mixed to a body that no can has: how much of each, how thick the mixture is at other temperatures, and what
//! speaks against it. Only the number is sure to about six parts in a hundred; whether the additives bear each other, a jar tells.

use shop::shelf::{Family, Oil, Stated};
use tribology::oil::{Part, ViscosityLine, blend_d7152, share_d7152};
use tribology::quantity::{KinematicViscosity, Temperature};
use tribology::{Step, Warning};

use crate::label::{Property, stated};
use crate::oil_line::oil_line;
use crate::topic::Refused;

/// A mixture of two oils.
#[derive(Clone, Debug, PartialEq)]
pub struct Blend {
    /// The share of the thicker oil by volume, 0 to 1.
    pub thick: f64,
    /// The line of the mixture.
    pub line: ViscosityLine,
    /// What speaks against it.
    pub against: Vec<Against>,
    /// What lies outside a method's range.
    pub warnings: Vec<Warning>,
    /// The sums.
    pub steps: Vec<Step>,
}

/// What speaks against mixing two oils.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Against {
    /// They are of unlike sorts.
    Sorts(Family, Family),
    /// Of one it is said that something is in it, of the other that it is not.
    Unlike(Property),
    /// Of one nobody says whether something is in it that is in the other.
    Unsaid(Property),
}

/// The share of the thicker oil that gives a body at 40 °C, after ASTM D7152 by volume.
///
/// - `thin`, `thick`: in either order.
/// - `target`: at 40 °C.
///
/// # Errors
/// [`Refused`] for greases, for an oil whose viscosity nobody has written down, and for a target outside the two.
pub fn blend(thin: &Oil, thick: &Oil, target: KinematicViscosity) -> Result<Blend, Refused> {
    if let Some(grease) = [thin, thick].into_iter().find(|oil| oil.family == Family::Grease) {
        return Err(Refused::new(format!("\"{}\" is a grease; only oils are mixed to a body", grease.name)));
    }
    let line = |oil: &Oil| {
        let unknown = || Refused::new(format!("nobody has written down how thick \"{}\" is at 40 °C", oil.name));
        oil_line(oil).map(|found| found.line).ok_or_else(unknown)
    };
    let [forty, hundred] = [40.0, 100.0].map(Temperature::from_celsius);
    let mut lines = [(line(thin)?, thin), (line(thick)?, thick)];
    if lines[0].0.at(forty) > lines[1].0.at(forty) {
        lines.swap(0, 1);
    }
    let [(thin_line, thin), (thick_line, thick)] = lines;
    let share = share_d7152(thin_line.at(forty), thick_line.at(forty), target)?;
    let parts = |at: Temperature| {
        [(1.0 - share.value, thin_line), (share.value, thick_line)]
            .map(|(share, line)| Part { oil: line.at(at), share })
    };
    let at_hundred = blend_d7152(&parts(hundred))?;
    let mixed = ViscosityLine::through((forty, target), (hundred, at_hundred.value))?;
    let mut warnings = share.warnings;
    warnings.extend(at_hundred.warnings);
    warnings.extend(mixed.warnings);
    let steps = share.steps.into_iter().chain(at_hundred.steps).chain(mixed.steps).collect();
    Ok(Blend { thick: share.value, line: mixed.value, against: against(thin, thick), warnings, steps })
}

fn against(one: &Oil, other: &Oil) -> Vec<Against> {
    let sorts = (one.family != other.family).then_some(Against::Sorts(one.family, other.family));
    let properties = Property::ALL.into_iter().filter_map(|property| {
        match (stated(one, property).stated, stated(other, property).stated) {
            (Stated::Yes, Stated::No) | (Stated::No, Stated::Yes) => Some(Against::Unlike(property)),
            (Stated::Yes, Stated::NotStated) | (Stated::NotStated, Stated::Yes) => Some(Against::Unsaid(property)),
            _ => None,
        }
    });
    sorts.into_iter().chain(properties).collect()
}

#[cfg(test)]
mod tests {
    use shop::shelf::Shelf;

    use super::*;

    fn shelf() -> Vec<Oil> {
        let oil = |id: &str, more: &str| format!("[[oil]]\nid = \"{id}\"\nname = \"{id}\"\n{more}\n");
        let text = [
            "shelf = 1\n".to_owned(),
            oil("thin", "family = \"circulating\"\nv40 = \"32 mm2/s\"\nindex = 95\nsymbol = \"ISO-L-CKB\""),
            oil("thick", "family = \"circulating\"\nv40 = \"220 mm2/s\"\nindex = 95\nsymbol = \"ISO-L-CKB\""),
            oil("gear", "family = \"gear\"\nv40 = \"220 mm2/s\"\nindex = 95\nsymbol = \"ISO-L-CKC\""),
            oil("tub", "family = \"grease\""),
            oil("mute", "family = \"way\""),
        ];
        Shelf::read(&text.concat()).value.expect("a shelf without faults").oils
    }

    fn at_40(mm2_s: f64) -> KinematicViscosity {
        KinematicViscosity::from_mm2_s(mm2_s)
    }

    #[test]
    fn the_mixture_has_the_body_asked_for_and_lies_between_its_parts() {
        let oils = shelf();
        let mixed = blend(&oils[0], &oils[1], at_40(68.0)).expect("it can be mixed");
        let turned = blend(&oils[1], &oils[0], at_40(68.0)).expect("in either order");
        assert_eq!(mixed, turned);
        assert!(mixed.thick > 0.0 && mixed.thick < 1.0 && mixed.against.is_empty(), "{mixed:?}");
        for celsius in [0.0, 40.0, 80.0, 100.0] {
            let at = Temperature::from_celsius(celsius);
            let of = |oil: &Oil| oil_line(oil).expect("a line").line.at(at);
            assert!(of(&oils[0]) < mixed.line.at(at) && mixed.line.at(at) < of(&oils[1]), "{celsius}");
        }
        assert!((mixed.line.at(Temperature::from_celsius(40.0)).mm2_s() - 68.0).abs() < 1e-9);
        // More of the thick oil makes it thicker.
        assert!(blend(&oils[0], &oils[1], at_40(100.0)).expect("it can be mixed").thick > mixed.thick);
    }

    #[test]
    fn what_speaks_against_it_is_told_and_what_cannot_be_refused() {
        let oils = shelf();
        let unlike = blend(&oils[0], &oils[2], at_40(68.0)).expect("the number can be had");
        assert!(unlike.against.contains(&Against::Sorts(Family::Circulating, Family::Gear)));
        assert!(unlike.against.contains(&Against::Unlike(Property::EpSulphur)));
        for (other, target, says) in
            [(1, 300.0, ""), (1, 20.0, ""), (3, 68.0, "is a grease"), (4, 68.0, "nobody has written down")]
        {
            let refused = blend(&oils[0], &oils[other], at_40(target)).expect_err("it cannot be");
            assert!(refused.to_string().contains(says), "{refused}");
        }
    }
}
