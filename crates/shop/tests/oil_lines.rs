//! Oil lines by themselves: every key is taken, and what cannot be is told with its line and its name.

use shop::oil_lines;
use tribology::feed::network::{End, Way};
use tribology::quantity::Length;

const EVERY_KEY: &str = r#"viscosity = "68 mm2/s"
gravity = 9.81
[[node]]
id = "sump"
head = "0 m"
[[node]]
id = "gallery"
relief = "20 m"
[[node]]
id = "glass"
lip = "0.4 m"
[[node]]
id = "way"
outlet = "0.1 m"
draw = "2 mL/min"
[[tube]]
id = "a"
from = "gallery"
to = "glass"
length = "1 m"
bore = "4 mm"
passes = 0.5
[[tube]]
id = "way"
from = "gallery"
to = "way"
length = "2 ft"
bore = "1/8 in"
one_way = true
[[pump]]
id = "p"
from = "sump"
to = "gallery"
flow = "30 mL/min"
slip = "2 mL/min"
slip_at = "10 m"
"#;

#[test]
fn every_key_is_taken() {
    let read = oil_lines::read(EVERY_KEY);
    assert_eq!(read.faults, []);
    let network = read.value.expect("it has no fault");
    let ends: Vec<End> = network.nodes.iter().map(|node| node.end).collect();
    let m = Length::from_m;
    assert_eq!(ends, [End::Head(m(0.0)), End::Relief(m(20.0)), End::Standpipe(m(0.4)), End::Outlet(m(0.1))]);
    assert_eq!((network.gravity.m_s2(), network.nodes[3].draw.ml_min().round()), (9.81, 2.0));
    assert_eq!((network.tubes[0].passes, network.tubes[0].way, network.tubes[1].way), (0.5, Way::Both, Way::Forward));
    assert!((network.tubes[1].bore.mm() - 3.175).abs() < 1e-9);
    assert!(network.pumps[0].slip.is_some_and(|slip| slip.at == m(10.0)));
    assert!(network.solve().is_ok());
}

#[test]
fn faults_are_told_with_their_lines_and_all_at_once() {
    let told = |from: &str, to: &str| {
        let text = EVERY_KEY.replacen(from, to, 1);
        let read = oil_lines::read(&text);
        assert!(read.value.is_none(), "{to}");
        let faults = read.faults.iter().map(|fault| format!("{}: {}", fault.place(&text).line, fault.says));
        faults.collect::<Vec<_>>()
    };
    for (from, to, says) in [
        (
            "lip = \"0.4 m\"",
            "lip = \"0.4 m\"\nhead = \"1 m\"",
            "11: `lip` of the node \"glass\" stands beside another end",
        ),
        ("id = \"glass\"", "id = \"sump\"", "10: `id` of the node \"sump\" is \"sump\", as another node has it"),
        (
            "to = \"glass\"",
            "to = \"glas\"",
            "19: `to` of the tube \"a\" is \"glas\", which is no node of this file; did you mean \"glass\"?",
        ),
        ("to = \"glass\"", "to = \"gallery\"", "19: `to` of the tube \"a\" ends where it begins"),
        ("passes = 0.5", "passes = 5", "22: `passes` of the tube \"a\" is not from 0 (blocked) to 1 (clean)"),
        ("slip_at = \"10 m\"\n", "", "34: `flow` of the pump \"p\" stands with half a slip"),
        ("gravity = 9.81", "gravity = 0", "2: `gravity` of the network is not above zero"),
    ] {
        let told = told(from, to);
        assert!(told.iter().any(|fault| fault.starts_with(says)), "{told:?}");
    }
    let two = told("bore = \"4 mm\"\n", "");
    assert!(two.len() == 1 && two[0].contains("the tube \"a\" has no `bore`"), "{two:?}");
    assert_eq!(told("68 mm2/s", "-68 mm2/s").len(), 1);
}
