//! The outline of a JPEG file: whether it comes to its end, and whether anything is in it that is no picture. The marks are those of
//! ITU-T T.81, table B.1, and of JFIF 1.02 (both from memory); what they frame is for the decoder to judge.

/// What a JPEG file is like from outside.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Outline {
    /// It comes to its end and holds nothing but the picture.
    Bare,
    /// It comes to its end, and holds notes, or something comes behind.
    Dressed,
    /// It does not come to its end.
    Cut,
}

const STUFFED: u8 = 0x00;
const FIRST_RESTART: u8 = 0xD0;
const LAST_RESTART: u8 = 0xD7;
const START: u8 = 0xD8;
const END: u8 = 0xD9;
const SCAN: u8 = 0xDA;
/// Tables and frames: quantization, Huffman, restart interval, and baseline, extended and progressive frames.
const PICTURE: [u8; 6] = [0xDB, 0xC4, 0xDD, 0xC0, 0xC1, 0xC2];
/// JFIF's own segment; one without a small picture in it has sixteen bytes.
const JFIF: u8 = 0xE0;
const JFIF_LENGTH: usize = 16;

impl Outline {
    /// The outline of a file.
    pub(crate) fn of(bytes: &[u8]) -> Self {
        let mut bare = true;
        let Some(mut rest) = bytes.strip_prefix(&[0xFF, START]) else { return Self::Cut };
        loop {
            let Some((mark, behind)) = mark(rest) else { return Self::Cut };
            if mark == END {
                return if bare && behind.is_empty() { Self::Bare } else { Self::Dressed };
            }
            let Some((length, body)) = segment(behind) else { return Self::Cut };
            let jfif = mark == JFIF && length == JFIF_LENGTH && behind[2..].starts_with(b"JFIF\0");
            bare &= jfif || mark == SCAN || PICTURE.contains(&mark);
            rest = if mark == SCAN { behind_scan(body) } else { body };
        }
    }
}

/// A mark, which may have filling before it, and what comes behind.
fn mark(bytes: &[u8]) -> Option<(u8, &[u8])> {
    let behind = bytes.strip_prefix(&[0xFF])?;
    let filling = behind.iter().take_while(|byte| **byte == 0xFF).count();
    behind[filling..].split_first().map(|(mark, behind)| (*mark, behind))
}

/// The length that a segment gives itself, and what comes behind it.
fn segment(bytes: &[u8]) -> Option<(usize, &[u8])> {
    let length = usize::from(u16::from_be_bytes([*bytes.first()?, *bytes.get(1)?]));
    Some((length, bytes.get(length.max(2)..)?))
}

/// What comes behind the coded lines of a scan: the next mark that is neither stuffing nor a restart.
fn behind_scan(bytes: &[u8]) -> &[u8] {
    let ends = |pair: &[u8]| {
        pair[0] == 0xFF && pair[1] != STUFFED && pair[1] != 0xFF && !(FIRST_RESTART..=LAST_RESTART).contains(&pair[1])
    };
    bytes.windows(2).position(ends).map_or(&[], |at| &bytes[at..])
}
