//! Line drawings: what is plain is kept the same to the byte however often it goes out and in, what could do more than draw is refused
//! with one sentence and leaves nothing behind.

use store::{Drawing, Error, NewPicture, PictureKind, Unfit};

use crate::shop::{Shop, id, minute};

const PLAIN: &str = r##"<?xml version="1.0" encoding="UTF-8"?>
<!-- drawn by hand -->
<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1200 800" width="1200">
  <title>A drill  &amp; its column</title>
  <g stroke="#123456" stroke-width="3" fill="none">
    <path d="M10,10 L 20 20h5v-5z"/>
    <rect x="1" y="2" width="30" height="40" fill="#FFF"/>
    <text x="5" y="6" font-size="12" fill="black">quill</text>
  </g>
</svg>
"##;

fn picture(bytes: &[u8]) -> NewPicture {
    NewPicture { machine: id("m"), name: "left.svg".to_owned(), taken: None, bytes: bytes.to_vec() }
}

fn of(inside: &str) -> String {
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" viewBox=\"0 0 9 9\">{inside}</svg>"
    )
}

#[tokio::test]
async fn a_plain_drawing_is_kept_as_lines_in_ink_on_paper() {
    let shop = Shop::with(&["m"]).await;
    let kept = shop.store.add_picture(picture(PLAIN.as_bytes()), minute(1)).await.expect("a plain drawing");
    let kept = shop.store.picture(kept).await.expect("it was kept").given.bytes;
    assert_eq!(PictureKind::of(&kept), Some(PictureKind::Drawing));
    let text = String::from_utf8(kept.clone()).expect("SVG is text");
    for wanted in
        ["viewBox=\"0 0 1200 800\"", "stroke=\"currentColor\"", "fill=\"white\"", "A drill &amp; its column", ">quill<"]
    {
        assert!(text.contains(wanted), "{wanted}: {text}");
    }
    for left_off in ["123456", "drawn by hand", "<?xml"] {
        assert!(!text.contains(left_off), "{left_off}: {text}");
    }
    let again = Drawing::read(&kept).expect("what was written can be read").written();
    assert_eq!(again, text, "what goes out and comes back is the same to the byte");
}

#[tokio::test]
async fn what_could_do_more_than_draw_is_refused_with_one_sentence() {
    let shop = Shop::with(&["m"]).await;
    let deep = format!("{}<path d=\"M0 0\"/>{}", "<g>".repeat(40), "</g>".repeat(40));
    for (inside, said) in [
        ("<script>alert(1)</script>", "a script"),
        ("<g><rect width=\"1\" height=\"1\" onload=\"alert(1)\"/></g>", "only plain lines"),
        ("<style>*{}</style>", "a style sheet"),
        ("<foreignObject/>", "another kind of file"),
        ("<image href=\"http://elsewhere/x.png\"/>", "only plain lines"),
        ("<a xlink:href=\"javascript:alert(1)\"><path d=\"M0 0\"/></a>", "only plain lines"),
        ("<use href=\"#x\"/>", "only plain lines"),
        ("<animate attributeName=\"x\"/>", "only plain lines"),
        ("<path d=\"M0 0\" style=\"fill:url(#a)\"/>", "only plain lines"),
        ("<path d=\"M0 0\" fill=\"url(http://elsewhere)\"/>", "cannot be read as a plain drawing"),
        ("<path d=\"M0 0 1e999 3\"/>", "cannot be read as a plain drawing"),
        ("<rect width=\"50%\" height=\"1\"/>", "cannot be read as a plain drawing"),
        (deep.as_str(), "larger than a line drawing needs"),
    ] {
        let refused = shop.store.add_picture(picture(of(inside).as_bytes()), minute(1)).await;
        let Err(Error::Picture { why: Unfit::Drawing(_), .. }) = &refused else { panic!("{inside}: {refused:?}") };
        let says = refused.expect_err("it was refused").to_string();
        assert!(says.contains(said) && !says.contains('\n'), "{inside}: {says}");
    }
    let entity = "<!DOCTYPE svg [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;\">]><svg viewBox=\"0 0 9 9\"><text>&b;</text></svg>";
    let large = of(&"<path d=\"M0 0\"/>".repeat(100_000));
    let unsized_one = "<svg xmlns=\"http://www.w3.org/2000/svg\"><path d=\"M0 0\"/></svg>";
    for bad in [entity.to_owned(), large, unsized_one.to_owned(), PLAIN.replace("</g>", "")] {
        assert!(shop.store.add_picture(picture(bad.as_bytes()), minute(1)).await.is_err(), "{}", &bad[..80]);
    }
    assert!(shop.store.pictures(&id("m")).await.expect("a whole file").is_empty(), "nothing was kept");
}

#[tokio::test]
async fn drawings_and_photographs_stand_in_one_list() {
    let shop = Shop::with(&["m"]).await;
    let id = shop.store.add_picture(picture(PLAIN.as_bytes()), minute(1)).await.expect("a plain drawing");
    let other = PLAIN.replace("quill", "spindle");
    let newer = shop.store.add_picture(picture(other.as_bytes()), minute(2)).await.expect("a plain drawing");
    let list = shop.store.pictures(&crate::shop::id("m")).await.expect("a whole file");
    let [only] = &list[..] else { panic!("one name, so one row: {list:?}") };
    assert_eq!((only.id, only.kind), (newer, Some(PictureKind::Drawing)));
    assert_ne!(id, newer);
    assert_eq!(shop.store.proportions(newer).await, Ok([1200.0, 800.0]));
}
