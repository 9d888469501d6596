//! The classes of open standards that labels bear, and what each implies. A class that leaves something open says nothing of it here.

use shop::shelf::Stated::{self, No, Yes};
use tribology::Standing::{self, CommonPractice, FromMemory};

use super::Property::{self, Detergent, EpSulphur, Fatty, FrictionModifier, Solids, Tackifier};

/// A class of an open standard.
#[derive(Debug, PartialEq)]
pub struct Class {
    /// How labels write it, in capitals and without `ISO-L-`; several words stand behind one another.
    pub words: &'static [&'static str],
    /// What it is, in plain words.
    pub says: &'static str,
    /// The standard that defines it.
    pub standard: &'static str,
    /// What it implies.
    pub implies: &'static [(Property, Stated)],
    /// How far that is to be trusted.
    pub standing: Standing,
}

const fn class(
    words: &'static [&'static str],
    says: &'static str,
    standard: &'static str,
    implies: &'static [(Property, Stated)],
    standing: Standing,
) -> Class {
    Class { words, says, standard, implies, standing }
}

/// Nothing but mineral oil.
const PLAIN: &[(Property, Stated)] =
    &[(EpSulphur, No), (Detergent, No), (Tackifier, No), (FrictionModifier, No), (Fatty, No), (Solids, No)];
/// Against rust and age, with nothing that works on the metal.
const INHIBITED: &[(Property, Stated)] = &[(EpSulphur, No), (Fatty, No), (Solids, No), (Tackifier, No)];
/// For gears under load.
const LOADED: &[(Property, Stated)] = &[(EpSulphur, Yes), (Fatty, No)];
/// For ways: it clings and does not stick.
const WAYS: &[(Property, Stated)] = &[(Tackifier, Yes), (FrictionModifier, Yes)];

/// The table.
pub static CLASSES: [Class; 27] = [
    class(&["AN"], "plain mineral oil", "ISO 6743-1", PLAIN, FromMemory),
    class(&["CKB"], "gear oil against rust and age", "ISO 6743-6", INHIBITED, FromMemory),
    class(&["CKC"], "gear oil for load at ordinary temperatures", "ISO 6743-6", LOADED, FromMemory),
    class(&["CKD"], "gear oil for load at high temperatures", "ISO 6743-6", LOADED, FromMemory),
    class(&["CKE"], "gear oil of low friction, for worms", "ISO 6743-6", &[(FrictionModifier, Yes)], FromMemory),
    class(&["HH"], "plain mineral oil", "ISO 6743-4", PLAIN, FromMemory),
    class(&["HL"], "hydraulic oil against rust and age", "ISO 6743-4", INHIBITED, FromMemory),
    class(&["HM"], "hydraulic oil against wear", "ISO 6743-4", INHIBITED, FromMemory),
    class(&["HV"], "hydraulic oil against wear, for cold and warmth", "ISO 6743-4", INHIBITED, FromMemory),
    class(&["HG"], "hydraulic and way oil", "ISO 6743-4", &[(FrictionModifier, Yes)], FromMemory),
    class(&["G", "GA", "GB"], "way oil", "ISO 6743-13", WAYS, FromMemory),
    class(&["FC"], "spindle oil against rust and age", "ISO 6743-2", INHIBITED, FromMemory),
    class(&["FD"], "spindle oil against wear", "ISO 6743-2", INHIBITED, FromMemory),
    class(&["TSA"], "turbine oil against rust and age", "ISO 6743-5", INHIBITED, FromMemory),
    class(&["C", "CL"], "circulating oil", "DIN 51517", INHIBITED, CommonPractice),
    class(&["CLP"], "gear oil for load", "DIN 51517", LOADED, CommonPractice),
    class(&["CG"], "way oil", "DIN 51502", WAYS, CommonPractice),
    class(&["CGLP"], "way oil for load", "DIN 51502", WAYS, CommonPractice),
    class(&["HLP"], "hydraulic oil against wear", "DIN 51524", INHIBITED, CommonPractice),
    class(&["HLPD"], "hydraulic oil with detergent", "DIN 51524", &[(Detergent, Yes), (EpSulphur, No)], CommonPractice),
    class(&["GL-1", "GL1"], "plain gear oil", "API 1560", &[(EpSulphur, No)], CommonPractice),
    class(&["GL-4", "GL4"], "gear oil for hypoid gears", "API 1560", &[(EpSulphur, Yes)], CommonPractice),
    class(&["GL-5", "GL5"], "gear oil for heavy hypoid gears", "API 1560", &[(EpSulphur, Yes)], CommonPractice),
    class(&["R&O"], "oil against rust and age", "ANSI/AGMA 9005", INHIBITED, CommonPractice),
    class(&["COMP"], "compounded gear oil", "ANSI/AGMA 9005", &[(Fatty, Yes), (EpSulphur, No)], CommonPractice),
    class(&["EP"], "gear oil for extreme pressure", "ANSI/AGMA 9005", &[(EpSulphur, Yes)], CommonPractice),
    class(
        &[
            "API SC", "API SD", "API SE", "API SF", "API SG", "API SH", "API SJ", "API SL", "API SM", "API SN",
            "API SP", "API CC", "API CD", "API CF", "API CH-4", "API CI-4", "API CJ-4", "API CK-4",
        ],
        "engine oil with detergent",
        "API 1509",
        &[(Detergent, Yes)],
        CommonPractice,
    ),
];
