//! Tables of the trade written a second time, in the order in which books print them. They guard against a slip of the pen and prove
//! nothing; the standing of each row says how far to trust it.

use tribology::Standing;
use tribology::contact::by_table::{self, Pair};
use tribology::contact::gear::{self, Casing, Gear, IMMERSION_TOOTH_DEPTHS, Mesh, bath_speeds, dip_limit};
use tribology::contact::rolling::{
    Bearing, Cleanliness, Oiling, Reliability, SpeedMethod, contamination_range, friction_factor,
};
use tribology::contact::slideway::{
    Orientation, Pace, Way, Weight, allowable_pressure, hydraulic_way_oil, pressure_of_other_texts, way_oil,
};
use tribology::contact::{FULL_IN_EVERY_TEXT, Regime, UsualOil};
use tribology::quantity::{Length, Pressure};

/// `68-150 way, from memory`
fn said(row: &UsualOil) -> String {
    let grades = row.grades.map_or("none".to_owned(), |(thinnest, thickest)| {
        if thinnest == thickest {
            thinnest.number().to_string()
        } else {
            format!("{}-{}", thinnest.number(), thickest.number())
        }
    });
    let families: Vec<_> = row.families.iter().map(|family| family.word()).collect();
    format!("{grades} {}, {}", families.join(" "), row.standing.words())
}

#[test]
fn pairs_without_a_sum_and_gears_get_what_the_trade_gives_them() {
    let pairs = [
        "68-150 way, common practice",
        "68 way, common practice",
        "68 circulating hydraulic way, common practice",
        "32-68 circulating hydraulic, common practice",
        "68-100 circulating way, from memory",
        "32-68 circulating hydraulic, common practice",
        "none , common practice",
        "68-150 circulating way, from memory",
    ];
    assert_eq!(Pair::ALL.map(|pair| said(&by_table::usual_oil(pair).value)), pairs);
    let gears = [
        "150-320 way gear grease, common practice",
        "220-460 gear way, common practice",
        "32-68 circulating hydraulic, common practice",
        "68-150 gear circulating, common practice",
        "68 way circulating, common practice",
        "460-680 compounded, handbook",
    ];
    assert_eq!(Gear::ALL.map(|one| said(&gear::usual_oil(one).value)), gears);
}

#[test]
fn friction_factors_are_as_remembered() {
    // Grease, mist, bath, jet.
    let rows = ["0.7-2/1/2/4", "2/1.7/3.3/6.6", "0.6-1//2.2-4/", "6/3/6/8-10", "5.5/0.8/1.5/3"];
    for (bearing, row) in Bearing::ALL.into_iter().zip(rows) {
        let found = Oiling::ALL.map(|oiling| {
            friction_factor(bearing, oiling).map_or(String::new(), |found| {
                assert_eq!(found.steps[0].standing, Standing::FromMemory);
                let (low, high) = found.value;
                if low < high { format!("{low}-{high}") } else { low.to_string() }
            })
        });
        assert_eq!(found.join("/"), row, "{bearing:?}");
    }
}

#[test]
fn dirt_speed_and_reliability_have_their_tables() {
    let of = |mm| {
        let one = |one| contamination_range(one, Length::from_mm(mm)).expect("a bearing").value;
        Cleanliness::ALL.map(|state| format!("{}-{}", one(state).0, one(state).1)).join(" ")
    };
    assert_eq!(of(60.0), "1-1 0.6-0.8 0.5-0.6 0.3-0.5 0.1-0.3 0-0.1 0-0");
    assert_eq!(of(160.0), "1-1 0.8-0.9 0.6-0.8 0.4-0.6 0.2-0.4 0-0.1 0-0");
    assert_eq!(SpeedMethod::ALL.map(|method| method.span().1), [Some(150_000.0), Some(400_000.0), None]);
    let of = |one: Reliability| one.factor();
    assert_eq!(of(Reliability::Ninety), (1.0, Standing::Standard));
    assert_eq!(of(Reliability::NinetyFive), (0.64, Standing::FromMemory));
    assert_eq!(of(Reliability::NinetyNine), (0.25, Standing::FromMemory));
}

#[test]
fn dipping_and_films_have_their_limits() {
    let near = |found: f64, wanted: f64| (found - wanted).abs() < 1e-9;
    assert!(near(dip_limit(Casing::Simple).value.m_s(), 12.5) && near(dip_limit(Casing::Guarded).value.m_s(), 25.0));
    let (spur, worm) = (bath_speeds(Mesh::SpurOrBevel).value, bath_speeds(Mesh::Worm).value);
    assert!(near(spur.0.m_s(), 4.0) && near(spur.1.m_s(), 15.0) && near(worm.0.m_s(), 3.0) && near(worm.1.m_s(), 10.0));
    assert!(near(IMMERSION_TOOTH_DEPTHS, 2.0) && near(FULL_IN_EVERY_TEXT, 4.0));
    assert_eq!(Regime::ALL.map(|regime| regime.span().1), [Some(1.0), Some(3.0), None]);
}

#[test]
fn ways_press_as_hard_and_want_as_thick_an_oil_as_their_tables_say() {
    let kgf_cm2 = |found: Pressure| (found.pa() / 98_066.5 * 1e6).round() / 1e6;
    let of = |way| (kgf_cm2(allowable_pressure(way).value.low), kgf_cm2(allowable_pressure(way).value.high));
    assert_eq!(Way::ALL.map(of), [(25.0, 30.0), (8.0, 8.0), (10.0, 10.0), (4.0, 4.0)]);
    let others = pressure_of_other_texts().value;
    assert_eq!((kgf_cm2(others.low), kgf_cm2(others.high)), (0.3, 6.0));
    let of = |way, weight, pace| {
        let (thinnest, thickest) = way_oil(way, weight, pace).value;
        (thinnest.number(), thickest.number())
    };
    assert_eq!(of(Orientation::Horizontal, Weight::Light, Pace::Moving), (68, 68));
    assert_eq!(of(Orientation::Horizontal, Weight::Medium, Pace::Moving), (68, 68));
    assert_eq!(of(Orientation::Horizontal, Weight::Medium, Pace::Creeping), (100, 150));
    assert_eq!(of(Orientation::Inclined, Weight::Light, Pace::Moving), (100, 150));
    assert_eq!(of(Orientation::Horizontal, Weight::Heavy, Pace::Moving), (220, 220));
    assert_eq!(of(Orientation::Vertical, Weight::Light, Pace::Moving), (220, 220));
    assert_eq!(hydraulic_way_oil().value.number(), 32);
}
