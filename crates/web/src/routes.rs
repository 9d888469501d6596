//! Every address of the shop and what answers there.

use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::routing::{get, post};

use crate::shop_state::Shop;
use crate::{HostRule, calc, findings, hand, log, machines, rules, settings, shelf, shell, today};

/// The pages of a shop, with the guards around them.
pub fn router(shop: Shop, hosts: HostRule) -> Router {
    let routes = Router::new()
        .route("/", get(today::show))
        .route("/hand", get(hand::show).post(hand::keep))
        .route("/findings", get(findings::show))
        .route("/machines", get(machines::show))
        .route("/machines/{machine}", get(machines::machine::show).post(machines::machine::edit::write))
        .route("/machines/{machine}/edit", get(machines::machine::edit::show))
        .route("/machines/{machine}/audit", get(machines::audit::show))
        .route("/machines/{machine}/findings", get(machines::findings::show).post(machines::findings::fresh::write))
        .route("/machines/{machine}/findings/{finding}", post(machines::findings::mending::write))
        .route("/machines/{machine}/findings/{finding}/settlement", post(machines::findings::settlement::write))
        .route("/machines/{machine}/options", get(machines::options::show).post(machines::options::write))
        .route(
            "/machines/{machine}/pictures",
            get(machines::pictures::show).post(machines::pictures::upload::write).layer(DefaultBodyLimit::disable()),
        )
        .route("/machines/{machine}/pictures/{picture}", get(machines::pictures::file::show))
        .route("/machines/{machine}/points", get(machines::point::fresh::show).post(machines::point::fresh::write))
        .route("/machines/{machine}/points/{point}", get(machines::point::show).post(machines::point::edit::write))
        .route("/machines/{machine}/points/{point}/edit", get(machines::point::edit::show))
        .route(
            "/machines/{machine}/points/{point}/evidence",
            get(machines::point::evidence::fresh::show).post(machines::point::evidence::fresh::write),
        )
        .route(
            "/machines/{machine}/points/{point}/place",
            get(machines::point::place::show).post(machines::point::place::write),
        )
        .route(
            "/machines/{machine}/points/{point}/removal",
            get(machines::point::removal::show).post(machines::point::removal::write),
        )
        .route("/machines/{machine}/reservoirs/{reservoir}", get(machines::reservoir::show))
        .route("/rules", get(rules::show))
        .route("/settings", get(settings::show).post(settings::write))
        .route("/shelf", get(shelf::show).post(shelf::form::write))
        .route("/shelf/can", get(shelf::can::show).post(shelf::can::write))
        .route("/shelf/new", get(shelf::form::show_new))
        .route("/shelf/blend", get(shelf::blend::show))
        .route("/shelf/plan", get(shelf::plan::show))
        .route("/shelf/{oil}/edit", get(shelf::form::show_edit))
        .route("/shelf/{oil}", get(shelf::show_oil))
        .route("/calc", get(calc::show))
        .route("/calc/{topic}", get(calc::show_topic))
        .route("/log", get(log::show))
        .route("/log/csv", get(log::csv::show))
        .route("/log/dosings", post(log::dosings::write))
        .route("/log/stock", get(log::stock::show).post(log::stock::write))
        .route("/log/signs", post(log::signs::write))
        .route("/log/obstacles", post(log::obstacles::write))
        .route("/log/reservoirs", get(log::reservoirs::show).post(log::reservoirs::write))
        .route("/log/runs", post(log::runs::write))
        .route("/log/corrections", get(log::corrections::show).post(log::corrections::write))
        .route("/log/withdrawals", get(log::withdrawals::show).post(log::withdrawals::write))
        .with_state(shop);
    shell(routes, hosts)
}
