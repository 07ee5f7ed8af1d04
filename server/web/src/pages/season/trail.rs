//! Page: the trail of a season: who did what, about whom, and why.

use std::borrow::Cow;

use actix_web::get;
use app::results::GameRow;
use app::seasons::TrailEntry;
use askama::Template;
use document::results::SlipDocument;
use document::trail::TrailAct;
use league::club_role::ClubRole;
use league::ids::{AccountId, GameId, PlayerId};
use serde::Deserialize;
use uuid::Uuid;

use super::context::{SeasonContext, SeasonHeader, SeasonTab};
use super::season_page::SeasonPage;
use crate::pages::frame::page_request::Layout;
use crate::pages::frame::response::{PageResult, page_template, render_page};
use crate::pages::words::local_time::LocalTime;
use crate::pages::words::roles::{can_judge, role_label};
use crate::query_parameters::Query;
use messages::Texts;

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
pub async fn show_trail(page: SeasonPage, query: Query<BeforeQuery>) -> PageResult {
    let SeasonPage { app, context, .. } = &page;
    let (season, viewer) = (page.key(), page.viewer());
    let found = app::seasons::list_trail(app, viewer, season, query.before, PAGE_SIZE).await?;
    let members = match (viewer, context.role) {
        (Some(actor), Some(_)) => app::clubs::list_members(app, actor, season.club).await?,
        _ => Vec::new(),
    };
    let reader = RowBuilder {
        t: page.t(),
        members: members
            .into_iter()
            .map(|member| (member.account, member.name))
            .collect(),
        games: app::results::list_games(app, viewer, season, None).await?,
        context,
    };
    let full = found.len() == usize::from(PAGE_SIZE);
    render_page(&TrailPage {
        layout: page.layout(),
        t: page.t(),
        header: page.header(SeasonTab::Trail),
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
        // An entry of an older or newer server may say what this one cannot read.
        let act = TrailAct::parse(&entry.act, &entry.facts).ok();
        let subject = act.as_ref().map(subject).unwrap_or_default();
        let game = subject.game.and_then(|id| self.game(id));
        let about = [
            subject
                .player
                .map(|player| self.context.handle(player).to_owned()),
            subject.member.and_then(|account| self.member(account)),
            subject
                .role
                .map(|role| role_label(self.t, role).to_string()),
            game.map(|game| self.names(game)),
            subject.week.map(|week| self.t.week_n(week)),
            subject.amount.map(|amount| format!("{amount:+}")),
            subject.name.map(str::to_owned),
        ];
        TrailRow {
            number: entry.entry_no,
            at: self.context.times(self.t).short(entry.happened_at),
            who: self.who(entry.actor),
            what: act
                .as_ref()
                .map_or_else(|| self.t.did_something(), |act| act_label(self.t, act)),
            about: about.into_iter().flatten().collect::<Vec<_>>().join(", "),
            link: game.map(|game| {
                crate::pages::frame::urls::game(self.context.season.key().game(game.id))
            }),
            reason: subject.reason.unwrap_or_default().to_owned(),
            digest: hex::encode(&entry.digest),
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

    /// Whom an act of the club concerns, as far as the reader may know it.
    fn member(&self, account: AccountId) -> Option<String> {
        let mut members = self.members.iter();
        let (_, name) = members.find(|(known, _)| *known == account)?;
        Some(name.clone())
    }

    fn game(&self, id: GameId) -> Option<&GameRow> {
        self.games.iter().find(|game| game.id == id)
    }

    fn names(&self, game: &GameRow) -> String {
        let second = game.meeting.as_ref().map(|meeting| meeting.second);
        let players = std::iter::once(game.first).chain(second);
        let names: Vec<&str> = players.map(|player| self.context.handle(player)).collect();
        names.join(" – ")
    }
}

/// Whom and what an act is about, as far as the page shows it.
#[derive(Default)]
struct Subject<'a> {
    player: Option<PlayerId>,
    member: Option<AccountId>,
    role: Option<ClubRole>,
    game: Option<GameId>,
    week: Option<u8>,
    amount: Option<i32>,
    name: Option<&'a str>,
    reason: Option<&'a str>,
}

fn subject(act: &TrailAct) -> Subject<'_> {
    let none = Subject::default();
    let of_player = |player: &Uuid| Subject {
        player: Some(PlayerId(*player)),
        ..Subject::default()
    };
    let of_week = |week: &u8| Subject {
        week: Some(*week),
        ..Subject::default()
    };
    match act {
        TrailAct::CreateClub { name }
        | TrailAct::CreateSeason { name }
        | TrailAct::CreateSeasonFrom { name, .. }
        | TrailAct::UpdateSeason { name, .. } => Subject {
            name: Some(name),
            ..none
        },
        TrailAct::CreateInvitation { role, .. } | TrailAct::AcceptInvitation { role } => Subject {
            role: Some((*role).into()),
            ..none
        },
        TrailAct::UpdateMember { account, role } => Subject {
            member: Some(AccountId(*account)),
            role: Some((*role).into()),
            ..none
        },
        TrailAct::DeleteMember { account } => Subject {
            member: Some(AccountId(*account)),
            ..none
        },
        TrailAct::UpdateWeek(changes) => of_week(&changes.week),
        TrailAct::PublishRound(round) => of_week(&round.week),
        TrailAct::UpdateScenario { week }
        | TrailAct::OpenLists { week, .. }
        | TrailAct::OpenListsTooEarly { week }
        | TrailAct::SendReminders { week, .. }
        | TrailAct::ProposeRound { week, .. }
        | TrailAct::CloseWeek { week, .. } => of_week(week),
        TrailAct::RepairRound { week, reason, .. } => Subject {
            reason: Some(reason),
            ..of_week(week)
        },
        TrailAct::PublishRepair { round, reason, .. } => Subject {
            reason: Some(reason),
            ..of_week(&round.week)
        },
        TrailAct::UpdatePlayer { player }
        | TrailAct::WithdrawPlayer { player, .. }
        | TrailAct::VerifyClaim { player, .. }
        | TrailAct::RefuseClaim { player, .. }
        | TrailAct::CreatePhoto { player } => of_player(player),
        TrailAct::JoinSeason { player, week, .. }
        | TrailAct::TellAvailability { player, week, .. }
        | TrailAct::SealList { player, week, .. }
        | TrailAct::ClaimPainting { player, week, .. } => Subject {
            week: Some(*week),
            ..of_player(player)
        },
        TrailAct::GrantLateLeave {
            player,
            week,
            reason,
        } => Subject {
            week: Some(*week),
            reason: Some(reason),
            ..of_player(player)
        },
        TrailAct::AdjustPoints {
            player,
            week,
            amount,
            reason,
        } => Subject {
            week: Some(*week),
            amount: Some(*amount),
            reason: Some(reason),
            ..of_player(player)
        },
        TrailAct::ConfirmResult { game } => Subject {
            game: Some(GameId(*game)),
            ..none
        },
        TrailAct::ReportResult { game, slip }
        | TrailAct::DisputeResult { game, slip }
        | TrailAct::RuleResult { game, slip, .. } => Subject {
            game: Some(GameId(*game)),
            reason: slip_reason(slip),
            ..none
        },
        TrailAct::CreateRecordConsent {}
        | TrailAct::DeleteRecordConsent {}
        | TrailAct::DeleteInvitation { .. }
        | TrailAct::CreateCatalogue { .. }
        | TrailAct::CreateCatalogueVersion { .. }
        | TrailAct::StartSeason { .. }
        | TrailAct::EndSeason {}
        | TrailAct::Reveal { .. }
        | TrailAct::DeletePhoto { .. } => none,
    }
}

fn slip_reason(slip: &SlipDocument) -> Option<&str> {
    match slip {
        SlipDocument::Disputed { reason, .. } => reason.as_deref(),
        SlipDocument::Ruled { ruling } => Some(&ruling.reason),
        SlipDocument::Awaited | SlipDocument::Reported { .. } | SlipDocument::Confirmed { .. } => {
            None
        }
    }
}

fn act_label(t: Texts, act: &TrailAct) -> Cow<'static, str> {
    match act {
        TrailAct::CreateClub { .. } => t.did_create_club(),
        TrailAct::CreateRecordConsent { .. } => t.did_create_record_consent(),
        TrailAct::DeleteRecordConsent { .. } => t.did_delete_record_consent(),
        TrailAct::CreateInvitation { .. } => t.did_create_invitation(),
        TrailAct::DeleteInvitation { .. } => t.did_delete_invitation(),
        TrailAct::AcceptInvitation { .. } => t.did_accept_invitation(),
        TrailAct::UpdateMember { .. } => t.did_update_member(),
        TrailAct::DeleteMember { .. } => t.did_delete_member(),
        TrailAct::CreateCatalogue { .. } => t.did_create_catalogue(),
        TrailAct::CreateCatalogueVersion { .. } => t.did_create_catalogue_version(),
        TrailAct::CreateSeason { .. } => t.did_create_season(),
        TrailAct::CreateSeasonFrom { .. } => t.did_create_season_from(),
        TrailAct::UpdateSeason { .. } => t.did_update_season(),
        TrailAct::StartSeason { .. } => t.did_start_season(),
        TrailAct::EndSeason { .. } => t.did_end_season(),
        TrailAct::UpdateWeek { .. } => t.did_update_week(),
        TrailAct::UpdateScenario { .. } => t.did_update_scenario(),
        TrailAct::Reveal { .. } => t.did_reveal(),
        TrailAct::JoinSeason { .. } => t.did_join_season(),
        TrailAct::UpdatePlayer { .. } => t.did_update_player(),
        TrailAct::WithdrawPlayer { .. } => t.did_withdraw_player(),
        TrailAct::TellAvailability { .. } => t.did_tell_availability(),
        TrailAct::SealList { .. } => t.did_seal_list(),
        TrailAct::OpenLists { .. } => t.did_open_lists(),
        TrailAct::OpenListsTooEarly { .. } => t.did_open_lists_too_early(),
        TrailAct::GrantLateLeave { .. } => t.did_grant_late_leave(),
        TrailAct::SendReminders { .. } => t.did_nudge_players(),
        TrailAct::ProposeRound { .. } => t.did_propose_round(),
        TrailAct::PublishRound { .. } => t.did_publish_round(),
        TrailAct::RepairRound { .. } => t.did_repair_round(),
        TrailAct::PublishRepair { .. } => t.did_publish_repair(),
        TrailAct::ReportResult { .. } => t.did_report_result(),
        TrailAct::ConfirmResult { .. } => t.did_confirm_result(),
        TrailAct::DisputeResult { .. } => t.did_dispute_result(),
        TrailAct::RuleResult { .. } => t.did_rule_result(),
        TrailAct::AdjustPoints { .. } => t.did_adjust_points(),
        TrailAct::ClaimPainting { .. } => t.did_claim_painting(),
        TrailAct::VerifyClaim { .. } => t.did_verify_claim(),
        TrailAct::RefuseClaim { .. } => t.did_refuse_claim(),
        TrailAct::CreatePhoto { .. } => t.did_create_photo(),
        TrailAct::DeletePhoto { .. } => t.did_delete_photo(),
        TrailAct::CloseWeek { .. } => t.did_close_week(),
    }
}
