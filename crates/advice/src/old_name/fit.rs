//! How well the grades of today fit a band.

use tribology::math;
use tribology::oil::{GRADES, IsoGrade};
use tribology::quantity::KinematicViscosity;

/// How a grade fits a band.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit {
    /// The grade.
    pub grade: IsoGrade,
    /// One when its midpoint lies in the band; less the farther outside, nought one whole step of grades away.
    pub fit: f64,
}

/// The usual ratio of two neighbouring grades.
const STEP: f64 = 1.5;

/// The grades that fit a band at all, best first: the one that practice usually takes, if it fits by half at least, then by fit, then by
/// nearness to the middle.
#[must_use]
pub fn fits((low, high): (KinematicViscosity, KinematicViscosity), usual: Option<IsoGrade>) -> Vec<Fit> {
    let centre = math::sqrt(low.mm2_s() * high.mm2_s());
    let fit = |grade: IsoGrade| {
        let middle = grade.middle().mm2_s();
        // A midpoint on the edge is inside, also after its digits have gone through other units.
        let outside = (low.mm2_s() / middle).max(middle / high.mm2_s()).max(1.0);
        (1.0 - math::ln(outside) / math::ln(STEP)).max(0.0)
    };
    let from_centre = |grade: IsoGrade| math::ln(grade.middle().mm2_s() / centre).abs();
    let mut fits: Vec<Fit> = GRADES.into_iter().map(|grade| Fit { grade, fit: fit(grade) }).collect();
    fits.retain(|one| one.fit > 0.0);
    fits.sort_by(|a, b| {
        let usual = |one: &Fit| Some(one.grade) == usual && one.fit >= 0.5;
        let by_fit = usual(b).cmp(&usual(a)).then(b.fit.total_cmp(&a.fit));
        by_fit.then(from_centre(a.grade).total_cmp(&from_centre(b.grade)))
    });
    fits
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn grades_inside_fit_wholly_and_those_beside_in_part() {
        let mm2_s = KinematicViscosity::from_mm2_s;
        let found = fits((mm2_s(41.4), mm2_s(74.8)), IsoGrade::of(68));
        let numbers: Vec<u32> = found.iter().map(|one| one.grade.number()).collect();
        assert_eq!((numbers[0], numbers[1], found[1].fit), (68, 46, 1.0));
        assert!(found[2..].iter().all(|one| one.fit > 0.0 && one.fit < 1.0));
        let narrow = fits((mm2_s(57.9), mm2_s(57.9)), None);
        assert_eq!(narrow[0].grade.number(), 68);
    }
}
