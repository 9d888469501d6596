//! Options: what every combination of a chart's options must hold. The quick check of the reader is held against the slow one that
//! goes through every combination.

use std::collections::BTreeMap;

use proptest::prelude::*;
use shop::chart::{Chart, When};
use shop::id::Id;

const CHART: &str = r#"chart = 1
[machine]
name = "m"
[[option]]
id = "oiling"
question = "Is there a pump?"
choices = ["holes", "pump"]
here = "holes"
[[option]]
id = "feed"
question = "Is there a box?"
choices = ["hand", "box", "pawl"]
[[pair]]
id = "box-worm"
kind = "worm"
when = { feed = ["box"] }
[[point]]
id = "1"
name = "Worm"
method = "oil hole"
feeds = ["box-worm"]
when = { oiling = "pump" }
"#;

#[test]
fn a_link_that_dangles_in_one_combination_is_a_fault_that_names_it() {
    let read = Chart::read(CHART);
    let told: Vec<(usize, &str)> = read.faults.iter().map(|f| (f.place(CHART).line, f.says.as_str())).collect();
    let [(21, says)] = told[..] else { panic!("{told:?}") };
    assert!(says.contains("\"feed\" is \"hand\" and \"oiling\" is \"pump\""), "{says}");
}

#[test]
fn it_is_none_when_the_conditions_fit_or_the_link_only_mentions() {
    let fits = CHART.replace("when = { oiling = \"pump\" }", "when = { oiling = \"pump\", feed = \"box\" }");
    assert!(Chart::read(&fits).value.is_some());
    let mentions = CHART.replace("feeds = [\"box-worm\"]\n", "")
        + "[[job]]\nid = \"j\"\nname = \"J\"\nwakes = [\"1\"]\n[[finding]]\nid = \"F\"\nkind = \"leak\"\nof = [\"1\", \"box-worm\"]\n";
    assert!(Chart::read(&mentions).value.is_some(), "{:?}", Chart::read(&mentions).faults);
}

#[test]
fn nodes_and_tubes_share_the_condition_of_their_circuit() {
    let text = "chart = 1\n[machine]\nname = \"m\"\n[[option]]\nid = \"o\"\nquestion = \"?\"\nchoices = [\"a\", \"b\"]\n\
                [[pair]]\nid = \"p\"\nkind = \"slideway\"\nwhen = { o = \"a\" }\n\
                [[circuit]]\nid = \"c\"\nname = \"C\"\nwhen = { o = \"a\" }\n\
                [[circuit.node]]\nid = \"n\"\nkind = \"pump\"\n[[circuit.node]]\nid = \"x\"\nkind = \"outlet\"\nfeeds = [\"p\"]\n\
                [[circuit.tube]]\nid = \"t\"\nfrom = \"n\"\nto = \"x\"\n";
    assert!(Chart::read(text).value.is_some(), "{:?}", Chart::read(text).faults);
    let apart = text.replacen("name = \"C\"\nwhen = { o = \"a\" }", "name = \"C\"", 1);
    assert_eq!(Chart::read(&apart).faults.len(), 1, "{:?}", Chart::read(&apart).faults);
}

/// Three options of two, three and two choices.
const OPTIONS: [(&str, &[&str]); 3] = [("o0", &["a", "b"]), ("o1", &["a", "b", "c"]), ("o2", &["a", "b"])];

fn options_chart() -> Chart {
    let options: String = OPTIONS
        .iter()
        .map(|(id, choices)| format!("[[option]]\nid = \"{id}\"\nquestion = \"?\"\nchoices = {choices:?}\n"))
        .collect();
    Chart::read(&format!("chart = 1\n[machine]\nname = \"m\"\n{options}")).value.expect("the chart is right")
}

fn any_when() -> impl Strategy<Value = When> {
    prop::collection::vec((0..3_usize, prop::collection::vec(0..3_usize, 1..3)), 0..3).prop_map(|parts| {
        let mut when = When::default();
        for (option, choices) in parts {
            let (id, known) = OPTIONS[option];
            let chosen = choices.iter().map(|choice| known[choice % known.len()].to_owned()).collect();
            when.0.insert(Id::new(id).expect("an id"), chosen);
        }
        when
    })
}

fn every_combination() -> Vec<BTreeMap<Id, String>> {
    let mut all = vec![BTreeMap::new()];
    for (id, choices) in OPTIONS {
        all = all
            .into_iter()
            .flat_map(|so_far: BTreeMap<Id, String>| {
                choices.iter().map(move |choice| {
                    let mut next = so_far.clone();
                    next.insert(Id::new(id).expect("an id"), (*choice).to_owned());
                    next
                })
            })
            .collect();
    }
    all
}

proptest! {
    #[test]
    fn the_quick_check_finds_a_dangling_combination_exactly_when_one_exists(from in any_when(), to in any_when()) {
        let chart = options_chart();
        let holds = |when: &When, example: &BTreeMap<Id, String>| when.holds(|option| example.get(option).map(String::as_str));
        let exists = every_combination().iter().any(|example| holds(&from, example) && !holds(&to, example));
        let found = from.without(&to, &chart.options);
        prop_assert_eq!(found.is_some(), exists, "{:?} {:?}", from, to);
        if let Some(part) = found {
            // The combination that is named really dangles, whatever the options that it leaves out.
            for mut example in every_combination() {
                example.extend(part.clone());
                prop_assert!(holds(&from, &example) && !holds(&to, &example), "{:?}", example);
            }
        }
    }
}
