//! AGMA lubricant numbers for gears, after AGMA 9005-D94; later editions name ISO grades instead.

use super::{IsoGrade, step, symbol};
use crate::quantity::KinematicViscosity;
use crate::{Answer, Standing};

/// An AGMA lubricant number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[expect(missing_docs, reason = "each is the number that its name spells")]
pub enum AgmaNumber {
    N0,
    N1,
    N2,
    N3,
    N4,
    N5,
    N6,
    N7,
    N8,
    N8A,
    N9,
    N10,
    N11,
    N12,
    N13,
    N14R,
    N15R,
}

/// The viscosities of an AGMA number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum AgmaBand {
    /// An ISO grade.
    Grade(IsoGrade),
    /// Limits at 40 °C.
    At40(KinematicViscosity, KinematicViscosity),
    /// Limits at 100 °C; those ending in R are residual compounds, thinned for use.
    At100(KinematicViscosity, KinematicViscosity),
}

impl AgmaNumber {
    /// Every number with its spelling, thinnest first. `7 Comp` and `8 Comp` are 7 and 8 with fatty oil; `EP` and `S` change no
    /// viscosity.
    pub const ALL: [(AgmaNumber, &'static str); 17] = [
        (AgmaNumber::N0, "0"),
        (AgmaNumber::N1, "1"),
        (AgmaNumber::N2, "2"),
        (AgmaNumber::N3, "3"),
        (AgmaNumber::N4, "4"),
        (AgmaNumber::N5, "5"),
        (AgmaNumber::N6, "6"),
        (AgmaNumber::N7, "7"),
        (AgmaNumber::N8, "8"),
        (AgmaNumber::N8A, "8A"),
        (AgmaNumber::N9, "9"),
        (AgmaNumber::N10, "10"),
        (AgmaNumber::N11, "11"),
        (AgmaNumber::N12, "12"),
        (AgmaNumber::N13, "13"),
        (AgmaNumber::N14R, "14R"),
        (AgmaNumber::N15R, "15R"),
    ];
}

/// The viscosities of an AGMA lubricant number.
///
/// - `number`: the number.
/// - returns: the ISO grade that it is, or its limits.
///
/// # Range
/// 0 to 15R, as the edition of 1994 lists them.
///
/// # Source
/// `agma-9005-d94`
///
/// # Example
/// ```
/// use tribology::oil::{AgmaBand, AgmaNumber, IsoGrade, agma_band};
/// assert_eq!(IsoGrade::of(68).map(AgmaBand::Grade), Some(agma_band(AgmaNumber::N2).value));
/// ```
#[must_use]
pub fn agma_band(number: AgmaNumber) -> Answer<AgmaBand> {
    let at_40 = |low, high| AgmaBand::At40(KinematicViscosity::from_mm2_s(low), KinematicViscosity::from_mm2_s(high));
    let at_100 = |low, high| AgmaBand::At100(KinematicViscosity::from_mm2_s(low), KinematicViscosity::from_mm2_s(high));
    let grade = |vg| AgmaBand::Grade(IsoGrade::of(vg).expect("the table names grades that there are"));
    let band = match number {
        AgmaNumber::N0 => grade(32),
        AgmaNumber::N1 => grade(46),
        AgmaNumber::N2 => grade(68),
        AgmaNumber::N3 => grade(100),
        AgmaNumber::N4 => grade(150),
        AgmaNumber::N5 => grade(220),
        AgmaNumber::N6 => grade(320),
        AgmaNumber::N7 => grade(460),
        AgmaNumber::N8 => grade(680),
        AgmaNumber::N8A => grade(1000),
        AgmaNumber::N9 => grade(1500),
        AgmaNumber::N10 => at_40(2880.0, 3520.0),
        AgmaNumber::N11 => at_40(4140.0, 5060.0),
        AgmaNumber::N12 => at_40(6120.0, 7480.0),
        AgmaNumber::N13 => at_100(190.0, 220.0),
        AgmaNumber::N14R => at_100(428.5, 857.0),
        AgmaNumber::N15R => at_100(857.0, 1714.0),
    };
    let place = AgmaNumber::ALL.iter().position(|(one, _)| *one == number).unwrap_or_default();
    let result = match band {
        AgmaBand::Grade(grade) => symbol("VG", f64::from(grade.number()), ""),
        AgmaBand::At40(low, _) | AgmaBand::At100(low, _) => symbol("lowest", low.m2_s(), "m²/s"),
    };
    let inputs = vec![symbol("row", place as f64 + 1.0, "")];
    let found =
        step("AGMA lubricant number", "table of the edition", inputs, result, "agma-9005-d94", Standing::Standard);
    Answer::of(band, found)
}
