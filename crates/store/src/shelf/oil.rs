//! An oil or a grease as a row of the file.

use shop::shelf::{Grease, Oil};

use super::{Written, quantity, text};
use crate::db::{Row, Tx, places, values};
use crate::error::Result;

const COLUMNS: [&str; 28] = [
    "id",
    "number",
    "recorded",
    "said_by",
    "place",
    "name",
    "family",
    "symbol",
    "v40",
    "v100",
    "viscosity_index",
    "density",
    "pour_point",
    "flash_point",
    "ep_sulphur",
    "detergent",
    "tackifier",
    "friction_modifier",
    "fatty",
    "solids",
    "copper_strip",
    "thickener",
    "nlgi",
    "base_v40",
    "packs",
    "stock",
    "stock_mass",
    "note",
];

pub(super) async fn write(tx: &Tx, oil: &Oil, number: i64, place: usize, written: &Written<'_>) -> Result<()> {
    let sql = format!("INSERT INTO oil_revision ({}) VALUES ({})", COLUMNS.join(", "), places(1, COLUMNS.len()));
    let values = values![
        oil.id.as_str(),
        number,
        written.at,
        written.by,
        place as i64,
        oil.name.as_str(),
        oil.family.to_string(),
        oil.symbol.clone(),
        text(&oil.v40),
        text(&oil.v100),
        oil.index,
        text(&oil.density),
        text(&oil.pour_point),
        text(&oil.flash_point),
        oil.ep_sulphur.to_string(),
        oil.detergent.to_string(),
        oil.tackifier.to_string(),
        oil.friction_modifier.to_string(),
        oil.fatty.to_string(),
        oil.solids.to_string(),
        oil.copper_strip.clone(),
        oil.grease.thickener.clone(),
        oil.grease.nlgi.clone(),
        text(&oil.grease.base_v40),
        serde_json::to_string(&oil.packs).expect("a list of texts always has a JSON form"),
        text(&oil.stock),
        oil.stock_mass.clone(),
        oil.note.clone(),
    ];
    tx.run(&sql, values).await
}

pub(crate) fn read(row: &Row) -> Result<Oil> {
    let packs: String = row.get("packs")?;
    Ok(Oil {
        id: row.id("id")?,
        name: row.get("name")?,
        family: row.choice("family")?,
        symbol: row.get("symbol")?,
        v40: quantity(row, "v40")?,
        v100: quantity(row, "v100")?,
        index: row.get("viscosity_index")?,
        density: quantity(row, "density")?,
        pour_point: quantity(row, "pour_point")?,
        flash_point: quantity(row, "flash_point")?,
        ep_sulphur: row.choice("ep_sulphur")?,
        detergent: row.choice("detergent")?,
        tackifier: row.choice("tackifier")?,
        friction_modifier: row.choice("friction_modifier")?,
        fatty: row.choice("fatty")?,
        solids: row.choice("solids")?,
        copper_strip: row.get("copper_strip")?,
        grease: Grease {
            thickener: row.get("thickener")?,
            nlgi: row.get("nlgi")?,
            base_v40: quantity(row, "base_v40")?,
        },
        packs: serde_json::from_str(&packs).map_err(|_| row.corrupt("column packs holds no list of texts"))?,
        stock: quantity(row, "stock")?,
        stock_mass: row.get("stock_mass")?,
        note: row.get("note")?,
    })
}
