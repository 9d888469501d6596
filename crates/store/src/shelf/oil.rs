//! An oil or a grease as a row of the file.

use shop::shelf::{Grease, Oil, Pack};

use super::{Written, quantity, text};
use crate::db::{Row, Tx, Value};
use crate::error::Result;
use crate::seal;

pub(super) async fn write(tx: &Tx, oil: &Oil, number: i64, place: usize, written: &Written<'_>) -> Result<()> {
    let packs: Vec<&str> = oil.packs.iter().map(|pack| pack.text.as_str()).collect();
    let packs = serde_json::to_string(&packs).expect("a list of texts always has a JSON form");
    let row = vec![
        ("id", Value::from(oil.id.as_str())),
        ("number", number.into()),
        ("recorded", written.at.into()),
        ("said_by", written.by.into()),
        ("place", (place as i64).into()),
        ("name", oil.name.as_str().into()),
        ("family", oil.family.to_string().into()),
        ("symbol", oil.symbol.clone().into()),
        ("v40", text(&oil.v40).into()),
        ("v100", text(&oil.v100).into()),
        ("viscosity_index", oil.index.into()),
        ("density", text(&oil.density).into()),
        ("pour_point", text(&oil.pour_point).into()),
        ("flash_point", text(&oil.flash_point).into()),
        ("ep_sulphur", oil.ep_sulphur.to_string().into()),
        ("detergent", oil.detergent.to_string().into()),
        ("tackifier", oil.tackifier.to_string().into()),
        ("friction_modifier", oil.friction_modifier.to_string().into()),
        ("fatty", oil.fatty.to_string().into()),
        ("solids", oil.solids.to_string().into()),
        ("copper_strip", oil.copper_strip.clone().into()),
        ("thickener", oil.grease.thickener.clone().into()),
        ("nlgi", oil.grease.nlgi.clone().into()),
        ("base_v40", text(&oil.grease.base_v40).into()),
        ("packs", packs.into()),
        ("stock", text(&oil.stock).into()),
        ("stock_mass", oil.stock_mass.clone().into()),
        ("note", oil.note.clone().into()),
    ];
    seal::insert(tx, "oil_revision", row).await
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
        packs: serde_json::from_str::<Vec<String>>(&packs)
            .map_err(|_| row.corrupt("column packs holds no list of texts"))?
            .iter()
            .map(|text| Pack::kept(text))
            .collect(),
        stock: quantity(row, "stock")?,
        stock_mass: row.get("stock_mass")?,
        note: row.get("note")?,
    })
}
