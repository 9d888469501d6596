//! `GET` and `POST /machines/{id}/points/{point}/removal`.

use crate::ask::all;
use crate::bench::{Bench, comments, find, form, led, words};

#[tokio::test]
async fn a_point_that_nothing_names_goes_and_its_number_is_retired() {
    let bench = Bench::new().await;
    let (number, before) = bench.drill().await;
    let asked = form(&bench.page("/machines/drill/points/3/removal").await, "Take point 3 out", "");
    assert_eq!(led(&bench.press(&asked, &[]).await), "/machines/drill");
    let (next, after) = bench.drill().await;
    assert_eq!(next, number + 1);
    assert!(after.contains("retired = [\"3\"]") && !after.contains("name     = \"Quill\""));
    assert_eq!(comments(&after), comments(&before));
    assert_eq!(bench.get("/machines/drill/points/3").await.status, 404);
    led(&bench.press(&asked, &[]).await);
    assert_eq!(bench.drill().await.0, next, "a second press of the same button writes nothing");
}

#[tokio::test]
async fn a_point_that_something_names_stays_and_what_names_it_is_linked() {
    let bench = Bench::new().await;
    let before = bench.drill().await;
    for (point, to) in [("1", "/machines/drill/findings#finding-F1"), ("7", "/?machine=drill&job=tapping")] {
        let page = bench.page(&format!("/machines/drill/points/{point}/removal")).await;
        assert!(find(&page, &format!("Take point {point} out"), "").is_none(), "there is no button to press in vain");
        assert!(all(&page, "main li a").iter().any(|link| link.attr("href") == Some(to)), "{point}");
        // A form that was opened before something named the point.
        let mut old = form(&bench.page("/machines/drill/points/3/removal").await, "Take point 3 out", "");
        old.to = format!("/machines/drill/points/{point}/removal");
        let answer = bench.press(&old, &[]).await;
        assert_eq!(answer.status, 422);
        assert!(words(&answer.page(), ".form-mend")[0].contains("stays, because other parts of the chart name it"));
    }
    assert_eq!(bench.drill().await, before);
}

#[tokio::test]
async fn a_form_made_from_an_older_chart_takes_nothing_out() {
    let bench = Bench::new().await;
    let old = form(&bench.page("/machines/drill/points/3/removal").await, "Take point 3 out", "");
    bench.drill_is_changed("Bench drill", "Old bench drill").await;
    let before = bench.drill().await;
    assert_eq!(bench.press(&old, &[]).await.status, 409);
    assert_eq!(bench.drill().await, before);
    let mut lost = old;
    lost.to = "/machines/drill/points/99/removal".into();
    assert_eq!(bench.press(&lost, &[]).await.status, 404);
}
