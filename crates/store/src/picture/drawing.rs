//! Line drawings: plain SVG with shapes and words and nothing else. Start at [`Drawing::read`]. What is kept is written anew from what was
//! understood, so that nothing gets in but lines: white stays the colour of the paper, every other colour becomes the ink, and a page
//! may give both the colours of its own sheet. Read again, what is written is the same to the byte.

mod attribute;
mod unplain;

pub use unplain::Unplain;

use std::fmt::Write as _;
use std::str::FromStr as _;

use roxmltree::{Document, Node, NodeType, ParsingOptions};
use svgtypes::ViewBox;

use attribute::number;

/// The largest drawing that is taken, in bytes.
pub(crate) const LARGEST: usize = 1_000_000;
/// How many elements it may have.
const MOST_ELEMENTS: usize = 20_000;
/// How deep groups may lie in each other.
const DEEPEST: usize = 32;
/// How much longer one side may be than the other: a sheet beyond it would be a line on any screen.
const MOST_UNEVEN: f64 = 20.0;

const SVG: &str = "http://www.w3.org/2000/svg";
const SHAPES: [&str; 7] = ["path", "line", "polyline", "polygon", "rect", "circle", "ellipse"];
const WORDS: [&str; 4] = ["text", "tspan", "title", "desc"];
/// What editors add for themselves and what changes no line.
const LEFT_OFF: [&str; 2] = ["metadata", "defs"];

/// A line drawing that holds nothing but lines.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    view_box: ViewBox,
    attributes: String,
    inside: String,
}

impl Drawing {
    /// Whether these bytes look like a drawing, as far as that can be told from outside.
    pub(crate) fn is_likely(bytes: &[u8]) -> bool {
        let head = &bytes[..bytes.len().min(super::PictureKind::HEAD)];
        let text = String::from_utf8_lossy(head);
        text.trim_start_matches('\u{feff}').trim_start().starts_with('<') && text.contains("<svg")
    }

    /// The drawing in a file.
    ///
    /// # Errors
    /// [`Unplain`] when it holds anything that is no plain line, or cannot be read.
    pub fn read(bytes: &[u8]) -> Result<Self, Unplain> {
        if bytes.len() > LARGEST {
            return Err(Unplain::Large);
        }
        let text = std::str::from_utf8(bytes).map_err(|_| Unplain::Broken)?;
        // Every element and every space between two is a node.
        let nodes_limit = 4 * MOST_ELEMENTS as u32;
        let options = ParsingOptions { allow_dtd: false, nodes_limit, entity_resolver: None };
        let document = Document::parse_with_options(text, options).map_err(|error| match error {
            roxmltree::Error::DtdDetected | roxmltree::Error::UnknownEntityReference(..) => {
                Unplain::holds("a document type or an entity of its own")
            }
            roxmltree::Error::NodesLimitReached => Unplain::Large,
            _ => Unplain::Broken,
        })?;
        look_for_harm(&document)?;
        let root = document.root_element();
        if root.tag_name().name() != "svg" || root.tag_name().namespace().is_some_and(|of| of != SVG) {
            return Err(Unplain::Broken);
        }
        let view_box = view_box(&root)?;
        let ViewBox { x, y, w, h } = view_box;
        let mut attributes = format!(" viewBox=\"{} {} {} {}\"", number(x)?, number(y)?, number(w)?, number(h)?);
        let own = attribute::written(&root)?;
        if !own.contains(" fill=") {
            // A shape of which nothing is said is filled with black; it is to be filled with the ink.
            attributes.push_str(" fill=\"currentColor\"");
        }
        attributes.push_str(&own);
        let mut sheet = Sheet { written: String::new(), elements: 0, paper: paper(view_box)? };
        sheet.written.push_str(&sheet.paper.clone());
        sheet.inside(&root, 1)?;
        Ok(Self { view_box, attributes, inside: sheet.written })
    }

    /// Width and height in its own measure.
    #[must_use]
    pub fn size(&self) -> [f64; 2] {
        [self.view_box.w, self.view_box.h]
    }

    /// The attributes of its outermost element, each with a space before it.
    #[must_use]
    pub fn attributes(&self) -> &str {
        &self.attributes
    }

    /// Everything inside its outermost element.
    #[must_use]
    pub fn inside(&self) -> &str {
        &self.inside
    }

    /// The drawing as a file.
    #[must_use]
    pub fn written(&self) -> String {
        format!("<svg xmlns=\"{SVG}\"{}>\n{}</svg>\n", self.attributes, self.inside)
    }
}

/// The drawing as it is written anew.
struct Sheet {
    written: String,
    elements: usize,
    paper: String,
}

impl Sheet {
    fn inside(&mut self, of: &Node<'_, '_>, depth: usize) -> Result<(), Unplain> {
        if depth > DEEPEST {
            return Err(Unplain::Large);
        }
        of.children().filter(Node::is_element).try_for_each(|child| self.element(&child, depth))
    }

    fn element(&mut self, node: &Node<'_, '_>, depth: usize) -> Result<(), Unplain> {
        let name = node.tag_name().name();
        if !is_ours(node)
            || LEFT_OFF.contains(&name) && node.children().all(|child| !child.is_element() || !is_ours(&child))
        {
            return Ok(());
        }
        self.elements += 1;
        if self.elements > MOST_ELEMENTS {
            return Err(Unplain::Large);
        }
        if SHAPES.contains(&name) {
            let line = format!("<{name}{}/>\n", attribute::written(node)?);
            // The paper that was put under it when it was kept is not put under it again.
            if self.elements > 1 || line != self.paper {
                self.written.push_str(&line);
            }
        } else if WORDS.contains(&name) {
            self.words(node, depth)?;
            self.written.push('\n');
        } else if name == "g" {
            writeln!(self.written, "<g{}>", attribute::written(node)?).expect("a text takes what is written to it");
            self.inside(node, depth + 1)?;
            self.written.push_str("</g>\n");
        } else {
            return Err(Unplain::holds(&format!("<{name}>")));
        }
        Ok(())
    }

    /// An element of words, on one line, for a line break in it would show as a space.
    fn words(&mut self, node: &Node<'_, '_>, depth: usize) -> Result<(), Unplain> {
        if depth > DEEPEST {
            return Err(Unplain::Large);
        }
        let name = node.tag_name().name();
        write!(self.written, "<{name}{}>", attribute::written(node)?).expect("a text takes what is written to it");
        for child in node.children() {
            match child.node_type() {
                NodeType::Text => {
                    let text = even(child.text().unwrap_or_default());
                    self.written.push_str(&text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;"));
                }
                NodeType::Element if child.tag_name().name() == "tspan" && is_ours(&child) => {
                    self.words(&child, depth + 1)?;
                }
                NodeType::Element => return Err(Unplain::holds(&format!("<{}>", child.tag_name().name()))),
                _ => {}
            }
        }
        write!(self.written, "</{name}>").expect("a text takes what is written to it");
        Ok(())
    }
}

/// Refuses what can do more than draw, wherever it stands.
fn look_for_harm(document: &Document<'_>) -> Result<(), Unplain> {
    for node in document.descendants() {
        if node.is_pi() {
            return Err(Unplain::holds("a style sheet or another order to the program that shows it"));
        }
        let said = match node.tag_name().name() {
            "script" => "a script",
            "style" => "a style sheet",
            "foreignObject" => "a piece of another kind of file",
            _ => match node.attributes().find_map(|attribute| attribute::harm(attribute.name())) {
                Some(harm) => harm,
                None => continue,
            },
        };
        return Err(Unplain::holds(said));
    }
    Ok(())
}

fn is_ours(node: &Node<'_, '_>) -> bool {
    node.tag_name().namespace().is_none_or(|of| of == SVG)
}

/// What is seen of the drawing's plane; where it does not say, as far as it is wide and high.
fn view_box(root: &Node<'_, '_>) -> Result<ViewBox, Unplain> {
    let found = match root.attribute("viewBox") {
        Some(text) => ViewBox::from_str(text).map_err(|_| Unplain::value("viewBox", text))?,
        None => {
            let side = |name| {
                let text = root.attribute(name)?;
                text.trim().trim_end_matches("px").parse::<f64>().ok().filter(|side| *side > 0.0)
            };
            let (Some(w), Some(h)) = (side("width"), side("height")) else { return Err(Unplain::NoSize) };
            ViewBox { x: 0.0, y: 0.0, w, h }
        }
    };
    let uneven = (found.w / found.h).max(found.h / found.w);
    if uneven.is_finite() && uneven <= MOST_UNEVEN { Ok(found) } else { Err(Unplain::NoSize) }
}

/// White paper under the whole drawing, so that it can be read wherever it is shown alone.
fn paper(view_box: ViewBox) -> Result<String, Unplain> {
    let ViewBox { x, y, w, h } = view_box;
    let (x, y, w, h) = (number(x)?, number(y)?, number(w)?, number(h)?);
    Ok(format!("<rect x=\"{x}\" y=\"{y}\" width=\"{w}\" height=\"{h}\" fill=\"white\" stroke=\"none\"/>\n"))
}

/// A text with each stretch of white space made one space, as it is shown.
fn even(text: &str) -> String {
    let mut even = String::new();
    for letter in text.chars() {
        match letter {
            ' ' | '\t' | '\n' | '\r' if even.ends_with(' ') => {}
            ' ' | '\t' | '\n' | '\r' => even.push(' '),
            other => even.push(other),
        }
    }
    even
}
