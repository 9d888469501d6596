//! `GET /shelf/plan`.

use crate::ask::all;
use crate::bench::{Bench, words};

#[tokio::test]
async fn the_answer_stands_first_with_who_suffers_what_to_buy_and_how_it_was_found() {
    let bench = Bench::new().await;
    let shelf = bench.page("/shelf").await;
    assert!(all(&shelf, "a[href='/shelf/plan']").len() == 1, "the shelf leads there");
    let page = bench.page("/shelf/plan").await;
    assert_eq!(words(&page, "h1"), ["Fewest oils"]);
    let answer = &words(&page, "main p strong")[0];
    assert!(answer.starts_with("2 oils are on the shelf; ") && answer.contains(" points"), "{answer}");
    let tables = words(&page, "caption");
    for caption in ["The best choice for each number", "What stands on the shelf now", "What a year takes of each"] {
        assert!(tables.iter().any(|one| one.starts_with(caption)), "{caption}: {tables:?}");
    }
    let working = words(&page, "details").join(" ");
    assert!(working.contains("our own choice") && working.contains("Harm of a choice"), "{working}");
    assert!(words(&page, ".quiet").iter().any(|line| line.contains("no permission")));
}

#[tokio::test]
async fn another_number_of_oils_is_a_link_away_and_each_can_has_its_fate() {
    let bench = Bench::new().await;
    let page = bench.page("/shelf/plan").await;
    let one = words(&bench.page("/shelf/plan?oils=1").await, "ul li");
    // Each number of the table is a link to this page with that number.
    let links: Vec<String> = all(&page, "table a[href^='/shelf/plan?oils=']")
        .iter()
        .filter_map(|link| link.attr("href").map(str::to_owned))
        .collect();
    assert!(links.contains(&"/shelf/plan?oils=1".to_owned()), "{links:?}");
    assert!(one.iter().filter(|line| line.ends_with("points") || line.ends_with("1 point")).count() >= 1, "{one:?}");
    let fates = words(&bench.page("/shelf/plan?oils=1").await, "table tbody tr").join("\n");
    assert!(fates.contains("Kept, for") && fates.contains("Not needed"), "{fates}");
}

#[tokio::test]
async fn what_can_be_bought_may_be_chosen_and_a_wrong_year_is_told() {
    let bench = Bench::new().await;
    let page = bench.page("/shelf/plan?buy=yes&uses=50&hours=2+h").await;
    let text = words(&page, "main").join(" ");
    assert!(text.contains("used 50 times, 2 h each time"), "{text}");
    assert!(text.contains("typical of their class"), "{text}");
    let wrong = bench.page("/shelf/plan?uses=many&hours=long").await;
    let faults = words(&wrong, ".field-fault");
    assert!(faults.len() == 2 && faults[0].contains("\"many\"") && faults[1].contains("\"long\""), "{faults:?}");
    let kept: Vec<&str> = all(&wrong, "input[name=uses]").iter().filter_map(|input| input.attr("value")).collect();
    assert_eq!(kept, ["many"]);
}

#[tokio::test]
async fn an_empty_shop_has_no_plan_and_says_so() {
    let page = Bench::empty().await.page("/shelf/plan").await;
    assert!(words(&page, "main p strong")[0].contains("There is no plan"));
    assert!(words(&page, "table").is_empty());
}
