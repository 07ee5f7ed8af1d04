//! The trail of a season as people read it: what was done, by whom, about what, and why.

use actix_web::get;
use actix_web::web::{Data, Path};
use app::Desk;
use app::results::Game;
use app::seasons::TrailEntry;
use askama::Template;
use league::ids::{AccountId, PlayerId};
use league::role::Role;
use serde::Deserialize;
use serde_json::Value;
use uuid::Uuid;

use super::address::InSeason;
use super::answer::{PageAnswer, framed, show};
use super::moment::Moment;
use super::roles::{judges, role_word};
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::{Phrase, Texts};
use super::visit::{Frame, Visit};
use crate::query::Query;

/// Entries on one page.
const MOST: u16 = 50;

#[derive(Template)]
#[template(path = "trail.html")]
struct TrailPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    entries: Vec<TrailRow>,
    older: Option<i64>,
    officers: bool,
}
framed!(TrailPage);

struct TrailRow {
    number: i64,
    at: Moment,
    who: String,
    what: Phrase,
    about: String,
    link: Option<String>,
    reason: String,
    digest: String,
}

/// Where to go on.
#[derive(Deserialize)]
pub struct Before {
    before: Option<i64>,
}

/// The trail, newest first.
#[get("/clubs/{club}/seasons/{season}/trail")]
pub async fn show_trail(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InSeason>,
    query: Query<Before>,
) -> PageAnswer {
    let (club, season) = path.ids();
    let scene = SeasonScene::load(&desk, &visit, club, season).await?;
    let viewer = visit.viewer;
    let found = app::seasons::list_trail(&desk, viewer, club, season, query.before, MOST).await?;
    let members = match (viewer, scene.role) {
        (Some(actor), Some(_)) => app::clubs::list_members(&desk, actor, club).await?,
        _ => Vec::new(),
    };
    let reader = Reader {
        t: visit.t,
        members: members
            .into_iter()
            .map(|member| (member.account, member.name))
            .collect(),
        games: app::results::list_games(&desk, viewer, club, season, None).await?,
        scene: &scene,
    };
    let full = found.len() == usize::from(MOST);
    show(&TrailPage {
        frame: visit.frame(),
        t: visit.t,
        head: scene.head(&visit, Tab::Trail),
        older: found
            .last()
            .map(|entry| entry.entry_no)
            .filter(|number| full && *number > 1),
        entries: found.iter().map(|entry| reader.row(entry)).collect(),
        officers: judges(scene.role),
    })
}

/// Puts names in the place of identities.
struct Reader<'s> {
    t: &'static Texts,
    scene: &'s SeasonScene,
    members: Vec<(AccountId, String)>,
    games: Vec<Game>,
}

impl Reader<'_> {
    fn row(&self, entry: &TrailEntry) -> TrailRow {
        let facts = &entry.facts;
        let game = self.game(facts);
        let about = [
            self.player(facts),
            self.member(facts),
            self.role(facts),
            game.map(|game| self.names(game)),
            facts["week"].as_u64().map(|week| self.t.week_n.with(week)),
            facts["amount"].as_i64().map(|amount| format!("{amount:+}")),
            facts["name"].as_str().map(str::to_owned),
        ];
        TrailRow {
            number: entry.entry_no,
            at: self.scene.clock(self.t).short(entry.happened_at),
            who: self.who(entry.actor),
            what: words(self.t, &entry.act),
            about: about.into_iter().flatten().collect::<Vec<_>>().join(", "),
            link: game.map(|game| {
                super::address::game(self.scene.season.club, self.scene.season.id, game.id)
            }),
            reason: reason(facts).unwrap_or_default().to_owned(),
            digest: document::hex(&entry.digest),
        }
    }

    /// By the name in the season, else the name in the club as far as the reader may know it.
    fn who(&self, actor: Option<Uuid>) -> String {
        let Some(account) = actor.map(AccountId) else {
            return self.t.desk.by_clock.to_string();
        };
        let player = self.scene.players.iter();
        let player = player.clone().find(|player| player.account == account);
        let member = self.members.iter().find(|(known, _)| *known == account);
        player
            .map(|player| player.handle.clone())
            .or_else(|| member.map(|(_, name)| name.clone()))
            .unwrap_or_else(|| self.t.desk.by_officer.to_string())
    }

    fn player(&self, facts: &Value) -> Option<String> {
        let id = id(&facts["player"]).map(PlayerId)?;
        Some(self.scene.handle(id).to_owned())
    }

    /// Whom an act of the club concerns.
    fn member(&self, facts: &Value) -> Option<String> {
        let account = id(&facts["account"]).map(AccountId)?;
        let mut members = self.members.iter();
        let (_, name) = members.find(|(known, _)| *known == account)?;
        Some(name.clone())
    }

    fn role(&self, facts: &Value) -> Option<String> {
        let role = Role::from_word(facts["role"].as_str()?)?;
        Some(role_word(self.t, role).to_string())
    }

    fn game(&self, facts: &Value) -> Option<&Game> {
        let id = id(&facts["game"])?;
        self.games.iter().find(|game| game.id.0 == id)
    }

    fn names(&self, game: &Game) -> String {
        let second = game.meeting.as_ref().map(|meeting| meeting.second);
        let players = std::iter::once(game.first).chain(second);
        let names: Vec<&str> = players.map(|player| self.scene.handle(player)).collect();
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
fn words(t: &Texts, act: &str) -> Phrase {
    let d = &t.desk;
    match act {
        "create_season" => d.did_create_season,
        "update_season" => d.did_update_season,
        "start_season" => d.did_start_season,
        "end_season" => d.did_end_season,
        "update_week" => d.did_update_week,
        "update_scenario" => d.did_update_scenario,
        "join_season" => d.did_join_season,
        "update_player" => d.did_update_player,
        "withdraw_player" => d.did_withdraw_player,
        "tell_availability" => d.did_tell_availability,
        "seal_list" => d.did_seal_list,
        "open_lists" => d.did_open_lists,
        "grant_late_leave" => d.did_grant_late_leave,
        "nudge_players" => d.did_nudge_players,
        "propose_round" => d.did_propose_round,
        "repair_round" => d.did_repair_round,
        "publish_round" => d.did_publish_round,
        "report_result" => d.did_report_result,
        "confirm_result" => d.did_confirm_result,
        "dispute_result" => d.did_dispute_result,
        "rule_result" => d.did_rule_result,
        "adjust_points" => d.did_adjust_points,
        "claim_painting" => d.did_claim_painting,
        "verify_claim" => d.did_verify_claim,
        "refuse_claim" => d.did_refuse_claim,
        "close_week" => d.did_close_week,
        "reveal" => d.did_reveal,
        "publish_repair" => d.did_publish_repair,
        "create_season_from" => d.did_create_season_from,
        "create_photo" => d.did_create_photo,
        "delete_photo" => d.did_delete_photo,
        "open_lists_too_early" => d.did_open_lists_too_early,
        "create_invitation" => d.did_create_invitation,
        "delete_invitation" => d.did_delete_invitation,
        "accept_invitation" => d.did_accept_invitation,
        "update_member" => d.did_update_member,
        "delete_member" => d.did_delete_member,
        _ => d.did_something,
    }
}
