//! Solves a network of two thousand tubes and prints how long it took, and how much longer a dense solution of a smaller one takes than
//! the sparse one. Nothing is asserted: machines differ.

use std::time::Instant;

use faer::linalg::solvers::Solve as _;
use faer::prelude::Mat;
use tribology::feed::network::{End, Network, Node, Tube, Way};
use tribology::quantity::{KinematicViscosity, Length};

fn main() {
    let large = lattice(32, 32);
    let (seconds, solved) = time(&large);
    println!(
        "{} tubes, {} nodes: {:.2} ms, {} factorizations, residual {:.1e}",
        large.tubes.len(),
        large.nodes.len(),
        1e3 * seconds,
        solved.iterations,
        solved.residual
    );
    let small = lattice(16, 16);
    let (sparse, solved) = time(&small);
    let dense = (0..5).map(|_| dense(&small)).fold(f64::MAX, f64::min);
    println!(
        "{} tubes, {} nodes: sparse {:.2} ms for all {} factorizations, dense {:.2} ms for one; times {:.1} for one each",
        small.tubes.len(),
        small.nodes.len(),
        1e3 * sparse,
        solved.iterations,
        1e3 * dense,
        dense / (sparse / f64::from(solved.iterations))
    );
}

/// The least of five solutions, in seconds.
fn time(network: &Network) -> (f64, tribology::feed::network::Solved) {
    let once = |_| {
        let began = Instant::now();
        let solved = network.solve().expect("the lattice has a tank").value;
        (began.elapsed().as_secs_f64(), solved)
    };
    (0..5).map(once).min_by(|a, b| a.0.total_cmp(&b.0)).expect("five were timed")
}

/// A lattice of tubes of many bores, a tank at one corner, outlets along the far side at several heights, one-way tubes here and there.
fn lattice(wide: usize, high: usize) -> Network {
    let name = |x: usize, y: usize| format!("{x}-{y}");
    let mut nodes = Vec::new();
    let mut tubes = Vec::new();
    for y in 0..high {
        for x in 0..wide {
            let end = match (x, y) {
                (0, 0) => End::Head(Length::from_m(1.0)),
                _ if y + 1 == high => End::Outlet(Length::from_m(0.06 * (x % 7) as f64)),
                _ => End::Closed,
            };
            nodes.push(Node::new(name(x, y), end));
            for (right, down) in [(1, 0), (0, 1)] {
                if x + right < wide && y + down < high {
                    let bore = Length::from_mm(2.0 + ((3 * x + 5 * y + right) % 9) as f64 / 2.0);
                    let (from, to) = (name(x, y), name(x + right, y + down));
                    let label = format!("{from}>{to}");
                    let mut tube = Tube::new(label, from, to, Length::from_m(0.3), bore);
                    if (x * y) % 29 == 28 {
                        tube.way = Way::Forward;
                    }
                    tubes.push(tube);
                }
            }
        }
    }
    // A few dead ends more make two thousand tubes of the larger lattice.
    for x in 0..wide.min(2000_usize.saturating_sub(tubes.len())) {
        nodes.push(Node::new(format!("end {x}"), End::Closed));
        tubes.push(Tube::new(
            format!("line {x}"),
            name(x, high - 1),
            format!("end {x}"),
            Length::from_m(0.2),
            Length::from_mm(2.0),
        ));
    }
    Network::new(KinematicViscosity::from_mm2_s(68.0), nodes, tubes)
}

/// One dense Cholesky factorization and solution of as many unknowns, in seconds.
fn dense(network: &Network) -> f64 {
    let place = |name: &str| network.nodes.iter().position(|node| node.name == name).expect("tubes join nodes");
    let mut matrix = Mat::<f64>::zeros(network.nodes.len(), network.nodes.len());
    for node in 0..network.nodes.len() {
        matrix[(node, node)] = 1e-3;
    }
    for tube in &network.tubes {
        let (from, to) = (place(&tube.from), place(&tube.to));
        for (here, there) in [(from, to), (to, from)] {
            matrix[(here, here)] += 1.0;
            matrix[(here, there)] -= 1.0;
        }
    }
    let began = Instant::now();
    let factors = matrix.llt(faer::Side::Lower).expect("it is positive");
    let mut right = Mat::<f64>::from_fn(network.nodes.len(), 1, |row, _| row as f64);
    factors.solve_in_place(right.as_mut());
    std::hint::black_box(right);
    began.elapsed().as_secs_f64()
}
