//! Page: the trail of a season: who did what, about whom, and why.

use std::borrow::Cow;

use actix_web::get;
use actix_web::web::{Data, Path};
use app::App;
use app::results::GameRow;
use app::seasons::TrailEntry;
use askama::Template;
use league::club_role::ClubRole;
use league::ids::{AccountId, PlayerId};
use serde::Deserialize;
use serde_json::Value;
use uuid::Uuid;

use super::context::{SeasonContext, SeasonHeader, SeasonTab};
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::paths::SeasonPath;
use crate::pages::frame::response::{PageResult, page_template, render_page};
use crate::pages::texts::Texts;
use crate::pages::words::local_time::LocalTime;
use crate::pages::words::roles::{can_judge, role_label};
use crate::query_parameters::Query;

/// Entries on one page.
const PAGE_SIZE: u16 = 50;

#[derive(Template)]
#[template(path = "trail.html")]
struct TrailPage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    entries: Vec<TrailRow>,
    older: Option<i64>,
    officers: bool,
}
page_template!(TrailPage);

struct TrailRow {
    number: i64,
    at: LocalTime,
    who: String,
    what: Cow<'static, str>,
    about: String,
    link: Option<String>,
    reason: String,
    digest: String,
}

/// Where to go on.
#[derive(Deserialize)]
pub struct BeforeQuery {
    before: Option<i64>,
}

/// The trail, newest first.
#[get("/clubs/{club}/seasons/{season}/trail")]
pub async fn show_trail(
    app: Data<App>,
    request: PageRequest,
    path: Path<SeasonPath>,
    query: Query<BeforeQuery>,
) -> PageResult {
    let (club, season) = path.ids();
    let context = SeasonContext::load(&app, &request, club, season).await?;
    let viewer = request.viewer;
    let found =
        app::seasons::list_trail(&app, viewer, club, season, query.before, PAGE_SIZE).await?;
    let members = match (viewer, context.role) {
        (Some(actor), Some(_)) => app::clubs::list_members(&app, actor, club).await?,
        _ => Vec::new(),
    };
    let reader = RowBuilder {
        t: request.t,
        members: members
            .into_iter()
            .map(|member| (member.account, member.name))
            .collect(),
        games: app::results::list_games(&app, viewer, club, season, None).await?,
        context: &context,
    };
    let full = found.len() == usize::from(PAGE_SIZE);
    render_page(&TrailPage {
        layout: request.layout(),
        t: request.t,
        header: context.header(&request, SeasonTab::Trail),
        older: found
            .last()
            .map(|entry| entry.entry_no)
            .filter(|number| full && *number > 1),
        entries: found.iter().map(|entry| reader.row(entry)).collect(),
        officers: can_judge(context.role),
    })
}

/// Puts names in the place of identities.
struct RowBuilder<'s> {
    t: Texts,
    context: &'s SeasonContext,
    members: Vec<(AccountId, String)>,
    games: Vec<GameRow>,
}

impl RowBuilder<'_> {
    fn row(&self, entry: &TrailEntry) -> TrailRow {
        let facts = &entry.facts;
        let game = self.game(facts);
        let about = [
            self.player(facts),
            self.member(facts),
            self.role(facts),
            game.map(|game| self.names(game)),
            facts["week"].as_u64().map(|week| self.t.week_n(week)),
            facts["amount"].as_i64().map(|amount| format!("{amount:+}")),
            facts["name"].as_str().map(str::to_owned),
        ];
        TrailRow {
            number: entry.entry_no,
            at: self.context.times(self.t).short(entry.happened_at),
            who: self.who(entry.actor),
            what: act_label(self.t, &entry.act),
            about: about.into_iter().flatten().collect::<Vec<_>>().join(", "),
            link: game.map(|game| {
                crate::pages::frame::urls::game(
                    self.context.season.club,
                    self.context.season.id,
                    game.id,
                )
            }),
            reason: reason(facts).unwrap_or_default().to_owned(),
            digest: document::encode_hex(&entry.digest),
        }
    }

    /// By the name in the season, else the name in the club as far as the reader may know it.
    fn who(&self, actor: Option<Uuid>) -> String {
        let Some(account) = actor.map(AccountId) else {
            return self.t.by_clock().into_owned();
        };
        let player = self.context.players.iter();
        let player = player.clone().find(|player| player.account == account);
        let member = self.members.iter().find(|(known, _)| *known == account);
        player
            .map(|player| player.handle.clone())
            .or_else(|| member.map(|(_, name)| name.clone()))
            .unwrap_or_else(|| self.t.by_officer().into_owned())
    }

    fn player(&self, facts: &Value) -> Option<String> {
        let id = id(&facts["player"]).map(PlayerId)?;
        Some(self.context.handle(id).to_owned())
    }

    /// Whom an act of the club concerns.
    fn member(&self, facts: &Value) -> Option<String> {
        let account = id(&facts["account"]).map(AccountId)?;
        let mut members = self.members.iter();
        let (_, name) = members.find(|(known, _)| *known == account)?;
        Some(name.clone())
    }

    fn role(&self, facts: &Value) -> Option<String> {
        let role = ClubRole::parse(facts["role"].as_str()?)?;
        Some(role_label(self.t, role).to_string())
    }

    fn game(&self, facts: &Value) -> Option<&GameRow> {
        let id = id(&facts["game"])?;
        self.games.iter().find(|game| game.id.0 == id)
    }

    fn names(&self, game: &GameRow) -> String {
        let second = game.meeting.as_ref().map(|meeting| meeting.second);
        let players = std::iter::once(game.first).chain(second);
        let names: Vec<&str> = players.map(|player| self.context.handle(player)).collect();
        names.join(" – ")
    }
}

fn id(value: &Value) -> Option<Uuid> {
    value.as_str()?.parse().ok()
}

/// Why, wherever the act keeps it: of itself, or in the slip that it wrote.
fn reason(facts: &Value) -> Option<&str> {
    let places = [
        &facts["reason"],
        &facts["slip"]["dispute"]["reason"],
        &facts["slip"]["ruling"]["reason"],
        &facts["slip"]["reason"],
    ];
    places.into_iter().find_map(Value::as_str)
}

/// An act by the name of its operation, in words.
fn act_label(t: Texts, act: &str) -> Cow<'static, str> {
    match act {
        "create_season" => t.did_create_season(),
        "update_season" => t.did_update_season(),
        "start_season" => t.did_start_season(),
        "end_season" => t.did_end_season(),
        "update_week" => t.did_update_week(),
        "update_scenario" => t.did_update_scenario(),
        "join_season" => t.did_join_season(),
        "update_player" => t.did_update_player(),
        "withdraw_player" => t.did_withdraw_player(),
        "tell_availability" => t.did_tell_availability(),
        "seal_list" => t.did_seal_list(),
        "open_lists" => t.did_open_lists(),
        "grant_late_leave" => t.did_grant_late_leave(),
        "send_reminders" | "nudge_players" => t.did_nudge_players(),
        "propose_round" => t.did_propose_round(),
        "repair_round" => t.did_repair_round(),
        "publish_round" => t.did_publish_round(),
        "report_result" => t.did_report_result(),
        "confirm_result" => t.did_confirm_result(),
        "dispute_result" => t.did_dispute_result(),
        "rule_result" => t.did_rule_result(),
        "adjust_points" => t.did_adjust_points(),
        "claim_painting" => t.did_claim_painting(),
        "verify_claim" => t.did_verify_claim(),
        "refuse_claim" => t.did_refuse_claim(),
        "close_week" => t.did_close_week(),
        "reveal" => t.did_reveal(),
        "publish_repair" => t.did_publish_repair(),
        "create_season_from" => t.did_create_season_from(),
        "create_photo" => t.did_create_photo(),
        "delete_photo" => t.did_delete_photo(),
        "open_lists_too_early" => t.did_open_lists_too_early(),
        "create_invitation" => t.did_create_invitation(),
        "delete_invitation" => t.did_delete_invitation(),
        "accept_invitation" => t.did_accept_invitation(),
        "update_member" => t.did_update_member(),
        "delete_member" => t.did_delete_member(),
        _ => t.did_something(),
    }
}
