//! The JSON Schema of our files, made from the registry that the reader reads by, so that editors can help while a chart is written.
//! A schema cannot know what links where or how quantities read; `chart check` does.

use serde_json::{Map, Value, json};

use crate::reading::{Element, FORMAT, Key, Need, Takes};

/// The schema of a file whose root table is this element, after JSON Schema draft 2020-12.
#[must_use]
pub fn schema(root: &Element) -> Value {
    let mut schema = table(root);
    let whole = schema.as_object_mut().expect("a table's schema is an object");
    whole.insert("$schema".to_owned(), json!("https://json-schema.org/draft/2020-12/schema"));
    whole.insert("title".to_owned(), json!(format!("Oilwright {}, format {FORMAT}", root.name)));
    schema
}

fn table(element: &Element) -> Value {
    let properties: Map<String, Value> = element.keys.iter().map(|key| (key.name.to_owned(), property(key))).collect();
    let required: Vec<&str> = element.keys.iter().filter(|key| key.need == Need::Must).map(|key| key.name).collect();
    json!({
        "type": "object",
        "description": element.says,
        "properties": properties,
        "required": required,
        "additionalProperties": false,
    })
}

fn property(key: &Key) -> Value {
    let mut property = value(&key.takes);
    if let Some(object) = property.as_object_mut() {
        object.insert("description".to_owned(), json!(key.says));
    }
    property
}

fn value(takes: &Takes) -> Value {
    let text = || json!({ "type": "string", "pattern": "\\S" });
    // One text, or a list of texts.
    let texts = |one: Value| json!({ "anyOf": [one, { "type": "array", "items": one }] });
    let example = |example: &str| json!({ "type": "string", "pattern": "\\S", "examples": [example] });
    match takes {
        Takes::Format => json!({ "type": "integer", "minimum": 1 }),
        Takes::Id | Takes::Link(_) => id(),
        Takes::Links(_) | Takes::Mentions(_) => texts(id()),
        Takes::Text => text(),
        Takes::Texts => texts(text()),
        Takes::Number => json!({ "type": "number" }),
        Takes::TwoNumbers => json!({ "type": "array", "items": { "type": "number" }, "minItems": 2, "maxItems": 2 }),
        Takes::YesNo => json!({ "type": "boolean" }),
        Takes::Date => json!({ "type": "string", "format": "date", "examples": ["2026-03-14"] }),
        Takes::Choice(words) => json!({ "enum": words() }),
        Takes::Quantity(kind) => example(kind.example()),
        // A place on the floor may be a bare number of metres.
        Takes::Metres => json!({ "anyOf": [example("1.2 m"), { "type": "number" }] }),
        Takes::Quantities(kind) => texts(example(kind.example())),
        Takes::Speeds => texts(example("94 rpm")),
        Takes::Dose => example("2 strokes"),
        Takes::Intervals => texts(example("1 week")),
        Takes::When => json!({ "type": "object", "additionalProperties": texts(text()) }),
        Takes::Table(element) => table(element),
        Takes::Tables(element) => json!({ "type": "array", "items": table(element) }),
    }
}

fn id() -> Value {
    json!({ "type": "string", "pattern": "^[\\w.-]+$", "maxLength": crate::id::LONGEST })
}
