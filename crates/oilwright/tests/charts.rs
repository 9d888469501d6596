//! `chart check` and `chart import`.

use crate::run::{Bench, CHART, run};

#[test]
fn faults_are_told_with_file_line_and_column_and_exit_1() {
    let bench = Bench::new();
    bench.write(
        "bad.toml",
        &CHART.replace("\"3 drops\"", "\"3\"").replace("name   = \"Column\"", "nmae   = \"Column\""),
    );
    let file = bench.path("bad.toml");
    let check = run(&["chart", "check", &file]);
    assert_eq!(check.code, Some(1));
    for place in [":22:1: the point has no key `nmae`: did you mean `name`?", ":25:10: `dose` of the point \"2\""] {
        assert!(check.out.contains(&format!("{file}{place}")), "{place} is missing from\n{}", check.out);
    }
    assert!(check.out.contains("^^^"));
    let json = run(&["chart", "check", &file, "--json"]);
    assert_eq!(json.code, Some(1));
    assert_eq!(json.json()["faults"].as_array().map(Vec::len), Some(2));
    assert_eq!(json.json()["faults"][0]["line"], 22);
}

#[test]
fn a_right_chart_exits_0() {
    let bench = Bench::new();
    let check = run(&["chart", "check", &bench.path("bench-drill.toml")]).well();
    assert!(check.out.contains(": no faults"), "{}", check.out);
}

#[test]
fn a_faulty_chart_is_not_taken_and_the_old_one_stays() {
    let bench = Bench::new();
    bench.write("bench-drill.toml", &CHART.replace("oil hole", "oil whole"));
    let import = bench.run(&["chart", "import", &bench.path("bench-drill.toml")]);
    assert_eq!(import.code, Some(2));
    assert!(import.err.contains("nothing was changed") && import.err.contains("\"oil hole\""), "{}", import.err);
    assert_eq!(bench.run(&["machines", "--json"]).well().json()["machines"][0]["revision"], 1);
}

#[test]
fn a_new_machine_begins_with_an_empty_chart_and_never_over_another() {
    let bench = Bench::new();
    bench.run(&["machine", "new", "Tool grinder", "--kind", "grinder"]).well();
    assert_eq!(
        bench.run(&["chart", "show", "tool-grinder"]).well().out,
        "chart = 1\n\n[machine]\nname = \"Tool grinder\"\nkind = \"grinder\"\n"
    );
    let again = bench.run(&["machine", "new", "Tool grinder"]);
    assert!(again.code == Some(2) && again.err.contains("already"), "{}", again.err);
}

#[test]
fn a_file_that_is_not_there_is_wrong_use() {
    let check = run(&["chart", "check", "nowhere.toml"]);
    assert_eq!(check.code, Some(2));
    assert_eq!(check.err, "oilwright: nowhere.toml could not be read: there is no such file\n");
}

#[test]
fn a_round_straight_from_files_holds_every_point_that_has_an_interval() {
    let bench = Bench::new();
    let round =
        run(&["round", "--chart", &bench.path("bench-drill.toml"), "--shelf", &bench.path("shelf.toml"), "--json"]);
    let round = round.well().json();
    assert_eq!(round["stands"][0]["points"][0]["dose"], "2 strokes");
    assert_eq!(round["stands"][0]["points"][0]["oil"], "way-68");
    assert_eq!(round["stands"].as_array().map(Vec::len), Some(2));
}

/// A JPEG of sixteen grey pixels a side with nothing in it but the picture, which a shop therefore keeps as it is.
const PICTURE: &[u8] = include_bytes!("left.jpg");

#[test]
fn a_chart_goes_out_and_comes_back_with_its_pictures_and_every_byte() {
    let bench = Bench::new();
    let with_picture = format!("{CHART}\n[[picture]]\nid = \"left\"\nfile = \"left.jpg\"  # taken from the door\n");
    bench.write("drill.toml", &with_picture);
    std::fs::write(bench.file("left.jpg"), PICTURE).expect("the folder can be written");
    let import = bench.run(&["chart", "import", &bench.path("drill.toml")]).well();
    assert!(import.out.contains("3 points, 1 picture, revision 1"), "{}", import.out);
    assert_eq!(bench.run(&["chart", "show", "drill"]).well().out, with_picture);
    for name in ["out.zip", "again.zip"] {
        bench.run(&["chart", "export", "drill", "-o", &bench.path(name)]).well();
    }
    let bytes = |name: &str| std::fs::read(bench.file(name)).expect("it was written");
    assert_eq!(bytes("out.zip"), bytes("again.zip"), "the same chart gives the same bytes");
    let other = Bench::new();
    let zip = bench.path("out.zip");
    other.run(&["chart", "import", &zip, "--machine", "drill"]).well();
    other.run(&["chart", "export", "drill", "-o", &other.path("back.toml")]).well();
    let back = |name: &str| std::fs::read(other.file(name)).expect("it was written");
    assert_eq!((back("back.toml"), back("left.jpg")), (with_picture.into_bytes(), PICTURE.to_vec()));
    let over = other.run(&["chart", "export", "drill", "-o", &other.path("back.toml")]);
    assert_eq!(over.code, Some(2));
    assert!(over.err.contains("not overwritten"), "{}", over.err);
}

#[test]
fn what_is_no_picture_or_no_zip_is_refused() {
    let bench = Bench::new();
    bench.write("drill.toml", &format!("{CHART}\n[[picture]]\nid = \"left\"\nfile = \"left.jpg\"\n"));
    let missing = bench.run(&["chart", "import", &bench.path("drill.toml"), "--machine", "a"]).well();
    assert!(missing.out.contains("the picture left.jpg, which was not beside it"), "{}", missing.out);
    let scripted = "<svg viewBox=\"0 0 9 9\"><script>alert(1)</script></svg>";
    for (bytes, said) in [(scripted, "a script"), ("a text", "no JPEG, PNG or WebP picture and no SVG drawing")] {
        bench.write("left.jpg", bytes);
        let refused = bench.run(&["chart", "import", &bench.path("drill.toml"), "--machine", "b"]);
        assert_eq!(refused.code, Some(2));
        assert!(refused.err.contains(said), "{}", refused.err);
    }
    std::fs::write(bench.file("left.jpg"), b"\xff\xd8\xff\xe0 cut off").expect("the folder can be written");
    let cut = bench.run(&["chart", "import", &bench.path("drill.toml"), "--machine", "c"]);
    assert!(cut.code == Some(2) && cut.err.contains("left.jpg"), "{}", cut.err);
    bench.write("broken.zip", "PK and nothing more");
    let broken = bench.run(&["chart", "import", &bench.path("broken.zip")]);
    assert!(broken.code == Some(2) && broken.err.contains("no whole zip"), "{}", broken.err);
    let ids = bench.run(&["machines", "--json"]).well().json();
    assert_eq!(ids["machines"].as_array().map(Vec::len), Some(2), "the refused one left nothing behind");
}

#[test]
fn the_schema_takes_the_demo_and_refuses_what_the_reader_refuses_for_its_form() {
    // Held by a validator of JSON Schema that knows nothing of our reader.
    let validate = |schema: &serde_json::Value, text: &str| {
        let mut schemas = boon::Schemas::new();
        let mut compiler = boon::Compiler::new();
        compiler.add_resource("schema.json", schema.clone()).expect("the schema is JSON");
        let index = compiler.compile("schema.json", &mut schemas).expect("the schema is one");
        schemas.validate(&toml(text), index).map_err(|error| error.to_string())
    };
    let chart = run(&["chart", "schema"]).well().json();
    let shelf = run(&["chart", "schema", "--shelf"]).well().json();
    for text in [include_str!("../../../demo/crank-shaper.toml"), include_str!("../../../demo/knee-mill.toml"), CHART] {
        assert_eq!(validate(&chart, text), Ok(()));
    }
    assert_eq!(validate(&shelf, include_str!("../../../demo/shelf.toml")), Ok(()));
    for (right, wrong) in [
        ("name   = \"Column\"", "nmae   = \"Column\""),
        ("method = \"brush\"", "method = \"burst\""),
        ("id     = \"2\"", "id     = 2"),
        ("chart = 1", "chart = \"1\""),
    ] {
        let text = CHART.replace(right, wrong);
        assert_ne!(text, CHART);
        assert!(validate(&chart, &text).is_err(), "{wrong}");
    }
}

/// TOML as JSON, as an editor sees it.
fn toml(text: &str) -> serde_json::Value {
    toml_edit::de::from_str(text).expect("the text is TOML")
}
