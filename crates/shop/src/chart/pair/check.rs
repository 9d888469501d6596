//! What is written of a pair and cannot be right together: sizes, speeds, materials.

use tribology::quantity::{Length, Velocity, digits_of};

use super::{Pair, PairKind};
use crate::amount::Speed;
use crate::reading::Table;

/// The longest bearing that a chart may state, as length over diameter: past it a slip of the pen is likelier than a bearing.
const LONGEST_BEARING: f64 = 10.0;

/// The fastest that the surfaces of a kind of pair rub on any machine tool, m/s, well above what any old one does (from memory; for gears twice
/// the 25 m/s to which handbooks let guarded ones dip).
fn fastest(kind: PairKind) -> f64 {
    match kind {
        PairKind::Journal | PairKind::RollingBearing => 80.0,
        PairKind::GearMesh | PairKind::FrictionClutch => 50.0,
        PairKind::Worm | PairKind::Chain | PairKind::SlidingCollar => 30.0,
        PairKind::Cam => 20.0,
        PairKind::Slideway | PairKind::ScrewAndNut => 5.0,
    }
}

/// What a rolling bearing can run, as turns a minute times its mean diameter in mm: four hundred thousand is where special methods begin, by
/// handbooks; five times that is a slip of the pen on an old machine.
const FASTEST_ROLLING: f64 = 2e6;

/// Dimensions that cannot be right together.
pub(super) fn check(table: &Table<'_>, pair: &Pair) {
    if let (PairKind::Journal, Some(length), Some(diameter)) = (pair.kind, &pair.length, &pair.diameter)
        && length.value.mm() > LONGEST_BEARING * diameter.value.mm()
    {
        table.fault("length", &format!(
            "is \"{}\", more than {LONGEST_BEARING} times its diameter of \"{}\"; no journal bearing is that long, so look which of the two is mistyped",
            length.text, diameter.text
        ));
    }
    if let (Some(clearance), Some(diameter)) = (&pair.clearance, &pair.diameter)
        && clearance.value >= diameter.value
    {
        table.fault(
            "clearance",
            &format!(
                "is \"{}\", as wide as the journal's \"{}\"; write the play on the diameter, such as \"0.05 mm\"",
                clearance.text, diameter.text
            ),
        );
    }
    if let (Some(bore), Some(outside)) = (&pair.bore, &pair.outside)
        && bore.value >= outside.value
    {
        table.fault(
            "outside",
            &format!(
                "is \"{}\", not larger than the bore of \"{}\"; look which of the two is mistyped",
                outside.text, bore.text
            ),
        );
    }
    if let Some(arc) = pair.arc.as_ref().filter(|arc| arc.value.degrees() > 360.0) {
        table.fault("arc", &format!("is \"{}\", more than the whole circle; write at most \"360 deg\"", arc.text));
    }
    speeds(table, pair);
    materials(table, pair);
}

/// Speeds that no such pair can run.
fn speeds(table: &Table<'_>, pair: &Pair) {
    let most = Velocity::from_m_s(fastest(pair.kind));
    if let Some(found) = pair.fastest().filter(|found| *found > most) {
        table.fault(
            "speeds",
            &format!(
                "makes the surfaces rub at {} m/s, and no {} of a machine tool goes faster than {} m/s; look whether the speed or the size is \
                 mistyped",
                digits_of(found.m_s(), 3),
                pair.kind,
                digits_of(most.m_s(), 2)
            ),
        );
        return;
    }
    let mean = match (&pair.bore, &pair.outside) {
        (Some(bore), Some(outside)) => Length::from_m(0.5 * (bore.value.m() + outside.value.m())),
        _ => return,
    };
    let turns = pair.speeds.iter().filter_map(|speed| match speed {
        Speed::Turning(turning) => Some(turning.rpm()),
        Speed::Sliding(_) => None,
    });
    if let Some(rpm) = turns.max_by(f64::total_cmp).filter(|rpm| rpm * mean.mm() > FASTEST_ROLLING) {
        table.fault(
            "speeds",
            &format!(
                "holds {} rpm, more than a rolling bearing of {} mm mean diameter can run; look whether the speed or the size is mistyped",
                digits_of(rpm, 3),
                digits_of(mean.mm(), 3)
            ),
        );
    }
}

/// Materials that cannot both be what is written.
fn materials(table: &Table<'_>, pair: &Pair) {
    if let [_, _, _, ..] = pair.surfaces.as_slice() {
        table.fault(
            "surfaces",
            &format!(
                "names {} materials, and two surfaces rub in a moving pair; write two, such as [\"steel\", \"bronze\"], and make two pairs of two bearings",
                pair.surfaces.len()
            ),
        );
        return;
    }
    let has = |surface: &str, words: &[&str]| words.iter().any(|word| surface.to_lowercase().contains(word));
    let soft = ["white metal", "babbitt"];
    if let [first, second] = pair.surfaces.as_slice()
        && has(first, &soft)
        && has(second, &soft)
    {
        table.fault(
            "surfaces",
            "says that white metal runs on white metal; one of the two is the shaft, so write what that is, such as [\"steel\", \"white metal\"]",
        );
    }
    let bush = ["bronze", "white metal", "babbitt", "gunmetal", "leather", "wood"];
    if pair.kind == PairKind::RollingBearing
        && let Some(surface) = pair.surfaces.iter().find(|surface| has(surface, &bush) && !has(surface, &["cage"]))
    {
        table.fault(
            "surfaces",
            &format!(
                "says \"{surface}\" of a rolling bearing, whose balls and rings are steel; if a bush is meant, write kind = \"journal\""
            ),
        );
    }
    if pair.kind == PairKind::FrictionClutch
        && pair.surfaces.iter().any(|surface| has(surface, &["leather", "cork"]))
        && pair.note.as_deref().is_some_and(|note| note.to_lowercase().starts_with("wet"))
    {
        table.fault(
            "surfaces",
            "names a lining that must stay dry, and its note says that the clutch is wet; look which of the two is so",
        );
    }
}
