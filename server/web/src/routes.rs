//! The route table of the server: every operation of the API, in one place.

use actix_web::web::ServiceConfig;
use utoipa::openapi::security::{HttpAuthScheme, HttpBuilder, SecurityScheme};
use utoipa::{IntoResponses, OpenApi};
use utoipa_actix_web::AppExt;
use utoipa_actix_web::scope;

use crate::api::{
    accounts, attendance, catalogues, clubs, exports, fairness, games, invitations, list_aids,
    lists, members, next_season, outlooks, painting, photos, players, previews, record_consents,
    reminders, rounds, scenarios, seasons, sessions, standings, statistics, trail, weeks,
};
use crate::openapi::complete;
use crate::openapi::document::{self, OpenApiDocument};
use crate::{health, pages, problem};

#[derive(OpenApi)]
#[openapi(
    info(
        title = "Tallyhost",
        description = "Runs an escalation league for tabletop miniature wargames: seasons, lists, pairings, results, standings.",
        license(name = "MIT OR Apache-2.0")
    ),
    components(schemas(problem::ProblemDocument)),
    security(("bearer" = []))
)]
struct Head;

/// The operations of the API, below `/api/v1`; those of a season name what follows its path. Routes are tried in
/// this order: those that everybody asks for before a deadline come first.
fn api_operations(config: &mut utoipa_actix_web::service_config::ServiceConfig) {
    config.service(
        scope("/api/v1")
            .service(
                scope("/clubs/{club}/seasons/{season}")
                    .service(lists::seal_list)
                    .service(lists::find_own_list)
                    .service(lists::save_draft)
                    .service(lists::check_list)
                    .service(list_aids::read_list)
                    .service(list_aids::find_fits)
                    .service(list_aids::find_changes)
                    .service(list_aids::find_collection)
                    .service(lists::list_lists)
                    .service(lists::open_lists)
                    .service(lists::grant_late_leave)
                    .service(seasons::find_season)
                    .service(seasons::update_season)
                    .service(seasons::start_season)
                    .service(seasons::end_season)
                    .service(next_season::create_season_from)
                    .service(exports::export_season)
                    .service(exports::archive_season)
                    .service(trail::list_trail)
                    .service(weeks::list_weeks)
                    .service(weeks::find_week)
                    .service(weeks::update_week)
                    .service(weeks::tell_availability)
                    .service(reminders::send_reminders)
                    .service(scenarios::update_scenario)
                    .service(scenarios::find_scenario)
                    .service(players::join_season)
                    .service(players::list_players)
                    .service(players::update_player)
                    .service(players::withdraw_player)
                    .service(rounds::propose_round)
                    .service(rounds::repair_round)
                    .service(rounds::list_rounds)
                    .service(rounds::publish_round)
                    .service(fairness::find_fairness)
                    .service(games::list_games)
                    .service(games::find_game)
                    .service(previews::preview_score)
                    .service(games::report_result)
                    .service(games::confirm_result)
                    .service(games::dispute_result)
                    .service(games::rule_result)
                    .service(games::adjust_points)
                    .service(painting::claim_painting)
                    .service(painting::list_claims)
                    .service(painting::verify_claim)
                    .service(painting::refuse_claim)
                    .service(photos::create_photo)
                    .service(photos::find_photo)
                    .service(photos::delete_photo)
                    .service(standings::find_standings)
                    .service(standings::find_ledger)
                    .service(standings::close_week)
                    .service(outlooks::find_what_if)
                    .service(outlooks::find_reach)
                    .service(outlooks::find_forecast)
                    .service(statistics::find_statistics)
                    .service(statistics::list_awards)
                    .service(attendance::find_attendance),
            )
            .service(accounts::register_account)
            .service(accounts::find_account)
            .service(sessions::sign_in)
            .service(sessions::refresh_session)
            .service(sessions::sign_out)
            .service(clubs::create_club)
            .service(clubs::find_club)
            .service(members::list_members)
            .service(members::update_member)
            .service(members::delete_member)
            .service(record_consents::find_record_consent)
            .service(record_consents::create_record_consent)
            .service(record_consents::delete_record_consent)
            .service(invitations::create_invitation)
            .service(invitations::list_invitations)
            .service(invitations::delete_invitation)
            .service(invitations::accept_invitation)
            .service(catalogues::create_catalogue)
            .service(catalogues::list_catalogues)
            .service(catalogues::create_catalogue_version)
            .service(catalogues::find_catalogue_version)
            .service(catalogues::find_catalogue_changes)
            .service(seasons::create_season)
            .service(seasons::list_seasons),
    );
}

/// The routes of every process: health, and the pages that explain problems.
pub fn configure_process(config: &mut ServiceConfig) {
    config
        .service(health::is_live)
        .service(health::is_ready)
        .service(problem::list_problems)
        .service(problem::explain_problem);
}

/// The routes of a process that takes changes: the API, its documentation and the pages.
pub fn configure(config: &mut ServiceConfig, document: OpenApiDocument) {
    api_operations(&mut utoipa_actix_web::service_config::ServiceConfig::new(
        config,
    ));
    document::serve(config, document);
    pages::routes::configure(config);
}

/// The OpenAPI 3.1 document of the whole server: of the API, and of the operations of `others`, which answer with
/// the same problems.
pub fn openapi(mut others: utoipa::openapi::OpenApi) -> utoipa::openapi::OpenApi {
    let problems = problem::ProblemResponses::responses();
    for operation in others
        .paths
        .paths
        .values_mut()
        .filter_map(|item| item.get.as_mut())
    {
        let default = problems.get("default").cloned();
        operation
            .responses
            .responses
            .extend(default.map(|it| ("default".to_owned(), it)));
    }
    complete(api_document().merge_from(others))
}

/// The OpenAPI document of the API alone.
pub fn api_document() -> utoipa::openapi::OpenApi {
    let (_, mut document) = actix_web::App::new()
        .into_utoipa_app()
        .openapi(Head::openapi())
        .configure(api_operations)
        .split_for_parts();
    let bearer = HttpBuilder::new()
        .scheme(HttpAuthScheme::Bearer)
        .bearer_format("JWT")
        .build();
    document
        .components
        .get_or_insert_default()
        .add_security_scheme("bearer", SecurityScheme::Http(bearer));
    document
}
