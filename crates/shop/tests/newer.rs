//! A file of a later format is read as far as it is understood; what is not understood is told and does not stop the reading.

use shop::chart::Chart;
use shop::fault::Severity;

const NEWER: &str =
    "chart = 2\n[machine]\nname = \"m\"\ncolour = \"green\"\n[[point]]\nid = \"1\"\nname = \"n\"\nmethod = \"cup\"\n";

#[test]
fn an_unknown_key_of_a_newer_format_is_a_warning() {
    let read = Chart::read(NEWER);
    assert_eq!(read.faults.len(), 2, "{:?}", read.faults);
    assert!(read.faults.iter().all(|fault| fault.severity == Severity::Warning));
    assert_eq!(read.value.expect("the chart is read all the same").points.len(), 1);
}

#[test]
fn the_same_key_in_our_own_format_is_a_fault() {
    let read = Chart::read(&NEWER.replace("chart = 2", "chart = 1"));
    assert!(read.value.is_none());
}
