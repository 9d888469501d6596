//! Reads a licence expression (SPDX specification 2.3, annex D) and says whether a list of licences satisfies it.
//!
//! The old form of the package registries, `MIT/Apache-2.0`, means OR. AND binds tighter than OR; WITH belongs to the licence before it.

/// Whether a user who accepts only the `allowed` licences may use what has this licence expression.
pub(crate) fn allows(expression: &str, allowed: &[&str]) -> Result<bool, String> {
    let spaced = expression.replace('(', " ( ").replace(')', " ) ").replace('/', " OR ");
    let words: Vec<&str> = spaced.split_whitespace().collect();
    let mut reader = Reader { words: &words, allowed };
    let answer = reader.any()?;
    match reader.words {
        [] => Ok(answer),
        [word, ..] => Err(format!("'{word}' stands where the expression should end.")),
    }
}

struct Reader<'a> {
    words: &'a [&'a str],
    allowed: &'a [&'a str],
}

impl Reader<'_> {
    fn any(&mut self) -> Result<bool, String> {
        let mut answer = self.all()?;
        while self.takes("OR") {
            answer |= self.all()?;
        }
        Ok(answer)
    }

    fn all(&mut self) -> Result<bool, String> {
        let mut answer = self.one()?;
        while self.takes("AND") {
            answer &= self.one()?;
        }
        Ok(answer)
    }

    fn one(&mut self) -> Result<bool, String> {
        if self.takes("(") {
            let answer = self.any()?;
            return if self.takes(")") { Ok(answer) } else { Err("a bracket is not closed.".to_owned()) };
        }
        let mut licence = self.name()?.to_owned();
        if self.takes("WITH") {
            licence = format!("{licence} WITH {}", self.name()?);
        }
        Ok(self.allowed.contains(&licence.as_str()))
    }

    fn name(&mut self) -> Result<&str, String> {
        match self.words {
            ["OR" | "AND" | "WITH" | "(" | ")", ..] | [] => Err("the name of a licence is missing.".to_owned()),
            [name, rest @ ..] => {
                self.words = rest;
                Ok(name)
            }
        }
    }

    fn takes(&mut self, word: &str) -> bool {
        let next = self.words.first() == Some(&word);
        if next {
            self.words = &self.words[1..];
        }
        next
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // The meaning of each form is that of SPDX specification 2.3, annex D, except the slash, which cargo's manual calls deprecated.
    #[track_caller]
    fn check(expression: &str, allowed: &[&str], expected: bool) {
        assert_eq!(allows(expression, allowed), Ok(expected), "{expression}");
    }

    #[test]
    fn one_licence_is_on_the_list_or_not() {
        check("MIT", &["MIT"], true);
        check("GPL-3.0-only", &["MIT"], false);
        check("MIT-0", &["MIT"], false);
    }

    #[test]
    fn or_asks_for_one_and_and_asks_for_all() {
        check("MIT OR GPL-3.0-only", &["MIT"], true);
        check("GPL-3.0-only OR MIT", &["MIT"], true);
        check("MIT AND GPL-3.0-only", &["MIT"], false);
        check("MIT AND BSD-3-Clause", &["MIT", "BSD-3-Clause"], true);
    }

    #[test]
    fn and_binds_tighter_than_or_unless_brackets_say_otherwise() {
        check("MIT OR Zlib AND GPL-3.0-only", &["MIT"], true);
        check("(MIT OR Zlib) AND GPL-3.0-only", &["MIT"], false);
        check("(MIT OR Apache-2.0) AND Unicode-3.0", &["Apache-2.0", "Unicode-3.0"], true);
    }

    #[test]
    fn an_exception_is_allowed_only_together_with_its_licence() {
        check("Apache-2.0 WITH LLVM-exception", &["Apache-2.0"], false);
        check("Apache-2.0 WITH LLVM-exception", &["Apache-2.0 WITH LLVM-exception"], true);
        check("Apache-2.0 WITH LLVM-exception OR MIT", &["MIT"], true);
    }

    #[test]
    fn the_old_slash_means_or() {
        check("MIT/Apache-2.0", &["Apache-2.0"], true);
        check("GPL-2.0 / MIT", &["MIT"], true);
        check("GPL-2.0/LGPL-2.1", &["MIT"], false);
    }

    #[test]
    fn an_expression_that_is_cut_short_is_an_error() {
        for bad in ["", "MIT OR", "AND MIT", "(MIT", "MIT)", "MIT Zlib", "MIT WITH", "()"] {
            assert!(allows(bad, &["MIT"]).is_err(), "{bad}");
        }
    }
}
