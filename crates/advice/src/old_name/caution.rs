//! Remedies of old books that hurt people or machines, recognised by their words and answered with what is done today.

/// A remedy that is not to be followed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Caution {
    /// What the words speak of.
    pub of: &'static str,
    /// What is wrong with it and what is done instead.
    pub instead: &'static str,
}

/// Forms of words, each with its caution.
const CAUTIONS: &[(&[&str], Caution)] = &[
    (
        &["carbon tetrachloride", "carbon tet", "tetrachloride", "pyrene"],
        Caution {
            of: "carbon tetrachloride",
            instead: "it poisons through the lungs and the skin and is banned in most places; wash with a water-based cleaner or \
                      white spirit in the open air, by its safety data sheet",
        },
    ),
    (
        &["gasoline", "petrol", "benzine", "benzene", "benzol", "naphtha"],
        Caution {
            of: "washing with petrol or benzene",
            instead: "its vapour explodes and benzene causes cancer; use white spirit or a water-based cleaner, away from flames and \
                      sparks, by its safety data sheet",
        },
    ),
    (
        &["trichlor", "perchlor", "chlorinated solvent"],
        Caution {
            of: "a chlorinated solvent",
            instead: "it harms liver and nerves and attacks some metals; use white spirit or a water-based cleaner, by its safety data \
                      sheet",
        },
    ),
    (
        &["white lead", "red lead"],
        Caution {
            of: "white or red lead",
            instead: "lead is a poison that stays in the body; use molybdenum disulphide paste on centres and fits, or a modern centre \
                      lubricant",
        },
    ),
    (
        &["asbestos"],
        Caution {
            of: "asbestos",
            instead: "do not saw, scrape or blow it; leave old packing and linings alone, wet, until somebody licensed has looked, and \
                      fit aramid or PTFE packing",
        },
    ),
    (
        &["mercury", "quicksilver"],
        Caution {
            of: "mercury",
            instead: "its vapour poisons; do not fill or open it, and hand it to a licensed collector",
        },
    ),
    (
        &["sperm oil", "whale oil", "sperm-oil"],
        Caution {
            of: "sperm or whale oil",
            instead: "trade in it is forbidden; use a mineral spindle or light machine oil of the same body",
        },
    ),
    (
        &["while running", "while in motion", "machine running"],
        Caution {
            of: "oiling by hand in motion",
            instead: "old books put the can into turning gears; stop the machine, unless the point was made to be oiled running and \
                      can be reached with the guards on",
        },
    ),
    (
        &["kerosene", "paraffin"],
        Caution {
            of: "flushing with kerosene or paraffin",
            instead: "it washes the film from bearings, burns, and thins what is filled after it; flush with a thin mineral oil at \
                      low speed and drain it warm, not hot",
        },
    ),
];

/// The cautions that a text calls for.
pub(super) fn cautions(text: &str) -> Vec<Caution> {
    let text = text.to_lowercase();
    let called = CAUTIONS.iter().filter(|(forms, _)| forms.iter().any(|form| text.contains(form)));
    called.map(|(_, caution)| *caution).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_dangerous_remedy_is_recognised() {
        let of = |text: &str| cautions(text).iter().map(|caution| caution.of).collect::<Vec<_>>();
        assert_eq!(of("Wash the bearing with CARBON TETRACHLORIDE"), ["carbon tetrachloride"]);
        assert_eq!(of("flush out with kerosene, then gasoline").len(), 2);
        assert!(of("300 SUS at 100 F").is_empty());
    }
}
