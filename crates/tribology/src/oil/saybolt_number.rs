//! Saybolt numbers: the seconds at 100 °F by which ISO grades were also called, after ASTM D2422. A label, not a conversion.

use super::IsoGrade;

/// Every number with the ISO grade that it stands for.
///
/// Source: `astm-d2422`.
pub const SAYBOLT_NUMBERS: [(u32, u32); 18] = [
    (32, 2),
    (36, 3),
    (40, 5),
    (50, 7),
    (60, 10),
    (75, 15),
    (105, 22),
    (150, 32),
    (215, 46),
    (315, 68),
    (465, 100),
    (700, 150),
    (1000, 220),
    (1500, 320),
    (2150, 460),
    (3150, 680),
    (4650, 1000),
    (7000, 1500),
];

/// The ISO grade that a Saybolt number stands for.
///
/// - `number`: the number, such as 315.
/// - returns: the grade, when it is one of the eighteen numbers.
///
/// # Range
/// The numbers of [`SAYBOLT_NUMBERS`].
///
/// # Source
/// `astm-d2422`
///
/// # Example
/// ```
/// use tribology::oil::saybolt_number_grade;
/// assert_eq!(saybolt_number_grade(315).map(|grade| grade.number()), Some(68));
/// ```
#[must_use]
pub fn saybolt_number_grade(number: u32) -> Option<IsoGrade> {
    let (_, grade) = SAYBOLT_NUMBERS.into_iter().find(|(label, _)| *label == number)?;
    IsoGrade::of(grade)
}

#[cfg(test)]
mod tests {
    use super::super::GRADES;
    use super::*;

    #[test]
    fn the_numbers_go_through_the_grades_in_order() {
        for ((_, vg), grade) in SAYBOLT_NUMBERS.into_iter().zip(GRADES) {
            assert_eq!(IsoGrade::of(vg), Some(grade));
        }
    }
}
