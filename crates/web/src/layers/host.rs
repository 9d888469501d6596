//! The guard at the door: under which names the server answers.
//!
//! A hostile site can point its own name at this computer and then read our pages as if they were its own. Such a
//! request still carries that site's name, so every name that is not ours is refused.

use std::net::IpAddr;

use axum::extract::{Request, State};
use axum::http::header::HOST;
use axum::http::uri::Authority;
use axum::middleware::Next;
use axum::response::Response;

use crate::Error;

/// The names and the port under which the server answers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HostRule {
    port: u16,
    reach: Reach,
}

#[derive(Clone, Debug, PartialEq, Eq)]
enum Reach {
    ThisComputer,
    Network { own_name: String },
}

impl HostRule {
    /// Answers this computer only.
    pub fn this_computer(port: u16) -> Self {
        Self { port, reach: Reach::ThisComputer }
    }

    /// Answers the shop's network too: under any plain number, which no stranger can redirect, and under the
    /// computer's own name, with or without `.local`.
    pub fn network(port: u16, own_name: &str) -> Self {
        Self { port, reach: Reach::Network { own_name: bare(&own_name.to_ascii_lowercase()).to_owned() } }
    }

    /// Whether a request that names this host may come in.
    pub fn admits(&self, host: &str) -> bool {
        let Ok(authority) = host.parse::<Authority>() else {
            return false;
        };
        self.names(authority.host()) && port_after(&authority) == Some(self.port)
    }

    fn names(&self, name: &str) -> bool {
        let name = name.to_ascii_lowercase();
        let number: Option<IpAddr> = name.trim_matches(['[', ']']).parse().ok();
        match &self.reach {
            _ if name == "localhost" => true,
            Reach::ThisComputer => number.is_some_and(|ip| ip.is_loopback()),
            Reach::Network { own_name } => match number {
                Some(ip) => !ip.is_unspecified(),
                None => !own_name.is_empty() && bare(&name) == own_name,
            },
        }
    }
}

pub(crate) async fn check(State(rule): State<HostRule>, request: Request, next: Next) -> Result<Response, Error> {
    let mut hosts = request.headers().get_all(HOST).iter();
    let (Some(host), None) = (hosts.next(), hosts.next()) else {
        return Err(Error::WrongForm);
    };
    let told = host.to_str().is_ok_and(|host| rule.admits(host));
    // A request line may name a host as well, and then that one counts.
    let line_agrees = request.uri().authority().is_none_or(|authority| rule.admits(authority.as_str()));
    if told && line_agrees { Ok(next.run(request).await) } else { Err(Error::ForeignHost { port: rule.port }) }
}

/// The name without the ending under which computers of one network find each other.
fn bare(name: &str) -> &str {
    name.strip_suffix(".local").unwrap_or(name)
}

/// The port that follows the name; a browser leaves out 80. Nothing where more than a name and a port is given.
fn port_after(authority: &Authority) -> Option<u16> {
    match authority.as_str().strip_prefix(authority.host())? {
        "" => Some(80),
        rest => rest.strip_prefix(':')?.parse().ok(),
    }
}
