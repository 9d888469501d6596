//! The oiling chart of one machine. Start at [`Chart::read`]; one file per element holds its struct, its keys and its reader.
//! The chart is plain data: what is due, what suits and what is wrong with it are worked out elsewhere.

mod assembly;
mod circuit;
mod evidence;
mod finding;
mod job;
mod machine;
mod option;
mod pair;
mod picture;
mod point;
mod reservoir;
mod stand;
mod when;

pub use assembly::Assembly;
pub use circuit::{Circuit, Node, NodeKind, Tube};
pub use evidence::{Evidence, How};
pub use finding::{Finding, FindingKind};
pub use job::Job;
pub use machine::Machine;
pub use option::ChartOption;
pub use pair::{Orientation, Pair, PairKind};
pub use picture::Picture;
pub use point::{Method, Point, State};
pub use reservoir::{Behaviour, Reservoir, ReservoirKind};
pub use stand::Stand;
pub use when::When;

use crate::id::Id;
use crate::reading::{Element, Key, Log, Need, Read, Sort, Table, Takes, read_file};

/// The whole chart of one machine.
#[derive(Clone, Debug, PartialEq)]
pub struct Chart {
    /// The machine itself.
    pub machine: Machine,
    /// How examples of the model differ.
    pub options: Vec<ChartOption>,
    /// Where a person stands.
    pub stands: Vec<Stand>,
    /// Kinds of work that wake points.
    pub jobs: Vec<Job>,
    /// The parts that a person would name.
    pub assemblies: Vec<Assembly>,
    /// The moving pairs.
    pub pairs: Vec<Pair>,
    /// The bodies of oil.
    pub reservoirs: Vec<Reservoir>,
    /// The oil lines.
    pub circuits: Vec<Circuit>,
    /// The oiling points.
    pub points: Vec<Point>,
    /// Pictures beside the file.
    pub pictures: Vec<Picture>,
    /// What is to settle.
    pub findings: Vec<Finding>,
    /// Ids that were used once and never will be again.
    pub retired: Vec<Id>,
}

/// The root table of a chart file.
pub static ROOT: Element = Element {
    name: "chart",
    says: "The oiling chart of one machine",
    keys: &[
        Key { name: "chart", takes: Takes::Format, need: Need::Must, says: "the number of the file's format" },
        Key::may("retired", Takes::Texts, "ids that were used once and are never used again"),
        Key::must("machine", Takes::Table(&machine::KEYS), "the machine itself"),
        Key::may("option", Takes::Tables(&option::KEYS), "how examples of the model differ"),
        Key::may("stand", Takes::Tables(&stand::KEYS), "where a person stands"),
        Key::may("job", Takes::Tables(&job::KEYS), "kinds of work that wake points"),
        Key::may("assembly", Takes::Tables(&assembly::KEYS), "parts that a person would name"),
        Key::may("pair", Takes::Tables(&pair::KEYS), "moving pairs"),
        Key::may("reservoir", Takes::Tables(&reservoir::KEYS), "bodies of oil"),
        Key::may("circuit", Takes::Tables(&circuit::KEYS), "oil lines"),
        Key::may("point", Takes::Tables(&point::KEYS), "oiling points"),
        Key::may("picture", Takes::Tables(&picture::KEYS), "pictures beside the file"),
        Key::may("finding", Takes::Tables(&finding::KEYS), "what is to settle"),
    ],
};

impl Chart {
    /// Reads a chart file: every fault of meaning at once, or the first fault of syntax.
    #[must_use]
    pub fn read(text: &str) -> Read<Self> {
        read_file(text, &ROOT, "chart", read)
    }

    /// The point of this id.
    #[must_use]
    pub fn point(&self, id: &Id) -> Option<&Point> {
        self.points.iter().find(|point| point.id == *id)
    }

    /// The pair of this id.
    #[must_use]
    pub fn pair(&self, id: &Id) -> Option<&Pair> {
        self.pairs.iter().find(|pair| pair.id == *id)
    }

    /// The reservoir of this id.
    #[must_use]
    pub fn reservoir(&self, id: &Id) -> Option<&Reservoir> {
        self.reservoirs.iter().find(|reservoir| reservoir.id == *id)
    }

    /// The circuit of this id.
    #[must_use]
    pub fn circuit(&self, id: &Id) -> Option<&Circuit> {
        self.circuits.iter().find(|circuit| circuit.id == *id)
    }

    /// The job of this id.
    #[must_use]
    pub fn job(&self, id: &Id) -> Option<&Job> {
        self.jobs.iter().find(|job| job.id == *id)
    }

    /// The assembly of this id.
    #[must_use]
    pub fn assembly(&self, id: &Id) -> Option<&Assembly> {
        self.assemblies.iter().find(|assembly| assembly.id == *id)
    }

    /// Whether an element belongs to this example, as far as its options are answered. An option without an answer leaves its
    /// elements in: a point looked for in vain costs a minute, a point never looked for costs a bearing.
    #[must_use]
    pub fn applies(&self, when: &When) -> bool {
        when.holds(|option| self.options.iter().find(|o| o.id == *option).and_then(|o| o.here.as_deref()))
    }

    /// The points of this example.
    pub fn points_here(&self) -> impl Iterator<Item = &Point> {
        self.points.iter().filter(|point| self.applies(&point.when))
    }
}

fn read(table: &Table<'_>, log: &Log) -> Option<Chart> {
    stand::built_in(log);
    for (text, span) in table.strings("retired") {
        match Id::new(text) {
            Ok(id) => log.retired(id, span),
            Err(fault) => log.fault(span, fault.to_string()),
        }
    }
    let machine = table.child("machine", machine::read);
    let options = table.children("option", option::read);
    log.set_options(options.clone());
    let stands = stand::with_built_in(table.children("stand", stand::read));
    let chart = Chart {
        stands,
        jobs: table.children("job", job::read),
        assemblies: table.children("assembly", assembly::read),
        pairs: table.children("pair", pair::read),
        reservoirs: table.children("reservoir", reservoir::read),
        circuits: table.children("circuit", circuit::read),
        points: table.children("point", point::read),
        pictures: table.children("picture", picture::read),
        findings: table.children("finding", finding::read),
        retired: table.texts("retired").iter().filter_map(|text| Id::new(text).ok()).collect(),
        machine: machine?,
        options,
    };
    Some(chart)
}

/// Where an element's `id` key stands in every registry.
const ID: Key = Key::must("id", Takes::Id, "its own short name, unique in the file and never used again");
/// The condition under which an element exists.
const WHEN: Key = Key::may("when", Takes::When, "exists only on examples that are built so: { option = \"choice\" }");
/// A remark.
const NOTE: Key = Key::may("note", Takes::Text, "anything worth saying");
/// How statements are known.
const EVIDENCE: Key = Key::may("evidence", Takes::Tables(&evidence::KEYS), "how statements of this element are known");
/// The assembly that an element belongs to.
const ASSEMBLY: Key = Key::may("assembly", Takes::Link(&[Sort::Assembly]), "the assembly that it belongs to");
