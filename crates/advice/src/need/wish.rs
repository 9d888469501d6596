//! What a point does not want in its oil, found by trying: each property is put into an oil that is known to have no other, and the rules say
//! what comes of it. So a page never says anything that a verdict does not.

use shop::id::Id;
use shop::shelf::{Family, Grease, Oil, Stated};

use super::{Need, wanted};
use crate::judge::judged;
use crate::label::Property;
use crate::verdict::Reason;

/// A property that a point does not want in its oil.
#[derive(Clone, Debug, PartialEq)]
pub struct Unwanted {
    /// The property.
    pub property: Property,
    /// The strictest of what comes of it.
    pub reason: Reason,
}

/// What a point does not want in its oil, in the order of the shelf file; nothing for points that take grease.
#[must_use]
pub fn unwanted(need: &Need<'_>) -> Vec<Unwanted> {
    if need.pairs.iter().any(|(place, _)| place.takes_grease()) {
        return Vec::new();
    }
    let family = need.pairs.iter().find_map(|(place, _)| wanted(place)?.first().copied());
    let family = family.unwrap_or(Family::Circulating);
    let clean: Vec<Reason> = judged(need, &oil(family, None)).reasons;
    let of = |property: Property| {
        let with = judged(need, &oil(family, Some(property))).reasons;
        let fresh = with.into_iter().find(|reason| clean.iter().all(|known| known.rule != reason.rule));
        fresh.map(|reason| Unwanted { property, reason })
    };
    Property::ALL.into_iter().filter_map(of).collect()
}

/// An oil of a sort that has one property or none.
fn oil(family: Family, with: Option<Property>) -> Oil {
    let stated = |property| if with == Some(property) { Stated::Yes } else { Stated::No };
    Oil {
        id: Id::new("tried").expect("letters are an id"),
        name: String::new(),
        family,
        symbol: None,
        v40: None,
        v100: None,
        index: None,
        density: None,
        pour_point: None,
        flash_point: None,
        ep_sulphur: stated(Property::EpSulphur),
        detergent: stated(Property::Detergent),
        tackifier: stated(Property::Tackifier),
        friction_modifier: stated(Property::FrictionModifier),
        fatty: stated(Property::Fatty),
        solids: stated(Property::Solids),
        copper_strip: None,
        grease: Grease::default(),
        packs: Vec::new(),
        stock: None,
        stock_mass: None,
        note: None,
    }
}
