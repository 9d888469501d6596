//! What kind of picture some bytes are, told by how they begin.

use image::ImageFormat;

use super::drawing::Drawing;

/// A kind of picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PictureKind {
    /// A photograph, mostly.
    Jpeg,
    /// A picture of pixels, packed without loss.
    Png,
    /// Either of these, packed closer.
    WebP,
    /// A line drawing.
    Drawing,
}

impl PictureKind {
    /// How many bytes at the beginning of a picture tell its kind.
    pub(crate) const HEAD: usize = 512;

    /// The kind; nothing where it is none that is taken.
    #[must_use]
    pub fn of(bytes: &[u8]) -> Option<Self> {
        match image::guess_format(bytes) {
            Ok(ImageFormat::Jpeg) => Some(Self::Jpeg),
            Ok(ImageFormat::Png) => Some(Self::Png),
            Ok(ImageFormat::WebP) => Some(Self::WebP),
            _ => Drawing::is_likely(bytes).then_some(Self::Drawing),
        }
    }

    /// The name of the kind as a server tells it to a browser (RFC 2046, RFC 9649; SVG 2, appendix on the media type).
    #[must_use]
    pub fn media_type(self) -> &'static str {
        match self {
            Self::Jpeg => "image/jpeg",
            Self::Png => "image/png",
            Self::WebP => "image/webp",
            Self::Drawing => "image/svg+xml",
        }
    }

    /// The usual end of a file's name.
    #[must_use]
    pub fn ending(self) -> &'static str {
        match self {
            Self::Jpeg => "jpg",
            Self::Png => "png",
            Self::WebP => "webp",
            Self::Drawing => "svg",
        }
    }

    /// The format of the pixels; nothing for a drawing, which has none.
    pub(super) fn format(self) -> Option<ImageFormat> {
        match self {
            Self::Jpeg => Some(ImageFormat::Jpeg),
            Self::Png => Some(ImageFormat::Png),
            Self::WebP => Some(ImageFormat::WebP),
            Self::Drawing => None,
        }
    }
}
