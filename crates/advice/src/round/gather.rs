//! Points gathered by stand: stopped before running, the stands in the chart's order, and at each stand the points that need
//! the same slide or cover moved together, so that each is moved once.

use shop::chart::{Chart, Point, State};
use shop::id::Id;

use super::{AtStand, RoundPoint};

/// The name of the place for points whose stand is not charted.
const NOT_CHARTED: &str = "Where it says";

/// The round's points by state and stand.
pub(super) fn by_stand(chart: &Chart, points: Vec<(&Point, RoundPoint)>) -> Vec<AtStand> {
    let mut gathered: Vec<AtStand> = Vec::new();
    for (point, entry) in points {
        let same = gathered.iter_mut().find(|at| at.state == point.state && at.stand == point.stand);
        match same {
            Some(at) => at.points.push(entry),
            None => gathered.push(AtStand {
                stand: point.stand.clone(),
                name: name_of(chart, point.stand.as_ref()),
                state: point.state,
                points: vec![entry],
            }),
        }
    }
    let place = |stand: &Option<Id>| match stand {
        Some(id) => chart.stands.iter().position(|known| known.id == *id).unwrap_or(usize::MAX - 1),
        None => usize::MAX,
    };
    gathered.sort_by_key(|at| (at.state == State::Running, place(&at.stand)));
    for at in &mut gathered {
        let first_of_moves: Vec<Vec<String>> = at.points.iter().map(|point| point.moves.clone()).collect();
        let rank = |moves: &Vec<String>| {
            (!moves.is_empty(), first_of_moves.iter().position(|seen| seen == moves).unwrap_or(usize::MAX))
        };
        at.points.sort_by_key(|point| rank(&point.moves));
    }
    gathered
}

fn name_of(chart: &Chart, stand: Option<&Id>) -> String {
    stand
        .and_then(|id| chart.stands.iter().find(|known| known.id == *id))
        .map_or_else(|| NOT_CHARTED.to_owned(), |stand| stand.name.clone())
}
