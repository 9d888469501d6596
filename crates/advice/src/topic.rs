//! The sums that can be asked for by themselves, one topic a file, all listed in [`TOPICS`]. A topic says what it takes and gives a
//! [`Calculated`]; the command line and the calculator pages are both made from this list and hold no logic of their own.

mod blend;
mod convert;
mod cusum;
mod cusum_poisson;
mod density;
mod drip;
mod film;
mod film_ratio;
mod gear;
mod given;
mod grade;
mod index;
mod journal;
mod liquid;
mod network;
mod old_name;
mod petroff;
mod pressure_viscosity;
mod pump;
mod rate;
mod rolling;
mod rolling_friction;
mod rolling_life;
mod sketch;
mod standpipe;
mod strainer;
mod tube;
mod two_rates;
mod viscosity;
mod way_oil;

pub use given::{Given, Refused};
pub use sketch::Sketch;

pub(crate) use convert::reading;
pub(crate) use given::{number, read};

use tribology::oil::ViscosityLine;
use tribology::quantity::{Kind, Quantity, Unit};
use tribology::{Answer, Step, Warning};

/// Every topic, in the order in which a person would look for it.
pub const TOPICS: &[Topic] = &[
    viscosity::TOPIC,
    index::TOPIC,
    convert::TOPIC,
    grade::TOPIC,
    old_name::TOPIC,
    blend::TOPIC,
    density::TOPIC,
    pressure_viscosity::TOPIC,
    film_ratio::TOPIC,
    rolling::TOPIC,
    rolling_life::TOPIC,
    rolling_friction::TOPIC,
    gear::TOPIC,
    film::TOPIC,
    way_oil::TOPIC,
    journal::TOPIC,
    petroff::TOPIC,
    tube::TOPIC,
    standpipe::TOPIC,
    strainer::TOPIC,
    pump::TOPIC,
    drip::TOPIC,
    network::TOPIC,
    rate::TOPIC,
    two_rates::TOPIC,
    cusum::TOPIC,
    cusum_poisson::TOPIC,
];

/// A sum that can be asked for.
#[derive(Debug)]
pub struct Topic {
    /// Its name on the command line.
    pub name: &'static str,
    /// What it finds, as a heading.
    pub title: &'static str,
    /// What it takes and gives, in a sentence or two.
    pub about: &'static str,
    /// What is typed without the name of an option, when there is such.
    pub words: Option<Asked>,
    /// What is typed behind the name of an option.
    pub options: &'static [Asked],
    /// Whole lines that give an answer, without the name of the program.
    pub examples: &'static [&'static str],
    /// The sum.
    pub answer: fn(&Given<'_>) -> Result<Calculated, Refused>,
}

/// Something that a topic asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Asked {
    /// The option's name, without dashes.
    pub name: &'static str,
    /// What it is, on a label.
    pub label: &'static str,
    /// How such a value is typed.
    pub example: &'static str,
    /// How often it may be given.
    pub times: Times,
    /// In which form.
    pub form: Form,
}

/// In which form something is given. A topic is given texts in any case; who asks turns the form into one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// A few words, typed.
    Typed,
    /// Its name alone says it; the text is [`YES`].
    Flag,
    /// The name of a file, whose whole content is the text; here such a content that gives an answer.
    File(&'static str),
}

/// The text of a flag that is given.
pub const YES: &str = "yes";

/// How often an option may be given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Times {
    /// At most once.
    Once,
    /// As often as there are such things.
    Often,
}

/// What a topic found.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Calculated {
    /// The results, most wanted first.
    pub items: Vec<Item>,
    /// What was assumed, each a sentence without its full stop.
    pub assumed: Vec<String>,
    /// What to be wary of.
    pub warnings: Vec<Warning>,
    /// How it was worked out.
    pub steps: Vec<Step>,
    /// Oils that a viscosity chart may show, with their names.
    pub oils: Vec<(String, ViscosityLine)>,
    /// Plots that help to see where the answer stands.
    pub plots: Vec<Sketch>,
}

/// One result.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// The key for programs; a number's unit ends it.
    pub key: &'static str,
    /// What it is, for people.
    pub label: &'static str,
    /// The result.
    pub value: Value,
}

/// A result's value.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// There is none: an open limit, a gap.
    Nothing,
    /// A number without a unit.
    Number(f64),
    /// A part of one.
    Part(f64),
    /// A number that counts or names.
    Whole(i64),
    /// A quantity in base SI units, with the unit that its key says.
    Quantity(f64, &'static Unit),
    /// A word or a few.
    Text(String),
    /// Several sentences.
    Texts(Vec<String>),
    /// Several results of one shape.
    Rows(Vec<Vec<Item>>),
    /// Results of one kind by the names that the asker gave.
    Named(Vec<(String, Value)>),
}

impl Topic {
    /// The topic of this name.
    #[must_use]
    pub fn named(name: &str) -> Option<&'static Self> {
        TOPICS.iter().find(|topic| topic.name == name)
    }

    const fn once(name: &'static str, label: &'static str, example: &'static str) -> Asked {
        Asked { name, label, example, times: Times::Once, form: Form::Typed }
    }

    const fn flag(name: &'static str, label: &'static str) -> Asked {
        Asked { name, label, example: YES, times: Times::Once, form: Form::Flag }
    }

    const fn file(name: &'static str, label: &'static str, example: &'static str, content: &'static str) -> Asked {
        Asked { name, label, example, times: Times::Once, form: Form::File(content) }
    }

    const fn often(name: &'static str, label: &'static str, example: &'static str) -> Asked {
        Asked { name, label, example, times: Times::Often, form: Form::Typed }
    }
}

impl Calculated {
    /// Takes over the working and the warnings of an answer, and gives its value.
    fn take<T>(&mut self, answer: Answer<T>) -> T {
        self.warnings.extend(answer.warnings);
        self.steps.extend(answer.steps);
        answer.value
    }

    fn push(&mut self, item: Item) {
        self.items.push(item);
    }

    fn assume(&mut self, says: impl Into<String>) {
        self.assumed.push(says.into());
    }
}

impl Item {
    fn new(key: &'static str, label: &'static str, value: Value) -> Self {
        Self { key, label, value }
    }

    /// A quantity whose number for programs is in this unit.
    fn quantity<Q: Quantity>(key: &'static str, label: &'static str, value: Q, unit: &str) -> Self {
        Self::new(key, label, Value::Quantity(value.si(), unit_of(Q::KIND, unit)))
    }

    /// A quantity that there may be.
    fn maybe<Q: Quantity>(key: &'static str, label: &'static str, value: Option<Q>, unit: &str) -> Self {
        value.map_or(Self::new(key, label, Value::Nothing), |value| Self::quantity(key, label, value, unit))
    }
}

fn unit_of(kind: Kind, symbol: &str) -> &'static Unit {
    Unit::find(kind, symbol).expect("a topic spells units as the table does")
}
