//! `GET` and `POST /machines/{id}/pictures`, and the bytes of a picture.

use std::io::Cursor;

use image::{ImageFormat, Rgb, RgbImage};

use crate::ask::{Answer, all};
use crate::bench::{Bench, led, words};

const PAGE: &str = "/machines/drill/pictures";
const DRAWING: &str =
    "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 120 80\"><path d=\"M1 1 9 9\" stroke=\"black\"/></svg>";

fn photograph(side: u32, format: ImageFormat) -> Vec<u8> {
    let mut bytes = Cursor::new(Vec::new());
    let picture = RgbImage::from_pixel(side, side, Rgb([90, 120, 150]));
    picture.write_to(&mut bytes, format).expect("memory takes what is written");
    bytes.into_inner()
}

/// Sends the form of the page with a file.
async fn send<P>(bench: &Bench, caption: &str, name: &str, pieces: P) -> Answer
where
    P: Iterator<Item = Vec<u8>> + Send + 'static,
{
    let page = bench.page(PAGE).await;
    let hidden = |name: &str| {
        let field = &all(&page, &format!("form[enctype='multipart/form-data'] input[name={name}]"))[0];
        field.attr("value").expect("a hidden field has a value").to_owned()
    };
    let (key, revision) = (hidden("key"), hidden("revision"));
    let pairs = [("key", key.as_str()), ("revision", revision.as_str()), ("caption", caption)];
    bench.upload(PAGE, &pairs, ("picture", name), pieces).await
}

#[tokio::test]
async fn a_photograph_and_a_drawing_are_taken_in_and_the_chart_speaks_of_them() {
    let bench = Bench::new().await;
    let sent =
        send(&bench, "Left side", "my left side!.jpg", std::iter::once(photograph(600, ImageFormat::Jpeg))).await;
    assert_eq!(led(&sent), format!("{PAGE}#picture-1"));
    let sent = send(&bench, "", "my left side!.jpg", std::iter::once(DRAWING.as_bytes().to_vec())).await;
    assert_eq!(led(&sent), format!("{PAGE}#picture-2"));
    let (_, text) = bench.drill().await;
    for wanted in ["file = \"my-left-side-.jpg\"", "caption = \"Left side\"", "file = \"my-left-side--2.jpg\""] {
        let even: String = text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(even.contains(wanted), "{wanted}: {even}");
    }
    let page = bench.page(PAGE).await;
    assert_eq!(words(&page, "section h2"), ["Left side", "Picture 2"]);
    let images: Vec<&str> = all(&page, "img").iter().filter_map(|image| image.attr("src")).collect();
    assert_eq!(images.len(), 2);
    let small = bench.get(images[0]).await;
    assert_eq!((small.status.as_u16(), small.header("content-type")), (200, "image/jpeg"));
    let small = image::load_from_memory(small.bytes()).expect("a picture");
    assert_eq!((small.width(), small.height()), (480, 480));
    let whole = bench.get(images[0].trim_end_matches("?small")).await;
    assert!(whole.header("cache-control").contains("immutable") && whole.header("cache-control").contains("private"));
    assert_eq!(whole.header("x-content-type-options"), "nosniff");
    let drawing = bench.get(images[1]).await;
    assert_eq!(drawing.header("content-type"), "image/svg+xml");
    assert!(drawing.header("content-security-policy").contains("default-src 'none'"));
    assert_eq!(
        words(&bench.page("/machines/drill").await, ".row a").iter().filter(|words| *words == "2 pictures").count(),
        1
    );
}

#[tokio::test]
async fn what_is_no_fit_picture_is_refused_with_a_sentence_and_nothing_is_kept() {
    let bench = Bench::new().await;
    let (before, _) = bench.drill().await;
    // A picture that says of itself that it is larger than any machine has memory for.
    let mut bomb = photograph(8, ImageFormat::Png);
    bomb[16..24].copy_from_slice(&[0, 0, 0xea, 0x60, 0, 0, 0xea, 0x60]);
    let scripted = DRAWING.replace("<path", "<script>alert(1)</script><path");
    let cut = photograph(64, ImageFormat::Jpeg)[..200].to_vec();
    for (name, bytes, said) in [
        ("a.svg", scripted.into_bytes(), "a script"),
        ("a.svg", DRAWING.replace("stroke", "onclick").into_bytes(), "Nothing was kept"),
        ("a.jpg", b"a text".to_vec(), "no JPEG, PNG or WebP picture"),
        ("a.jpg", cut, "not whole"),
        ("a.png", bomb, "Nothing was kept"),
    ] {
        let answer = send(&bench, "what it was", name, std::iter::once(bytes)).await;
        assert_eq!(answer.status, 422, "{name}: {}", answer.text());
        let page = answer.page();
        let says = words(&page, "[role=alert] p");
        assert!(says.len() == 1 && says[0].contains(said), "{name}: {says:?}");
        assert_eq!(all(&page, "#caption")[0].attr("value"), Some("what it was"));
    }
    let none = send(&bench, "", "", std::iter::once(Vec::new())).await;
    assert!(words(&none.page(), "[role=alert] p")[0].contains("No picture was chosen"));
    assert_eq!((bench.pictures().await, bench.drill().await.0), (0, before));
}

/// Two hundred million bytes are let run out, a million at a time, and no more than the largest picture is ever held.
#[tokio::test]
async fn two_hundred_million_bytes_are_answered_and_not_held() {
    let bench = Bench::new().await;
    let much = std::iter::repeat_with(|| vec![0_u8; 1_000_000]).take(200);
    let answer = send(&bench, "", "film.jpg", much).await;
    assert_eq!(answer.status, 422);
    assert!(words(&answer.page(), "[role=alert] p")[0].contains("has more than 20 MB"));
    let endless = std::iter::repeat_with(|| vec![0_u8; 4_000_000]);
    assert_eq!(send(&bench, "", "film.jpg", endless).await.status, 422);
    assert_eq!(bench.pictures().await, 0);
    let fine = send(&bench, "", "left.png", std::iter::once(photograph(8, ImageFormat::Png))).await;
    assert_eq!(led(&fine), format!("{PAGE}#picture-1"), "the server goes on");
}

#[tokio::test]
async fn a_page_that_was_overtaken_takes_nothing_in() {
    let bench = Bench::new().await;
    let page = bench.page(PAGE).await;
    let hidden = |name: &str| {
        all(&page, &format!("form[enctype] input[name={name}]"))[0].attr("value").unwrap_or_default().to_owned()
    };
    let (key, revision) = (hidden("key"), hidden("revision"));
    bench.drill_is_changed("Bench drill", "Bench drill by the door").await;
    let pairs = [("key", key.as_str()), ("revision", revision.as_str())];
    let file = std::iter::once(photograph(8, ImageFormat::Png));
    let answer = bench.upload(PAGE, &pairs, ("picture", "left.png"), file).await;
    assert!(words(&answer.page(), "[role=alert] p")[0].contains("was changed after you opened this page"));
    assert_eq!(bench.pictures().await, 0);
}

#[tokio::test]
async fn a_picture_is_only_found_under_its_own_machine() {
    let bench = Bench::new().await;
    led(&send(&bench, "", "left.png", std::iter::once(photograph(8, ImageFormat::Png))).await);
    assert_eq!(bench.get("/machines/drill/pictures/1").await.status, 200);
    for path in ["/machines/shaper/pictures/1", "/machines/drill/pictures/2", "/machines/none/pictures"] {
        assert_eq!(bench.get(path).await.status, 404, "{path}");
    }
}

#[tokio::test]
async fn a_point_gets_its_place_by_pressing_on_the_picture() {
    let bench = Bench::new().await;
    led(&send(&bench, "Left side", "left.svg", std::iter::once(DRAWING.as_bytes().to_vec())).await);
    let page = bench.page("/machines/drill/points/1/place").await;
    let press = &all(&page, "input[type=image]")[0];
    let side = |name: &str| press.attr(name).and_then(|text| text.parse::<f64>().ok()).expect("a number of pixels");
    let (width, height) = (side("width"), side("height"));
    let hidden = |name: &str| {
        let field = &all(&page, &format!("form:has(input[type=image]) input[name={name}]"))[0];
        (name.to_owned(), field.attr("value").expect("a hidden field has a value").to_owned())
    };
    let sent = |x: f64, y: f64| {
        let mut pairs: Vec<_> = ["key", "revision", "picture", "wide", "high"].map(hidden).into();
        pairs.extend([("at.x".to_owned(), x.to_string()), ("at.y".to_owned(), y.to_string())]);
        pairs
    };
    let path = "/machines/drill/points/1/place";
    for (x, y) in [(width + 1.0, 3.0), (0.0, 0.0)] {
        let answer = bench.post(path, &sent(x, y)).await;
        assert_eq!(answer.status, 422);
        assert!(words(&answer.page(), ".form-mend")[0].contains("Nothing was pointed at"));
    }
    assert_eq!(led(&bench.post(path, &sent(width / 4.0, height / 2.0)).await), "/machines/drill/points/1#place");
    let (_, text) = bench.drill().await;
    let even: String = text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(even.contains("at = [0.25, 0.5]"), "{even}");
    // The point's page shows it there, and the machine's page with all its points.
    for path in ["/machines/drill/points/1", "/machines/drill"] {
        let page = bench.page(path).await;
        assert_eq!(words(&page, "svg.side a.side-balloon"), ["1"], "{path}");
        assert_eq!(all(&page, ".side-place")[0].attr("cx"), Some("300"), "a quarter of 1200");
    }
    let card = bench.page("/").await;
    assert!(all(&card, "a[href='/machines/drill?side=picture-1#sides']").len() == 1, "the round leads to the drawing");
    // A form from before: the chart has changed.
    assert_eq!(bench.post(path, &sent(width / 2.0, height / 2.0)).await.status, 409);
}
