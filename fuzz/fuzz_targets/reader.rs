//! Whatever stands in a file: reading it neither panics nor hangs, every fault can be shown, and an edit that was taken can be taken
//! back to the same bytes.

#![no_main]

use libfuzzer_sys::fuzz_target;
use shop::audit::audit;
use shop::chart::Chart;
use shop::document::{Document, Edit, Target, Value};
use shop::shelf::Shelf;

fuzz_target!(|text: &str| {
    for fault in Shelf::read(text).faults {
        let _ = fault.shown("shelf.toml", text);
    }
    let read = Chart::read(text);
    for fault in &read.faults {
        let _ = fault.shown("chart.toml", text);
    }
    let Some(chart) = read.value else { return };
    let _ = audit(&chart);
    let document = Document::read(text).expect("what was read once is read again");
    for point in chart.points.iter().take(3) {
        let of = Target::Element(point.id.clone());
        let edits = [
            Edit::Set { of: of.clone(), key: "sign".to_owned(), to: Value::Text("wet # \"all\" over".to_owned()) },
            Edit::Clear { of: of.clone(), key: "dose".to_owned() },
            Edit::Remove { of },
        ];
        for edit in edits {
            if let Ok(edited) = document.edited(&[edit]) {
                let back = edited.document.undone(&edited.undo).expect("an edit just made can be taken back");
                assert_eq!(back.text(), text);
            }
        }
    }
});
