//! Where balloons stand beside the places that they name: near, clear of each other and of every place, their leaders not crossed.
//!
//! Method: each balloon in turn takes the cheapest of 216 spots round its place, seen against where the others stand now; again until
//! none moves, twelve times at most. The same places give the same spots. Cost: 216 · n² · passes, a millisecond for forty.

use tribology::math;

/// A spot on the sheet.
pub(crate) type Spot = [f64; 2];

/// How far from its place a balloon may stand, in its own radii.
const REACHES: [f64; 9] = [1.5, 1.9, 2.4, 3.0, 3.8, 4.8, 6.0, 8.0, 10.0];
/// In how many directions.
const TURNS: u32 = 24;
const MOST_PASSES: usize = 12;
/// The air between two balloons, and between a balloon and a place or a leader, in radii.
const AIR: f64 = 0.15;

/// What stands badly costs so much; a unit is one radius of distance from the place.
mod cost {
    pub(super) const ON_A_BALLOON: f64 = 100.0;
    pub(super) const ON_A_PLACE: f64 = 30.0;
    pub(super) const ON_A_LEADER: f64 = 25.0;
    pub(super) const CROSSED: f64 = 15.0;
    pub(super) const LEADER_OVER_A_PLACE: f64 = 8.0;
}

/// The middles of the balloons, in the order of their places.
///
/// - `places`: what they name.
/// - `radius`: of a balloon.
/// - `frame`: left, top, right and bottom of the sheet, which no balloon leaves.
pub(crate) fn spread(places: &[Spot], radius: f64, frame: [f64; 4]) -> Vec<Spot> {
    let mut spots: Vec<Option<Spot>> = vec![None; places.len()];
    for _ in 0..MOST_PASSES {
        let mut moved = false;
        for number in 0..places.len() {
            let best = candidates(places[number], radius, frame)
                .map(|spot| (spot, price(places, &spots, number, spot, radius)))
                .reduce(|best, next| if next.1 < best.1 { next } else { best });
            let spot = best.map_or(places[number], |(spot, _)| spot);
            moved |= spots[number] != Some(spot);
            spots[number] = Some(spot);
        }
        if !moved {
            break;
        }
    }
    spots.into_iter().zip(places).map(|(spot, place)| spot.unwrap_or(*place)).collect()
}

fn candidates(place: Spot, radius: f64, frame: [f64; 4]) -> impl Iterator<Item = Spot> {
    let [left, top, right, bottom] = frame;
    let inside = move |[x, y]: &Spot| {
        (left + radius..=right - radius).contains(x) && (top + radius..=bottom - radius).contains(y)
    };
    let around = REACHES.into_iter().flat_map(move |reach| {
        (0..TURNS).map(move |turn| {
            let angle = f64::from(turn) / f64::from(TURNS) * std::f64::consts::TAU;
            [place[0] + reach * radius * math::cos(angle), place[1] - reach * radius * math::sin(angle)]
        })
    });
    around.filter(inside)
}

/// What it costs to stand a balloon on a spot.
fn price(places: &[Spot], spots: &[Option<Spot>], number: usize, spot: Spot, radius: f64) -> f64 {
    let place = places[number];
    let mut price = between(spot, place) / radius;
    for (other, there) in places.iter().enumerate() {
        if other == number {
            continue;
        }
        if between(spot, *there) < radius * (1.0 + AIR) {
            price += cost::ON_A_PLACE;
        }
        if off(*there, place, spot) < radius * AIR * 2.0 {
            price += cost::LEADER_OVER_A_PLACE;
        }
        let Some(balloon) = spots[other] else { continue };
        let gap = between(spot, balloon) / (radius * (2.0 + AIR));
        if gap < 1.0 {
            price += cost::ON_A_BALLOON * (2.0 - gap);
        }
        if off(balloon, place, spot) < radius * (1.0 + AIR) || off(spot, *there, balloon) < radius * (1.0 + AIR) {
            price += cost::ON_A_LEADER;
        }
        if crossed([place, spot], [*there, balloon]) {
            price += cost::CROSSED;
        }
    }
    price
}

fn between(a: Spot, b: Spot) -> f64 {
    math::sqrt((a[0] - b[0]) * (a[0] - b[0]) + (a[1] - b[1]) * (a[1] - b[1]))
}

/// The distance of a spot from a line between two others.
fn off(spot: Spot, from: Spot, to: Spot) -> f64 {
    let (along, length) = ([to[0] - from[0], to[1] - from[1]], between(from, to));
    let share = if length == 0.0 {
        0.0
    } else {
        ((spot[0] - from[0]) * along[0] + (spot[1] - from[1]) * along[1]) / (length * length)
    };
    let share = share.clamp(0.0, 1.0);
    between(spot, [from[0] + share * along[0], from[1] + share * along[1]])
}

fn crossed(one: [Spot; 2], other: [Spot; 2]) -> bool {
    let side = |[a, b]: [Spot; 2], c: Spot| (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
    side(one, other[0]) * side(one, other[1]) < 0.0 && side(other, one[0]) * side(other, one[1]) < 0.0
}

#[cfg(test)]
mod tests {
    use super::*;

    const FRAME: [f64; 4] = [-90.0, -90.0, 1290.0, 890.0];
    const RADIUS: f64 = 40.0;

    /// Seeded places, a step apart at least, as those of a charted machine are.
    fn places(seed: u64, many: usize) -> Vec<Spot> {
        let mut state = seed;
        let mut next = || {
            // Knuth's linear congruential generator (The Art of Computer Programming, volume 2, section 3.3.4, table 1, line 26).
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (state >> 40) as f64 / 16_777_216.0
        };
        let mut places: Vec<Spot> = Vec::new();
        while places.len() < many {
            let place = [next() * 1200.0, next() * 800.0];
            if places.iter().all(|other| between(*other, place) > 45.0) {
                places.push(place);
            }
        }
        places
    }

    #[test]
    fn balloons_keep_clear_of_each_other_and_of_every_place() {
        for seed in 0..200 {
            let places = places(seed, 4 + seed as usize % 15);
            let spots = spread(&places, RADIUS, FRAME);
            for (number, spot) in spots.iter().enumerate() {
                assert!(
                    FRAME[0] + RADIUS <= spot[0] && spot[0] <= FRAME[2] - RADIUS,
                    "{seed}: {number} leaves the sheet"
                );
                assert!(
                    FRAME[1] + RADIUS <= spot[1] && spot[1] <= FRAME[3] - RADIUS,
                    "{seed}: {number} leaves the sheet"
                );
                for place in &places {
                    assert!(between(*spot, *place) > RADIUS, "{seed}: {number} covers a place");
                }
                for other in 0..number {
                    assert!(between(*spot, spots[other]) > 2.0 * RADIUS, "{seed}: {number} covers {other}");
                    let leaders = ([places[number], *spot], [places[other], spots[other]]);
                    assert!(!crossed(leaders.0, leaders.1), "{seed}: the leaders of {number} and {other} cross");
                }
            }
        }
    }

    #[test]
    fn one_balloon_stands_as_near_as_it_may() {
        let spots = spread(&[[600.0, 400.0]], RADIUS, FRAME);
        assert!((between(spots[0], [600.0, 400.0]) - REACHES[0] * RADIUS).abs() < 1e-9);
    }

    #[test]
    fn the_same_places_give_the_same_spots() {
        let places = places(7, 17);
        assert_eq!(spread(&places, RADIUS, FRAME), spread(&places, RADIUS, FRAME));
    }
}
