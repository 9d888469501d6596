//! Pictures are kept upright, once each, and without anything that is no picture; what is none is refused in one sentence.

use std::io::Cursor;

use exif::experimental::Writer;
use exif::{Field, In, Rational, Tag, Value};
use image::{DynamicImage, GenericImageView as _, ImageFormat, Rgb, RgbImage};
use sha2::{Digest as _, Sha256};
use store::{Error, LARGEST_PICTURE, NewPicture, PictureId, Unfit};

use crate::shop::{Shop, hex, id, minute};

fn picture(name: &str, bytes: Vec<u8>) -> NewPicture {
    NewPicture { machine: id("m"), name: name.to_owned(), taken: Some(minute(-60)), bytes }
}

/// A picture as a file: red on the left, blue on the right.
fn file(width: u32, height: u32, format: ImageFormat) -> Vec<u8> {
    let halves = |x: u32, _| if x < width / 2 { Rgb([220, 20, 20]) } else { Rgb([20, 20, 220]) };
    let mut bytes = Cursor::new(Vec::new());
    RgbImage::from_fn(width, height, halves).write_to(&mut bytes, format).expect("memory takes what is written");
    bytes.into_inner()
}

/// A small JPEG of the machine `m`.
pub(crate) fn jpeg(name: &str) -> NewPicture {
    picture(name, file(64, 48, ImageFormat::Jpeg))
}

/// What a telephone notes: where and when, with what, and that it was held upright (6: what is left in the file is to be on top).
fn notes(date: &str, offset: Option<&str>) -> Vec<u8> {
    let ascii = |text: &str| Value::Ascii(vec![text.as_bytes().to_vec()]);
    let field = |tag, value| Field { tag, ifd_num: In::PRIMARY, value };
    let degrees = [47, 11, 0].map(|num| Rational { num, denom: 1 }).to_vec();
    let mut fields = vec![
        field(Tag::Orientation, Value::Short(vec![6])),
        field(Tag::Model, ascii("a telephone")),
        field(Tag::DateTimeOriginal, ascii(date)),
        field(Tag::GPSLatitudeRef, ascii("N")),
        field(Tag::GPSLatitude, Value::Rational(degrees)),
    ];
    fields.extend(offset.map(|offset| field(Tag::OffsetTimeOriginal, ascii(offset))));
    let mut writer = Writer::new();
    fields.iter().for_each(|field| writer.push_field(field));
    let mut notes = Cursor::new(Vec::new());
    writer.write(&mut notes, false).expect("memory takes what is written");
    notes.into_inner()
}

/// A JPEG with notes in it, and something behind its end.
fn with_notes(notes: &[u8]) -> Vec<u8> {
    let bare = file(64, 48, ImageFormat::Jpeg);
    let length = u16::try_from(notes.len() + 8).expect("few notes").to_be_bytes();
    [&bare[..2], &[0xff, 0xe1], &length, b"Exif\0\0", notes, &bare[2..], b"behind the end"].concat()
}

/// Such a JPEG, taken at an hour after midnight in the zone of the shop.
pub(crate) fn noted() -> Vec<u8> {
    with_notes(&notes("2026:03:01 01:00:00", None))
}

/// Do these bytes stand in those?
pub(crate) fn holds(bytes: &[u8], part: &[u8]) -> bool {
    bytes.windows(part.len()).any(|window| window == part)
}

#[tokio::test]
async fn pictures_come_back_and_are_kept_once() {
    let shop = Shop::with(&["m"]).await;
    let add = async |given: &NewPicture| shop.store.add_picture(given.clone(), minute(1)).await;
    let first = jpeg("ram.jpg");
    assert_eq!(add(&first).await, Ok(PictureId(1)));
    assert_eq!(add(&first).await, Ok(PictureId(1)));
    let other = NewPicture { taken: None, ..picture("ram.jpg", file(48, 64, ImageFormat::Jpeg)) };
    assert_eq!(add(&other).await, Ok(PictureId(2)));
    let kept = shop.store.picture(PictureId(1)).await.expect("it is there");
    assert_eq!((&kept.given, kept.recorded), (&first, minute(1)), "there was nothing in it but the picture");
    assert_eq!(shop.store.picture_named(&id("m"), "ram.jpg").await, Ok(PictureId(2)));
    assert_eq!(shop.store.picture(PictureId(2)).await.map(|kept| kept.given.taken), Ok(None));
    assert!(matches!(shop.store.picture(PictureId(3)).await, Err(Error::NotFound(_))));
    assert!(matches!(shop.store.picture_named(&id("m"), "bed.jpg").await, Err(Error::NotFound(_))));
    let stray = NewPicture { machine: id("nobody"), ..first };
    assert!(matches!(add(&stray).await, Err(Error::NotFound(_))));
}

/// What the marks of a picture mean: Exif 2.32 (JEITA CP-3451), tags 0x0112, 0x9003, 0x9011 (from memory).
#[tokio::test]
async fn the_picture_stays_upright_with_its_date_and_nothing_else() {
    let cases = [
        // The shop's clock is an hour ahead of UTC.
        ("2026:03:01 01:00:00", None, Some("2026-03-01T00:00:00Z")),
        ("2026:03:01 01:00:00", Some("+05:30"), Some("2026-02-28T19:30:00Z")),
        ("2026:03:01 01:00:00", Some("  :  "), Some("2026-03-01T00:00:00Z")),
        ("0000:00:00 00:00:00", None, None),
        ("    :  :     :  :  ", None, None),
        ("yesterday", None, None),
    ];
    let shop = Shop::with(&["m"]).await;
    for (number, (date, offset, taken)) in cases.into_iter().enumerate() {
        let given = with_notes(&notes(date, offset));
        assert!(holds(&given, b"a telephone") && holds(&given, b"behind the end"));
        let name = format!("{number}.jpg");
        let added = shop.store.add_picture(NewPicture { taken: None, ..picture(&name, given) }, minute(1)).await;
        let kept = shop.store.picture(added.expect("a whole picture")).await.expect("it is there").given;
        assert_eq!(kept.taken.map(|at| at.to_string()).as_deref(), taken, "{date}");
        for note in [&b"Exif"[..], b"a telephone", b"behind the end", b"2026:03:01"] {
            assert!(!holds(&kept.bytes, note), "{date}");
        }
        let image = image::load_from_memory(&kept.bytes).expect("a picture");
        assert_eq!(image.dimensions(), (48, 64), "it was turned");
        let red = |image: &DynamicImage, x, y| image.get_pixel(x, y).0[0] > 128;
        assert!(red(&image, 24, 5) && red(&image, 45, 5) && !red(&image, 24, 60) && !red(&image, 2, 60));
    }
    let told = NewPicture { taken: Some(minute(-5)), ..picture("told.jpg", noted()) };
    let added = shop.store.add_picture(told, minute(1)).await.expect("a whole picture");
    assert_eq!(shop.store.picture(added).await.map(|kept| kept.given.taken), Ok(Some(minute(-5))));
}

#[tokio::test]
async fn what_goes_out_comes_back_the_same() {
    let (shop, other) = (Shop::with(&["m"]).await, Shop::with(&["m"]).await);
    for format in [ImageFormat::Jpeg, ImageFormat::Png, ImageFormat::WebP] {
        let given = match format {
            ImageFormat::Jpeg => noted(),
            _ => file(600, 300, format),
        };
        let first = shop.store.add_picture(picture("x", given.clone()), minute(1)).await.expect("a whole picture");
        let kept = shop.store.picture(first).await.expect("it is there");
        assert_eq!(image::guess_format(&kept.given.bytes).ok(), Some(format));
        let again = picture("x", kept.given.bytes.clone());
        assert_eq!(shop.store.add_picture(again.clone(), minute(2)).await, Ok(first));
        assert_eq!(shop.store.add_picture(picture("x", given), minute(3)).await, Ok(first));
        let there = other.store.add_picture(again, minute(1)).await.expect("a whole picture");
        assert_eq!(other.store.picture(there).await.map(|kept| kept.sha256), Ok(kept.sha256), "{format:?}");
    }
}

#[tokio::test]
async fn a_small_picture_stands_beside() {
    let shop = Shop::with(&["m"]).await;
    for (width, height, small) in [(960, 240, (480, 120)), (100, 960, (50, 480)), (64, 48, (64, 48))] {
        let name = format!("{width}.png");
        let given = picture(&name, file(width, height, ImageFormat::Png));
        let added = shop.store.add_picture(given, minute(1)).await.expect("a whole picture");
        let bytes = shop.store.thumbnail(added).await.expect("it is there");
        assert_eq!(image::guess_format(&bytes).ok(), Some(ImageFormat::Jpeg));
        assert_eq!(image::load_from_memory(&bytes).expect("a picture").dimensions(), small);
    }
    assert!(matches!(shop.store.thumbnail(PictureId(9)).await, Err(Error::NotFound(_))));
    // One that an older program kept has none yet.
    let old = Shop::with(&["m"]).await;
    keep_raw(&old, "left.jpg", &noted()).await;
    let bytes = old.store.thumbnail(PictureId(1)).await.expect("it can be made");
    assert_eq!(image::load_from_memory(&bytes).expect("a picture").dimensions(), (48, 64));
}

/// A PNG that says it has so many pixels, and has next to no bytes (PNG specification, third edition, 11.2.1 and annex D).
fn bomb(width: u32, height: u32) -> Vec<u8> {
    let mut bytes = file(1, 1, ImageFormat::Png);
    bytes[16..20].copy_from_slice(&width.to_be_bytes());
    bytes[20..24].copy_from_slice(&height.to_be_bytes());
    let check = !bytes[12..29].iter().fold(u32::MAX, |check, byte| {
        let step = |check: u32, _| if check & 1 == 1 { 0xedb8_8320 ^ (check >> 1) } else { check >> 1 };
        (0..8).fold(check ^ u32::from(*byte), step)
    });
    bytes[29..33].copy_from_slice(&check.to_be_bytes());
    bytes
}

#[tokio::test]
async fn what_is_no_whole_picture_of_bearable_size_is_refused() {
    let shop = Shop::with(&["m"]).await;
    let refused = async |bytes: Vec<u8>| {
        let error =
            shop.store.add_picture(picture("left.jpg", bytes), minute(1)).await.expect_err("it must be refused");
        let says = error.to_string();
        assert!(says.contains("\"left.jpg\"") && says.contains("; ") && !says.contains('\n'), "{says}");
        assert!(matches!(shop.store.picture(PictureId(1)).await, Err(Error::NotFound(_))));
        error
    };
    let unfit = |why| Error::Picture { name: "left.jpg".into(), why };
    let upload = refused(vec![0xff; 200_000_000]).await;
    assert_eq!(upload, Error::TooLarge { name: "left.jpg".into(), bytes: 200_000_000 });
    let upload = refused(vec![0xff; LARGEST_PICTURE + 1]).await;
    assert_eq!(upload, Error::TooLarge { name: "left.jpg".into(), bytes: LARGEST_PICTURE + 1 });
    for other in [&b""[..], b"GIF89a\x01\0\x01\0", b"%PDF-1.7", &[0; 100]] {
        assert_eq!(refused(other.to_vec()).await, unfit(Unfit::Kind));
    }
    // The first has a side too long, the second too much of everything.
    for (width, height) in [(1_000_000, 1), (12_001, 12_001), (12_000, 12_000)] {
        assert_eq!(refused(bomb(width, height)).await, unfit(Unfit::Size), "{width} by {height}");
    }
    assert_eq!(refused(bomb(400, 400)).await, unfit(Unfit::Broken), "the check value is right, the lines are missing");
    for format in [ImageFormat::Jpeg, ImageFormat::Png, ImageFormat::WebP] {
        let whole = file(64, 48, format);
        // Twelve bytes say of what kind it is.
        for cut in 0..=16 {
            let length = 12 + (whole.len() - 12) * cut / 17;
            assert_eq!(refused(whole[..length].to_vec()).await, unfit(Unfit::Broken), "{format:?} to {length}");
        }
    }
    let jpeg = file(64, 48, ImageFormat::Jpeg);
    assert_eq!(refused(jpeg[..jpeg.len() - 1].to_vec()).await, unfit(Unfit::Broken));
}

/// Keeps bytes as they are, as another program would, for tests of the file and not of the picture.
pub(crate) async fn keep_raw(shop: &Shop, name: &str, bytes: &[u8]) {
    let print = |bytes: &[u8]| Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect::<String>();
    let sha256 = print(bytes);
    let row = format!(r#"{{"id":1,"machine":"m","name":"{name}","recorded":0,"sha256":"{sha256}"}}"#);
    let sql = format!(
        "INSERT INTO picture VALUES (1, 'm', '{name}', '{sha256}', NULL, 0, {}); INSERT INTO seal VALUES ('picture', '[1]', '{}')",
        hex(bytes),
        print(row.as_bytes())
    );
    shop.tamper(&sql).await.expect("SQL");
}
