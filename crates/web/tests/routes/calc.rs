//! `GET /calc` and `GET /calc/{topic}`.

use crate::ask::all;
use crate::bench::{Bench, words};

#[tokio::test]
async fn every_sum_has_a_page_that_asks_for_all_that_it_takes() {
    let bench = Bench::new().await;
    let list = bench.page("/calc").await;
    for topic in advice::topic::TOPICS {
        assert!(words(&list, "h2").contains(&topic.title.to_owned()), "{}", topic.name);
        let page = bench.page(&format!("/calc/{}", topic.name)).await;
        let asked: Vec<&str> =
            all(&page, "form input, form textarea").iter().filter_map(|input| input.attr("name")).collect();
        for option in topic.options {
            assert!(asked.contains(&option.name), "{}: {}", topic.name, option.name);
        }
        assert_eq!(asked.contains(&"words"), topic.words.is_some(), "{}", topic.name);
        assert!(words(&page, ".table").is_empty() && words(&page, "[role=alert]").is_empty(), "{}", topic.name);
    }
}

/// OP-S12 and OP-S13 of `reference/oil-properties.csv`.
#[tokio::test]
async fn an_answer_stands_with_its_chart_its_table_and_its_working() {
    let page = Bench::new().await.page("/calc/viscosity?known=40C%3D68&known=100C%3D8.53&index=&at=0C&at=20C").await;
    let rows = words(&page, ".table tbody tr");
    assert!(rows[0].contains("1080 mm²/s at 0 °C") && rows[1].contains("218.4 mm²/s at 20 °C"), "{rows:?}");
    assert_eq!(all(&page, "svg.plot[role=img]").len(), 1);
    assert!(rows.iter().any(|row| row.starts_with("40 °C 68")), "{rows:?}");
    assert!(words(&page, "details ol li").iter().any(|line| line.contains("log log Z")));
    let kept: Vec<&str> = all(&page, "input[name=known]").iter().filter_map(|input| input.attr("value")).collect();
    assert_eq!(kept, ["40C=68", "100C=8.53", ""]);
}

#[tokio::test]
async fn what_cannot_be_is_said_and_kept_to_be_mended() {
    let page = Bench::new().await.page("/calc/blend?part=22%3D25%25&part=100%3D85%25&method=").await;
    assert!(words(&page, "[role=alert]")[0].contains("The shares make 110 % together; they must make 100 %."));
    assert_eq!(all(&page, "input[name=part]")[1].attr("value"), Some("100=85%"));
}

#[tokio::test]
async fn the_words_of_a_plate_are_translated_and_kept() {
    let page = Bench::new().await.page("/calc/old-name?words=S.U.V.+300+AT+100%C2%B0+%3Cb%3E").await;
    let rows = words(&page, ".table tbody tr");
    assert!(rows.iter().any(|row| row.contains("S.U.V. 300 AT 100° <b>")), "{rows:?}");
    assert!(rows.iter().any(|row| row.starts_with("ISO VG 68")), "{rows:?}");
    assert_eq!(all(&page, "svg.plot").len(), 1);
}

/// The example of a sum is a link whose page gives an answer, also where the command line reads a file or takes a flag.
#[tokio::test]
async fn every_example_is_a_page_with_an_answer() {
    let bench = Bench::new().await;
    for topic in advice::topic::TOPICS {
        let page = bench.page(&format!("/calc/{}", topic.name)).await;
        let links: Vec<String> =
            all(&page, "details a").iter().filter_map(|link| link.attr("href")).map(str::to_owned).collect();
        assert_eq!(links.len(), topic.examples.len(), "{}", topic.name);
        for link in links {
            let answered = bench.page(&link).await;
            assert!(words(&answered, "[role=alert]").is_empty(), "{link}");
            assert!(!words(&answered, ".table tbody tr").is_empty(), "{link}");
        }
    }
}

#[tokio::test]
async fn a_sum_that_is_none_is_said() {
    let answer = Bench::new().await.get("/calc/horoscope").await;
    assert_eq!(answer.status, 404);
}
