//! What a topic found, as lines for people and as one object for programs.

use advice::topic::{Calculated, Item, Value};
use advice::words;
use serde_json::{Map, Value as Json, json};
use tribology::quantity::Units;

use crate::failure::Failure;

/// Prints results, what was assumed and warned of, and, when asked, the working.
pub(crate) fn calculated(found: &Calculated, units: Units, working: bool) -> Result<(), Failure> {
    super::table(&words::lines(&found.items, units))?;
    for assumed in &found.assumed {
        super::line(&format!("Assumed: {assumed}."))?;
    }
    for warning in &found.warnings {
        super::line(&format!("Mind: {}.", words::warning(warning)))?;
    }
    if working {
        super::line("\nHow this was worked out:")?;
        for step in &found.steps {
            super::line(&format!("  {}", words::step(step, units)))?;
        }
    }
    Ok(())
}

/// The object that `--json` prints.
pub(crate) fn calculated_json(topic: &str, found: &Calculated, units: Units) -> Json {
    let mut sources: Vec<&str> = found.steps.iter().map(|step| step.source).collect();
    sources.sort_unstable();
    sources.dedup();
    json!({
        "topic": topic,
        "result": items(&found.items),
        "assumed": found.assumed,
        "warnings": found.warnings.iter().map(words::warning).collect::<Vec<_>>(),
        "working": found.steps.iter().map(|step| words::step(step, units)).collect::<Vec<_>>(),
        "sources": sources,
    })
}

fn items(items: &[Item]) -> Json {
    let pairs = items.iter().map(|item| (item.key.to_owned(), value(&item.value)));
    Json::Object(pairs.collect::<Map<_, _>>())
}

fn value(found: &Value) -> Json {
    match found {
        Value::Nothing => Json::Null,
        Value::Number(number) | Value::Part(number) => json!(number),
        Value::Whole(number) => json!(number),
        Value::Quantity(si, unit) => json!(unit.from_si(*si)),
        Value::Text(text) => json!(text),
        Value::Texts(texts) => json!(texts),
        Value::Rows(rows) => rows.iter().map(|row| items(row)).collect(),
        Value::Named(named) => {
            let pairs = named.iter().map(|(name, one)| (name.clone(), value(one)));
            Json::Object(pairs.collect::<Map<_, _>>())
        }
    }
}
