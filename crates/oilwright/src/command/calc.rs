//! `calc`: the sums that can be asked for by themselves. Its commands, options and help are made from the list of topics; there is no
//! logic here.

use std::fs;
use std::process::ExitCode;

use advice::topic::{Asked, Form, Given, TOPICS, Times, Topic, YES};
use clap::error::ErrorKind;
use clap::{Arg, ArgAction, ArgMatches, Args, Command, Error, FromArgMatches, Subcommand};
use tribology::quantity::Units;

use super::Shared;
use crate::failure::Failure;
use crate::say;

/// The id of what is typed without an option.
const WORDS: &str = "words";

/// A topic with what was typed for it.
#[derive(Clone, Debug)]
pub(crate) struct Calc {
    topic: &'static Topic,
    given: Given<'static>,
    /// The file whose content is still to be given, for a topic that takes one.
    file: Option<String>,
}

impl Calc {
    /// Works it out and prints it.
    pub(crate) fn run(&self, shared: &Shared) -> Result<ExitCode, Failure> {
        let found = self.whole()?.answer().map_err(|refused| Failure::Use(refused.to_string()))?;
        let units = shared.units.map_or(Units::Metric, Into::into);
        if shared.json {
            say::json(&say::calculated_json(self.topic.name, &found, units))?;
        } else {
            say::calculated(&found, units, shared.working)?;
        }
        Ok(ExitCode::SUCCESS)
    }

    /// All that was given, with the content of the file.
    fn whole(&self) -> Result<Given<'static>, Failure> {
        let mut given = self.given.clone();
        if let Some(file) = &self.file {
            let text = fs::read_to_string(file);
            given.add_words(&text.map_err(|error| Failure::Use(format!("{file} cannot be read: {error}")))?);
        }
        Ok(given)
    }
}

impl FromArgMatches for Calc {
    fn from_arg_matches(matches: &ArgMatches) -> Result<Self, Error> {
        let missing =
            || Error::raw(ErrorKind::MissingSubcommand, "a topic is missing; oilwright calc --help lists them\n");
        let (name, matches) = matches.subcommand().ok_or_else(missing)?;
        Ok(Self::typed(Topic::named(name).ok_or_else(missing)?, matches))
    }

    fn update_from_arg_matches(&mut self, matches: &ArgMatches) -> Result<(), Error> {
        *self = Self::from_arg_matches(matches)?;
        Ok(())
    }
}

impl Calc {
    /// What was typed for a topic.
    fn typed(topic: &'static Topic, matches: &ArgMatches) -> Self {
        let mut given = Given::new(topic);
        let words = || matches.get_many::<String>(WORDS).into_iter().flatten();
        let file = match topic.words.map(|asked| asked.form) {
            Some(Form::File(_)) => words().next().cloned(),
            Some(_) => {
                words().for_each(|word| given.add_words(word));
                None
            }
            None => None,
        };
        for asked in topic.options {
            if asked.form == Form::Flag {
                if matches.get_flag(asked.name) {
                    given.add(asked.name, YES);
                }
                continue;
            }
            for text in matches.get_many::<String>(asked.name).into_iter().flatten() {
                given.add(asked.name, text);
            }
        }
        Self { topic, given, file }
    }
}

impl Subcommand for Calc {
    fn augment_subcommands(command: Command) -> Command {
        command.subcommands(TOPICS.iter().map(of_topic)).subcommand_required(true).arg_required_else_help(true)
    }

    fn augment_subcommands_for_update(command: Command) -> Command {
        Self::augment_subcommands(command)
    }

    fn has_subcommand(name: &str) -> bool {
        Topic::named(name).is_some()
    }
}

/// `old-name`: the topic of that name as a command of its own, for it is asked for oftener than all others.
#[derive(Clone, Debug)]
pub(crate) struct OldName(pub(crate) Calc);

impl OldName {
    fn topic() -> &'static Topic {
        Topic::named("old-name").expect("the list of topics has it")
    }
}

impl FromArgMatches for OldName {
    fn from_arg_matches(matches: &ArgMatches) -> Result<Self, Error> {
        Ok(Self(Calc::typed(Self::topic(), matches)))
    }

    fn update_from_arg_matches(&mut self, matches: &ArgMatches) -> Result<(), Error> {
        *self = Self::from_arg_matches(matches)?;
        Ok(())
    }
}

impl Args for OldName {
    fn augment_args(command: Command) -> Command {
        asking(command, Self::topic())
    }

    fn augment_args_for_update(command: Command) -> Command {
        Self::augment_args(command)
    }
}

fn of_topic(topic: &'static Topic) -> Command {
    asking(Command::new(topic.name), topic)
}

/// A command that asks for what a topic takes.
fn asking(command: Command, topic: &'static Topic) -> Command {
    let examples: Vec<String> = topic.examples.iter().map(|example| format!("  oilwright calc {example}")).collect();
    let mut after = format!("Examples:\n{}", examples.join("\n"));
    if let Some(Form::File(content)) = topic.words.map(|asked| asked.form) {
        after += &format!("\n\nSuch a file:\n{content}");
    }
    let command =
        command.about(topic.title).long_about(topic.about).after_help(after).args(topic.options.iter().map(option));
    let words = |asked: Asked| Arg::new(WORDS).value_name(asked.example).help(asked.label);
    match topic.words {
        Some(asked) if matches!(asked.form, Form::File(_)) => command.arg(words(asked).required(true)),
        Some(asked) => command.arg(words(asked).num_args(1..)),
        None => command,
    }
}

fn option(asked: &Asked) -> Arg {
    let option = Arg::new(asked.name).long(asked.name).help(asked.label);
    if asked.form == Form::Flag {
        return option.action(ArgAction::SetTrue);
    }
    let often = asked.times == Times::Often;
    // A temperature may begin with a minus sign.
    option
        .value_name(asked.example)
        .action(if often { ArgAction::Append } else { ArgAction::Set })
        .allow_hyphen_values(true)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_topic_is_a_command_whose_options_are_told_apart() {
        Calc::augment_subcommands(Command::new("calc")).debug_assert();
        assert!(TOPICS.iter().all(|topic| Calc::has_subcommand(topic.name)));
    }
}
