//! What is open between a good choice and the bound, closed by going through every choice where they are few, else by a mixed-integer
//! program: an oil is chosen or not, and a wish is paid for unless a chosen oil meets it. Only oils that the bound leaves open take part. The
//! search is limited by the number of its sums and branches.

use std::time::Duration;

use microlp::{ComparisonOp, Error, OptimizationDirection, Problem, SolveOptions, SolveOutcome, Variable};

use super::all;
use super::bound::Bound;
use super::good::Cover;
use super::model::Model;
use super::{Effort, cost, scale, total};

/// What the search came to.
pub(super) struct Found {
    /// A choice that is better than the best known, if it found one.
    pub(super) oils: Option<Vec<usize>>,
    /// No choice has a smaller total.
    pub(super) bound: u64,
}

/// Searches for a choice that is better than the best known; nothing where the effort does not allow it, or where it came to nothing.
pub(super) fn search(model: &Model, k: usize, bound: &Bound<'_>, best: &Cover<'_>, effort: Effort) -> Option<Found> {
    let open = bound.open(best);
    let known = (best.value.missed == 0).then(|| total(model, k, &best.value));
    let none_better = || Found { oils: None, bound: known.unwrap_or(u64::MAX) };
    if open.fixed.len() > k {
        return Some(none_better());
    }
    if all::sums(model, &open.fixed, &open.free, k) <= effort.sums {
        let found = all::best(model, &open.fixed, &open.free, k);
        let total = (found.value.missed == 0).then(|| total(model, k, &found.value));
        // Whatever was ruled out by the bound is no better than the best known.
        let bound = total.into_iter().chain(known).min().unwrap_or(u64::MAX);
        return Some(Found { oils: total.map(|_| found.chosen), bound });
    }
    let mut is_met = vec![false; model.wishes.len()];
    open.fixed.iter().flat_map(|oil| &model.meets[*oil]).for_each(|wish| is_met[*wish] = true);
    let scale = scale(model, k);
    let mut problem = Problem::new(OptimizationDirection::Minimize);
    let mut variables: Vec<Option<Variable>> = vec![None; model.oils.len()];
    for oil in &open.free {
        variables[*oil] = Some(problem.add_binary_var(cost(model, k, *oil) as f64));
    }
    let mut cells = 0;
    for (wish, _) in model.wishes.iter().zip(&is_met).filter(|(_, is_met)| !**is_met) {
        let mut row: Vec<(Variable, f64)> = wish.oils.iter().filter_map(|oil| Some((variables[*oil]?, 1.0))).collect();
        cells += row.len();
        match wish.price {
            Some(price) => row.push((problem.add_var((scale * price) as f64, (0.0, 1.0)), 1.0)),
            None if row.is_empty() => return Some(none_better()),
            None => {}
        }
        problem.add_constraint(row, ComparisonOp::Ge, 1.0);
    }
    if cells > effort.cells || effort.nodes == 0 {
        return None;
    }
    let chosen = variables.iter().flatten().map(|variable| (*variable, 1.0));
    problem.add_constraint(chosen, ComparisonOp::Le, (k - open.fixed.len()) as f64);
    let mut options = SolveOptions::default();
    options.node_limit = Some(effort.nodes);
    options.time_limit = Some(Duration::from_secs(u64::from(effort.seconds)));
    // Totals are whole numbers: closer than one is proof.
    options.mip_gap = known.map_or(0.0, |known| 0.5 / (known as f64 + 1.0));
    let fixed: u64 = scale * model.base + open.fixed.iter().map(|oil| cost(model, k, *oil)).sum::<u64>();
    match problem.solve_with(options) {
        Ok(SolveOutcome::Solution(solution)) => {
            let is_chosen = |oil: &usize| variables[*oil].is_some_and(|variable| solution.var_value(variable) > 0.5);
            let mut oils: Vec<usize> = open.free.iter().copied().filter(is_chosen).collect();
            oils.extend(&open.fixed);
            let lowest = solution.stats().best_bound.map_or(0, |bound| (bound - 1e-3).ceil().max(0.0) as u64);
            let bound = fixed + lowest;
            Some(Found { oils: Some(oils), bound: known.map_or(bound, |known| bound.min(known)) })
        }
        // Whatever was ruled out by the bound is no better than the best known.
        Err(Error::Infeasible) => Some(none_better()),
        Ok(SolveOutcome::Interrupted(_)) | Err(_) => None,
    }
}
