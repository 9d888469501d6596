//! Capacities and doses more than three times off what is usual for their kind, which is a slip of the pen more often than an odd
//! machine. The figures are those of the project's trade notes, there marked as from memory; hence the wide limits.

use tribology::quantity::{Quantity as _, Volume};

use crate::amount::{DROP, DoseAmount};
use crate::chart::{Chart, Method, Point, Reservoir, ReservoirKind};

use super::{Remark, Rule};

/// How far from the usual a figure may lie before it is pointed out.
const FACTOR: f64 = 3.0;

/// The volume of one stroke of a pump can, least and most.
const STROKE_ML: (f64, f64) = (0.3, 1.0);

/// A usual capacity: for machines of these kinds, where the reservoir or its assembly is called so.
struct Usual {
    /// Kinds of machine; empty for all.
    machines: &'static [&'static str],
    /// Kinds of reservoir; empty for all.
    kinds: &'static [ReservoirKind],
    /// Words in the reservoir's id, name or assembly, one of which must stand there; empty for any.
    words: &'static [&'static str],
    /// Least and most, in litres.
    litres: (f64, f64),
    /// What it is, for the sentence.
    what: &'static str,
}

/// The first that fits counts, so the particular stand before the general.
const CAPACITIES: [Usual; 12] = [
    Usual { machines: &[], kinds: &[], words: &["ring"], litres: (0.1, 0.8), what: "a ring-oiled bearing" },
    Usual { machines: &[], kinds: &[ReservoirKind::Cup], words: &[], litres: (0.01, 0.06), what: "a cup or wick well" },
    Usual { machines: &["lathe"], kinds: &[], words: &["headstock"], litres: (0.5, 30.0), what: "a headstock bath" },
    Usual {
        machines: &["lathe"],
        kinds: &[],
        words: &["apron", "feed"],
        litres: (0.2, 3.0),
        what: "a feed box or apron",
    },
    Usual {
        machines: &["mill"],
        kinds: &[],
        words: &["one-shot", "oneshot"],
        litres: (0.25, 0.8),
        what: "a one-shot tank",
    },
    Usual {
        machines: &["mill"],
        kinds: &[],
        words: &["column", "gearbox", "gear-case"],
        litres: (3.0, 15.0),
        what: "a column gearbox",
    },
    Usual { machines: &["mill"], kinds: &[], words: &["knee", "feed"], litres: (0.3, 3.0), what: "a knee or feed box" },
    Usual {
        machines: &["shaper"],
        kinds: &[ReservoirKind::Sump],
        words: &["column", "gear"],
        litres: (4.0, 20.0),
        what: "a shaper's column sump",
    },
    Usual { machines: &["planer"], kinds: &[], words: &["bed"], litres: (20.0, 150.0), what: "a planer's bed" },
    Usual {
        machines: &["grinder"],
        kinds: &[],
        words: &["hydraulic"],
        litres: (20.0, 80.0),
        what: "a grinder's hydraulic tank",
    },
    Usual {
        machines: &["grinder"],
        kinds: &[],
        words: &["spindle"],
        litres: (0.05, 2.0),
        what: "a grinder's spindle reservoir",
    },
    Usual { machines: &[], kinds: &[], words: &["motor"], litres: (0.1, 2.0), what: "a motor's bearing" },
];

/// Usual doses by hand, in millilitres.
const DOSES: [(Method, f64, f64); 6] = [
    (Method::OilHole, 0.07, 0.35),
    (Method::BallOiler, 0.3, 2.0),
    (Method::Cup, 0.5, 5.0),
    (Method::Wick, 1.0, 60.0),
    (Method::Felt, 0.2, 10.0),
    (Method::OneShot, 2.0, 8.0),
];

/// Usual turns of a grease cup.
const TURNS: (f64, f64) = (0.25, 0.5);

pub(super) fn remarks(chart: &Chart) -> Vec<Remark> {
    let reservoirs = chart.reservoirs.iter().filter(|reservoir| chart.applies(&reservoir.when));
    let capacities = reservoirs.filter_map(|reservoir| capacity(chart, reservoir));
    capacities.chain(chart.points_here().filter_map(dose)).collect()
}

fn capacity(chart: &Chart, reservoir: &Reservoir) -> Option<Remark> {
    let given = reservoir.capacity.as_ref()?;
    let machine = chart.machine.kind.as_deref().unwrap_or("").to_lowercase();
    let assembly = reservoir.assembly.as_ref().and_then(|id| chart.assembly(id)).map(|a| a.name.to_lowercase());
    let called = format!(
        "{} {} {}",
        reservoir.id.as_str().to_lowercase(),
        reservoir.name.as_deref().unwrap_or("").to_lowercase(),
        assembly.unwrap_or_default()
    );
    let fits = |usual: &&Usual| {
        (usual.machines.is_empty() || usual.machines.iter().any(|kind| machine.contains(kind)))
            && (usual.kinds.is_empty() || usual.kinds.contains(&reservoir.kind))
            && (usual.words.is_empty() || usual.words.iter().any(|word| called.contains(word)))
    };
    let usual = CAPACITIES.iter().find(fits)?;
    off(given.value.litres(), usual.litres).then(|| Remark {
        rule: Rule::Unusual,
        of: vec![reservoir.id.clone()],
        says: format!(
            "\"{}\" is charted to hold {}, where {} usually holds {} to {} L (from memory)",
            reservoir.id, given.text, usual.what, usual.litres.0, usual.litres.1
        ),
        next: "measure what drains, and see whether the unit is right".to_owned(),
    })
}

fn dose(point: &Point) -> Option<Remark> {
    let dose = point.dose.as_ref()?;
    let (off, usual) = if let DoseAmount::Turns(turns) = dose.amount {
        (off(turns, TURNS), format!("{} to {} turn of a grease cup", TURNS.0, TURNS.1))
    } else {
        let (_, low, high) = DOSES.iter().find(|(method, ..)| *method == point.method)?;
        let (least, most) = millilitres(dose.amount);
        (most < low / FACTOR || least > high * FACTOR, format!("{low} to {high} mL at such a point"))
    };
    off.then(|| Remark {
        rule: Rule::Unusual,
        of: vec![point.id.clone()],
        says: format!(
            "point {} is charted to get {}, where {usual} is usual (common practice, no source)",
            point.id, dose.typed
        ),
        next: "see whether the number and its unit are right".to_owned(),
    })
}

/// The least and most that a dose can be, by the cans that people have.
fn millilitres(dose: DoseAmount) -> (f64, f64) {
    let exact = |volume: Volume| (volume.ml(), volume.ml());
    match dose {
        DoseAmount::Volume(volume) => exact(volume),
        DoseAmount::Drops(drops) => exact(Volume::from_si(drops * DROP.si())),
        DoseAmount::Strokes(strokes) => (strokes * STROKE_ML.0, strokes * STROKE_ML.1),
        DoseAmount::Turns(_) => (0.0, f64::INFINITY),
    }
}

fn off(value: f64, (low, high): (f64, f64)) -> bool {
    value < low / FACTOR || value > high * FACTOR
}
