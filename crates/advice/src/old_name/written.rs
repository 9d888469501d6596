//! What stands in the words: a statement of viscosity, and a name. Order on the plate does not matter much: "S.U.V. 300 AT 100°" and
//! "300 secs Saybolt at 100 F" are the same.

use tribology::oil::{AgmaBand, AgmaNumber, IsoGrade, Scale, agma_band};

use super::name::Name;
use super::spec::{Heat, Letter, Use, Wanted, Winter};
use super::token::{Token, tokens};
use super::{Country, Known, navy};

/// What stands in the words.
#[derive(Clone, Debug, PartialEq)]
pub struct Written {
    /// The statement of viscosity; a name's own when there is no other.
    pub wanted: Option<Wanted>,
    /// The name.
    pub name: Option<&'static Name>,
}

/// Letters of standards before the number of a grade.
const LETTERS: [&str; 22] = [
    "vg", "iso", "g", "cb", "ckb", "cc", "ckc", "cke", "an", "hm", "hg", "hl", "hlp", "cl", "clp", "cglp", "fx", "fc",
    "fd", "tsa", "ckd", "hv",
];

impl Written {
    /// Reads the words.
    pub(super) fn read(text: &str, known: &Known) -> Self {
        let text = text.replace("mm2/s", " cst ").replace("mm²/s", " cst ").replace('½', ".5");
        let pieces = Pieces(tokens(&text));
        let words = pieces.words();
        let name = Name::in_words(&words);
        let wanted = pieces
            .sae()
            .or_else(|| pieces.agma())
            .or_else(|| pieces.reading(known.country))
            .or_else(|| pieces.iso())
            .or_else(|| navy::wanted(&words, &pieces.numbers()))
            .or_else(|| pieces.symbol())
            .or_else(|| pieces.at_50(known.country))
            .or_else(|| name.and_then(|name| name.band).map(|(low, high)| Wanted::Named(low, high)));
        Self { wanted, name }
    }
}

struct Pieces(Vec<Token>);

impl Pieces {
    fn words(&self) -> Vec<&str> {
        let words = self.0.iter().filter_map(|token| if let Token::Word(word) = token { Some(word) } else { None });
        words.map(String::as_str).collect()
    }

    fn numbers(&self) -> Vec<f64> {
        self.0.iter().filter_map(|token| if let Token::Number(number) = token { Some(*number) } else { None }).collect()
    }

    fn number(&self, at: usize) -> Option<f64> {
        match self.0.get(at) {
            Some(Token::Number(number)) => Some(*number),
            _ => None,
        }
    }

    fn has(&self, words: &[&str]) -> bool {
        self.0.iter().any(|token| token.is_any(words))
    }

    /// The place of a word, with the first number behind it, "No." stepped over.
    fn number_behind(&self, words: &[&str]) -> Option<(usize, f64)> {
        let at = self.0.iter().position(|token| token.is_any(words))?;
        let behind =
            self.0[at + 1..].iter().take_while(|token| token.is_any(&["no", "number", "grade", "oil"])).count();
        self.number(at + 1 + behind).map(|number| (at + 1 + behind, number))
    }

    fn sae(&self) -> Option<Wanted> {
        let (at, number) = self.number_behind(&["sae"])?;
        let winter = if self.0.get(at + 1).is_some_and(|token| token.is("w")) { Winter::W } else { Winter::None };
        let used = if self.has(&["gear", "gears", "transmission", "hypoid"]) {
            Some(Use::Gear)
        } else if self.has(&["engine", "motor", "crankcase"]) {
            Some(Use::Engine)
        } else {
            None
        };
        (number.fract() == 0.0 && number < 1000.0).then_some(Wanted::Sae { number: number as u32, winter, used })
    }

    fn agma(&self) -> Option<Wanted> {
        let (at, number) = self.number_behind(&["agma"])?;
        let letter = if self.0.get(at + 1).is_some_and(|token| token.is("a")) { "A" } else { "" };
        let spelled = format!("{number}{letter}");
        let number = AgmaNumber::ALL.into_iter().find(|(_, name)| *name == spelled)?.0;
        match agma_band(number).value {
            AgmaBand::Grade(grade) => Some(Wanted::Agma(grade)),
            _ => None,
        }
    }

    fn iso(&self) -> Option<Wanted> {
        let at = |words: &[&str]| self.number_behind(words).and_then(|(_, number)| whole_grade(number));
        LETTERS.iter().find_map(|letters| at(&[letters])).map(Wanted::Iso)
    }

    fn symbol(&self) -> Option<Wanted> {
        let (_, number) = self.number_behind(&["symbol"])?;
        navy::symbol(number)
    }

    /// A number of a national series: a "#", or a bare number where numbers are viscosities at 50 °C.
    fn at_50(&self, country: Option<Country>) -> Option<Wanted> {
        let national = matches!(country, Some(Country::Germany | Country::Russia | Country::China));
        let marked = self.0.contains(&Token::Hash);
        let fits = |number: &f64| (5.0..200.0).contains(number);
        let number = self.numbers().into_iter().find(fits).filter(|_| national || (marked && self.has(&["oil"])));
        number.map(Wanted::At50)
    }

    fn reading(&self, country: Option<Country>) -> Option<Wanted> {
        let named = self.scale();
        let seconds = self.has(&["secs", "sec", "seconds", "s"]);
        let of_viscosity = self.has(&["viscosity", "visc", "vis"]);
        if named.is_none() && !seconds && !of_viscosity {
            return None;
        }
        let scale = named.or(match country {
            Some(Country::Us) => Some(Scale::SayboltUniversal),
            Some(Country::Uk) if seconds => Some(Scale::Redwood1),
            Some(Country::Germany) if !seconds => Some(Scale::Engler),
            _ => None,
        });
        let heat = self.heat();
        let not_heat = |at: usize| heat.is_none_or(|(place, _)| place != at);
        let counted = |at: usize| at > 0 && self.0[at - 1].is_any(&["no", "number"]);
        let first = (0..self.0.len()).find(|at| self.number(*at).is_some() && not_heat(*at) && !counted(*at))?;
        let low = self.number(first)?;
        let high = match (self.0.get(first + 1), self.number(first + 2)) {
            (Some(Token::To), Some(high)) if not_heat(first + 2) => high,
            _ => low,
        };
        (low > 0.0 && high >= low).then_some(Wanted::Reading { scale, low, high, at: heat.map(|(_, heat)| heat) })
    }

    fn scale(&self) -> Option<Scale> {
        let degree_e = self.0.windows(2).any(|pair| pair[0] == Token::Degree && pair[1].is("e"));
        if self.has(&["furol", "sfs", "ssf"]) {
            Some(Scale::SayboltFurol)
        } else if self.has(&["sus", "ssu", "suv", "saybolt", "sayb"]) {
            Some(Scale::SayboltUniversal)
        } else if self.has(&["admiralty"]) || (self.has(&["redwood"]) && self.numbered(2.0)) {
            Some(Scale::Redwood2)
        } else if self.has(&["redwood"]) {
            Some(Scale::Redwood1)
        } else if self.has(&["engler", "dege"]) || degree_e {
            Some(Scale::Engler)
        } else if self.has(&["cst", "cs", "centistokes", "centistoke"]) {
            Some(Scale::Kinematic)
        } else {
            None
        }
    }

    /// Whether "No. 2" stands there.
    fn numbered(&self, number: f64) -> bool {
        self.0.windows(2).any(|pair| pair[0].is_any(&["no", "number"]) && pair[1] == Token::Number(number))
    }

    /// The temperature of a reading with the place of its number: a number with a letter of degrees, else the one behind "at".
    fn heat(&self) -> Option<(usize, Heat)> {
        let letter = |at: usize| {
            let behind = at + 1 + usize::from(self.0.get(at + 1) == Some(&Token::Degree));
            match self.0.get(behind) {
                Some(token) if token.is_any(&["f", "fahr", "fahrenheit", "deg"]) => {
                    // "deg" alone says nothing of the letter; "deg C" does.
                    if token.is("deg") { self.0.get(behind + 1).and_then(letter_of) } else { Some(Letter::F) }
                }
                Some(token) => letter_of(token),
                None => None,
            }
        };
        let places = || (0..self.0.len()).filter_map(|at| self.number(at).map(|degrees| (at, degrees)));
        let lettered =
            places().find_map(|(at, degrees)| letter(at).map(|letter| (at, Heat { degrees, letter: Some(letter) })));
        lettered.or_else(|| {
            let behind_at = |at: usize| at > 0 && self.0[at - 1].is("at");
            places().find(|(at, _)| behind_at(*at)).map(|(at, degrees)| (at, Heat { degrees, letter: None }))
        })
    }
}

fn letter_of(token: &Token) -> Option<Letter> {
    if token.is_any(&["f", "fahr", "fahrenheit"]) {
        Some(Letter::F)
    } else if token.is_any(&["c", "cent", "celsius", "centigrade"]) {
        Some(Letter::C)
    } else {
        None
    }
}

fn whole_grade(number: f64) -> Option<IsoGrade> {
    (number.fract() == 0.0 && (1.0..5000.0).contains(&number)).then(|| IsoGrade::of(number as u32)).flatten()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn reading(text: &str, scale: Option<Scale>, range: (f64, f64), at: Option<(f64, Option<Letter>)>) {
        let at = at.map(|(degrees, letter)| Heat { degrees, letter });
        let wanted = Wanted::Reading { scale, low: range.0, high: range.1, at };
        assert_eq!(Written::read(text, &Known::default()).wanted, Some(wanted), "{text}");
    }

    #[test]
    fn readings_are_found_however_they_are_set() {
        let sus = Some(Scale::SayboltUniversal);
        reading("300 SUS @ 100 F", sus, (300.0, 300.0), Some((100.0, Some(Letter::F))));
        reading("S.U.V. 280–320 at 100°", sus, (280.0, 320.0), Some((100.0, None)));
        reading("180/200 secs Saybolt at 130", sus, (180.0, 200.0), Some((130.0, None)));
        reading("Redwood 140 s at 140 °F", Some(Scale::Redwood1), (140.0, 140.0), Some((140.0, Some(Letter::F))));
        reading("Redwood No. 2, 60 secs at 140 F", Some(Scale::Redwood2), (60.0, 60.0), Some((140.0, Some(Letter::F))));
        reading("4 °E at 50 °C", Some(Scale::Engler), (4.0, 4.0), Some((50.0, Some(Letter::C))));
        reading("viscosity 300 at 100 deg F", None, (300.0, 300.0), Some((100.0, Some(Letter::F))));
        reading("MEDIUM MACHINE OIL, S.U.V. 300 AT 100°", sus, (300.0, 300.0), Some((100.0, None)));
        reading("46 mm2/s at 40 C", Some(Scale::Kinematic), (46.0, 46.0), Some((40.0, Some(Letter::C))));
        reading("1,000 SSU at 100F", sus, (1000.0, 1000.0), Some((100.0, Some(Letter::F))));
    }

    #[test]
    fn other_statements_are_told_apart() {
        let of = |text: &str| Written::read(text, &Known::default()).wanted;
        let sae = |number, winter, used| Some(Wanted::Sae { number, winter, used });
        assert_eq!(of("S.A.E. No. 20"), sae(20, Winter::None, None));
        assert_eq!(of("SAE 20W engine oil"), sae(20, Winter::W, Some(Use::Engine)));
        assert_eq!(of("gear oil SAE 90"), sae(90, Winter::None, Some(Use::Gear)));
        assert_eq!(of("AGMA No. 8A Comp"), IsoGrade::of(1000).map(Wanted::Agma));
        assert_eq!(of("ISO VG 68"), IsoGrade::of(68).map(Wanted::Iso));
        assert_eq!(of("CB 32"), IsoGrade::of(32).map(Wanted::Iso));
        assert!(
            matches!(of("Navy symbol 2135"), Some(Wanted::Navy { fahrenheit, .. }) if (fahrenheit - 130.0).abs() < 1e-9)
        );
        assert_eq!(of("20# machine oil"), Some(Wanted::At50(20.0)));
        assert_eq!(of("heavy machine oil"), Some(Wanted::Named(61.2, 166.0)));
        assert_eq!(of("300"), None);
        assert_eq!(Written::read("cup grease No. 3", &Known::default()).name.map(|name| name.band), Some(None));
    }
}
