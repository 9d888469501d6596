//! An oil or grease as its can and its data sheet tell it.

use tribology::quantity::{Density, Kind, KinematicViscosity, Temperature, Typed, Volume};

use crate::choice;
use crate::choice::Choice as _;
use crate::id::Id;
use crate::reading::{Element, Key, Sort, Table, Takes};

use super::pack::{Amount, Pack};

choice! {
    /// What sort of lubricant it is, in the trade's words.
    Family {
        /// Straight mineral oil without additives.
        Straight = "straight",
        /// Rust- and oxidation-inhibited circulating oil.
        Circulating = "circulating",
        /// Anti-wear hydraulic oil.
        Hydraulic = "hydraulic",
        /// Slideway oil.
        Way = "way",
        /// Thin oil for fast spindles.
        Spindle = "spindle",
        /// Gear oil.
        Gear = "gear",
        /// Engine oil.
        Engine = "engine",
        /// Automatic-transmission or tractor fluid.
        Transmission = "transmission",
        /// Oil with fatty matter, such as steam-cylinder oil.
        Compounded = "compounded",
        /// Grease.
        Grease = "grease",
        /// Anything else.
        Other = "other",
    }
}

choice! {
    /// Whether the label or the data sheet says that something is in the oil. Not stated is not no.
    Stated {
        /// It says so.
        Yes = "yes",
        /// It says that it is not.
        No = "no",
        /// It says nothing.
        NotStated = "not stated",
    }
}

/// An oil or a grease on the shelf.
#[derive(Clone, Debug, PartialEq)]
pub struct Oil {
    /// Its id.
    pub id: Id,
    /// What stands on the can.
    pub name: String,
    /// What sort it is.
    pub family: Family,
    /// The class on the label, when it names one.
    pub symbol: Option<String>,
    /// Viscosity at 40 °C.
    pub v40: Option<Typed<KinematicViscosity>>,
    /// Viscosity at 100 °C.
    pub v100: Option<Typed<KinematicViscosity>>,
    /// Viscosity index.
    pub index: Option<f64>,
    /// Density, at 15 °C where the sheet says nothing else.
    pub density: Option<Typed<Density>>,
    /// The coldest at which it still pours.
    pub pour_point: Option<Typed<Temperature>>,
    /// Where its vapour first flashes.
    pub flash_point: Option<Typed<Temperature>>,
    /// Active sulphur for extreme pressure.
    pub ep_sulphur: Stated,
    /// Detergent.
    pub detergent: Stated,
    /// Tackifier.
    pub tackifier: Stated,
    /// Friction modifier.
    pub friction_modifier: Stated,
    /// Fatty oil.
    pub fatty: Stated,
    /// Graphite or other powders.
    pub solids: Stated,
    /// The result of the copper-strip test.
    pub copper_strip: Option<String>,
    /// What only greases have.
    pub grease: Grease,
    /// The packs in which it is bought.
    pub packs: Vec<Pack>,
    /// What was there when the shelf was written down.
    pub stock: Option<Typed<Volume>>,
    /// What was there of a grease, by weight.
    pub stock_mass: Option<String>,
    /// Anything worth saying.
    pub note: Option<String>,
}

/// What only greases have.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Grease {
    /// The soap that makes it stiff.
    pub thickener: Option<String>,
    /// Its stiffness.
    pub nlgi: Option<String>,
    /// Viscosity of its oil at 40 °C.
    pub base_v40: Option<Typed<KinematicViscosity>>,
}

pub(super) static KEYS: Element = Element {
    name: "oil",
    says: "An oil or a grease on the shelf",
    keys: &[
        Key::must("id", Takes::Id, "its own short name"),
        Key::must("name", Takes::Text, "what stands on the can"),
        Key::must("family", Takes::Choice(Family::words), "what sort it is"),
        Key::may("symbol", Takes::Text, "the class on the label, when it names one"),
        Key::may("v40", Takes::Quantity(Kind::KinematicViscosity), "viscosity at 40 °C"),
        Key::may("v100", Takes::Quantity(Kind::KinematicViscosity), "viscosity at 100 °C"),
        Key::may("index", Takes::Number, "viscosity index"),
        Key::may("density", Takes::Quantity(Kind::Density), "density"),
        Key::may("pour_point", Takes::Quantity(Kind::Temperature), "the coldest at which it still pours"),
        Key::may("flash_point", Takes::Quantity(Kind::Temperature), "where its vapour first flashes"),
        Key::may("ep_sulphur", Takes::Choice(Stated::words), "active sulphur for extreme pressure"),
        Key::may("detergent", Takes::Choice(Stated::words), "detergent"),
        Key::may("tackifier", Takes::Choice(Stated::words), "tackifier"),
        Key::may("friction_modifier", Takes::Choice(Stated::words), "friction modifier"),
        Key::may("fatty", Takes::Choice(Stated::words), "fatty oil"),
        Key::may("solids", Takes::Choice(Stated::words), "graphite or other powders"),
        Key::may("copper_strip", Takes::Text, "the result of the copper-strip test: 1a, 1b, 2a"),
        Key::may("thickener", Takes::Text, "of a grease, its soap: lithium, calcium, sodium"),
        Key::may("nlgi", Takes::Text, "of a grease, its stiffness: 000 to 6"),
        Key::may("base_v40", Takes::Quantity(Kind::KinematicViscosity), "of a grease, its oil's viscosity at 40 °C"),
        Key::may(
            "packs",
            Takes::Texts,
            "the packs in which it is bought, with their price when it is known: 20 L, or 20 L at 85 EUR",
        ),
        Key::may("stock", Takes::Text, "what is there now"),
        Key::may("note", Takes::Text, "anything worth saying"),
    ],
};

fn packs(table: &Table<'_>) -> Vec<Pack> {
    let read = |text: String| {
        Pack::read(&text).map_err(|says| table.fault("packs", &format!("holds what is no pack: {says}"))).ok()
    };
    table.texts("packs").into_iter().filter_map(read).collect()
}

/// The stock of a grease, which may be weighed or measured.
fn weighed(table: &Table<'_>) -> Option<String> {
    let text = table.text("stock")?;
    if let Err(says) = Amount::read(&text) {
        table.fault("stock", &format!("is not right: {says}"));
    }
    Some(text)
}

pub(super) fn read(table: &Table<'_>) -> Option<Oil> {
    let id = table.id(Sort::Oil);
    let name = table.text("name");
    let family: Option<Family> = table.choice("family");
    let stated = |key| table.choice(key).unwrap_or(Stated::NotStated);
    // Grease is bought and counted by weight, oil by volume.
    let by_weight = family == Some(Family::Grease);
    let oil = Oil {
        symbol: table.text("symbol"),
        v40: table.positive("v40"),
        v100: table.positive("v100"),
        index: table.number("index"),
        density: table.positive("density"),
        pour_point: table.quantity("pour_point"),
        flash_point: table.quantity("flash_point"),
        ep_sulphur: stated("ep_sulphur"),
        detergent: stated("detergent"),
        tackifier: stated("tackifier"),
        friction_modifier: stated("friction_modifier"),
        fatty: stated("fatty"),
        solids: stated("solids"),
        copper_strip: table.text("copper_strip"),
        grease: Grease {
            thickener: table.text("thickener"),
            nlgi: table.text("nlgi"),
            base_v40: table.positive("base_v40"),
        },
        packs: packs(table),
        stock: if by_weight { None } else { table.quantity("stock") },
        stock_mass: if by_weight { weighed(table) } else { None },
        note: table.text("note"),
        id: id?,
        name: name?,
        family: family?,
    };
    if let (Some(v40), Some(v100)) = (&oil.v40, &oil.v100)
        && v100.value >= v40.value
    {
        table.fault(
            "v100",
            &format!(
                "is \"{}\", not below the \"{}\" at 40 °C; oil thins as it warms, so look which of the two is mistyped",
                v100.text, v40.text
            ),
        );
    }
    Some(oil)
}
