//! Verdicts held against `reference/verdicts.csv`: 40 points of the demo shop by nine lubricants, set by hand from trade practice by
//! somebody who had not seen this code, each cell with its rule or section. It was no blind trial: bands and rules were mended here after the
//! two were first compared (278 of 360 agreed then), never the table. Where the two differ, `verdict-differences.csv` beside it says why; a cell
//! that differs and is not there, or is there and does not differ, fails.

use std::collections::BTreeMap;
use std::path::Path;

use advice::judge::judge;
use shop::chart::Chart;
use shop::id::Id;
use shop::shelf::Shelf;

fn file(name: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").join(name);
    std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

fn rows(name: &str) -> Vec<BTreeMap<String, String>> {
    let text = file(name);
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    reader.deserialize().map(|row| row.expect("a row of the table")).collect()
}

#[test]
fn every_verdict_is_that_of_the_table_or_its_difference_is_explained() {
    let shelf = Shelf::read(&file("demo/shelf.toml")).value.expect("the demo's shelf is right");
    let mut charts: BTreeMap<String, Chart> = BTreeMap::new();
    let explained: BTreeMap<String, String> = rows("crates/advice/tests/verdict-differences.csv")
        .into_iter()
        .map(|row| (row["id"].clone(), row["ours"].clone()))
        .collect();
    let mut told = Vec::new();
    let (mut same, mut differ) = (0, 0);
    for row in rows("reference/verdicts.csv") {
        let inputs: BTreeMap<&str, &str> = row["inputs"].split("; ").filter_map(|pair| pair.split_once('=')).collect();
        let machine = inputs["machine"];
        let chart = charts.entry(machine.to_owned()).or_insert_with(|| {
            Chart::read(&file(&format!("demo/{machine}.toml"))).value.expect("the demo's charts are right")
        });
        let point = chart.point(&Id::new(inputs["point"]).expect("an id")).expect("a point of the chart");
        let judged = judge(chart, point, &shelf);
        let found = judged.iter().find(|judged| judged.oil.as_str() == inputs["oil"]).expect("an oil of the shelf");
        let ours = found.verdict.to_string();
        match (ours == row["expected"], explained.get(&row["id"])) {
            (true, None) => same += 1,
            (false, Some(known)) if *known == ours => differ += 1,
            (true, Some(_)) => told.push(format!("{}: does not differ any more", row["id"])),
            (false, _) => {
                let why: Vec<String> =
                    found.reasons.iter().take(3).map(|reason| format!("{} {}", reason.rule, reason.cap)).collect();
                told.push(format!(
                    "{}: {} and not {} ({}) | {}",
                    row["id"],
                    ours,
                    row["expected"],
                    why.join(", "),
                    row["source"]
                ));
            }
        }
    }
    println!("{same} verdicts agree with the table, {differ} differ for a stated reason");
    assert!(told.is_empty(), "{} of {}:\n{}", told.len(), same + differ + told.len(), told.join("\n"));
}
