//! Answers questions about tubes and networks of them a line each, so that another program can hold many answers against its own. A line
//! is a question in SI units; the answer is a line of numbers, or nothing where there is none.
//!
//! `tube d L μ Q` (the pressure), `network ν g`, then for each node `head name height` or `drawn name flow`, then for each
//! tube `tube from to L d` (the flow in each tube, then the head at each node), `time` before a `network` (the seconds that its solution
//! takes, the least of twenty)

use std::io::{self, BufRead as _, Write as _};
use std::time::Instant;

use tribology::feed::network::{End, Network, Node, Tube};
use tribology::feed::tube_pressure;
use tribology::quantity::{Acceleration, DynamicViscosity, KinematicViscosity, Length, VolumeFlow};

fn main() -> io::Result<()> {
    let mut out = io::BufWriter::new(io::stdout().lock());
    for line in io::stdin().lock().lines() {
        let line = line?;
        let words: Vec<&str> = line.split_whitespace().collect();
        let answer: Vec<String> =
            answer(&words).unwrap_or_default().iter().map(|number| format!("{number:e}")).collect();
        writeln!(out, "{}", answer.join(" "))?;
    }
    out.flush()
}

fn answer(words: &[&str]) -> Option<Vec<f64>> {
    match words {
        ["tube", bore, length, viscosity, flow] => {
            let tube =
                tribology::feed::Tube::new(Length::from_m(number(bore)?), Length::from_m(number(length)?)).ok()?;
            let viscosity = DynamicViscosity::from_pa_s(number(viscosity)?);
            let found = tube_pressure(tube, viscosity, VolumeFlow::from_m3_s(number(flow)?)).ok()?;
            Some(vec![found.value.pa()])
        }
        ["network", viscosity, gravity, rest @ ..] => {
            let solved = network(viscosity, gravity, rest)?.solve().ok()?.value;
            let flows = solved.flows.iter().map(|flow| Some(flow.m3_s()));
            flows.chain(solved.heads.iter().map(|head| head.map(Length::m))).collect()
        }
        ["time", "network", viscosity, gravity, rest @ ..] => {
            let network = network(viscosity, gravity, rest)?;
            let once = |_| {
                let began = Instant::now();
                network.solve().ok().map(|_| began.elapsed().as_secs_f64())
            };
            let all: Vec<f64> = (0..20).map(once).collect::<Option<_>>()?;
            all.into_iter().reduce(f64::min).map(|least| vec![least])
        }
        _ => None,
    }
}

fn network(viscosity: &str, gravity: &str, mut words: &[&str]) -> Option<Network> {
    let (mut nodes, mut tubes) = (Vec::new(), Vec::new());
    while !words.is_empty() {
        words = match words {
            ["head", name, height, rest @ ..] => {
                nodes.push(Node::new(*name, End::Head(Length::from_m(number(height)?))));
                rest
            }
            ["drawn", name, flow, rest @ ..] => {
                nodes.push(Node::new(*name, End::Closed).with_draw(VolumeFlow::from_m3_s(number(flow)?)));
                rest
            }
            ["tube", from, to, length, bore, rest @ ..] => {
                let (length, bore) = (Length::from_m(number(length)?), Length::from_m(number(bore)?));
                tubes.push(Tube::new(tubes.len().to_string(), *from, *to, length, bore));
                rest
            }
            _ => return None,
        };
    }
    let gravity = Acceleration::from_m_s2(number(gravity)?);
    Some(Network { gravity, ..Network::new(KinematicViscosity::from_m2_s(number(viscosity)?), nodes, tubes) })
}

fn number(word: &str) -> Option<f64> {
    word.parse().ok()
}
