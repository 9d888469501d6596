//! The key that the entries of one command share: the user's own, so that a command sent twice is kept once, or a fresh one.

use shop::logbook::BatchKey;

use crate::failure::Failure;

/// The key.
pub(super) fn key(own: Option<&str>) -> Result<BatchKey, Failure> {
    match own {
        Some(text) => BatchKey::new(text).ok_or_else(|| {
            Failure::Use(format!("\"{text}\" is no key; write up to 80 letters, digits, hyphens, dots or underscores"))
        }),
        None => {
            let fresh = web::FormKey::fresh()
                .map_err(|_| Failure::Use("the computer gave no random number; write a --key".into()))?;
            Ok(BatchKey::new(fresh.as_str()).expect("a form key is 32 hexadecimal digits"))
        }
    }
}
