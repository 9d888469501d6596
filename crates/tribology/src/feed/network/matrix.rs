//! The sparse Cholesky factorization of a network's matrix: the pattern is looked at once, the numbers as often as something opens.

use faer::Side;
use faer::linalg::solvers::Solve as _;
use faer::prelude::Mat;
use faer::sparse::linalg::solvers::{Llt, SymbolicLlt};
use faer::sparse::{SparseColMat, Triplet};

/// The pattern of a symmetric matrix, and its factors with the last numbers.
#[derive(Default)]
pub(super) struct Matrix {
    pattern: Option<SymbolicLlt<usize>>,
    factors: Option<Llt<usize, f64>>,
}

impl Matrix {
    /// Factors anew. The places of the entries are the same at every call; those below the diagonal are given, and entries at one
    /// place add up.
    ///
    /// Cost: of the order of the fill, which for tubes that mostly branch is little more than the number of tubes.
    pub(super) fn factor(&mut self, size: usize, entries: &[(usize, usize, f64)]) -> Option<()> {
        let entries: Vec<_> = entries.iter().map(|&(row, column, value)| Triplet::new(row, column, value)).collect();
        let matrix = SparseColMat::<usize, f64>::try_new_from_triplets(size, size, &entries).ok()?;
        let pattern = match &self.pattern {
            Some(pattern) => pattern.clone(),
            None => SymbolicLlt::try_new(matrix.symbolic(), Side::Lower).ok()?,
        };
        self.pattern = Some(pattern.clone());
        self.factors = Some(Llt::try_new_with_symbolic(pattern, matrix.as_ref(), Side::Lower).ok()?);
        Some(())
    }

    /// The solution for a right side.
    pub(super) fn solve(&self, right: &[f64]) -> Option<Vec<f64>> {
        let mut column = Mat::from_fn(right.len(), 1, |row, _| right[row]);
        self.factors.as_ref()?.solve_in_place(column.as_mut());
        Some((0..right.len()).map(|row| column[(row, 0)]).collect())
    }
}
