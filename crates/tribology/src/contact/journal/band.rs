//! A symmetric system of equations whose numbers lie in a band along the diagonal, solved directly.
//!
//! Cholesky's method without pivots, for which the matrix must be positive definite; the cost grows with the unknowns and with the
//! square of the width of the band. No library is used, since this is short and gives the same bytes everywhere.

use crate::math;

/// The lower half of a symmetric matrix, row after row, each row holding `width` numbers before its diagonal and the diagonal.
#[derive(Clone, Debug)]
pub(super) struct Band {
    width: usize,
    rows: Vec<f64>,
}

impl Band {
    /// All zero.
    pub(super) fn new(unknowns: usize, width: usize) -> Self {
        Self { width, rows: vec![0.0; unknowns * (width + 1)] }
    }

    /// Sets the number in a row, so many places before the diagonal.
    pub(super) fn set(&mut self, row: usize, before: usize, value: f64) {
        let stride = self.width + 1;
        self.rows[row * stride + self.width - before] = value;
    }

    /// Turns the right side into the solution; nothing when the matrix is not positive definite.
    pub(super) fn solve(mut self, right: &mut [f64]) -> Option<()> {
        let (width, stride) = (self.width, self.width + 1);
        for row in 0..right.len() {
            let (done, rest) = self.rows.split_at_mut(row * stride);
            let this = &mut rest[..stride];
            for before in (1..=width.min(row)).rev() {
                let other = &done[(row - before) * stride..][..stride];
                let place = width - before;
                let sum = this[place] - dot(&this[..place], &other[before..width]);
                this[place] = sum / other[width];
            }
            let pivot = this[width] - dot(&this[..width], &this[..width]);
            if pivot.is_nan() || pivot <= 0.0 {
                return None;
            }
            this[width] = math::sqrt(pivot);
            let reach = width.min(row);
            right[row] = (right[row] - dot(&this[width - reach..width], &right[row - reach..row])) / this[width];
        }
        for row in (0..right.len()).rev() {
            let this = &self.rows[row * stride..][..stride];
            right[row] /= this[width];
            let found = right[row];
            for before in 1..=width.min(row) {
                right[row - before] -= this[width - before] * found;
            }
        }
        Some(())
    }
}

/// The sum of products, four at a time so that the processor need not wait for each sum.
fn dot(left: &[f64], right: &[f64]) -> f64 {
    let mut sums = [0.0; 4];
    let (lefts, rights) = (left.chunks_exact(4), right.chunks_exact(4));
    let rest: f64 = lefts.remainder().iter().zip(rights.remainder()).map(|(a, b)| a * b).sum();
    for (a, b) in lefts.zip(rights) {
        for (sum, (a, b)) in sums.iter_mut().zip(a.iter().zip(b)) {
            *sum += a * b;
        }
    }
    (sums[0] + sums[1]) + (sums[2] + sums[3]) + rest
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_system_is_solved_to_the_last_digits() {
        let (unknowns, width) = (23, 6);
        let entry = |row: usize, before: usize| match before {
            0 => 9.0 + row as f64 / 7.0,
            _ => -1.0 / (1.0 + ((row * before) % 5) as f64),
        };
        let mut band = Band::new(unknowns, width);
        let wanted: Vec<f64> = (0..unknowns).map(|row| math::sin(row as f64 + 1.0)).collect();
        let mut right = vec![0.0; unknowns];
        for row in 0..unknowns {
            for before in 0..=width.min(row) {
                band.set(row, before, entry(row, before));
                right[row] += entry(row, before) * wanted[row - before];
                if before > 0 {
                    right[row - before] += entry(row, before) * wanted[row];
                }
            }
        }
        band.solve(&mut right).expect("the diagonal outweighs the rest");
        for (found, wanted) in right.iter().zip(&wanted) {
            assert!((found - wanted).abs() < 1e-13, "{found} {wanted}");
        }
    }

    #[test]
    fn a_matrix_that_is_not_positive_definite_is_refused() {
        let mut band = Band::new(2, 1);
        band.set(0, 0, 1.0);
        band.set(1, 0, 1.0);
        band.set(1, 1, 2.0);
        assert!(band.solve(&mut [1.0, 1.0]).is_none());
    }
}
