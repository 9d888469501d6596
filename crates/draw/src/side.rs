//! A side of a machine with its numbered balloons, over a line drawing or a photograph.

use crate::spread::spread;
use crate::svg::{Svg, length};

/// How wide the picture is in the drawing's own units; as high as its shape asks.
const WIDTH: f64 = 1200.0;
/// The strip round the picture into which balloons may go, in radii.
const STRIP: f64 = 2.2;

/// A side of a machine.
#[derive(Clone, Debug)]
pub struct Side {
    /// What it shows, for a reader without sight.
    pub title: String,
    /// Width and height of the picture in any measure.
    pub size: [f64; 2],
    /// The picture.
    pub ground: Ground,
    /// The places on it.
    pub places: Vec<Place>,
    /// Radius of a balloon, where the picture is 1200 wide.
    pub radius: f64,
}

/// The picture under the balloons.
#[derive(Clone, Debug)]
pub enum Ground {
    /// A line drawing that was read and written anew as plain lines.
    Lines {
        /// The attributes of its outermost element, each with a space before it.
        attributes: String,
        /// Everything in it.
        inside: String,
    },
    /// A photograph.
    Photo {
        /// Where it is fetched.
        address: String,
    },
}

/// A place on the picture.
#[derive(Clone, Debug)]
pub struct Place {
    /// What stands in the balloon.
    pub number: String,
    /// What it is, for a reader without sight.
    pub name: String,
    /// Where the balloon leads.
    pub to: String,
    /// Fractions of the picture's width and height.
    pub at: [f64; 2],
}

impl Side {
    /// The drawing. `id` must be the only one of its name on a page.
    #[must_use]
    pub fn svg(&self, id: &str) -> String {
        let height = WIDTH * self.size[1] / self.size[0];
        let strip = STRIP * self.radius;
        let frame = [-strip, -strip, WIDTH + strip, height + strip];
        let places: Vec<[f64; 2]> =
            self.places.iter().map(|place| [place.at[0] * WIDTH, place.at[1] * height]).collect();
        let spots = spread(&places, self.radius, frame);
        let mut svg = Svg::default();
        let title = format!("{id}-title");
        let view = [frame[0], frame[1], frame[2] - frame[0], frame[3] - frame[1]].map(length).join(" ");
        svg.begin(
            "svg",
            &[
                ("class", "side".to_owned()),
                ("viewBox", view),
                ("role", "group".to_owned()),
                ("aria-labelledby", title.clone()),
            ],
        );
        svg.text("title", &[("id", title)], &self.title);
        self.ground(&mut svg, height);
        for (place, spot) in places.iter().zip(&spots) {
            leader(&mut svg, *place, *spot, self.radius);
        }
        for (place, spot) in self.places.iter().zip(&spots) {
            self.balloon(&mut svg, place, *spot);
        }
        svg.end("svg");
        svg.finish()
    }

    fn ground(&self, svg: &mut Svg, height: f64) {
        let (own, more) = match &self.ground {
            Ground::Lines { .. } => ("class", "side-lines".to_owned()),
            Ground::Photo { address } => ("href", address.clone()),
        };
        let place =
            [(own, more), ("width", length(WIDTH)), ("height", length(height)), ("aria-hidden", "true".to_owned())];
        match &self.ground {
            Ground::Lines { attributes, inside } => svg.nested(&place, attributes, inside),
            Ground::Photo { .. } => svg.element("image", &place),
        }
    }

    fn balloon(&self, svg: &mut Svg, place: &Place, [x, y]: [f64; 2]) {
        svg.begin(
            "a",
            &[
                ("class", "side-balloon".to_owned()),
                ("href", place.to.clone()),
                ("aria-label", format!("{} {}", place.number, place.name)),
            ],
        );
        svg.element("circle", &[("cx", length(x)), ("cy", length(y)), ("r", length(self.radius))]);
        // Three figures or more are written smaller, so that they stay inside.
        let letter = self.radius * if place.number.chars().count() > 2 { 0.85 } else { 1.1 };
        svg.text(
            "text",
            &[
                ("x", length(x)),
                ("y", length(y + letter * 0.36)),
                ("font-size", length(letter)),
                ("text-anchor", "middle".to_owned()),
            ],
            &place.number,
        );
        svg.end("a");
    }
}

/// A line from the place, which is marked by a dot, to the rim of its balloon.
fn leader(svg: &mut Svg, place: [f64; 2], spot: [f64; 2], radius: f64) {
    let (across, down) = (spot[0] - place[0], spot[1] - place[1]);
    let far = tribology::math::sqrt(across * across + down * down);
    let share = if far > radius { (far - radius) / far } else { 0.0 };
    svg.element(
        "line",
        &[
            ("class", "side-leader".to_owned()),
            ("x1", length(place[0])),
            ("y1", length(place[1])),
            ("x2", length(place[0] + share * across)),
            ("y2", length(place[1] + share * down)),
        ],
    );
    let [x, y] = place.map(length);
    svg.element("circle", &[("class", "side-place".to_owned()), ("cx", x), ("cy", y), ("r", length(radius * 0.16))]);
}
