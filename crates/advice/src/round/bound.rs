//! What can at most be had in a time when shares of things count: a bound for the choice of points.

/// So much weight for so many seconds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Piece {
    pub(super) weight: f64,
    pub(super) time: f64,
}

/// Pieces by falling weight for their time.
pub(super) fn sorted(mut pieces: Vec<Piece>) -> Vec<Piece> {
    pieces.sort_by(|a, b| (b.weight * a.time).total_cmp(&(a.weight * b.time)));
    pieces
}

/// Pieces that nowhere give less than these do behind `first` seconds that give nothing: the first piece of the answer
/// runs from nothing to where weight for time is greatest. `pieces` fall in weight for their time, and so do those of the answer.
pub(super) fn envelope(first: f64, pieces: &[Piece]) -> Vec<Piece> {
    let mut whole = Piece { weight: 0.0, time: first };
    let mut best: Option<(usize, Piece)> = None;
    for (number, piece) in pieces.iter().enumerate() {
        whole = Piece { weight: whole.weight + piece.weight, time: whole.time + piece.time };
        if best.is_none_or(|(_, best)| whole.weight * best.time > best.weight * whole.time) {
            best = Some((number, whole));
        }
    }
    let Some((last, best)) = best else { return Vec::new() };
    [best].into_iter().chain(pieces[last + 1..].iter().copied()).collect()
}

/// The most weight in a time, a share of the last piece included. The pieces fall in weight for their time.
pub(super) fn most(time: f64, pieces: &[Piece]) -> f64 {
    let (mut left, mut weight) = (time, 0.0);
    for piece in pieces {
        if piece.time >= left {
            return weight + piece.weight * left / piece.time;
        }
        left -= piece.time;
        weight += piece.weight;
    }
    weight
}

#[cfg(test)]
mod tests {
    use super::*;

    fn piece(weight: f64, time: f64) -> Piece {
        Piece { weight, time }
    }

    #[test]
    fn seconds_that_give_nothing_are_spread_over_what_follows_as_far_as_that_helps() {
        // Behind 10 s: 30 for 10, then 30 for 10, then 1 for 10. The first two make 60 for 30; the third would lower that.
        let pieces = envelope(10.0, &[piece(30.0, 10.0), piece(30.0, 10.0), piece(1.0, 10.0)]);
        assert_eq!(pieces, [piece(60.0, 30.0), piece(1.0, 10.0)]);
        assert_eq!(envelope(5.0, &[]), []);
    }

    #[test]
    fn a_share_of_the_last_piece_counts() {
        let pieces = sorted(vec![piece(10.0, 10.0), piece(30.0, 10.0)]);
        assert_eq!(most(15.0, &pieces), 35.0);
        assert_eq!(most(100.0, &pieces), 40.0);
        assert_eq!(most(0.0, &pieces), 0.0);
    }
}
