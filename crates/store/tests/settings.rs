//! Settings come back, and answers about the time before a change keep the old ones.

use ::shop::snapshot::Conditions;
use jiff::tz::TimeZone;
use store::{Error, Settings};
use tribology::quantity::{Temperature, Units};

use crate::shop::{Shop, minute, settings};

#[tokio::test]
async fn a_change_counts_from_when_it_was_recorded() {
    let shop = Shop::empty().await;
    assert_eq!(shop.store.settings().await, Ok(settings()));
    let warm = Some(Temperature::from_celsius(28.0));
    let changed = Settings {
        name: "The other shop".into(),
        zone: TimeZone::UTC,
        units: Units::Us,
        conditions: Conditions { warm, ..settings().conditions },
        ..settings()
    };
    shop.store.set_settings(&changed, minute(10), "keeper").await.expect("settings that can be kept");
    assert_eq!(shop.store.settings().await, Ok(changed.clone()));
    for (at, then) in [(-5, &settings()), (9, &settings()), (10, &changed)] {
        let snapshot = shop.store.snapshot(minute(at)).await.expect("a whole file");
        assert_eq!((&snapshot.conditions, &snapshot.moment.zone), (&then.conditions, &then.zone));
    }
}

#[tokio::test]
async fn a_zone_without_a_name_is_refused() {
    let shop = Shop::empty().await;
    let posix = TimeZone::posix("XYZ-3").expect("a zone as POSIX writes it");
    let refused = shop.store.set_settings(&Settings { zone: posix, ..settings() }, minute(1), "keeper").await;
    assert_eq!(refused, Err(Error::NamelessZone));
    assert_eq!(shop.store.settings().await, Ok(settings()));
}
