//! Names that say what sort of oil was meant, with the viscosities that go with them and the words for a label of today. All of it
//! is common practice or from memory: a suggestion, never a fact.

/// The sort of oil or grease.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Family {
    /// Straight mineral oil.
    Straight,
    /// Oil for fast spindles.
    Spindle,
    /// Oil that goes round: rust and oxidation inhibited.
    Circulating,
    /// Hydraulic oil.
    Hydraulic,
    /// Oil for slideways.
    Way,
    /// Oil for gears.
    Gear,
    /// Oil with a few percent of fatty oil.
    Compounded,
    /// A fatty oil itself.
    Fatty,
    /// A grease.
    Grease,
}

/// A name with what it means today.
#[derive(Debug, PartialEq)]
pub struct Name {
    /// Words that must all stand in the text, any of them in one of these forms.
    words: &'static [&'static [&'static str]],
    /// What it is, in plain words.
    pub says: &'static str,
    /// The sort.
    pub family: Family,
    /// The band in mm²/s at 40 °C; none for a grease.
    pub band: Option<(f64, f64)>,
    /// What to look for on a label, in words of open standards.
    pub look_for: &'static [&'static str],
}

const STRAIGHT: &[&str] = &["ISO-L-AN", "straight mineral", "non-detergent"];
const CIRCULATING: &[&str] = &["ISO-L-CKB", "DIN HL", "turbine or circulating oil, rust and oxidation inhibited"];
const SPINDLE: &[&str] = &["ISO-L-FC or FD", "spindle oil"];
const WAY: &[&str] = &["ISO-L-G", "DIN CGLP", "slideway oil"];
const GEAR: &[&str] =
    &["ISO-L-CKC for steel gears only", "DIN CLP", "ask for a copper strip of 1a or 1b where bronze runs"];
const CYLINDER: &[&str] = &["ISO-L-Z", "DIN 51510 Z", "compounded, or straight without extreme-pressure additive"];
const WORM: &[&str] = &["ISO-L-CKE", "AGMA Comp", "compounded with 3 to 10 % fatty oil"];
const HYDRAULIC: &[&str] = &["ISO-L-HM", "DIN HLP (not HLPD)", "anti-wear"];
const GREASE_2: &[&str] = &["NLGI 2", "lithium", "DIN K2K"];
const GREASE_3: &[&str] = &["NLGI 3", "calcium or lithium", "DIN K3K"];
const GREASE_OPEN: &[&str] = &["open-gear compound without solvent", "brush it on thin"];

/// Every name, the more particular before the more general.
pub(super) const NAMES: &[Name] = &[
    grease(&[&["cup"], &["grease"]], "cup grease: a stiff grease for screw-down cups", GREASE_3),
    grease(&[&["fibre", "fiber"], &["grease"]], "fibre grease: a soda grease for bearings", GREASE_2),
    grease(&[&["gear"], &["shield", "grease", "compound"]], "open-gear compound", GREASE_OPEN),
    grease(&[&["grease"]], "a grease", GREASE_2),
    oil(
        &[&["steam", "cylinder"], &["cylinder", "oil"]],
        "steam-cylinder oil",
        Family::Compounded,
        (390.0, 830.0),
        CYLINDER,
    ),
    oil(&[&["valve"], &["oil"]], "steam-cylinder oil", Family::Compounded, (390.0, 830.0), CYLINDER),
    oil(&[&["worm"]], "oil for worm gears", Family::Compounded, (390.0, 750.0), WORM),
    oil(&[&["light"], &["spindle"]], "light spindle oil", Family::Spindle, (9.0, 16.5), SPINDLE),
    oil(&[&["heavy"], &["spindle"]], "heavier spindle oil", Family::Spindle, (18.0, 24.2), SPINDLE),
    oil(&[&["spindle"]], "spindle oil", Family::Spindle, (9.0, 24.2), SPINDLE),
    oil(&[&["way", "slideway", "slide"], &["heavy", "vertical"]], "heavy way oil", Family::Way, (135.0, 242.0), WAY),
    oil(&[&["way", "slideway", "slide"]], "way oil", Family::Way, (61.2, 74.8), WAY),
    oil(&[&["hydraulic"]], "hydraulic oil", Family::Hydraulic, (28.8, 74.8), HYDRAULIC),
    oil(
        &[&["dynamo", "loom"]],
        "light machine oil, as for dynamos and looms",
        Family::Straight,
        (28.8, 50.6),
        STRAIGHT,
    ),
    oil(
        &[&["light"], &["machine", "machinery", "bearing", "engine"]],
        "light machine oil",
        Family::Straight,
        (28.0, 50.6),
        STRAIGHT,
    ),
    oil(
        &[&["heavy"], &["machine", "machinery", "bearing", "engine"]],
        "heavy machine oil",
        Family::Straight,
        (61.2, 166.0),
        STRAIGHT,
    ),
    oil(
        &[&["medium"], &["machine", "machinery", "bearing", "engine"]],
        "medium machine oil",
        Family::Straight,
        (41.4, 74.8),
        STRAIGHT,
    ),
    oil(
        &[&["lathe", "machine", "machinery", "shafting"], &["oil"]],
        "machine oil",
        Family::Straight,
        (41.4, 74.8),
        STRAIGHT,
    ),
    oil(
        &[&["engine"], &["oil"]],
        "engine oil, in the old sense of machine oil",
        Family::Straight,
        (41.4, 110.0),
        STRAIGHT,
    ),
    oil(&[&["turbine", "circulating"]], "circulating oil", Family::Circulating, (28.8, 74.8), CIRCULATING),
    oil(&[&["transmission", "gear"]], "gear oil", Family::Gear, (135.0, 506.0), GEAR),
    oil(&[&["sperm"]], "sperm oil; today a mineral oil of the same body", Family::Fatty, (13.5, 24.2), STRAIGHT),
    oil(&[&["lard"]], "lard oil; today a mineral oil of the same body", Family::Fatty, (28.8, 50.6), STRAIGHT),
    oil(&[&["castor"]], "castor oil; today a mineral oil of the same body", Family::Fatty, (198.0, 352.0), STRAIGHT),
    oil(
        &[&["neatsfoot", "olive", "tallow"]],
        "a fatty oil; today a mineral oil of the same body",
        Family::Fatty,
        (28.8, 74.8),
        STRAIGHT,
    ),
];

const fn oil(
    words: &'static [&'static [&'static str]],
    says: &'static str,
    family: Family,
    band: (f64, f64),
    look_for: &'static [&'static str],
) -> Name {
    Name { words, says, family, band: Some(band), look_for }
}

const fn grease(
    words: &'static [&'static [&'static str]],
    says: &'static str,
    look_for: &'static [&'static str],
) -> Name {
    Name { words, says, family: Family::Grease, band: None, look_for }
}

impl Name {
    /// The first name whose words stand in a text that was taken apart.
    pub(super) fn in_words(there: &[&str]) -> Option<&'static Self> {
        let all = |name: &&Self| name.words.iter().all(|forms| forms.iter().any(|form| there.contains(form)));
        NAMES.iter().find(all)
    }
}
