//! The attributes that a drawing may have, each with what may stand in it, and how that is written anew.

use std::fmt::Write as _;
use std::str::FromStr as _;

use roxmltree::Node;
use svgtypes::{Color, NumberListParser, PathParser, PathSegment, TransformListParser, TransformListToken};

use super::unplain::Unplain;

/// The largest number of a drawing, in its own measure.
const LARGEST: f64 = 1_000_000.0;

/// What an attribute takes.
#[derive(Clone, Copy)]
enum Takes {
    /// One number.
    Number,
    /// Numbers, or `none`.
    Numbers,
    /// Pairs of numbers.
    Points,
    /// The way of a pen.
    Path,
    /// Turns and moves.
    Transform,
    /// The paper, the ink or nothing.
    Colour,
    /// One of a few words.
    Word(&'static [&'static str]),
}

/// In the order in which they are written.
static TAKEN: [(&str, Takes); 37] = [
    ("x", Takes::Number),
    ("y", Takes::Number),
    ("width", Takes::Number),
    ("height", Takes::Number),
    ("rx", Takes::Number),
    ("ry", Takes::Number),
    ("cx", Takes::Number),
    ("cy", Takes::Number),
    ("r", Takes::Number),
    ("x1", Takes::Number),
    ("y1", Takes::Number),
    ("x2", Takes::Number),
    ("y2", Takes::Number),
    ("dx", Takes::Number),
    ("dy", Takes::Number),
    ("points", Takes::Points),
    ("d", Takes::Path),
    ("transform", Takes::Transform),
    ("fill", Takes::Colour),
    ("fill-opacity", Takes::Number),
    ("fill-rule", Takes::Word(&["nonzero", "evenodd"])),
    ("stroke", Takes::Colour),
    ("stroke-width", Takes::Number),
    ("stroke-opacity", Takes::Number),
    ("stroke-dasharray", Takes::Numbers),
    ("stroke-dashoffset", Takes::Number),
    ("stroke-linecap", Takes::Word(&["butt", "round", "square"])),
    ("stroke-linejoin", Takes::Word(&["miter", "round", "bevel"])),
    ("stroke-miterlimit", Takes::Number),
    ("vector-effect", Takes::Word(&["none", "non-scaling-stroke"])),
    ("opacity", Takes::Number),
    ("font-size", Takes::Number),
    ("font-weight", Takes::Word(&["normal", "bold", "400", "700"])),
    ("font-style", Takes::Word(&["normal", "italic"])),
    ("text-anchor", Takes::Word(&["start", "middle", "end"])),
    ("dominant-baseline", Takes::Word(&["auto", "middle", "central", "hanging", "alphabetic"])),
    ("letter-spacing", Takes::Number),
];

/// What changes no line: names, notes for other programs, and what a page that shows the drawing says itself.
const LEFT_OFF: [&str; 12] = [
    "id",
    "class",
    "color",
    "version",
    "baseProfile",
    "viewBox",
    "preserveAspectRatio",
    "role",
    "focusable",
    "font-family",
    "enable-background",
    "overflow",
];

/// What an attribute of this name can do beyond drawing.
pub(super) fn harm(name: &str) -> Option<&'static str> {
    match name {
        "href" => Some("a link to something else (href)"),
        "style" => Some("a style (style=)"),
        _ if name.get(..2).is_some_and(|on| on.eq_ignore_ascii_case("on")) => {
            Some("an order for when it is touched (on…=)")
        }
        _ => None,
    }
}

/// The attributes of an element, each with a space before it.
pub(super) fn written(node: &Node<'_, '_>) -> Result<String, Unplain> {
    let is_root = node.parent().is_some_and(|parent| parent.is_root());
    for attribute in node.attributes() {
        let name = attribute.name();
        let left_off = attribute.namespace().is_some()
            || LEFT_OFF.contains(&name)
            || name.starts_with("aria-")
            || name.starts_with("data-")
            || is_root && matches!(name, "width" | "height" | "x" | "y");
        if !left_off && TAKEN.iter().all(|(taken, _)| *taken != name) {
            return Err(Unplain::holds(&format!("{name}=")));
        }
    }
    let mut all = String::new();
    for (name, takes) in &TAKEN {
        if is_root && matches!(*name, "width" | "height" | "x" | "y") {
            continue;
        }
        if let Some(value) = node.attribute(*name) {
            let value = takes.written(value.trim()).ok_or_else(|| Unplain::value(name, value))?;
            write!(all, " {name}=\"{value}\"").expect("a text takes what is written to it");
        }
    }
    Ok(all)
}

/// A number as it is written.
pub(super) fn number(number: f64) -> Result<String, Unplain> {
    plain(number).ok_or_else(|| Unplain::value("a number", &number.to_string()))
}

fn plain(number: f64) -> Option<String> {
    // Minus nought and nought are one number.
    (number.abs() <= LARGEST).then(|| (number + 0.0).to_string())
}

fn parsed(text: &str) -> Option<f64> {
    svgtypes::Number::from_str(text.strip_suffix("px").unwrap_or(text)).ok().map(|number| number.0)
}

fn numbers(text: &str) -> Option<Vec<f64>> {
    NumberListParser::from(text).map(Result::ok).collect()
}

/// Numbers with one space between two.
fn row(numbers: &[f64]) -> Option<String> {
    let all: Option<Vec<String>> = numbers.iter().map(|number| plain(*number)).collect();
    all.map(|all| all.join(" "))
}

impl Takes {
    /// What stands in an attribute, written anew; nothing where it makes no sense.
    fn written(self, value: &str) -> Option<String> {
        match self {
            Self::Number => plain(parsed(value)?),
            Self::Numbers if value == "none" => Some(value.to_owned()),
            Self::Numbers => row(&numbers(value)?),
            Self::Points => row(&numbers(value).filter(|numbers| numbers.len().is_multiple_of(2))?),
            Self::Path => {
                let steps: Result<Vec<PathSegment>, _> = PathParser::from(value).collect();
                let steps: Option<Vec<String>> = steps.ok()?.into_iter().map(step).collect();
                steps.map(|steps| steps.join(" "))
            }
            Self::Transform => {
                let moves: Result<Vec<TransformListToken>, _> = TransformListParser::from(value).collect();
                let moves: Option<Vec<String>> = moves.ok()?.into_iter().map(moved).collect();
                moves.map(|moves| moves.join(" "))
            }
            Self::Colour => colour(value).map(str::to_owned),
            Self::Word(words) => words.iter().find(|word| **word == value).map(|word| (*word).to_owned()),
        }
    }
}

/// White is the paper, and any other colour the ink.
fn colour(value: &str) -> Option<&'static str> {
    if value == "none" || value == "transparent" {
        return Some("none");
    }
    if value.eq_ignore_ascii_case("currentColor") {
        return Some("currentColor");
    }
    match Color::from_str(value).ok()? {
        Color { alpha: 0, .. } => Some("none"),
        Color { red: 255, green: 255, blue: 255, .. } => Some("white"),
        _ => Some("currentColor"),
    }
}

fn step(step: PathSegment) -> Option<String> {
    let with = |abs: bool, letter: char, numbers: &[f64]| {
        let letter = if abs { letter } else { letter.to_ascii_lowercase() };
        row(numbers).map(|numbers| format!("{letter}{numbers}"))
    };
    match step {
        PathSegment::MoveTo { abs, x, y } => with(abs, 'M', &[x, y]),
        PathSegment::LineTo { abs, x, y } => with(abs, 'L', &[x, y]),
        PathSegment::HorizontalLineTo { abs, x } => with(abs, 'H', &[x]),
        PathSegment::VerticalLineTo { abs, y } => with(abs, 'V', &[y]),
        PathSegment::CurveTo { abs, x1, y1, x2, y2, x, y } => with(abs, 'C', &[x1, y1, x2, y2, x, y]),
        PathSegment::SmoothCurveTo { abs, x2, y2, x, y } => with(abs, 'S', &[x2, y2, x, y]),
        PathSegment::Quadratic { abs, x1, y1, x, y } => with(abs, 'Q', &[x1, y1, x, y]),
        PathSegment::SmoothQuadratic { abs, x, y } => with(abs, 'T', &[x, y]),
        PathSegment::EllipticalArc { abs, rx, ry, x_axis_rotation, large_arc, sweep, x, y } => {
            let flag = |flag: bool| if flag { 1.0 } else { 0.0 };
            with(abs, 'A', &[rx, ry, x_axis_rotation, flag(large_arc), flag(sweep), x, y])
        }
        PathSegment::ClosePath { abs } => Some(if abs { "Z" } else { "z" }.to_owned()),
    }
}

fn moved(token: TransformListToken) -> Option<String> {
    let (name, numbers) = match token {
        TransformListToken::Matrix { a, b, c, d, e, f } => ("matrix", row(&[a, b, c, d, e, f])),
        TransformListToken::Translate { tx, ty } => ("translate", row(&[tx, ty])),
        TransformListToken::Scale { sx, sy } => ("scale", row(&[sx, sy])),
        TransformListToken::Rotate { angle } => ("rotate", row(&[angle])),
        TransformListToken::SkewX { angle } => ("skewX", row(&[angle])),
        TransformListToken::SkewY { angle } => ("skewY", row(&[angle])),
    };
    numbers.map(|numbers| format!("{name}({numbers})"))
}
