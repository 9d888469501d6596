//! How the words about what must hold at a point are read: `ram wound fully back`, `rear cover off`. Charts are written for
//! people, so the words are free; one table says what counts as a cover, a slide, a lock. What it does not know counts as a move.

use shop::choice;

choice! {
    /// What a text about setting the machine is taken for.
    Reading {
        /// The machine is locked off, so that nobody can start it.
        Lock = "locked off",
        /// A time that must have gone by.
        Wait = "a wait",
        /// Chips or dirt are taken off first.
        Wipe = "wiped first",
        /// Something that stays as it is: a door kept shut, hands kept clear.
        Keep = "kept so",
        /// A plug, screw or cap at the point itself, taken out for each point anew.
        Plug = "a plug of its own",
        /// A cover, guard, door or belt that is opened once for all points behind it.
        Cover = "a cover",
        /// A slide, table, shaft or clamp that is moved once for all points that need it there.
        Slide = "a slide moved",
        /// Words that the table does not know; they count as a move.
        Other = "not understood, so counted as a move",
    }
}

/// A text about setting the machine, and how it was read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SetUp {
    /// The text as the chart has it.
    pub text: String,
    /// What it is taken for.
    pub reading: Reading,
    /// What is moved, opened or wiped: `ram` in `ram wound fully back`, `rear cover` in `rear cover off`.
    pub what: String,
}

/// A row: words of which one must be there, and words of which one must be there besides; an empty list asks for nothing.
type Row = (Reading, &'static [&'static str], &'static [&'static str]);

const OPENED: &[&str] = &["off", "open", "opened", "out", "removed", "lifted", "swung", "aside", "undone", "taken"];

/// The first row whose words are in the text says what it is.
const TABLE: [Row; 8] = [
    (Reading::Lock, &["locked", "lock", "isolated", "isolator", "switch"], &["off", "out", "isolated", "pulled"]),
    (Reading::Wait, &["minute", "minutes", "hour", "hours", "overnight", "settled", "cool"], &[]),
    (Reading::Wipe, &["wiped", "brushed", "cleaned", "clean", "chips"], &[]),
    (Reading::Keep, &["hands", "sleeves", "rag", "rags"], &[]),
    (
        Reading::Keep,
        &["cover", "covers", "guard", "guards", "door", "doors", "lid"],
        &["shut", "closed", "on", "fitted"],
    ),
    (Reading::Plug, &["plug", "plugs", "screw", "screws", "cap", "caps"], OPENED),
    (
        Reading::Cover,
        &[
            "cover", "covers", "guard", "guards", "door", "doors", "plate", "plates", "lid", "lids", "panel", "hood",
            "belt", "strip",
        ],
        OPENED,
    ),
    (Reading::Slide, MOVED, &[]),
];

/// Words that say that something is moved or stands somewhere; what comes before the first of them is what is moved.
const MOVED: &[&str] = &[
    "wound",
    "moved",
    "turned",
    "pushed",
    "pulled",
    "run",
    "racked",
    "raised",
    "lowered",
    "lifted",
    "set",
    "drawn",
    "slack",
    "clear",
    "clamped",
    "unclamped",
    "locked",
    "unlocked",
    "level",
    "at",
    "up",
    "down",
    "back",
    "forward",
    "fully",
    "left",
    "right",
    "out",
    "in",
    "off",
    "open",
    "opened",
    "removed",
    "wiped",
    "brushed",
    "cleaned",
];

impl SetUp {
    /// How a text is read.
    #[must_use]
    pub fn read(text: &str) -> Self {
        let words = words_of(text);
        let has = |list: &[&str]| words.iter().any(|word| list.contains(&word.as_str()));
        let row = TABLE.iter().find(|(_, one, other)| has(one) && (other.is_empty() || has(other)));
        let reading = row.map_or(Reading::Other, |(reading, ..)| *reading);
        let moved = words.iter().position(|word| MOVED.contains(&word.as_str()));
        let what = moved.filter(|at| *at > 0).map_or_else(|| words.join(" "), |at| words[..at].join(" "));
        Self { text: text.trim().to_owned(), reading, what }
    }

    /// Whether it turns a shaft, a pulley or a crank by hand.
    #[must_use]
    pub fn is_turned(&self) -> bool {
        self.reading == Reading::Slide && words_of(&self.text).iter().any(|word| word == "turned")
    }

    /// Whether two texts are one act: the same words, and not a plug that each point has for itself.
    #[must_use]
    pub fn is_same_act(&self, other: &Self) -> bool {
        self.reading != Reading::Plug && words_of(&self.text) == words_of(&other.text)
    }
}

impl Reading {
    /// Whether it sets the machine, so that its points wait for the second walk.
    #[must_use]
    pub fn sets_machine(self) -> bool {
        matches!(self, Self::Plug | Self::Cover | Self::Slide | Self::Other)
    }

    /// Whether it is something to do before the point, and not only something that holds.
    #[must_use]
    pub fn is_act(self) -> bool {
        self.sets_machine() || self == Self::Lock
    }
}

fn words_of(text: &str) -> Vec<String> {
    let apart = |letter: char| !letter.is_alphanumeric() && letter != '-';
    text.split(apart).filter(|word| !word.is_empty()).map(str::to_lowercase).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(reading: Reading, texts: &[&str]) {
        for text in texts {
            assert_eq!(SetUp::read(text).reading, reading, "{text}");
        }
    }

    /// Texts as keepers write them, sorted by hand.
    #[test]
    fn the_texts_of_charts_are_read_as_a_person_reads_them() {
        check(Reading::Lock, &["switch locked off", "isolator off", "machine isolated"]);
        check(Reading::Wait, &["ten minutes after the last turn", "settled overnight"]);
        check(Reading::Wipe, &["strip wiped clean of chips", "thread brushed"]);
        check(Reading::Keep, &["column door shut", "hands clear of the cutter", "guards on"]);
        check(Reading::Plug, &["plug out", "relief plugs out", "screw out", "cap removed"]);
        check(
            Reading::Cover,
            &["rear cover off", "Belt guard open", "side door off", "wiper plates off", "belt off the middle step"],
        );
        check(
            Reading::Slide,
            &[
                "ram wound fully back",
                "table at mid travel",
                "saddle wound fully out",
                "quill run down",
                "rail level",
                "pulley turned until the cup is on top",
                "knee clamp slack",
                "tool out",
                "pawl lifted",
                "head set upright",
            ],
        );
        check(Reading::Other, &["indicator mounted", ""]);
    }

    #[test]
    fn what_is_moved_stands_before_the_word_that_moves_it() {
        for (text, what) in [
            ("ram wound fully back", "ram"),
            ("Tool slide wound up", "tool slide"),
            ("tool slide wound down two inches", "tool slide"),
            ("rail at mid height", "rail"),
            ("saddle wound fully out", "saddle"),
            ("Rear cover off", "rear cover"),
            ("strip wiped clean of chips", "strip"),
        ] {
            assert_eq!(SetUp::read(text).what, what, "{text}");
        }
    }

    #[test]
    fn equal_texts_are_one_act_unless_they_are_of_the_point_itself() {
        let same = |a: &str, b: &str| SetUp::read(a).is_same_act(&SetUp::read(b));
        assert!(same("ram wound fully back", " Ram wound  fully back. "));
        assert!(same("rear cover off", "rear cover off"));
        assert!(!same("rear cover off", "side cover off"));
        assert!(!same("plug out", "plug out"), "each point has its own");
    }
}
