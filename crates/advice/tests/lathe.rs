//! What each job of a lathe wakes. Which parts turn at which work is how every lathe with change gears and a back gear is built: the
//! screw, its nuts and the gears drive only in threading, the pulley turns on the spindle only in back gear.

use crate::bench::Bench;

const LATHE: &str = r#"
[[job]]
id    = "threading"
name  = "Threading"
wakes = ["lead-screw", "half-nuts", "studs"]

[[job]]
id    = "back-gear"
name  = "Turning in back gear"
wakes = ["pulley-bore", "quill"]

[[point]]
id     = "spindle"
name   = "Spindle, front bearing"
method = "oil hole"
stand  = "left"
every  = ["1 use"]

[[point]]
id     = "lead-screw"
name   = "Lead screw"
method = "brush"
stand  = "front"
every  = ["1 use"]

[[point]]
id     = "half-nuts"
name   = "Half-nuts"
method = "oil hole"
stand  = "front"
every  = ["1 use"]

[[point]]
id     = "studs"
name   = "Change-gear studs"
method = "oil hole"
stand  = "left"
setup  = ["stopped", "gear cover open"]
every  = ["1 use"]

[[point]]
id     = "pulley-bore"
name   = "Pulley bore"
method = "oil hole"
stand  = "left"
setup  = ["stopped", "screw out"]
every  = ["1 use"]

[[point]]
id     = "quill"
name   = "Back-gear quill"
method = "oil hole"
stand  = "left"
setup  = ["stopped", "gear cover open"]
every  = ["1 use"]
"#;

#[track_caller]
fn left(bench: &Bench, when: &str, job: Option<&str>) -> Vec<String> {
    let mut ids = bench.left(when, 2.0, job);
    ids.sort();
    ids
}

#[test]
fn threading_adds_screw_nuts_and_studs_and_a_later_job_in_back_gear_adds_pulley_and_quill() {
    let mut bench = Bench::new(LATHE);
    let now = "2026-11-25T09:00";
    assert_eq!(left(&bench, now, None), ["spindle"]);
    assert_eq!(left(&bench, now, Some("threading")), ["half-nuts", "lead-screw", "spindle", "studs"]);
    for point in ["half-nuts", "lead-screw", "spindle", "studs"] {
        bench.dosed(point, "2026-11-25T09:10");
    }
    bench.ran("2026-11-25T11:10", 2.0, Some("threading"));
    // After the threading the same day's job in back gear wants the spindle again, and its own two.
    assert_eq!(left(&bench, "2026-11-25T11:30", Some("back-gear")), ["pulley-bore", "quill", "spindle"]);
}
