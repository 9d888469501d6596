//! The registry of keys: what each kind of table may hold, what each key takes, and what it is for, in a sentence.

use tribology::quantity::Kind;

/// A kind of table in a file, with its keys.
#[derive(Debug)]
pub struct Element {
    /// What it is called in sentences: `point`, `moving pair`.
    pub name: &'static str,
    /// What it is, in a sentence for the schema.
    pub says: &'static str,
    /// Its keys, in the order in which they are written.
    pub keys: &'static [Key],
}

/// One key of a table.
#[derive(Debug)]
pub struct Key {
    /// How it is spelt.
    pub name: &'static str,
    /// What stands on its right.
    pub takes: Takes,
    /// Whether it may be left out.
    pub need: Need,
    /// What it is for, in a sentence.
    pub says: &'static str,
}

/// Whether a key may be left out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Need {
    /// It must stand there.
    Must,
    /// It may be left out.
    May,
}

/// What a key takes.
#[derive(Debug)]
pub enum Takes {
    /// The number of the format.
    Format,
    /// The id of the element itself.
    Id,
    /// A text.
    Text,
    /// A text or a list of texts.
    Texts,
    /// A bare number without a dimension.
    Number,
    /// Two numbers.
    TwoNumbers,
    /// `true` or `false`.
    YesNo,
    /// A day, as `2026-03-14`.
    Date,
    /// One of a few words.
    Choice(fn() -> Vec<&'static str>),
    /// A quantity with its unit.
    Quantity(Kind),
    /// A length that may be a bare number of metres.
    Metres,
    /// A quantity, or a list of them.
    Quantities(Kind),
    /// A speed that turns or slides, or a list of them.
    Speeds,
    /// A dose.
    Dose,
    /// An interval, or a list of them.
    Intervals,
    /// The id of another element.
    Link(&'static [Sort]),
    /// Ids of other elements, one or a list.
    Links(&'static [Sort]),
    /// Ids of other elements that an example may lack: a job wakes them where they are.
    Mentions(&'static [Sort]),
    /// An inline table of option and choice.
    When,
    /// One table.
    Table(&'static Element),
    /// A list of tables.
    Tables(&'static Element),
}

/// What an id names.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Sort {
    /// A way in which examples of the model differ.
    Option,
    /// A part of the machine.
    Assembly,
    /// A moving pair.
    Pair,
    /// A body of oil.
    Reservoir,
    /// Oil lines.
    Circuit,
    /// A node of the oil lines.
    Node,
    /// A tube of the oil lines.
    Tube,
    /// An oiling point.
    Point,
    /// A place to stand.
    Stand,
    /// A kind of work.
    Job,
    /// A picture.
    Picture,
    /// Something to settle.
    Finding,
    /// An oil or grease on the shelf.
    Oil,
    /// A can or gun.
    Can,
}

impl Sort {
    /// Everything on a chart that a finding can be about.
    pub const ON_A_CHART: &'static [Self] =
        &[Self::Assembly, Self::Pair, Self::Reservoir, Self::Circuit, Self::Node, Self::Tube, Self::Point];

    /// What it is called in a sentence, with its article.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Option => "an option",
            Self::Assembly => "an assembly",
            Self::Pair => "a moving pair",
            Self::Reservoir => "a reservoir",
            Self::Circuit => "a circuit",
            Self::Node => "a node of a circuit",
            Self::Tube => "a tube of a circuit",
            Self::Point => "a point",
            Self::Stand => "a stand",
            Self::Job => "a job",
            Self::Picture => "a picture",
            Self::Finding => "a finding",
            Self::Oil => "an oil",
            Self::Can => "a can",
        }
    }
}

impl Key {
    /// A key that must stand there.
    #[must_use]
    pub const fn must(name: &'static str, takes: Takes, says: &'static str) -> Self {
        Self { name, takes, need: Need::Must, says }
    }

    /// A key that may be left out.
    #[must_use]
    pub const fn may(name: &'static str, takes: Takes, says: &'static str) -> Self {
        Self { name, takes, need: Need::May, says }
    }
}
