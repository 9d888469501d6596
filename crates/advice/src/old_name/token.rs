//! The words of a plate, taken apart: `S.U.V. 280–320 AT 100°` becomes suv, 280, to, 320, at, 100, °.

/// A piece of the words.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Token {
    /// A number.
    Number(f64),
    /// A word in small letters, without the dots of an abbreviation.
    Word(String),
    /// What stands between the ends of a range: a dash, a stroke, "to".
    To,
    /// The sign of a degree.
    Degree,
    /// The sign of a number: "#".
    Hash,
}

impl Token {
    /// Whether it is this word.
    pub(super) fn is(&self, word: &str) -> bool {
        matches!(self, Self::Word(own) if own == word)
    }

    /// Whether it is one of these words.
    pub(super) fn is_any(&self, words: &[&str]) -> bool {
        words.iter().any(|word| self.is(word))
    }
}

/// The pieces of a text in their order; signs that mean nothing here are left out.
pub(super) fn tokens(text: &str) -> Vec<Token> {
    let signs: Vec<char> = text.to_lowercase().chars().collect();
    let mut found = Vec::new();
    let mut at = 0;
    while let Some(&sign) = signs.get(at) {
        let start = at;
        if sign.is_ascii_digit() {
            let digits;
            (at, digits) = number(&signs, start);
            found.extend(digits.parse().ok().map(Token::Number));
        } else if sign.is_alphabetic() && !"ºª".contains(sign) {
            let mut word = String::new();
            while let Some(&next) = signs.get(at) {
                // A dot between letters belongs to an abbreviation; the last one ends it.
                let dotted = next == '.' && signs.get(at + 1).is_some_and(|after| after.is_alphabetic());
                if next.is_alphabetic() && !"ºª".contains(next) {
                    word.push(next);
                } else if !dotted {
                    break;
                }
                at += 1;
            }
            found.push(if word == "to" { Token::To } else { Token::Word(word) });
        } else {
            at += 1;
            match sign {
                '-' | '–' | '—' | '/' | '÷' => found.push(Token::To),
                '°' | 'º' => found.push(Token::Degree),
                '#' => found.push(Token::Hash),
                '@' => found.push(Token::Word("at".to_owned())),
                _ => {}
            }
        }
    }
    found
}

/// The number that begins here, with a point for decimals, and where it ends. A comma before three digits parts thousands.
fn number(signs: &[char], start: usize) -> (usize, String) {
    let digits = |from: usize| signs[from..].iter().take_while(|sign| sign.is_ascii_digit()).collect::<String>();
    let mut text = digits(start);
    let mut at = start + text.len();
    while signs.get(at) == Some(&',') && digits(at + 1).len() == 3 {
        text.push_str(&digits(at + 1));
        at += 4;
    }
    if let Some('.' | ',') = signs.get(at) {
        let decimals = digits(at + 1);
        if !decimals.is_empty() {
            at += 1 + decimals.len();
            text = format!("{text}.{decimals}");
        }
    }
    (at, text)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn word(text: &str) -> Token {
        Token::Word(text.to_owned())
    }

    #[test]
    fn a_plate_is_taken_apart() {
        let plate = tokens("MEDIUM MACHINE OIL, S.U.V. 280–320 AT 100°");
        let wanted = [
            word("medium"),
            word("machine"),
            word("oil"),
            word("suv"),
            Token::Number(280.0),
            Token::To,
            Token::Number(320.0),
            word("at"),
            Token::Number(100.0),
            Token::Degree,
        ];
        assert_eq!(plate, wanted);
        assert_eq!(
            tokens("300SUS@100F"),
            [Token::Number(300.0), word("sus"), word("at"), Token::Number(100.0), word("f")]
        );
        assert_eq!(tokens("4.5 °E"), [Token::Number(4.5), Token::Degree, word("e")]);
        assert_eq!(tokens("1,000 4,5"), [Token::Number(1000.0), Token::Number(4.5)]);
        assert_eq!(tokens("20# oil."), [Token::Number(20.0), Token::Hash, word("oil")]);
    }
}
