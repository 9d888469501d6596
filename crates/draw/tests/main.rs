//! Drawings, read as a browser reads them: well-formed, named, inside their frame, safe against odd names.

use draw::{Across, Axis, Band, Curve, Ground, Mark, Oil, Place, Plot, Side, viscosity_chart};
use roxmltree::Document;
use tribology::oil::ViscosityLine;
use tribology::quantity::{KinematicViscosity, Temperature};

fn line(v40: f64) -> ViscosityLine {
    ViscosityLine::with_index(KinematicViscosity::from_mm2_s(v40), 95.0).expect("an oil of every day").value
}

fn chart() -> String {
    let oils = [68.0, 46.0].map(|v40| Oil { name: format!("VG {v40} <\"&>"), line: line(v40) });
    let marks = [("cold 5 °C".to_owned(), Temperature::from_celsius(5.0))];
    let bands = [Band { name: "hand can".to_owned(), ends: [500.0, 1000.0] }];
    viscosity_chart(&oils, &marks, &bands).svg("chart")
}

fn numbers(text: &str) -> Vec<f64> {
    text.split([' ', ',']).map(|number| number.parse().expect("a coordinate is a number")).collect()
}

#[test]
fn a_chart_is_well_formed_and_says_what_it_is() {
    let svg = chart();
    let document = Document::parse(&svg).expect("well-formed XML");
    let root = document.root_element();
    assert_eq!(root.attribute("role"), Some("img"));
    let named = root.attribute("aria-labelledby").expect("it is named");
    for id in named.split(' ') {
        let text = document.descendants().find(|node| node.attribute("id") == Some(id)).and_then(|node| node.text());
        assert!(text.is_some_and(|text| !text.is_empty()), "{id}");
    }
    assert!(!svg.contains("style=") && !svg.contains("NaN") && !svg.contains("inf"), "{svg}");
    let texts: Vec<&str> =
        document.descendants().filter(|node| node.has_tag_name("text")).filter_map(|node| node.text()).collect();
    for wanted in ["VG 68 <\"&…", "cold 5 °C", "hand can", "mm²/s", "°C", "1000"] {
        assert!(texts.contains(&wanted), "{wanted} in {texts:?}");
    }
}

/// ASTM D341 draws an oil as a straight line: the points of a curve lie on the straight line between its ends.
#[test]
fn an_oil_is_a_straight_line() {
    let svg = chart();
    let document = Document::parse(&svg).expect("well-formed XML");
    let curves = document.descendants().filter(|node| node.has_tag_name("polyline"));
    let mut count = 0;
    for curve in curves {
        let points = numbers(curve.attribute("points").expect("a curve has points"));
        let points: Vec<(f64, f64)> = points.chunks(2).map(|pair| (pair[0], pair[1])).collect();
        let ((x0, y0), (x1, y1)) = (points[0], points[points.len() - 1]);
        for (x, y) in &points {
            let straight = y0 + (x - x0) / (x1 - x0) * (y1 - y0);
            assert!((straight - y).abs() < 0.6, "{x} {y} lies off {straight}");
        }
        count += 1;
    }
    assert_eq!(count, 2);
}

#[test]
fn marks_and_bands_outside_are_left_out_or_cut() {
    let plot = Plot {
        title: "t".to_owned(),
        description: "d".to_owned(),
        across: Axis::even("x", [0.0, 10.0], 5),
        up: Axis::logarithmic("y", [1.0, 1000.0]),
        bands: vec![Band { name: "b".to_owned(), ends: [0.0, 1e9] }],
        marks: vec![
            Mark { name: "outside".to_owned(), at: Across::At(50.0) },
            Mark { name: "inside".to_owned(), at: Across::Level(10.0) },
        ],
        curves: vec![Curve { name: "c".to_owned(), points: vec![(0.0, 0.0), (5.0, 10.0), (20.0, 1e9)] }],
    };
    let svg = plot.svg("p");
    let document = Document::parse(&svg).expect("well-formed XML");
    assert!(svg.contains("inside") && !svg.contains("outside"));
    let [_, _, width, height] = numbers(document.root_element().attribute("viewBox").expect("a box"))[..] else {
        panic!("four numbers");
    };
    for node in document.descendants().filter(|node| node.has_tag_name("rect")) {
        let of = |name: &str| node.attribute(name).and_then(|text| text.parse::<f64>().ok()).expect("a number");
        assert!(of("x") >= 0.0 && of("y") >= 0.0 && of("x") + of("width") <= width && of("y") + of("height") <= height);
        assert!(of("height") >= 0.0);
    }
}

/// A machine's side is well-formed, its balloons lead to their points and stay inside, and odd names do no harm.
#[test]
fn a_side_carries_its_balloons() {
    let place = |number: &str, at| Place {
        number: number.to_owned(),
        name: "cup <\"&>".to_owned(),
        to: format!("/p/{number}"),
        at,
    };
    let places = vec![place("1", [0.1, 0.1]), place("2", [0.12, 0.12]), place("99a", [1.0, 1.0])];
    let ground =
        Ground::Lines { attributes: " viewBox=\"0 0 30 20\"".to_owned(), inside: "<line x1=\"3\"/>".to_owned() };
    let side = Side { title: "Left <side>".to_owned(), size: [30.0, 20.0], ground, places, radius: 40.0 };
    let svg = side.svg("s");
    let document = Document::parse(&svg).expect("well-formed XML");
    let root = document.root_element();
    let [left, top, width, height] = numbers(root.attribute("viewBox").expect("a box").replace(' ', ",").as_str())[..]
    else {
        panic!("four numbers");
    };
    let links: Vec<_> = document.descendants().filter(|node| node.has_tag_name("a")).collect();
    let to: Vec<_> = links.iter().filter_map(|link| link.attribute("href")).collect();
    assert_eq!(to, ["/p/1", "/p/2", "/p/99a"]);
    for link in links {
        let circle = link.children().find(|node| node.has_tag_name("circle")).expect("a circle");
        let of = |name: &str| circle.attribute(name).and_then(|text| text.parse::<f64>().ok()).expect("a number");
        assert!(of("cx") - of("r") >= left && of("cx") + of("r") <= left + width, "{svg}");
        assert!(of("cy") - of("r") >= top && of("cy") + of("r") <= top + height, "{svg}");
        assert_eq!(link.children().filter(|node| node.has_tag_name("text")).count(), 1);
    }
    let photo = Side { ground: Ground::Photo { address: "/pictures/1".to_owned() }, ..side };
    let svg = photo.svg("s");
    let document = Document::parse(&svg).expect("well-formed XML");
    let image = document.descendants().find(|node| node.has_tag_name("image")).expect("a photograph");
    assert_eq!(image.attribute("href"), Some("/pictures/1"));
    assert_eq!((image.attribute("width"), image.attribute("height")), (Some("1200"), Some("800")));
}
