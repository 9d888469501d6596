//! `shelf add`: one oil or grease as its can and its data sheet tell it.

use std::process::ExitCode;

use advice::data_sheet::DataSheet;
use clap::Args;
use shop::shelf::{Shelf, oil_from};
use tribology::oil::classified;

use crate::failure::Failure;
use crate::{say, shop_file};

use super::super::Shared;

#[derive(Debug, Args)]
pub(crate) struct Add {
    /// Its own short name, such as way-68.
    id: String,
    /// What stands on the can.
    #[arg(long)]
    name: String,
    /// straight, circulating, hydraulic, way, spindle, gear, engine, transmission, compounded, grease or other.
    #[arg(long)]
    family: String,
    /// A viscosity of the data sheet as temperature=viscosity; twice when the sheet gives two.
    #[arg(long, value_name = "100F=315SUS")]
    known: Vec<String>,
    /// The viscosity index, when the sheet gives one viscosity.
    #[arg(long)]
    index: Option<String>,
    /// The class on the label, such as ISO-L-HM; it supplies what it implies.
    #[arg(long)]
    symbol: Option<String>,
    #[arg(long, value_name = "875kg/m3")]
    density: Option<String>,
    #[arg(long, value_name = "-27C", allow_hyphen_values = true)]
    pour_point: Option<String>,
    #[arg(long, value_name = "210C")]
    flash_point: Option<String>,
    /// Active sulphur for extreme pressure: yes, no or "not stated"; so for the next five.
    #[arg(long, value_name = "yes|no")]
    ep_sulphur: Option<String>,
    #[arg(long, value_name = "yes|no")]
    detergent: Option<String>,
    #[arg(long, value_name = "yes|no")]
    tackifier: Option<String>,
    #[arg(long, value_name = "yes|no")]
    friction_modifier: Option<String>,
    #[arg(long, value_name = "yes|no")]
    fatty: Option<String>,
    #[arg(long, value_name = "yes|no")]
    solids: Option<String>,
    /// The result of the copper-strip test.
    #[arg(long, value_name = "1b")]
    copper_strip: Option<String>,
    /// Of a grease, its soap.
    #[arg(long)]
    thickener: Option<String>,
    /// Of a grease, its stiffness.
    #[arg(long)]
    nlgi: Option<String>,
    /// Of a grease, the viscosity of its oil at 40 °C.
    #[arg(long, value_name = "150mm2/s")]
    base_v40: Option<String>,
    /// A pack in which it is sold, with its price when it is known; as often as there are packs.
    #[arg(long, value_name = "20 L at 85 EUR")]
    pack: Vec<String>,
    /// What is there now.
    #[arg(long, value_name = "14 L")]
    stock: Option<String>,
    #[arg(long)]
    note: Option<String>,
    /// Who says so.
    #[arg(long, default_value = "keeper")]
    by: String,
}

impl Add {
    pub(super) async fn run(self, shared: &Shared) -> Result<ExitCode, Failure> {
        let readings = self.known.iter().map(|known| match known.split_once('=') {
            Some((at, reading)) => Ok((at.to_owned(), reading.to_owned())),
            None => Err(Failure::Use(format!("--known is \"{known}\"; write the temperature, an equals sign and the viscosity there, such as 40C=68mm2/s"))),
        });
        let sheet = DataSheet { readings: readings.collect::<Result<_, _>>()?, index: self.index.clone() };
        let stated = sheet.stated().map_err(|refused| Failure::Use(refused.to_string()))?;
        let note = [stated.as_ref().and_then(|stated| stated.note.clone()), self.note.clone()];
        let note = note.into_iter().flatten().collect::<Vec<_>>().join(" ");
        let text = |text: &Option<String>| text.clone().unwrap_or_default();
        let answers = [
            ("id", self.id.clone()),
            ("name", self.name.clone()),
            ("family", self.family.clone()),
            ("symbol", text(&self.symbol)),
            ("v40", stated.as_ref().map(|stated| stated.v40.clone()).unwrap_or_default()),
            ("v100", stated.as_ref().and_then(|stated| stated.v100.clone()).unwrap_or_default()),
            (
                "index",
                stated.as_ref().and_then(|stated| stated.index).map(|index| index.to_string()).unwrap_or_default(),
            ),
            ("density", text(&self.density)),
            ("pour_point", text(&self.pour_point)),
            ("flash_point", text(&self.flash_point)),
            ("ep_sulphur", text(&self.ep_sulphur)),
            ("detergent", text(&self.detergent)),
            ("tackifier", text(&self.tackifier)),
            ("friction_modifier", text(&self.friction_modifier)),
            ("fatty", text(&self.fatty)),
            ("solids", text(&self.solids)),
            ("copper_strip", text(&self.copper_strip)),
            ("thickener", text(&self.thickener)),
            ("nlgi", text(&self.nlgi)),
            ("base_v40", text(&self.base_v40)),
            ("packs", self.pack.join("\n")),
            ("stock", text(&self.stock)),
            ("note", note),
        ];
        let oil = oil_from(&answers).map_err(|wrong| {
            let said: Vec<String> =
                wrong.iter().map(|(key, says)| format!("{}: {says}", key.replace('_', "-"))).collect();
            Failure::Use(said.join("\n"))
        })?;
        let open = shop_file::open(shared.shop.as_deref(), shared.at.as_deref()).await?;
        if open.store.shelf_at(open.at).await?.oil(&oil.id).is_some() {
            return Err(Failure::Use(format!(
                "the oil \"{}\" is on the shelf already; give this one another id",
                oil.id
            )));
        }
        let (name, v40) = (oil.name.clone(), oil.v40.as_ref().map(|v40| v40.value));
        open.store.add_shelf(&Shelf { oils: vec![oil], cans: Vec::new() }, open.at, &self.by).await?;
        open.store.close().await?;
        let grade = v40.and_then(|v40| classified(v40).ok()).map(|found| match found.value.grade {
            Some(grade) => format!(": ISO VG {}", grade.number()),
            None => format!(": between grades, nearest ISO VG {}", found.value.nearest.number()),
        });
        say::line(&format!("{name} is on the shelf{}", grade.unwrap_or_default()))?;
        Ok(ExitCode::SUCCESS)
    }
}
