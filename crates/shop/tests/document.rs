//! Edits of a chart's text: what they touch, what they leave alone, what is refused, and the way back.

use proptest::prelude::*;
use shop::chart::{Chart, When};
use shop::document::{Document, Edit, Refused, Target, Value};
use shop::id::Id;

/// Odd spacing, remarks everywhere, a list over several lines, an element in the middle of a section.
const TEXT: &str = "\
# A chart with remarks.
chart   = 1      # the format
retired = [\"99\"] # was a jig hole

[machine]
name = \"drill\"    # as painted on the door

# ---- Points, from the front ----

# the one that everybody forgets
[[point]]
  id     = \"1\"
  name   = \"Quill\" # under the cap
  method = \"oil hole\"
  dose   = \"3 drops\"

  every  = [
    \"1 use\",   # before
    \"4 h\",
  ]

  [[point.evidence]]
  of  = \"dose\"
  how = \"told\"

[[point]]
id=\"2\"
name='Column'
method=\"brush\"
feeds = [\"column-way\"]

# ---- Pairs ----
[[pair]]
id   = \"column-way\"
kind = \"slideway\"
# end";

fn id(text: &str) -> Id {
    Id::new(text).expect("a test writes right ids")
}

fn set(of: &str, key: &str, to: &str) -> Edit {
    Edit::Set { of: Target::Element(id(of)), key: key.to_owned(), to: Value::Text(to.to_owned()) }
}

fn document() -> Document {
    Document::read(TEXT).expect("the chart is right")
}

#[track_caller]
fn edited(edits: &[Edit]) -> Document {
    match document().edited(edits) {
        Ok(edited) => {
            assert_eq!(edited.document.undone(&edited.undo).as_ref(), Ok(&document()), "undone gives the same bytes");
            edited.document
        }
        Err(refused) => panic!("{refused}"),
    }
}

#[test]
fn a_value_is_written_over_the_old_one_and_its_remark_stays() {
    let after = edited(&[set("1", "name", "Quill \"sleeve\"")]);
    assert_eq!(after.text(), TEXT.replace("name   = \"Quill\" # under", "name   = \"Quill \\\"sleeve\\\"\" # under"));
    assert_eq!(after.chart().points[0].name, "Quill \"sleeve\"");
}

#[test]
fn a_new_key_stands_in_the_order_of_the_registry_with_its_neighbour_s_indent() {
    let after = edited(&[set("1", "sign", "oil sinks")]);
    assert_eq!(after.text(), TEXT.replace("    \"4 h\",\n  ]\n", "    \"4 h\",\n  ]\n  sign   = \"oil sinks\"\n"));
    let after = edited(&[set("1", "stand", "front")]);
    assert_eq!(after.text(), TEXT.replace("\"oil hole\"\n", "\"oil hole\"\n  stand  = \"front\"\n"));
    let machine = Edit::Set { of: Target::Machine, key: "kind".to_owned(), to: Value::Text("drill".to_owned()) };
    assert_eq!(edited(&[machine]).text(), TEXT.replace("on the door\n", "on the door\nkind = \"drill\"\n"));
}

#[test]
fn a_key_taken_out_takes_its_line_and_nothing_else() {
    let clear = Edit::Clear { of: Target::Element(id("1")), key: "dose".to_owned() };
    assert_eq!(edited(&[clear]).text(), TEXT.replace("  dose   = \"3 drops\"\n", ""));
}

#[test]
fn an_element_is_added_behind_the_last_of_its_list() {
    let text = |text: &str| Value::Text(text.to_owned());
    let keys =
        vec![("id".to_owned(), text("3")), ("name".to_owned(), text("Belt idler")), ("method".to_owned(), text("cup"))];
    let after = edited(&[Edit::Add { list: "point".to_owned(), within: None, keys }]);
    let block = "feeds = [\"column-way\"]\n\n[[point]]\nid     = \"3\"\nname   = \"Belt idler\"\nmethod = \"cup\"\n";
    assert_eq!(after.text(), TEXT.replace("feeds = [\"column-way\"]\n", block));
    let told = vec![("how".to_owned(), text("traced"))];
    let after = edited(&[Edit::Add { list: "point.evidence".to_owned(), within: Some(id("1")), keys: told }]);
    assert_eq!(
        after.text(),
        TEXT.replace("  how = \"told\"\n", "  how = \"told\"\n\n[[point.evidence]]\nhow = \"traced\"\n")
    );
    assert_eq!(after.chart().points[0].evidence.len(), 2);
}

#[test]
fn an_element_taken_out_takes_its_own_remarks_along_and_its_id_is_retired() {
    let after = edited(&[Edit::Remove { of: Target::Element(id("1")) }]);
    assert!(!after.text().contains("everybody forgets") && !after.text().contains("Quill"));
    assert!(after.text().contains("# ---- Points, from the front ----") && after.text().contains("# the format"));
    assert!(after.text().contains("retired = [\"99\", \"1\"] # was a jig hole"), "{}", after.text());
    let evidence = edited(&[Edit::Remove { of: Target::Evidence(id("1"), 0) }]);
    assert_eq!(evidence.chart().points[0].evidence.len(), 0);
    assert!(evidence.text().contains("retired = [\"99\"] # was"), "an evidence has no id to retire");
}

#[test]
fn what_would_break_the_chart_is_refused_with_its_faults() {
    let before = document();
    let Err(Refused::Faulty { faults, .. }) = before.edited(&[set("1", "dose", "3")]) else {
        panic!("a dose has a unit")
    };
    assert!(faults[0].says.contains("without a unit"));
    let remove_pair = Edit::Remove { of: Target::Element(id("column-way")) };
    assert!(
        matches!(before.edited(std::slice::from_ref(&remove_pair)), Err(Refused::Faulty { .. })),
        "point 2 feeds it"
    );
    let clear = Edit::Clear { of: Target::Element(id("2")), key: "feeds".to_owned() };
    assert!(before.edited(&[remove_pair, clear]).is_ok(), "both together leave nothing dangling");
    let again = vec![
        ("id".to_owned(), Value::Text("99".to_owned())),
        ("name".to_owned(), Value::Text("n".to_owned())),
        ("method".to_owned(), Value::Text("cup".to_owned())),
    ];
    assert!(
        matches!(
            before.edited(&[Edit::Add { list: "point".to_owned(), within: None, keys: again }]),
            Err(Refused::Faulty { .. })
        ),
        "99 was retired"
    );
}

#[test]
fn an_edit_of_what_is_not_there_says_so() {
    let before = document();
    assert!(matches!(before.edited(&[set("7", "name", "x")]), Err(Refused::NoElement(_))));
    assert!(matches!(before.edited(&[set("1", "nmae", "x")]), Err(Refused::NoKey { .. })));
    assert!(matches!(before.edited(&[set("1", "id", "5")]), Err(Refused::NoKey { .. })), "an id stays what it is");
    let told = || vec![("how".to_owned(), Value::Text("guess".to_owned()))];
    let add =
        |within: Option<&str>| Edit::Add { list: "point.evidence".to_owned(), within: within.map(id), keys: told() };
    assert!(matches!(before.edited(&[add(Some("column-way"))]), Err(Refused::NoElement(_))), "a pair is no point");
    assert!(matches!(before.edited(&[add(None)]), Err(Refused::NoElement(_))));
    assert!(matches!(before.edited(&[Edit::Remove { of: Target::Machine }]), Err(Refused::NoElement(_))));
    let inline = Document::read("chart = 1\nmachine = { name = \"m\" }\n").expect("the chart is right");
    let edit = Edit::Set { of: Target::Machine, key: "kind".to_owned(), to: Value::Text("drill".to_owned()) };
    assert!(matches!(inline.edited(&[edit]), Err(Refused::Inline(_))));
}

#[test]
fn a_new_machine_begins_with_a_chart_of_its_name() {
    let new = Document::new("Drill \"the old one\"", Some("drill")).expect("a name");
    assert_eq!(new.text(), "chart = 1\n\n[machine]\nname = \"Drill \\\"the old one\\\"\"\nkind = \"drill\"\n");
    assert_eq!(new.chart().machine.name, "Drill \"the old one\"");
    assert!(Document::new(" ", None).is_err());
}

#[test]
fn an_undo_of_another_text_is_refused() {
    let first = document().edited(&[set("1", "name", "A")]).expect("a name");
    let second = first.document.edited(&[set("1", "name", "Bee")]).expect("a name");
    assert_eq!(second.document.undone(&first.undo), Err(Refused::Changed));
}

#[test]
fn every_sort_of_value_is_read_back() {
    let when = When([(id("feed"), vec!["hand".to_owned(), "box".to_owned()])].into());
    let text = |text: &str| Value::Text(text.to_owned());
    let option = vec![
        ("id".to_owned(), text("feed")),
        ("question".to_owned(), text("Is there a box?\nLook \\ feel\ttwice")),
        ("choices".to_owned(), Value::Texts(vec!["hand".to_owned(), "box".to_owned(), "pawl".to_owned()])),
    ];
    let of = |key: &str, to: Value| Edit::Set { of: Target::Element(id("1")), key: key.to_owned(), to };
    let after = edited(&[
        Edit::Add { list: "option".to_owned(), within: None, keys: option },
        of("when", Value::When(when.clone())),
        of("at", Value::Numbers([0.25, 1.0])),
        Edit::Set { of: Target::Element(id("column-way")), key: "irreplaceable".to_owned(), to: Value::YesNo(true) },
    ]);
    let point = &after.chart().points[0];
    assert_eq!((&point.when, point.at), (&when, Some([0.25, 1.0])));
    assert!(after.chart().pairs[0].irreplaceable);
    assert_eq!(after.chart().options[0].question, "Is there a box?\nLook \\ feel\ttwice");
}

/// Edits of all sorts, right and wrong ones.
fn any_edit() -> impl Strategy<Value = Edit> {
    let ids = prop::sample::select(vec!["1", "2", "3", "column-way", "99", "x1", "x2"]);
    let keys =
        prop::sample::select(vec!["name", "dose", "every", "sign", "feeds", "kind", "when", "note", "stand", "plate"]);
    let texts = prop::sample::select(vec![
        "3 drops",
        "2",
        "1 week",
        "column-way",
        "front",
        "a \"b\" # c",
        "brush",
        "journal",
        "",
    ]);
    let lists = prop::sample::select(vec!["point", "pair", "assembly", "point.evidence", "finding"]);
    (0..6_u8, ids.clone(), ids, keys, texts, lists).prop_map(|(what, of, new, key, to, list)| {
        let text = |text: &str| Value::Text(text.to_owned());
        let target = Target::Element(id(of));
        match what {
            0 | 1 => Edit::Set { of: target, key: key.to_owned(), to: text(to) },
            2 => Edit::Clear { of: target, key: key.to_owned() },
            3 => Edit::Remove { of: target },
            4 => Edit::Remove { of: Target::Evidence(id(of), 0) },
            _ => {
                let mut keys = vec![("id".to_owned(), text(new))];
                match list {
                    "point" => keys.extend([("name".to_owned(), text("n")), ("method".to_owned(), text("cup"))]),
                    "pair" => keys.push(("kind".to_owned(), text("slideway"))),
                    "assembly" => keys.push(("name".to_owned(), text("n"))),
                    "finding" => keys.push(("kind".to_owned(), text("leak"))),
                    _ => keys = vec![("how".to_owned(), text("guess"))],
                }
                Edit::Add { list: list.to_owned(), within: (list == "point.evidence").then(|| id(of)), keys }
            }
        }
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn any_edits_leave_a_right_chart_and_undone_give_the_same_bytes(edits in prop::collection::vec(any_edit(), 1..10)) {
        let mut now = document();
        let mut back = Vec::new();
        for edit in &edits {
            if let Ok(edited) = now.edited(std::slice::from_ref(edit)) {
                let read = Chart::read(edited.document.text()).value;
                prop_assert_eq!(read.as_ref(), Some(edited.document.chart()));
                back.push(edited.undo);
                now = edited.document;
            }
        }
        for undo in back.iter().rev() {
            now = now.undone(undo).map_err(|refused| TestCaseError::fail(refused.to_string()))?;
        }
        prop_assert_eq!(now.text(), TEXT);
    }

    #[test]
    fn remarks_stay_where_no_element_is_taken_out(edits in prop::collection::vec(any_edit(), 1..10)) {
        let remarks = |text: &str| text.lines().filter_map(|line| line.split_once("# ").map(|(_, remark)| remark.to_owned())).collect::<Vec<_>>();
        let mut now = document();
        for edit in edits.iter().filter(|edit| !matches!(edit, Edit::Remove { .. } | Edit::Clear { .. })) {
            // A text with a number sign of its own is no remark.
            if matches!(edit, Edit::Set { to: Value::Text(text), .. } if text.contains('#')) {
                continue;
            }
            if let Ok(edited) = now.edited(std::slice::from_ref(edit)) {
                // Only a list that held remarks inside loses them when it is written anew.
                let written_anew = matches!(edit, Edit::Set { key, .. } if key == "every");
                if !written_anew {
                    prop_assert_eq!(remarks(edited.document.text()), remarks(now.text()));
                }
                now = edited.document;
            }
        }
    }

    #[test]
    fn what_is_set_is_read_back(name in "[^\\p{C}]{1,40}") {
        prop_assume!(!name.trim().is_empty());
        let after = document().edited(&[set("2", "name", &name)]).map_err(|refused| TestCaseError::fail(refused.to_string()))?;
        prop_assert_eq!(&after.document.chart().points[1].name, &name);
    }
}

#[test]
fn the_demo_s_charts_written_to_a_file_and_read_again_are_the_same() {
    for text in [include_str!("../../../demo/crank-shaper.toml"), include_str!("../../../demo/knee-mill.toml")] {
        let document = Document::read(text).expect("the demo's charts are right");
        let again = Document::read(document.text().to_owned()).expect("what was written is right");
        assert_eq!((again.text(), again.chart()), (text, document.chart()));
        // Each point renamed and named back: every byte is where it was.
        let mut now = document.clone();
        for point in &document.chart().points {
            now = now.edited(&[set(point.id.as_str(), "name", "other")]).expect("a name").document;
            now = now.edited(&[set(point.id.as_str(), "name", &point.name)]).expect("a name").document;
        }
        assert_eq!(now.text(), text);
    }
}
