//! Draws a large shop by chance and plans its shelf, so that another program can hold the plan against its own.
//!
//! `shelf_plan POINTS OILS SEED alike|odd MOST rows|quiet` prints `row` with the harm of each oil at a point, -1 for never (left out by
//! `quiet`); `choice K HARM BOUND`; `few K` for a number of oils with which a point is left without any; `merged WISHES OILS`; and
//! `seconds S`. In a shop that is *alike* points want bands of body on the steps of ISO grades, as charts do, so that many columns are
//! equal; in an *odd* one the edges of each band lie anywhere, which is harder than any real shop.

use std::io::{self, Write as _};
use std::time::Instant;

use advice::shelf_plan::fewest::{Effort, Matrix, fewest};

fn main() -> io::Result<()> {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let number = |at: usize| words.get(at).and_then(|word| word.parse::<usize>().ok());
    let (Some(points), Some(oils), Some(seed), Some(most)) = (number(0), number(1), number(2), number(4)) else {
        return Err(io::Error::other("shelf_plan POINTS OILS SEED alike|odd MOST rows|quiet"));
    };
    let edges = if words[3] == "odd" { Edges::Odd } else { Edges::OnGrades };
    let matrix = shop(points, oils, seed as u64, edges);
    let mut out = io::BufWriter::new(io::stdout().lock());
    if words.get(5).is_some_and(|word| word == "rows") {
        for row in &matrix.rows {
            let cells: Vec<String> =
                row.iter().map(|harm| harm.map_or_else(|| "-1".to_owned(), |harm| harm.to_string())).collect();
            writeln!(out, "row {}", cells.join(" "))?;
        }
    }
    let began = Instant::now();
    let frontier = fewest(&matrix, most, Effort::USUAL);
    let seconds = began.elapsed().as_secs_f64();
    for few in &frontier.too_few {
        writeln!(out, "few {} {}", few.k, u8::from(few.is_proven))?;
    }
    for choice in &frontier.choices {
        writeln!(out, "choice {} {} {}", choice.oils.len(), choice.harm, choice.bound)?;
    }
    writeln!(out, "merged {} {}\nseconds {seconds}", frontier.merged.0, frontier.merged.1)?;
    out.flush()
}

/// Numbers by chance, the same for the same seed.
struct Chance(u64);

impl Chance {
    fn below(&mut self, limit: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % limit
    }

    /// So many times in twenty.
    fn happens(&mut self, twentieths: u64) -> bool {
        self.below(20) < twentieths
    }
}

/// Where the bands of body begin and end.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Edges {
    OnGrades,
    Odd,
}

/// Sorts of oil: straight, circulating, hydraulic, way, spindle, gear with sulphur, compounded, engine.
const SORTS: u64 = 8;
/// The thinnest and the thickest grade in which each is sold, counted from VG 2; 32 is the eighth, 460 the fourteenth.
const SOLD: [(u64, u64); 8] = [(5, 14), (5, 13), (5, 10), (7, 12), (0, 7), (10, 14), (12, 15), (8, 12)];

/// An oil; its body in tenths of a grade above VG 2.
struct Oil {
    sort: u64,
    body: i64,
    sulphur: bool,
    detergent: bool,
    tackifier: bool,
    copper_passes: bool,
}

/// A kind of point: the sorts that suit and those that serve, the middle of its band in grades, and how wide that is.
struct Kind {
    suits: &'static [u64],
    serves: &'static [u64],
    middle: i64,
    close_spindle: bool,
}

const fn kind(suits: &'static [u64], serves: &'static [u64], middle: i64) -> Kind {
    Kind { suits, serves, middle, close_spindle: false }
}

/// Slow and quick bearings, close spindles, boxes without and with a clutch, worms, level and upright ways, screws, open gears, rolling
/// bearings, collars.
static KINDS: [Kind; 12] = [
    kind(&[0, 1, 2, 3, 4], &[5, 6], 9),
    kind(&[0, 1, 2, 4], &[3, 5, 6], 7),
    Kind { close_spindle: true, ..kind(&[4], &[1, 2], 3) },
    kind(&[0, 1, 2], &[4], 8),
    kind(&[0, 1, 2, 5], &[3, 4, 6], 9),
    kind(&[6], &[0, 1, 5], 14),
    kind(&[3], &[5, 6], 9),
    kind(&[3], &[5, 6], 11),
    kind(&[3], &[0, 1, 2, 5, 6], 10),
    kind(&[3, 5, 6], &[0, 1], 12),
    kind(&[0, 1, 2, 4], &[3, 5], 8),
    kind(&[0, 1, 2, 3], &[4, 5, 6], 9),
];

fn shop(points: usize, oils: usize, seed: u64, edges: Edges) -> Matrix {
    let mut chance = Chance(seed);
    chance.below(2);
    let oils: Vec<Oil> = (0..oils).map(|_| oil(&mut chance)).collect();
    let rows = (0..points).map(|_| row(&mut chance, &oils, edges)).collect();
    let reluctance: Vec<u32> = oils.iter().map(|_| chance.below(4) as u32).collect();
    Matrix { rows, prices: vec![0; reluctance.len()], reluctance }
}

fn oil(chance: &mut Chance) -> Oil {
    let sort = chance.below(SORTS);
    let (thin, thick) = SOLD[sort as usize];
    let grade = (thin + chance.below(thick - thin + 1)) as i64;
    Oil {
        sort,
        // A grade is ten hundredths to either side of its number, a quarter of the way to the next.
        body: 10 * grade + chance.below(5) as i64 - 2,
        sulphur: sort == 5 || sort == 3 && chance.happens(5),
        detergent: sort == 7 || sort == 2 && chance.happens(3),
        tackifier: sort == 3,
        copper_passes: chance.happens(12),
    }
}

/// The harm of each oil at a point drawn by chance, by rules like those of the trade.
fn row(chance: &mut Chance, oils: &[Oil], edges: Edges) -> Vec<Option<u32>> {
    let kind = &KINDS[chance.below(12) as usize];
    let (middle, wide) = match edges {
        Edges::OnGrades => (10 * (kind.middle + chance.below(3) as i64 - 1), 10 * (1 + chance.below(2) as i64)),
        Edges::Odd => (10 * kind.middle + chance.below(31) as i64 - 15, 4 + chance.below(20) as i64),
    };
    let (bronze, warm, thread) = (chance.happens(10), chance.happens(4), chance.happens(3));
    let (bath, irreplaceable) = (chance.happens(6), chance.happens(3));
    let weight = 1 + u32::from(bath) + 2 * u32::from(irreplaceable) + 2 * u32::from(kind.close_spindle);
    let harm = |oil: &Oil| {
        let steps = (oil.body - middle - wide).max(0) + (middle - wide - oil.body).max(0);
        let is_thick = oil.body > middle + wide;
        let by_body = match steps {
            0..=2 => 0,
            3..=12 => 1,
            _ if kind.close_spindle && is_thick => return None,
            _ => 10,
        };
        let by_sort = match oil.sort {
            sort if kind.suits.contains(&sort) => 0,
            sort if kind.serves.contains(&sort) => 1,
            _ => 10,
        };
        let by_metal = match (bronze && oil.sulphur, warm, oil.copper_passes) {
            (true, true, _) => return None,
            (true, false, false) => 10,
            (true, false, true) => 1,
            _ => 0,
        };
        let by_way = match (thread && oil.tackifier, kind.close_spindle && oil.tackifier, bath && oil.detergent) {
            (_, true, _) => return None,
            (true, ..) | (.., true) => 10,
            _ => 0,
        };
        Some(weight * by_body.max(by_sort).max(by_metal).max(by_way))
    };
    oils.iter().map(harm).collect()
}
