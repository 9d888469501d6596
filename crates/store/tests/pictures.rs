//! Pictures come back byte for byte, once each, and not larger than the store takes.

use store::{Error, LARGEST_PICTURE, NewPicture, PictureId};

use crate::shop::{Shop, id, minute};

fn picture(name: &str, bytes: Vec<u8>) -> NewPicture {
    NewPicture { machine: id("m"), name: name.to_owned(), taken: Some(minute(-60)), bytes }
}

#[tokio::test]
async fn pictures_come_back_and_are_kept_once() {
    let shop = Shop::with(&["m"]).await;
    let add = async |given: &NewPicture| shop.store.add_picture(given.clone(), minute(1)).await;
    let first = picture("ram.jpg", vec![0, 255, 0, 7]);
    assert_eq!(add(&first).await, Ok(PictureId(1)));
    assert_eq!(add(&first).await, Ok(PictureId(1)));
    assert_eq!(add(&NewPicture { taken: None, ..picture("ram.jpg", vec![1]) }).await, Ok(PictureId(2)));
    let kept = shop.store.picture(PictureId(1)).await.expect("it is there");
    assert_eq!((&kept.given, kept.recorded), (&first, minute(1)));
    assert_eq!(shop.store.picture_named(&id("m"), "ram.jpg").await, Ok(PictureId(2)));
    assert_eq!(shop.store.picture(PictureId(2)).await.map(|kept| kept.given.taken), Ok(None));
    assert!(matches!(shop.store.picture(PictureId(3)).await, Err(Error::NotFound(_))));
    assert!(matches!(shop.store.picture_named(&id("m"), "bed.jpg").await, Err(Error::NotFound(_))));
    let stray = NewPicture { machine: id("nobody"), ..first };
    assert!(matches!(add(&stray).await, Err(Error::NotFound(_))));
}

#[tokio::test]
async fn a_picture_may_be_as_large_as_said_and_no_larger() {
    let shop = Shop::with(&["m"]).await;
    let largest = picture("large.jpg", vec![1; LARGEST_PICTURE]);
    assert_eq!(shop.store.add_picture(largest, minute(1)).await, Ok(PictureId(1)));
    let larger = picture("larger.jpg", vec![1; LARGEST_PICTURE + 1]);
    let refused = shop.store.add_picture(larger, minute(1)).await;
    assert_eq!(refused, Err(Error::TooLarge { name: "larger.jpg".into(), bytes: LARGEST_PICTURE + 1 }));
}

/// Keeps bytes as they are, as another program would, for tests of the file and not of the picture.
pub(crate) async fn keep_raw(shop: &Shop, name: &str, bytes: &[u8]) {
    use std::fmt::Write as _;
    let hex = |bytes: &[u8]| {
        bytes.iter().fold(String::new(), |mut text, byte| {
            write!(text, "{byte:02x}").expect("a text takes what is written to it");
            text
        })
    };
    let print = hex(&sha2::Digest::finalize(<sha2::Sha256 as sha2::Digest>::new_with_prefix(bytes)));
    let sql = format!("INSERT INTO picture VALUES (1, 'm', '{name}', '{print}', NULL, 0, x'{}')", hex(bytes));
    crate::shop::tamper(&shop.path(), &sql).await.expect("SQL");
}
