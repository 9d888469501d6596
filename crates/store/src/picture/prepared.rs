//! What is made of the bytes of a picture before they are kept: decoded within bounds, turned upright, written anew so that nothing is
//! in them but the picture, and a small one beside. Only when it was taken is kept of what the camera noted; where, never.

use std::io::Cursor;

use exif::{DateTime, In, Tag};
use image::codecs::jpeg::JpegEncoder;
use image::codecs::png::PngEncoder;
use image::codecs::webp::WebPEncoder;
use image::metadata::Orientation;
use image::{DynamicImage, ImageDecoder as _, ImageError, ImageFormat, ImageReader, ImageResult, Limits};
use jiff::Timestamp;
use jiff::civil;
use jiff::tz::{Offset, TimeZone};

use super::drawing::{Drawing, Unplain};
use super::{PictureKind, jpeg};

/// How many pixels a side may have.
const LONGEST_SIDE: u32 = 12_000;
/// How many bytes a picture may take in memory: about twice the largest that a telephone takes.
const MOST_MEMORY: u64 = 200_000_000;
/// The longer side of a small picture, in pixels.
const SMALL_SIDE: u32 = 480;
/// JPEG's quality of a hundred: at ninety the small letters of a plate stay sharp.
const QUALITY: u8 = 90;
/// The same of small pictures, which are for finding the large ones.
const SMALL_QUALITY: u8 = 75;

/// A picture as it may be kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Prepared {
    /// Its bytes.
    pub(crate) bytes: Vec<u8>,
    /// The bytes of the small one.
    pub(crate) small: Vec<u8>,
    /// When the camera says that it was taken.
    pub(crate) taken: Option<Taken>,
}

/// When a camera says that a picture was taken: a date and time of day, and rarely how far that is from UTC.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Taken {
    at: civil::DateTime,
    offset: Option<Offset>,
}

/// Why a picture is not taken.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Unfit {
    /// It is of no kind that is taken, such as a text.
    #[error("is no JPEG, PNG or WebP picture and no SVG drawing; save it as one of these")]
    Kind,
    /// It is a drawing, and there is more in it than lines.
    #[error("{0}")]
    Drawing(Unplain),
    /// Unpacked it would be too large.
    #[error(
        "would be larger than {LONGEST_SIDE} pixels a side or {} MB once unpacked; make it smaller first",
        MOST_MEMORY / 1_000_000
    )]
    Size,
    /// It ends too early or cannot be read.
    #[error("is not whole or cannot be read; take it from the camera or the scanner again")]
    Broken,
    /// Written anew it has more bytes than are taken.
    #[error("has more than {} MB when it is written without what is no picture; save it as JPEG", crate::LARGEST_PICTURE / 1_000_000)]
    Bytes,
}

/// Prepares a picture. What comes of it, prepared again, is the same to the byte, so that a picture that goes out and comes back is
/// known again; a JPEG that is upright and holds nothing but the picture is for that reason not written anew, which would cost a
/// little of it each time.
pub(crate) fn prepared(bytes: Vec<u8>) -> Result<Prepared, Unfit> {
    let Some(format) = PictureKind::of(&bytes).ok_or(Unfit::Kind)?.format() else {
        // A drawing has no small one: it is the same at every size.
        let bytes = Drawing::read(&bytes).map_err(Unfit::Drawing)?.written().into_bytes();
        return Ok(Prepared { small: bytes.clone(), bytes, taken: None });
    };
    let outline = (format == ImageFormat::Jpeg).then(|| jpeg::Outline::of(&bytes));
    if outline == Some(jpeg::Outline::Cut) {
        // The decoder would fill up with grey what is missing.
        return Err(Unfit::Broken);
    }
    let (image, noted) = decoded(&bytes, format).map_err(|error| unfit(&error))?;
    let small = small(&image).map_err(|error| unfit(&error))?;
    let bytes = if outline == Some(jpeg::Outline::Bare) {
        bytes
    } else {
        written(&image, format, QUALITY).map_err(|error| unfit(&error))?
    };
    if bytes.len() > crate::LARGEST_PICTURE {
        return Err(Unfit::Bytes);
    }
    Ok(Prepared { bytes, small, taken: noted.and_then(Taken::noted) })
}

/// A small picture for bytes that were kept.
pub(crate) fn small_of(bytes: &[u8]) -> Result<Vec<u8>, Unfit> {
    let format = PictureKind::of(bytes).and_then(PictureKind::format).ok_or(Unfit::Kind)?;
    decoded(bytes, format).and_then(|(image, _)| small(&image)).map_err(|error| unfit(&error))
}

impl Taken {
    /// The instant, by the clock of a zone unless the camera says how far its own is from UTC.
    pub(crate) fn instant(self, zone: &TimeZone) -> Option<Timestamp> {
        match self.offset {
            Some(offset) => offset.to_timestamp(self.at).ok(),
            None => zone.to_timestamp(self.at).ok(),
        }
    }

    /// What stands in the notes of a camera (JEITA CP-3451, tag 0x9003 and 0x9011). A camera whose clock was never set notes
    /// blanks or noughts, which is no date.
    fn noted(notes: Vec<u8>) -> Option<Self> {
        let notes = exif::Reader::new().read_raw(notes).ok()?;
        let text = |tag| match &notes.get_field(tag, In::PRIMARY)?.value {
            exif::Value::Ascii(lines) => lines.first().cloned(),
            _ => None,
        };
        let mut read = DateTime::from_ascii(&text(Tag::DateTimeOriginal)?).ok()?;
        if let Some(offset) = text(Tag::OffsetTimeOriginal) {
            // One that cannot be read is as good as none.
            let _ = read.parse_offset(&offset);
        }
        let part = |number: u8| i8::try_from(number).ok();
        let (year, second) = (i16::try_from(read.year).ok()?, part(read.second)?);
        let at = civil::DateTime::new(
            year,
            part(read.month)?,
            part(read.day)?,
            part(read.hour)?,
            part(read.minute)?,
            second,
            0,
        );
        let offset = read.offset.and_then(|minutes| Offset::from_seconds(i32::from(minutes) * 60).ok());
        Some(Self { at: at.ok()?, offset })
    }
}

/// Width and height of a picture that was kept, in pixels or in the measure of a drawing.
pub(crate) fn size(bytes: &[u8]) -> Result<[f64; 2], Unfit> {
    match PictureKind::of(bytes).ok_or(Unfit::Kind)?.format() {
        None => Drawing::read(bytes).map(|drawing| drawing.size()).map_err(Unfit::Drawing),
        Some(format) => {
            let reader = ImageReader::with_format(Cursor::new(bytes), format);
            let (width, height) = reader.into_dimensions().map_err(|error| unfit(&error))?;
            Ok([f64::from(width), f64::from(height)])
        }
    }
}

/// The upright picture, and the raw notes of the camera. Of one that moves, the first.
fn decoded(bytes: &[u8], format: ImageFormat) -> ImageResult<(DynamicImage, Option<Vec<u8>>)> {
    let mut limits = Limits::default();
    limits.max_image_width = Some(LONGEST_SIDE);
    limits.max_image_height = Some(LONGEST_SIDE);
    limits.max_alloc = Some(MOST_MEMORY);
    let mut reader = ImageReader::with_format(Cursor::new(bytes), format);
    reader.limits(limits.clone());
    let mut decoder = reader.into_decoder()?;
    limits.reserve(decoder.total_bytes())?;
    decoder.set_limits(limits)?;
    // Notes that cannot be read are no reason to refuse the picture.
    let notes = decoder.exif_metadata().unwrap_or_default();
    let upright = notes.as_deref().and_then(Orientation::from_exif_chunk).unwrap_or(Orientation::NoTransforms);
    let mut image = DynamicImage::from_decoder(decoder)?;
    image.apply_orientation(upright);
    Ok((image, notes))
}

fn small(image: &DynamicImage) -> ImageResult<Vec<u8>> {
    let fits = image.width().max(image.height()) <= SMALL_SIDE;
    let small = if fits { None } else { Some(image.thumbnail(SMALL_SIDE, SMALL_SIDE)) };
    let small = small.as_ref().unwrap_or(image);
    // A drawing on a clear ground would be black on black as a JPEG.
    let format = if image.color().has_alpha() { ImageFormat::Png } else { ImageFormat::Jpeg };
    written(small, format, SMALL_QUALITY)
}

fn written(image: &DynamicImage, format: ImageFormat, quality: u8) -> ImageResult<Vec<u8>> {
    let mut bytes = Vec::new();
    match format {
        ImageFormat::Jpeg => {
            let encoder = JpegEncoder::new_with_quality(&mut bytes, quality);
            if image.color().has_color() {
                image.to_rgb8().write_with_encoder(encoder)?;
            } else {
                image.to_luma8().write_with_encoder(encoder)?;
            }
        }
        ImageFormat::WebP if image.color().has_alpha() => {
            image.to_rgba8().write_with_encoder(WebPEncoder::new_lossless(&mut bytes))?;
        }
        ImageFormat::WebP => image.to_rgb8().write_with_encoder(WebPEncoder::new_lossless(&mut bytes))?,
        _ => image.write_with_encoder(PngEncoder::new(&mut bytes))?,
    }
    Ok(bytes)
}

fn unfit(error: &ImageError) -> Unfit {
    match error {
        ImageError::Limits(_) => Unfit::Size,
        _ => Unfit::Broken,
    }
}
