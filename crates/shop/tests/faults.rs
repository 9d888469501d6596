//! A chart with planted faults: each is told, with its line, and nothing else is.

use shop::chart::Chart;
use shop::fault::{Fault, Severity};

/// Seven faults, each on the line that its comment names.
const SEVEN: &str = r#"chart = 1

[machine]
name = "bench drill"
kidn = "drill"                          # 5: a key misspelt

[[assembly]]
id   = "head"
name = "Head"

[[pair]]
id       = "quill"
assembly = "haed"                       # 13: an assembly misspelt
kind     = "journal"
diameter = "30"                         # 15: no unit
length   = "60 mm"

[[pair]]
id          = "spindle"
kind        = "journal"
diameter    = "20 mm"
length      = "400 mm"                  # 22: twenty diameters long
temperature = "138 °C (170 °F)"         # 23: the pair disagrees

[[point]]
id     = "1"
name   = "Quill sleeve"
method = "oil whole"                    # 28: a word misspelt
feeds  = ["quill"]

[[point]]
id     = "1"                            # 32: the id is taken
name   = "Spindle nose"
method = "oil hole"
feeds  = ["spindle"]
"#;

#[test]
fn seven_planted_faults_give_seven_diagnostics_with_their_lines() {
    let read = Chart::read(SEVEN);
    let told: Vec<(usize, usize)> = read.faults.iter().map(|f| (f.place(SEVEN).line, f.place(SEVEN).column)).collect();
    assert_eq!(
        told,
        [(5, 1), (13, 12), (15, 12), (22, 15), (23, 15), (28, 10), (32, 10)],
        "{}",
        shown(&read.faults, SEVEN)
    );
    assert!(read.value.is_none(), "half a chart misleads");
    assert!(read.faults.iter().all(|fault| fault.severity == Severity::Fault));
}

#[test]
fn each_sentence_says_what_to_write_instead() {
    let read = Chart::read(SEVEN);
    for (fault, hint) in
        read.faults.iter().zip(["`kind`", "\"head\"", "\"12 mm\"", "20 mm", "76.", "\"oil hole\"", "\"1a\""])
    {
        assert!(fault.says.contains(hint), "{:?} should say {hint}", fault.says);
    }
}

#[test]
fn the_caret_stands_under_the_place() {
    let read = Chart::read(SEVEN);
    let lines: Vec<String> = read.faults[1].shown("drill.toml", SEVEN).lines().map(str::to_owned).collect();
    assert!(lines[0].starts_with("drill.toml:13:12: "), "{}", lines[0]);
    let place = lines[1].find("\"haed\"").expect("the second line repeats the source");
    assert_eq!(&lines[2][place..], "^^^^^^");
}

#[test]
fn the_first_fault_of_syntax_is_told_with_its_place() {
    let text = "chart = 1\n[machine\nname = \"x\"\n";
    let read = Chart::read(text);
    assert_eq!(read.faults.len(), 1);
    assert_eq!(read.faults[0].place(text).line, 2);
}

#[test]
fn a_misspelt_key_that_must_be_there_is_one_fault_and_not_two() {
    let text = "chart = 1\n[machine]\nnmae = \"m\"\n";
    let read = Chart::read(text);
    assert_eq!(read.faults.len(), 1, "{}", shown(&read.faults, text));
    assert!(read.faults[0].says.contains("did you mean `name`?"));
}

#[test]
fn an_empty_file_says_what_the_first_line_should_be() {
    let read = Chart::read("");
    assert!(read.faults.iter().any(|fault| fault.says.contains("chart = 1")), "{}", shown(&read.faults, ""));
    assert!(read.faults.iter().any(|fault| fault.says.contains("[machine]")), "{}", shown(&read.faults, ""));
}

#[test]
fn a_retired_id_is_never_used_again() {
    let text = "chart = 1\nretired = [\"7\"]\n[machine]\nname = \"m\"\n[[point]]\nid = \"7\"\nname = \"n\"\nmethod = \"cup\"\n";
    let read = Chart::read(text);
    assert_eq!(read.faults.len(), 1, "{}", shown(&read.faults, text));
    assert_eq!(read.faults[0].place(text).line, 6);
}

#[test]
fn plate_text_is_kept_letter_for_letter() {
    let plate = " MEDIUM  MACHINE OIL, S.U.V. 300 AT 100° ";
    let text = format!(
        "chart = 1\n[machine]\nname = \"m\"\n[[point]]\nid = \"7\"\nname = \"n\"\nmethod = \"cup\"\nplate = \"{plate}\"\n"
    );
    let chart = Chart::read(&text).value.expect("the chart is right");
    assert_eq!(chart.points[0].plate.as_deref(), Some(plate));
}

#[test]
fn evidence_that_disagrees_is_kept() {
    let text = "chart = 1\n[machine]\nname = \"m\"\n[[point]]\nid = \"7\"\nname = \"n\"\nmethod = \"cup\"\n\
                [[point.evidence]]\nof = [\"oil\"]\nhow = \"plate\"\nnote = \"heavy\"\n\
                [[point.evidence]]\nof = [\"oil\", \"interval\"]\nhow = \"told\"\nnote = \"light\"\n";
    let chart = Chart::read(text).value.expect("the chart is right");
    assert_eq!(chart.points[0].evidence.len(), 2);
}

/// Sizes, speeds and materials that cannot be together: one sentence, at the key that is to be looked at.
#[test]
fn what_cannot_be_together_is_told_at_its_key() {
    let fault_of = |pair: &str| {
        let text = format!("chart = 1\n[machine]\nname = \"m\"\n[[pair]]\nid = \"p\"\n{pair}\n");
        let read = Chart::read(&text);
        let told: Vec<String> = read.faults.iter().map(|fault| fault.says.clone()).collect();
        (told, read.value.is_some())
    };
    let rows = [
        ("kind = \"journal\"\ndiameter = \"500 mm\"\nspeeds = [\"9000 rpm\"]", "`speeds`"),
        ("kind = \"slideway\"\nspeeds = [\"60 m/s\"]", "`speeds`"),
        ("kind = \"slideway\"\nstroke = \"2 m\"\nspeeds = [\"300 strokes/min\"]", "`speeds`"),
        ("kind = \"rolling\"\nbore = \"60 mm\"\noutside = \"110 mm\"\nspeeds = [\"24000 rpm\"]", "`speeds`"),
        ("kind = \"journal\"\nsurfaces = [\"white metal\", \"white metal\"]", "`surfaces`"),
        ("kind = \"rolling\"\nsurfaces = [\"steel\", \"bronze\"]", "`surfaces`"),
        ("kind = \"worm\"\nsurfaces = [\"steel\", \"bronze\", \"cast iron\"]", "`surfaces`"),
        (
            "kind = \"friction clutch\"\nsurfaces = [\"cast iron\", \"leather\"]\nnote = \"wet, in the box\"",
            "`surfaces`",
        ),
    ];
    for (pair, key) in rows {
        let (told, is_read) = fault_of(pair);
        assert!(told.len() == 1 && told[0].contains(key) && !is_read, "{pair}: {told:?}");
    }
    for fine in [
        "kind = \"journal\"\ndiameter = \"50 mm\"\nspeeds = [\"9000 rpm\"]",
        "kind = \"slideway\"\nstroke = \"2 m\"\nspeeds = [\"10 strokes/min\"]",
        "kind = \"rolling\"\nsurfaces = [\"steel\", \"brass cage\"]",
        "kind = \"journal\"\nsurfaces = [\"steel\", \"white metal\"]",
    ] {
        assert_eq!(fault_of(fine), (Vec::new(), true), "{fine}");
    }
}

fn shown(faults: &[Fault], text: &str) -> String {
    faults.iter().map(|fault| fault.shown("chart.toml", text)).collect::<Vec<_>>().join("\n")
}
