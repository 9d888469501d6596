//! The audit: each rule on a chart that breaks it and on one that does not. Usual figures are common practice or from memory, as the
//! remarks say themselves.

use shop::audit::{Remark, Rule, audit};
use shop::chart::Chart;

#[track_caller]
fn remarks(rest: &str) -> Vec<Remark> {
    let text = format!("chart = 1\n[machine]\nname = \"m\"\n{rest}");
    let read = Chart::read(&text);
    audit(&read.value.unwrap_or_else(|| panic!("{:?}", read.faults)))
}

/// The remarks of a rule, as the ids that they are about.
#[track_caller]
fn of(rest: &str, rule: Rule) -> Vec<String> {
    let found = remarks(rest).into_iter().filter(|remark| remark.rule == rule);
    found.map(|remark| remark.of.iter().map(ToString::to_string).collect::<Vec<_>>().join(" ")).collect()
}

const PAIR: &str = "[[pair]]\nid = \"way\"\nkind = \"slideway\"\n";
const WHOLE: &str = "method = \"oil hole\"\nevery = \"1 use\"\nsign = \"wet\"\n";

fn point(id: &str, rest: &str) -> String {
    format!("[[point]]\nid = \"{id}\"\nname = \"n\"\n{WHOLE}{rest}\n")
}

#[test]
fn a_chart_with_nothing_doubtful_has_no_remark() {
    assert_eq!(remarks(&format!("{PAIR}{}", point("1", "feeds = [\"way\"]"))), []);
}

#[test]
fn a_pair_is_fed_by_a_point_a_splash_a_circuit_or_a_reservoir() {
    assert_eq!(of(PAIR, Rule::Unfed), ["way"]);
    let reservoir = "[[reservoir]]\nid = \"sump\"\nkind = \"sump\"\n";
    for feeder in [
        point("1", "feeds = [\"way\"]"),
        format!("{reservoir}feeds = [\"way\"]\n"),
        format!("{reservoir}{}", point("1", "feeds = [\"way\"]\nreservoir = \"sump\"").replace("oil hole", "splash")),
        format!(
            "{reservoir}[[circuit]]\nid = \"c\"\nname = \"C\"\nfrom = \"sump\"\n[[circuit.node]]\nid = \"o\"\nkind = \"outlet\"\nfeeds = [\"way\"]\n"
        ),
    ] {
        assert_eq!(of(&format!("{PAIR}{feeder}"), Rule::Unfed), Vec::<String>::new(), "{feeder}");
    }
    let lines =
        "[[circuit]]\nid = \"c\"\nname = \"C\"\n[[circuit.node]]\nid = \"o\"\nkind = \"outlet\"\nfeeds = [\"way\"]\n";
    assert_eq!(of(&format!("{PAIR}{lines}"), Rule::Unfed), ["way"], "lines that start nowhere feed nothing");
}

#[test]
fn what_cannot_be_bought_again_stands_first_and_a_dry_clutch_is_let_be() {
    let pairs = "[[pair]]\nid = \"a\"\nkind = \"journal\"\n[[pair]]\nid = \"b\"\nkind = \"journal\"\nirreplaceable = true\n\
                 [[pair]]\nid = \"c\"\nkind = \"friction clutch\"\n";
    assert_eq!(of(pairs, Rule::Unfed), ["b", "a"]);
}

#[test]
fn a_pair_of_another_example_is_not_looked_at() {
    let option = "[[option]]\nid = \"o\"\nquestion = \"?\"\nchoices = [\"a\", \"b\"]\nhere = \"a\"\n";
    assert_eq!(of(&format!("{option}{PAIR}when = {{ o = \"b\" }}\n"), Rule::Unfed), Vec::<String>::new());
}

#[test]
fn lines_with_a_dead_end_are_told() {
    let lines = |tubes: &str| {
        format!(
            "{PAIR}[[circuit]]\nid = \"c\"\nname = \"C\"\n\
             [[circuit.node]]\nid = \"p\"\nkind = \"pump\"\n[[circuit.node]]\nid = \"j\"\nkind = \"junction\"\n\
             [[circuit.node]]\nid = \"o\"\nkind = \"outlet\"\nfeeds = [\"way\"]\n[[circuit.node]]\nid = \"e\"\nkind = \"junction\"\n{tubes}"
        )
    };
    let tube =
        |id: &str, from: &str, to: &str| format!("[[circuit.tube]]\nid = \"{id}\"\nfrom = \"{from}\"\nto = \"{to}\"\n");
    let good = [tube("t1", "p", "j"), tube("t2", "j", "o")].concat();
    assert_eq!(of(&lines(&good), Rule::DeadEnd), ["c e"], "the loose junction");
    let stub = good.clone() + &tube("t3", "j", "e");
    assert_eq!(of(&lines(&stub), Rule::DeadEnd), ["c e"], "a stub that ends nowhere");
    let round = good + &tube("t3", "j", "e") + &tube("t4", "e", "o");
    assert_eq!(of(&lines(&round), Rule::DeadEnd), Vec::<String>::new());
    let dry = tube("t1", "j", "e") + &tube("t2", "e", "o");
    assert_eq!(
        of(&lines(&dry), Rule::DeadEnd),
        ["c p", "c j", "c o", "c e"],
        "the pump leads nowhere, so no oil comes"
    );
}

#[test]
fn points_that_lack_something_are_told_together() {
    let chart = format!(
        "{}[[point]]\nid = \"2\"\nname = \"n\"\nmethod = \"cup\"\n[[point]]\nid = \"3\"\nname = \"n\"\nmethod = \"cup\"\n\
         [[point]]\nid = \"4\"\nname = \"Sight\"\nmethod = \"bath\"\nsetup = \"running\"\nsign = \"stream\"\nevery = \"1 use\"\n",
        point("1", "")
    );
    assert_eq!(of(&chart, Rule::NoInterval), ["2 3"]);
    assert_eq!(of(&chart, Rule::FeedsNothing), ["1 2 3"], "a look at a glass feeds nothing and need not");
    assert_eq!(of(&chart, Rule::NoSign), ["2 3"]);
}

#[test]
fn a_reservoir_wants_level_drain_and_vent_and_a_cup_only_its_level() {
    assert_eq!(
        of("[[reservoir]]\nid = \"r\"\nkind = \"sump\"\nlevel = \"mid\"\ndrain = \"plug\"\n", Rule::Reservoir),
        ["r"]
    );
    assert_eq!(
        of("[[reservoir]]\nid = \"r\"\nkind = \"cup\"\nlevel = \"brim\"\n", Rule::Reservoir),
        Vec::<String>::new()
    );
    let whole = "[[reservoir]]\nid = \"r\"\nkind = \"sump\"\nlevel = \"mid\"\ndrain = \"plug\"\nvent = \"cap\"\n";
    assert_eq!(of(whole, Rule::Reservoir), Vec::<String>::new());
}

#[test]
fn figures_more_than_three_times_off_are_told() {
    let sump = |litres: &str| {
        format!(
            "kind = \"shaper\"\n[[assembly]]\nid = \"col\"\nname = \"Column\"\n[[reservoir]]\nid = \"r\"\nassembly = \"col\"\nkind = \"sump\"\ncapacity = \"{litres}\"\n"
        )
    };
    // A shaper's column sump holds 4 to 20 L (project trade notes, from memory).
    assert_eq!(of(&sump("3.5 L"), Rule::Unusual), Vec::<String>::new());
    assert_eq!(of(&sump("350 L"), Rule::Unusual), ["r"]);
    assert_eq!(of(&sump("350 mL"), Rule::Unusual), ["r"]);
    assert_eq!(of(&point("1", "dose = \"3 drops\""), Rule::Unusual), Vec::<String>::new());
    assert_eq!(of(&point("1", "dose = \"30 mL\""), Rule::Unusual), ["1"]);
    assert_eq!(of(&point("1", "dose = \"5 turns\"").replace("oil hole", "grease cup"), Rule::Unusual), ["1"]);
}

#[test]
fn only_what_rests_on_nothing_better_than_a_guess_is_told() {
    let evidence = |of: &str, how: &str| format!("[[point.evidence]]\nof = \"{of}\"\nhow = \"{how}\"\n");
    let chart = |parts: &[String]| point("1", "") + &parts.concat();
    assert_eq!(
        of(&chart(&[evidence("oil", "guess"), evidence("oil", "plate"), evidence("dose", "guess")]), Rule::Guess),
        ["1"]
    );
    let says = &remarks(&chart(&[evidence("oil", "guess"), evidence("oil", "plate"), evidence("dose", "guess")]));
    assert!(says.iter().any(|r| r.says == "known only by guess: point 1 (dose)"), "{says:?}");
    assert_eq!(of(&chart(&[evidence("oil", "plate")]), Rule::Guess), Vec::<String>::new());
}

#[test]
fn an_option_that_changes_nothing_or_is_not_answered_is_told() {
    let option = "[[option]]\nid = \"o\"\nquestion = \"Is there a pump?\"\nchoices = [\"a\", \"b\"]\n";
    assert_eq!(of(option, Rule::OptionUnused), ["o"]);
    let used = format!("{option}{}", point("1", "when = { o = \"a\" }"));
    assert_eq!(of(&used, Rule::OptionOpen), ["o"]);
    assert_eq!(of(&used.replace("\"b\"]", "\"b\"]\nhere = \"a\""), Rule::OptionOpen), Vec::<String>::new());
}

#[test]
fn points_often_missed_are_asked_for_by_kind_of_machine() {
    let missed = |rest: &str| remarks(rest).into_iter().find(|r| r.rule == Rule::Missed).map(|r| r.says);
    let drill = "kind = \"pillar drill\"\n";
    assert!(missed(drill).is_some_and(|says| says.contains("idlers")));
    let named = drill.to_owned() + &point("1", "").replace("name = \"n\"", "name = \"Idler pulley\"");
    assert!(missed(&named).is_some_and(|says| !says.contains("idlers") && says.contains("spline")));
    assert_eq!(missed("kind = \"power hammer\"\n"), None);
}

#[test]
fn what_lets_a_pair_run_dry_stands_before_what_makes_a_chart_harder_to_use() {
    let chart = format!(
        "{}{PAIR}[[option]]\nid = \"o\"\nquestion = \"?\"\nchoices = [\"a\"]\n",
        "[[point]]\nid = \"2\"\nname = \"n\"\nmethod = \"cup\"\n"
    );
    let rules: Vec<Rule> = remarks(&chart).iter().map(|remark| remark.rule).collect();
    assert_eq!(rules, [Rule::Unfed, Rule::NoInterval, Rule::FeedsNothing, Rule::NoSign, Rule::OptionUnused]);
    assert!(remarks(&chart).iter().all(|remark| !remark.next.is_empty()));
}
