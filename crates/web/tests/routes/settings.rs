//! `GET` and `POST /settings`.

use crate::bench::{Bench, form, led, words};

#[tokio::test]
async fn what_is_kept_is_in_force_on_the_next_page() {
    let bench = Bench::new().await;
    let page = bench.page("/settings").await;
    let typed = [
        ("name", "Mill shop"),
        ("hours", "90 min"),
        ("units", "us"),
        ("cold", "8 °C"),
        ("usual", "60 °F"),
        ("warm", ""),
    ];
    // The form comes with one habit chosen; a browser sends the one that was chosen last.
    let mut sent = form(&page, "Keep this", "");
    sent.pairs.retain(|(name, _)| name != "units");
    sent.pairs.push(("units".into(), "us".into()));
    assert_eq!(led(&bench.press(&sent, &typed).await), "/machines");
    assert_eq!(words(&bench.page("/machines").await, ".title-block dd")[0], "Mill shop");
    let again = form(&bench.page("/settings").await, "Keep this", "");
    let of = |name: &str| again.pairs.iter().find(|(known, _)| known == name).map(|(_, value)| value.as_str());
    assert_eq!(
        [of("units"), of("hours"), of("cold"), of("usual"), of("warm")].map(Option::unwrap_or_default),
        ["us", "1.5 h", "46.4 °F", "60 °F", ""]
    );
    // 0.4 L = 13.5 US fl oz: 29.573 53 mL each, NIST Handbook 44, appendix C.
    let holds = words(&bench.page("/machines/drill").await, ".table td");
    assert!(holds.iter().any(|cell| cell == "14 US fl oz (0.4 L)"), "{holds:?}");
}

#[tokio::test]
async fn what_cannot_be_is_said_and_nothing_is_kept() {
    let bench = Bench::new().await;
    let sent = form(&bench.page("/settings").await, "Keep this", "");
    for (typed, says) in [
        (("name", ""), "Write a name"),
        (("zone", "Moon/Crater"), "is no time zone"),
        (("hours", "long"), "does not begin with a number"),
        (("cold", "8"), "without a unit"),
        (("cold", "300 °C"), "coldest"),
    ] {
        let answer = bench.press(&sent, &[typed, ("usual", "17 °C")]).await;
        assert_eq!(answer.status, 422, "{typed:?}");
        let faults = words(&answer.page(), ".field-fault");
        assert!(faults.iter().any(|fault| fault.contains(says)), "{typed:?}: {faults:?}");
    }
    assert_eq!(words(&bench.page("/machines").await, ".title-block dd")[0], "Test shop");
}
