//! A plot: curves with their names at their ends, bands for what is wanted or can be done, marks across. It is told apart by dashes as
//! well as by class, so that it reads in grey; a table of the same figures belongs beside it.

use crate::axis::Axis;
use crate::svg::{Svg, length};

/// A plot.
#[derive(Clone, Debug)]
pub struct Plot {
    /// What it shows, for a reader without sight.
    pub title: String,
    /// What can be seen in it, in a sentence or two.
    pub description: String,
    /// The axis from left to right.
    pub across: Axis,
    /// The axis from bottom to top.
    pub up: Axis,
    /// Bands, drawn first.
    pub bands: Vec<Band>,
    /// Marks.
    pub marks: Vec<Mark>,
    /// Curves, drawn last.
    pub curves: Vec<Curve>,
}

/// A curve through points, cut off where it leaves the plot.
#[derive(Clone, Debug)]
pub struct Curve {
    /// Its name, written at its end.
    pub name: String,
    /// Points in order.
    pub points: Vec<(f64, f64)>,
}

/// A band from one value of the upward axis to another, over the whole width.
#[derive(Clone, Debug)]
pub struct Band {
    /// What it means.
    pub name: String,
    /// Its ends.
    pub ends: [f64; 2],
}

/// A line across the plot at a value of one axis.
#[derive(Clone, Debug)]
pub struct Mark {
    /// What it means.
    pub name: String,
    /// At which value of which axis.
    pub at: Across,
}

/// The axis of a mark with the value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Across {
    /// Upright, at a value of the axis from left to right.
    At(f64),
    /// Level, at a value of the axis from bottom to top.
    Level(f64),
}

/// The drawing's own units: a little more than a phone held upright has, so that a letter is not under fifteen pixels there.
const WIDTH: f64 = 420.0;
const HEIGHT: f64 = 372.0;
const LEFT: f64 = 66.0;
/// The names of curves stand there.
const RIGHT: f64 = 88.0;
/// The names of marks stand there, in up to three lines.
const TOP: f64 = 66.0;
const BOTTOM: f64 = 32.0;
/// The height of a letter.
const LETTER: f64 = 17.0;
/// So wide is a letter, on the whole.
const LETTER_WIDTH: f64 = 0.52 * LETTER;
/// A name with more letters than have room beside the plot is cut; the table has it whole.
const LONGEST_NAME: usize = 9;
/// Dashes by which curves are told apart in grey; the first is whole.
const DASHES: [&str; 5] = ["none", "8 4", "2 4", "10 4 2 4", "14 5"];

type Attributes = Vec<(&'static str, String)>;

impl Plot {
    /// The drawing.
    ///
    /// - `id`: a word that no other drawing on the page has.
    #[must_use]
    pub fn svg(&self, id: &str) -> String {
        let mut svg = Svg::default();
        svg.begin(
            "svg",
            &[
                ("xmlns", "http://www.w3.org/2000/svg".to_owned()),
                ("class", "plot".to_owned()),
                ("viewBox", format!("0 0 {} {}", length(WIDTH), length(HEIGHT))),
                ("role", "img".to_owned()),
                ("aria-labelledby", format!("{id}-title {id}-desc")),
                ("fill", "none".to_owned()),
                ("font-size", length(LETTER)),
            ],
        );
        svg.text("title", &[("id", format!("{id}-title"))], &self.title);
        svg.text("desc", &[("id", format!("{id}-desc"))], &self.description);
        svg.begin("clipPath", &[("id", format!("{id}-clip"))]);
        svg.element("rect", &frame());
        svg.end("clipPath");
        let (band_names, lowest) = self.bands(&mut svg);
        self.rules(&mut svg);
        self.marks(&mut svg);
        self.curves(&mut svg, id, lowest);
        for (attributes, name) in band_names {
            svg.text("text", &attributes, name);
        }
        let mut frame = frame().to_vec();
        frame.extend([("stroke", "currentColor".to_owned())]);
        svg.element("rect", &frame);
        self.axes(&mut svg);
        svg.end("svg");
        svg.finish()
    }

    fn x(&self, value: f64) -> Option<f64> {
        self.across.part(value).map(|part| LEFT + part * (WIDTH - LEFT - RIGHT))
    }

    fn y(&self, value: f64) -> Option<f64> {
        self.up.part(value).map(|part| HEIGHT - BOTTOM - part * (HEIGHT - TOP - BOTTOM))
    }

    /// The bands; their names are written when all lines are drawn. With them comes how low the names beside the plot reach.
    fn bands(&self, svg: &mut Svg) -> (Vec<(Attributes, &str)>, f64) {
        let mut names: Vec<(Attributes, &str)> = Vec::new();
        let mut beside: Vec<(f64, &str)> = Vec::new();
        let [bottom, top] = self.up.ends();
        for (number, band) in self.bands.iter().enumerate() {
            let ends = [band.ends[0].clamp(bottom, top), band.ends[1].clamp(bottom, top)];
            let (Some(low), Some(high)) = (self.y(ends[0]), self.y(ends[1])) else { continue };
            let area = [
                ("x", length(LEFT)),
                ("y", length(high)),
                ("width", length(WIDTH - LEFT - RIGHT)),
                ("height", length(low - high)),
                ("fill", "currentColor".to_owned()),
                ("fill-opacity", if number % 2 == 0 { "0.08" } else { "0.16" }.to_owned()),
            ];
            svg.element("rect", &area);
            if low - high < LETTER + 4.0 {
                beside.push(((low + high) / 2.0, &band.name));
                continue;
            }
            let mut name = label(LEFT + 5.0, low - 5.0, "start", "plot-band-name");
            // Lines run under the name, not through it.
            name.extend([
                ("stroke", "white".to_owned()),
                ("stroke-width", "4".to_owned()),
                ("stroke-linejoin", "round".to_owned()),
                ("paint-order", "stroke".to_owned()),
            ]);
            names.push((name, &band.name));
        }
        // A name that has no room in its band stands beside it.
        let mut lowest = f64::MIN;
        for (y, name) in apart(beside, lowest) {
            lowest = y;
            names.push((label(WIDTH - RIGHT + 5.0, y, "start", "plot-mark-name"), name));
        }
        (names, lowest)
    }

    fn rules(&self, svg: &mut Svg) {
        let [left, right] = [LEFT, WIDTH - RIGHT];
        let [top, bottom] = [TOP, HEIGHT - BOTTOM];
        let named = |axis: &Axis| axis.named().iter().map(|(value, _)| *value).collect::<Vec<_>>();
        for (values, width) in [(self.across.fine().to_vec(), 0.3), (named(&self.across), 0.7)] {
            for x in values.into_iter().filter_map(|value| self.x(value)) {
                rule(svg, [x, top, x, bottom], width);
            }
        }
        for (values, width) in [(self.up.fine().to_vec(), 0.3), (named(&self.up), 0.7)] {
            for y in values.into_iter().filter_map(|value| self.y(value)) {
                rule(svg, [left, y, right, y], width);
            }
        }
    }

    fn marks(&self, svg: &mut Svg) {
        let [left, right] = [LEFT, WIDTH - RIGHT];
        let mut rows = [f64::MIN; 3];
        for mark in &self.marks {
            let line = |svg: &mut Svg, ends: [f64; 4]| {
                let mut attributes = ends_of(ends);
                attributes.extend([
                    ("stroke", "currentColor".to_owned()),
                    ("stroke-width", "1.2".to_owned()),
                    ("stroke-dasharray", "3 3".to_owned()),
                ]);
                svg.element("line", &attributes);
            };
            match mark.at {
                Across::At(value) => {
                    let Some(x) = self.x(value).filter(|x| (left..=right).contains(x)) else { continue };
                    line(svg, [x, TOP, x, HEIGHT - BOTTOM]);
                    let width = mark.name.chars().count() as f64 * LETTER_WIDTH;
                    let start = (x - width / 2.0).clamp(left, WIDTH - width);
                    // A name that would run into another stands a line higher.
                    let row = (0..3).find(|row| rows[*row] < start - 6.0).unwrap_or(2);
                    rows[row] = start + width;
                    let y = TOP - 6.0 - row as f64 * (LETTER + 1.0);
                    svg.text("text", &label(start, y, "start", "plot-mark-name"), &mark.name);
                }
                Across::Level(value) => {
                    let Some(y) = self.y(value).filter(|y| (TOP..=HEIGHT - BOTTOM).contains(y)) else { continue };
                    line(svg, [left, y, right, y]);
                    svg.text("text", &label(right - 4.0, y - 4.0, "end", "plot-mark-name"), &mark.name);
                }
            }
        }
    }

    fn curves(&self, svg: &mut Svg, id: &str, lowest: f64) {
        svg.begin("g", &[("clip-path", format!("url(#{id}-clip)"))]);
        for (number, curve) in self.curves.iter().enumerate() {
            let placed = curve.points.iter().filter_map(|(x, y)| Some((self.x(*x)?, self.y(*y)?)));
            let points: Vec<String> = placed.map(|(x, y)| format!("{},{}", length(x), length(y))).collect();
            svg.element(
                "polyline",
                &[
                    ("points", points.join(" ")),
                    ("stroke", "currentColor".to_owned()),
                    ("stroke-width", "2.2".to_owned()),
                    ("stroke-linejoin", "round".to_owned()),
                    ("stroke-dasharray", DASHES[number % DASHES.len()].to_owned()),
                ],
            );
        }
        svg.end("g");
        self.names(svg, lowest);
    }

    /// Names stand right of the plot at the height of their curve's end, apart from one another and below those of narrow bands.
    fn names(&self, svg: &mut Svg, lowest: f64) {
        let end = |curve: &Curve| {
            let (_, y) =
                curve.points.iter().rev().find(|(x, _)| self.across.part(*x).is_some_and(|part| part <= 1.0))?;
            Some(self.y(*y)?.clamp(TOP + LETTER, HEIGHT - BOTTOM))
        };
        let ends: Vec<(f64, &Curve)> = self.curves.iter().filter_map(|curve| Some((end(curve)?, curve))).collect();
        for (y, curve) in apart(ends, lowest) {
            let mut name: String = curve.name.chars().take(LONGEST_NAME).collect();
            if name.len() < curve.name.len() {
                name = format!("{}…", name.trim_end());
            }
            svg.text("text", &label(WIDTH - RIGHT + 5.0, y, "start", "plot-label"), &name);
        }
    }

    fn axes(&self, svg: &mut Svg) {
        for (value, name) in self.across.named() {
            if let Some(x) = self.x(*value) {
                svg.text("text", &label(x, HEIGHT - BOTTOM + LETTER + 3.0, "middle", "plot-figure"), name);
            }
        }
        for (value, name) in self.up.named() {
            if let Some(y) = self.y(*value) {
                svg.text("text", &label(LEFT - 6.0, y + LETTER / 3.0, "end", "plot-figure"), name);
            }
        }
        svg.text(
            "text",
            &label(WIDTH - RIGHT + 22.0, HEIGHT - BOTTOM + LETTER + 3.0, "start", "plot-label"),
            self.across.label(),
        );
        svg.text("text", &label(2.0, TOP - 14.0, "start", "plot-label"), self.up.label());
    }
}

/// Heights at which names can be written below each other and below `lowest`, each as near to its own height as may be.
fn apart<T>(mut names: Vec<(f64, T)>, mut lowest: f64) -> Vec<(f64, T)> {
    names.sort_by(|a, b| a.0.total_cmp(&b.0));
    for (y, _) in &mut names {
        *y = (*y + LETTER / 3.0).max(lowest + LETTER);
        lowest = *y;
    }
    names
}

fn frame() -> [(&'static str, String); 4] {
    [
        ("x", length(LEFT)),
        ("y", length(TOP)),
        ("width", length(WIDTH - LEFT - RIGHT)),
        ("height", length(HEIGHT - TOP - BOTTOM)),
    ]
}

fn rule(svg: &mut Svg, ends: [f64; 4], width: f64) {
    let mut attributes = ends_of(ends);
    attributes.extend([
        ("stroke", "currentColor".to_owned()),
        ("stroke-opacity", "0.35".to_owned()),
        ("stroke-width", width.to_string()),
    ]);
    svg.element("line", &attributes);
}

fn ends_of([x1, y1, x2, y2]: [f64; 4]) -> Attributes {
    vec![("x1", length(x1)), ("y1", length(y1)), ("x2", length(x2)), ("y2", length(y2))]
}

fn label(x: f64, y: f64, anchor: &str, class: &str) -> Attributes {
    vec![
        ("x", length(x)),
        ("y", length(y)),
        ("text-anchor", anchor.to_owned()),
        ("class", class.to_owned()),
        ("fill", "currentColor".to_owned()),
    ]
}
