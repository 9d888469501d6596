//! A small shop to try the pages on: a bench drill and a hand shaper in a data file of their own, and a clock that stands
//! still until a test moves it. All of it is invented.

use std::sync::Arc;
use std::sync::atomic::{AtomicI64, Ordering};

use axum::body::{Body, to_bytes};
use axum::http::header::{CONTENT_TYPE, COOKIE, LOCATION};
use axum::{Router, http::Request};
use jiff::Timestamp;
use jiff::tz::TimeZone;
use scraper::Html;
use shop::id::Id;
use shop::logbook::Entry;
use shop::shelf::Shelf;
use shop::snapshot::Conditions;
use store::{Settings, Store, Superseded, Wanted};
use tempfile::TempDir;
use tower::ServiceExt as _;
use tribology::quantity::{Time, Units};
use web::{Clock, HostRule, Shop};

use crate::ask::{Answer, PORT, all, request};

const DRILL: &str = include_str!("drill.toml");
const SHAPER: &str = include_str!("shaper.toml");
const SHELF: &str = include_str!("shelf.toml");

/// Nine in the morning of the shop, in seconds since 1970: 2026-11-25T08:00:00Z.
const MORNING: i64 = 1_795_593_600;

pub(crate) struct Bench {
    router: Router,
    store: Store,
    now: Arc<AtomicI64>,
    cookie: Option<String>,
    // Dropped last, with the data file in it.
    _folder: TempDir,
}

impl Bench {
    /// The shop on a morning on which nothing was ever logged.
    pub(crate) async fn new() -> Self {
        let bench = Self::empty().await;
        let at = bench.at();
        for (id, text) in [("drill", DRILL), ("shaper", SHAPER)] {
            let id = Id::new(id).expect("the test writes right ids");
            bench.store.add_chart(&id, text, at, "test").await.expect("the fixture's chart is right");
        }
        let shelf = Shelf::read(SHELF).value.expect("the fixture's shelf is right");
        bench.store.add_shelf(&shelf, at, "test").await.expect("the shelf is taken in");
        bench
    }

    /// A shop with nothing in it.
    pub(crate) async fn empty() -> Self {
        let folder = TempDir::new().expect("a folder for the test");
        let settings = Settings {
            name: "Test shop".into(),
            zone: TimeZone::get("Europe/Berlin").expect("the bundled zones hold it"),
            units: Units::Metric,
            hours: Time::from_hours(3.0),
            conditions: Conditions::default(),
        };
        let morning = Timestamp::from_second(MORNING).expect("an instant");
        let store = Store::create(&folder.path().join("shop.db"), &settings, morning).await.expect("a data file");
        let now = Arc::new(AtomicI64::new(MORNING));
        let told = Arc::clone(&now);
        let clock = Clock::new(move || Timestamp::from_second(told.load(Ordering::SeqCst)).expect("an instant"));
        let shop = Shop { store: store.clone(), clock };
        let router = web::router(shop, HostRule::this_computer(PORT));
        Self { router, store, now, cookie: None, _folder: folder }
    }

    /// The shop's clock goes on by so many minutes.
    pub(crate) fn pass(&self, minutes: i64) -> &Self {
        self.now.fetch_add(minutes * 60, Ordering::SeqCst);
        self
    }

    pub(crate) fn is_known_by(&mut self, cookie: &str) {
        self.cookie = Some(cookie.to_owned());
    }

    pub(crate) async fn get(&self, path: &str) -> Answer {
        let path = path.split('#').next().unwrap_or(path);
        self.ask(request("GET", path), String::new()).await
    }

    /// The parsed page, which must be there.
    #[track_caller]
    pub(crate) fn page(&self, path: &str) -> impl Future<Output = Html> {
        let caller = std::panic::Location::caller();
        let path = path.to_owned();
        async move {
            let answer = self.get(&path).await;
            assert_eq!(answer.status, 200, "{path} asked by {caller}");
            answer.page()
        }
    }

    pub(crate) async fn post(&self, path: &str, pairs: &[(String, String)]) -> Answer {
        let escaped =
            |text: &str| percent_encoding::utf8_percent_encode(text, percent_encoding::NON_ALPHANUMERIC).to_string();
        let body: Vec<String> = pairs.iter().map(|(n, v)| format!("{}={}", escaped(n), escaped(v))).collect();
        self.ask(request("POST", path).header(CONTENT_TYPE, "application/x-www-form-urlencoded"), body.join("&")).await
    }

    /// Sends a form with a file in it, as a browser sends one, the file a piece at a time.
    pub(crate) async fn upload<P>(&self, path: &str, pairs: &[(&str, &str)], file: (&str, &str), pieces: P) -> Answer
    where
        P: Iterator<Item = Vec<u8>> + Send + 'static,
    {
        let mut head = String::new();
        for (name, value) in pairs {
            head += &format!("--b\r\nContent-Disposition: form-data; name=\"{name}\"\r\n\r\n{value}\r\n");
        }
        let (field, name) = file;
        head += &format!("--b\r\nContent-Disposition: form-data; name=\"{field}\"; filename=\"{name}\"\r\n\r\n");
        let all = std::iter::once(head.into_bytes()).chain(pieces).chain([b"\r\n--b--\r\n".to_vec()]);
        let body = Body::from_stream(futures_util::stream::iter(all.map(Ok::<_, std::io::Error>)));
        let request = request("POST", path).header(CONTENT_TYPE, "multipart/form-data; boundary=b");
        self.send(request, body).await
    }

    /// Presses a button of a page: sends the form with what stands in it, but for what `typed` says otherwise.
    pub(crate) async fn press(&self, form: &Pressed, typed: &[(&str, &str)]) -> Answer {
        let mut pairs = form.pairs.clone();
        for (name, value) in typed {
            match pairs.iter_mut().find(|(known, _)| known == name) {
                Some(place) => place.1 = (*value).to_owned(),
                // Of radio buttons that nobody has touched, a browser sends nothing.
                None if form.untouched.iter().any(|known| known == name) => {
                    pairs.push(((*name).to_owned(), (*value).to_owned()));
                }
                None => panic!("the form asks for no {name}"),
            }
        }
        self.post(&form.to, &pairs).await
    }

    /// The chart of the drill in force: the number of its revision, and its text.
    pub(crate) async fn drill(&self) -> (i64, String) {
        let drill = Id::new("drill").expect("the test writes right ids");
        self.store.chart(&drill, self.at()).await.expect("the drill has a chart")
    }

    /// Somebody else changes the chart of the drill: one passage of its text becomes another.
    pub(crate) async fn drill_is_changed(&self, from: &str, to: &str) {
        let (_, text) = self.drill().await;
        assert!(text.contains(from), "{from}");
        let drill = Id::new("drill").expect("the test writes right ids");
        let changed = self.store.add_chart(&drill, &text.replacen(from, to, 1), self.at(), "another").await;
        changed.expect("the changed chart is right");
    }

    /// How many pictures of the drill are kept.
    pub(crate) async fn pictures(&self) -> usize {
        let drill = Id::new("drill").expect("the test writes right ids");
        self.store.pictures(&drill).await.expect("a whole file").len()
    }

    /// All entries that count, oldest first.
    pub(crate) async fn entries(&self) -> Vec<Entry> {
        self.log(Superseded::LeftOut).await
    }

    /// All entries, those that were taken back too, oldest first.
    pub(crate) async fn whole_log(&self) -> Vec<Entry> {
        self.log(Superseded::Shown).await
    }

    async fn log(&self, superseded: Superseded) -> Vec<Entry> {
        let wanted = Wanted { superseded, ..Wanted::default() };
        let mut entries = self.store.entries(&wanted).await.expect("the log can be read");
        // What the shelf's file said was in stock is not what these tests are about.
        entries.retain(|entry| entry.said.subject.machine().is_some());
        entries.sort_by_key(|entry| entry.id);
        entries
    }

    fn at(&self) -> Timestamp {
        Timestamp::from_second(self.now.load(Ordering::SeqCst)).expect("an instant")
    }

    async fn ask(&self, request: axum::http::request::Builder, body: String) -> Answer {
        self.send(request, Body::from(body)).await
    }

    async fn send(&self, request: axum::http::request::Builder, body: Body) -> Answer {
        let request = match &self.cookie {
            Some(cookie) => request.header(COOKIE, cookie),
            None => request,
        };
        let request: Request<Body> = request.body(body).expect("the test wrote a well-formed request");
        let response = self.router.clone().oneshot(request).await.expect("the shop answers every request");
        let (parts, body) = response.into_parts();
        let bytes = to_bytes(body, usize::MAX).await.expect("a body in memory");
        Answer::of(parts, bytes.into())
    }
}

/// A form of a page, ready to be sent.
#[derive(Clone, Debug)]
pub(crate) struct Pressed {
    pub(crate) to: String,
    pub(crate) pairs: Vec<(String, String)>,
    untouched: Vec<String>,
}

/// The form whose button says these words and, where more than one does, is about this.
#[track_caller]
pub(crate) fn form(page: &Html, words: &str, about: &str) -> Pressed {
    find(page, words, about).unwrap_or_else(|| panic!("no button \"{words}\" about \"{about}\""))
}

/// The same, where there may be none.
pub(crate) fn find(page: &Html, words: &str, about: &str) -> Option<Pressed> {
    let forms = all(page, "form[method=post]");
    let form = forms.into_iter().find(|form| {
        let html = Html::parse_fragment(&form.html());
        all(&html, "button").iter().any(|button| {
            let says: String = button.text().collect();
            says == words && (about.is_empty() || button.attr("aria-label").is_some_and(|label| label.contains(about)))
        })
    })?;
    let html = Html::parse_fragment(&form.html());
    let mut pairs = Vec::new();
    let mut untouched = Vec::new();
    for entry in all(&html, "input[name], select[name], textarea[name]") {
        let name = entry.attr("name").expect("selected by it").to_owned();
        if entry.attr("type") == Some("radio") && entry.attr("checked").is_none() {
            untouched.push(name);
            continue;
        }
        let value = match entry.value().name() {
            "select" => {
                let options = Html::parse_fragment(&entry.html());
                let chosen = all(&options, "option[selected]");
                let first = all(&options, "option");
                chosen.first().or(first.first()).and_then(|option| option.attr("value")).unwrap_or("").to_owned()
            }
            "textarea" => entry.text().collect::<String>().trim_start_matches('\n').to_owned(),
            _ => entry.attr("value").unwrap_or("").to_owned(),
        };
        pairs.push((name, value));
    }
    Some(Pressed { to: form.attr("action").unwrap_or("").to_owned(), pairs, untouched })
}

/// The words of everything that matches, each with its white space made even.
pub(crate) fn words(page: &Html, selector: &str) -> Vec<String> {
    let even = |text: String| text.split_whitespace().collect::<Vec<_>>().join(" ");
    all(page, selector).iter().map(|element| even(element.text().collect::<Vec<_>>().join(" "))).collect()
}

/// Where an answer leads.
#[track_caller]
pub(crate) fn led(answer: &Answer) -> String {
    assert_eq!(answer.status, 303, "{}", answer.text());
    answer.header(LOCATION.as_str()).to_owned()
}

/// The comments of a chart, in their order.
pub(crate) fn comments(text: &str) -> Vec<&str> {
    text.lines().filter_map(|line| line.split_once('#').map(|(_, comment)| comment)).collect()
}
