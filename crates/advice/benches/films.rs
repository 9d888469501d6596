//! How long it takes to hold a whole shelf against a whole machine and to tell every bearing's film over its speeds on three days: 60 points, each
//! with a bearing of its own of 12 speeds, three of four plain and one rolling, and 40 oils. The time is printed at the end; nothing is asserted
//! about it.

#![allow(missing_docs)]

use std::io::Write as _;
use std::time::Instant;

use advice::film::{Contact, Filling, rooms};
use advice::judge::judged;
use advice::need::need;
use divan::{Bencher, black_box};
use shop::chart::Chart;
use shop::shelf::Shelf;
use shop::snapshot::Conditions;

const POINTS: usize = 60;
const OILS: usize = 40;
const SPEEDS: usize = 12;

fn main() {
    divan::main();
    // The tests run each benchmark once, to see that it still runs.
    if !std::env::args().any(|argument| argument == "--bench") {
        return;
    }
    let (chart, shelf) = (chart(), shelf());
    let begun = Instant::now();
    let states = judged_and_filmed(&chart, &shelf);
    let milliseconds = begun.elapsed().as_secs_f64() * 1e3;
    let line = format!(
        "{POINTS} points × {OILS} oils × {SPEEDS} speeds × 3 temperatures: judged and filmed in {milliseconds:.0} ms ({states} films)"
    );
    writeln!(std::io::stdout(), "{line}").expect("somebody reads");
}

#[divan::bench(sample_count = 5, sample_size = 1)]
fn whole_machine(bencher: Bencher<'_, '_>) {
    let (chart, shelf) = (chart(), shelf());
    bencher.bench(|| judged_and_filmed(black_box(&chart), &shelf));
}

/// Every oil held against every point, and every film with it; how many films there were.
fn judged_and_filmed(chart: &Chart, shelf: &Shelf) -> usize {
    let rooms = rooms(&Conditions::default());
    let fillings: Vec<Filling> = shelf.oils.iter().filter_map(Filling::of).collect();
    let mut states = 0;
    for point in chart.points_here() {
        let need = need(chart, point);
        for oil in &shelf.oils {
            black_box(judged(&need, oil));
        }
        for contact in need.pairs.iter().filter_map(|(place, _)| Contact::of(place)) {
            for filling in &fillings {
                for room in rooms {
                    states += black_box(contact.over(filling, room)).at.len();
                }
            }
        }
    }
    states
}

/// Bearings of 20 to 79 mm, each with twelve speeds from 15 rpm on, a third as fast again each.
fn chart() -> Chart {
    const METHODS: [&str; 4] = ["oil hole", "bath", "wick", "circulating pump"];
    let mut text = "chart = 1\n[machine]\nname = \"drawn\"\n".to_owned();
    for number in 0..POINTS {
        let speeds: Vec<String> = (0..SPEEDS)
            .map(|step| format!("\"{} rpm\"", 15 * 4_usize.pow(step as u32) / 3_usize.pow(step as u32)))
            .collect();
        let (mm, speeds) = (20 + number, speeds.join(", "));
        let pair = if number % 4 == 3 {
            format!("kind = \"rolling bearing\"\nbore = \"{mm} mm\"")
        } else {
            format!(
                "kind = \"journal\"\ndiameter = \"{mm} mm\"\nlength = \"{} mm\"\nload = \"{} N\"",
                mm + number / 2,
                200 + 90 * number
            )
        };
        text += &format!("[[pair]]\nid = \"p{number}\"\n{pair}\nspeeds = [{speeds}]\n");
        let method = METHODS[number % 4];
        text +=
            &format!("[[point]]\nid = \"{number}\"\nname = \"n\"\nmethod = \"{method}\"\nfeeds = [\"p{number}\"]\n");
    }
    Chart::read(&text).value.expect("a drawn chart has no fault")
}

/// Oils of 10 to 400 mm²/s at 40 °C.
fn shelf() -> Shelf {
    const FAMILIES: [&str; 4] = ["circulating", "way", "hydraulic", "gear"];
    let oil = |number: usize| {
        let (family, v40) = (FAMILIES[number % 4], 10 * (number + 1));
        format!("[[oil]]\nid = \"o{number}\"\nname = \"O\"\nfamily = \"{family}\"\nv40 = \"{v40} mm2/s\"\nindex = 95\n")
    };
    let text = (0..OILS).map(oil).collect::<String>();
    Shelf::read(&format!("shelf = 1\n{text}")).value.expect("the shelf is right")
}
