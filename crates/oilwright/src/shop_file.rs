//! The shop as `--shop` names it, a file or a database, and the machines in it as people name them.

use std::ffi::OsStr;

use jiff::Timestamp;
use shop::fault::nearest;
use shop::id::Id;
use store::{Address, MachineRow, Settings, Store};

use crate::failure::Failure;
use crate::moment;

/// An open shop with the moment of the command.
pub(crate) struct OpenShop {
    pub(crate) store: Store,
    pub(crate) settings: Settings,
    pub(crate) at: Timestamp,
}

/// Opens the shop that `--shop` names.
pub(crate) async fn open(shop: Option<&OsStr>, at: Option<&str>) -> Result<OpenShop, Failure> {
    let store = Store::open(named(shop)?).await?;
    let settings = store.settings().await?;
    let at = moment::instant(at, &settings.zone)?;
    Ok(OpenShop { store, settings, at })
}

/// The file or database that `--shop` names; naming none is wrong use.
pub(crate) fn named(shop: Option<&OsStr>) -> Result<Address, Failure> {
    let Some(text) = shop else {
        return Err(Failure::Use(
            "no shop is named; write --shop FILE or set OILWRIGHT_SHOP, or try the invented one with: oilwright demo"
                .to_owned(),
        ));
    };
    Address::read(text).map_err(|fault| Failure::Use(fault.to_string()))
}

impl OpenShop {
    /// The machine that a person means: its id, its whole name, or the beginning of one of them.
    pub(crate) async fn machine(&self, named: &str) -> Result<MachineRow, Failure> {
        let mut machines = self.store.machines().await?;
        let wanted = named.to_lowercase();
        let exact = |row: &MachineRow| row.id.as_str() == named || row.name.to_lowercase() == wanted;
        if let Some(at) = machines.iter().position(exact) {
            return Ok(machines.swap_remove(at));
        }
        let begins =
            |row: &&MachineRow| row.id.as_str().starts_with(&wanted) || row.name.to_lowercase().contains(&wanted);
        let found: Vec<&MachineRow> = machines.iter().filter(begins).collect();
        match found.as_slice() {
            [only] => Ok((*only).clone()),
            [] => {
                let ids = machines.iter().map(|row| row.id.as_str());
                let hint = match nearest(named, ids.clone()) {
                    Some(near) => format!("did you mean {near}?"),
                    None if machines.is_empty() => "it has none yet: oilwright chart import FILE".to_owned(),
                    None => format!("it has {}", ids.collect::<Vec<_>>().join(", ")),
                };
                Err(Failure::Use(format!("the shop has no machine \"{named}\": {hint}")))
            }
            several => {
                let ids: Vec<&str> = several.iter().map(|row| row.id.as_str()).collect();
                Err(Failure::Use(format!("\"{named}\" may be {}; write one of these ids", ids.join(" or "))))
            }
        }
    }

    /// The ids of machines that a person names.
    pub(crate) async fn machine_ids(&self, named: &[String]) -> Result<Vec<Id>, Failure> {
        let mut ids = Vec::with_capacity(named.len());
        for name in named {
            ids.push(self.machine(name).await?.id);
        }
        Ok(ids)
    }
}
