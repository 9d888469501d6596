//! What today's round is for: machines, a job and hours, and the time and the cold there are. The choice travels with every form and
//! link of the page.

use advice::round::Plan;
use serde::Deserialize;
use shop::amount::read_minutes;
use shop::id::Id;
use shop::reading::{says_minutes, says_quantity};
use tribology::quantity::{Kind, Temperature, Time, Units, typed};

use crate::parts::{Choice as Answer, Entry, Field, Filter};
use crate::shop_state::View;
use crate::{address, hours, phrase};

/// The choice as an address or a form carries it. What is left empty is the usual: the first machine, ordinary work, the
/// shop's own hours.
#[derive(Clone, Debug, Default, Deserialize)]
pub(crate) struct Asked {
    #[serde(default)]
    pub(crate) machine: String,
    #[serde(default)]
    pub(crate) job: String,
    #[serde(default)]
    pub(crate) hours: String,
    /// Further machines of the same round, their ids behind one another with commas.
    #[serde(default)]
    pub(crate) with: String,
    /// The minutes that there are; empty for the whole round.
    #[serde(default)]
    pub(crate) minutes: String,
    /// How warm the shop is, when somebody said it.
    #[serde(default)]
    pub(crate) temperature: String,
}

/// The choice, held against the chart.
pub(crate) struct Choice {
    /// As it was asked.
    asked: Asked,
    pub(crate) machine: Id,
    pub(crate) job: Option<Id>,
    pub(crate) job_name: String,
    pub(crate) hours: Time,
    pub(crate) minutes: Option<u32>,
    pub(crate) temperature: Option<Temperature>,
    job_fault: Option<String>,
    hours_fault: Option<String>,
    minutes_fault: Option<String>,
    temperature_fault: Option<String>,
}

/// What ordinary work is called: work that wakes no sleeping point.
const ORDINARY: &str = "Ordinary work";

impl Asked {
    /// The choice as an address carries it: what is there more than once, as ticked machines are, is gathered.
    pub(crate) fn of(pairs: Vec<(String, String)>) -> Self {
        let mut asked = Self::default();
        for (name, value) in pairs {
            match name.as_str() {
                "machine" => asked.machine = value,
                "job" => asked.job = value,
                "hours" => asked.hours = value,
                "minutes" => asked.minutes = value,
                "temperature" => asked.temperature = value,
                "with" if asked.with.is_empty() => asked.with = value,
                "with" => asked.with = format!("{},{value}", asked.with),
                _ => {}
            }
        }
        asked
    }

    /// All that is said, as names and values.
    fn all(&self) -> [(&'static str, &str); 6] {
        [
            ("machine", &self.machine),
            ("with", &self.with),
            ("job", &self.job),
            ("hours", &self.hours),
            ("minutes", &self.minutes),
            ("temperature", &self.temperature),
        ]
    }

    /// The address of today's round for this choice.
    pub(crate) fn today(&self) -> String {
        address::with_query("/", &self.all())
    }

    /// An address that carries the choice, but for the machine that it names already.
    pub(crate) fn with_page(&self, page: &str) -> String {
        address::with_query(page, &self.all()[1..])
    }

    /// The choice as names and values that a form carries.
    pub(crate) fn pairs(&self) -> Vec<(String, String)> {
        let said = self.all().into_iter().filter(|(_, value)| !value.is_empty());
        said.map(|(name, value)| (name.to_owned(), value.to_owned())).collect()
    }

    /// The ids of all machines that are asked for.
    pub(crate) fn machines(&self) -> impl Iterator<Item = &str> {
        [self.machine.as_str()].into_iter().chain(self.with.split(',')).map(str::trim).filter(|id| !id.is_empty())
    }

    /// The same choice seen from another of its machines: where a form is about that one.
    pub(crate) fn seen_from(&self, machine: &Id, all: &[&Id]) -> Self {
        let others: Vec<&str> = all.iter().filter(|other| **other != machine).map(|other| other.as_str()).collect();
        Self { machine: machine.to_string(), with: others.join(","), ..self.clone() }
    }
}

impl Choice {
    /// Holds what was asked against the chart. What cannot be is told beside its field, and the usual is taken.
    pub(crate) fn settled(view: &View, asked: &Asked) -> Self {
        let chart = &view.machine.chart;
        let job = chart.jobs.iter().find(|job| job.id.as_str() == asked.job);
        let job_fault = (job.is_none() && !asked.job.is_empty()).then(|| no_such_job(&asked.job));
        let hours = if asked.hours.trim().is_empty() { Ok(view.settings.hours) } else { hours::read(&asked.hours) };
        let (hours, hours_fault) = match hours {
            Ok(hours) => (hours, None),
            Err(fault) => (view.settings.hours, Some(fault)),
        };
        let minutes = asked.minutes.trim();
        let minutes = (!minutes.is_empty())
            .then(|| read_minutes(minutes).map_err(|fault| says_minutes("What was typed here", &fault) + "."));
        let temperature = asked.temperature.trim();
        let temperature = (!temperature.is_empty()).then(|| {
            let says = |fault| says_quantity("What was typed here", &fault, Kind::Temperature) + ".";
            typed::<Temperature>(temperature).map(|typed| typed.value).map_err(says)
        });
        Self {
            asked: Asked { machine: view.machine.id.to_string(), ..asked.clone() },
            minutes: minutes.clone().and_then(Result::ok),
            minutes_fault: minutes.and_then(Result::err),
            temperature: temperature.clone().and_then(Result::ok),
            temperature_fault: temperature.and_then(Result::err),
            machine: view.machine.id.clone(),
            job: job.map(|job| job.id.clone()),
            job_name: job.map_or_else(|| ORDINARY.to_owned(), |job| job.name.clone()),
            hours,
            job_fault,
            hours_fault,
        }
    }

    /// The planned hours as they were asked for; empty for the usual ones.
    pub(crate) fn typed_hours(&self) -> &str {
        &self.asked.hours
    }

    /// The other machines of the same page, as they were asked for.
    pub(crate) fn with(&self) -> &str {
        &self.asked.with
    }

    pub(crate) fn plan(&self) -> Plan {
        Plan { job: self.job.clone(), hours: self.hours }
    }

    /// The address of today's round for this choice.
    pub(crate) fn today(&self) -> String {
        self.asked.today()
    }

    /// The page of a point, with the choice to come back to.
    pub(crate) fn point(&self, point: &Id) -> String {
        self.asked.with_page(&address::point(&self.machine, point))
    }

    /// Where to say who is at work, and come back.
    pub(crate) fn hand(&self) -> String {
        address::with_query("/hand", &self.asked.all())
    }

    /// The choice as names and values that a form carries.
    pub(crate) fn pairs(&self) -> Vec<(String, String)> {
        self.asked.pairs()
    }

    pub(crate) fn is_faulty(&self) -> bool {
        self.job_fault.is_some() || self.hours_fault.is_some() || self.temperature_fault.is_some()
    }

    /// The same choice where it does not matter that this machine has no such job.
    pub(crate) fn without_job_fault(self) -> Self {
        Self { job_fault: None, ..self }
    }

    /// The form that asks how much time there is.
    pub(crate) fn short_of_time(&self) -> Filter {
        let hidden = Asked { minutes: String::new(), ..self.asked.clone() }.pairs();
        let field = Field {
            name: "minutes".to_owned(),
            form: "short".to_owned(),
            label: "Minutes for the round, like 10".to_owned(),
            hint: "Leave it empty for everything that is due.".to_owned(),
            entry: Entry::Quantity,
            value: self.asked.minutes.clone(),
            fault: self.minutes_fault.clone(),
        };
        Filter { to: "/".to_owned(), hidden, fields: vec![field], words: "What matters most".to_owned() }
    }

    /// Whether the time that was asked for is none.
    pub(crate) fn is_time_faulty(&self) -> bool {
        self.minutes_fault.is_some()
    }

    /// The form that chooses anew.
    pub(crate) fn filter(&self, view: &View) -> Filter {
        let machines: Vec<Answer> = view.all.iter().map(|row| Answer::new(row.id.as_str(), &row.name)).collect();
        let others = machines.iter().filter(|other| other.value != self.machine.as_str()).cloned().collect();
        let degrees = match view.settings.units {
            Units::Metric => "Shop temperature, like 8 °C",
            Units::Us => "Shop temperature, like 46 °F",
        };
        let hours =
            if self.asked.hours.is_empty() { advice::words::hours(self.hours) } else { self.asked.hours.clone() };
        let field = |name: &str, label: &str, entry, value: &str, fault: &Option<String>| Field {
            name: name.to_owned(),
            form: "choose".to_owned(),
            label: label.to_owned(),
            entry,
            value: value.to_owned(),
            fault: fault.clone(),
            ..Field::default()
        };
        let mut fields = vec![field("machine", "Machine", Entry::List(machines), self.machine.as_str(), &None)];
        if view.all.len() > 1 {
            fields.push(field("with", "Together with", Entry::Several(others), &self.asked.with, &None));
        }
        fields.extend([
            field("job", "Today's job", Entry::List(jobs(view)), &self.asked.job, &self.job_fault),
            field("hours", "Hours, like 3 h or 90 min", Entry::Quantity, &hours, &self.hours_fault),
            field("temperature", degrees, Entry::Quantity, &self.asked.temperature, &self.temperature_fault),
        ]);
        let minutes = ("minutes".to_owned(), self.asked.minutes.clone());
        let hidden = [minutes].into_iter().filter(|(_, value)| !value.is_empty()).collect();
        Filter { to: "/".to_owned(), hidden, fields, words: "Show this round".to_owned() }
    }
}

/// What is wrong with a job that the machine does not have.
pub(crate) fn no_such_job(asked: &str) -> String {
    format!("This machine has no job \"{asked}\". Choose one from the list, or \"{ORDINARY}\".")
}

/// The jobs of a machine to choose from, ordinary work first.
pub(crate) fn jobs(view: &View) -> Vec<Answer> {
    let jobs = view.machine.chart.jobs.iter().map(|job| Answer::new(job.id.as_str(), phrase::capital(&job.name)));
    [Answer::new("", ORDINARY)].into_iter().chain(jobs).collect()
}
