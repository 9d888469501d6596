//! Writing SVG: elements with attributes, text made safe, numbers short.

use std::fmt::Write as _;

/// SVG text in the making.
#[derive(Clone, Debug, Default)]
pub(crate) struct Svg {
    text: String,
}

impl Svg {
    /// An element without content.
    pub(crate) fn element(&mut self, name: &str, attributes: &[(&str, String)]) {
        self.open(name, attributes, "/>");
    }

    /// An element with a text in it.
    pub(crate) fn text(&mut self, name: &str, attributes: &[(&str, String)], text: &str) {
        self.open(name, attributes, ">");
        self.text.push_str(&escaped(text));
        let _ = write!(self.text, "</{name}>");
    }

    /// Begins an element that is closed by [`Svg::end`].
    pub(crate) fn begin(&mut self, name: &str, attributes: &[(&str, String)]) {
        self.open(name, attributes, ">");
    }

    /// Ends an element.
    pub(crate) fn end(&mut self, name: &str) {
        let _ = write!(self.text, "</{name}>");
    }

    /// A drawing of its own inside this one. Its attributes and what is in it are written as they stand: they must be SVG already.
    pub(crate) fn nested(&mut self, place: &[(&str, String)], attributes: &str, inside: &str) {
        self.open("svg", place, "");
        let _ = write!(self.text, "{attributes}>{inside}</svg>");
    }

    /// The whole text.
    pub(crate) fn finish(self) -> String {
        self.text
    }

    fn open(&mut self, name: &str, attributes: &[(&str, String)], close: &str) {
        let _ = write!(self.text, "<{name}");
        for (key, value) in attributes {
            let _ = write!(self.text, " {key}=\"{}\"", escaped(value));
        }
        self.text.push_str(close);
    }
}

/// A length in the drawing's own units, with one decimal at most.
pub(crate) fn length(number: f64) -> String {
    let text = format!("{number:.1}");
    text.strip_suffix(".0").map_or(text.clone(), str::to_owned)
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}
