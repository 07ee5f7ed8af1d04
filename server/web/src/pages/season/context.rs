//! What every page of a season loads: the season, its weeks and players, and what the reader may do.

use std::borrow::Cow;

use app::seasons::{Player, Season, Week};
use app::{App, Viewer};
use league::club_role::ClubRole;
use league::ids::PlayerId;
use league::keys::SeasonKey;
use league::season::{SeasonState, Visibility, WeekPhase};
use league::week::WeekNo;

use crate::pages::frame::urls;
use crate::pages::words::factions::faction_name;
use crate::pages::words::local_time::TimeFormatter;
use crate::pages::words::roles::{can_judge, can_run_seasons};
use crate::problem::{HttpFault, Problem};
use messages::Texts;

/// A season as one reader sees it.
pub struct SeasonContext {
    pub season: Season,
    /// The reader's role in the club.
    pub role: Option<ClubRole>,
    /// The weeks in order.
    pub weeks: Vec<(Week, WeekPhase)>,
    /// Everybody who ever joined, by handle.
    pub players: Vec<Player>,
    /// The reader as a player.
    pub own: Option<Player>,
    club_name: String,
}

/// The pages of a season, for the tabs.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum SeasonTab {
    /// The season's own page.
    Overview,
    /// The standings and what is behind them.
    Standings,
    /// What the games have in common.
    Statistics,
    Painting,
    /// What a player has to do.
    Mine,
    /// Who has handed in.
    Board,
    /// What waits for a report or a ruling.
    Results,
    /// One of the weeks.
    Week,
    Trail,
    /// What can be taken home.
    Downloads,
    Ending,
}

/// The header of every page of a season.
pub struct SeasonHeader {
    pub name: String,
    pub link: String,
    pub club_name: String,
    pub club_link: String,
    pub tabs: Vec<TabLink>,
    /// Time zone of the season.
    pub zone: String,
    /// Address of its event stream, if it is public.
    pub events: Option<String>,
    /// Version of the season that the page shows.
    pub version: i64,
}

/// A link to a page of the season.
pub struct TabLink {
    pub label: Cow<'static, str>,
    pub link: String,
    /// Whether it is the page that is shown.
    pub here: bool,
}

impl SeasonContext {
    /// # Errors
    /// 404 for a season that the reader may not see.
    pub(super) async fn load(
        app: &App,
        viewer: Viewer,
        season: SeasonKey,
    ) -> Result<Self, Problem> {
        let season = app::seasons::find_season(app, viewer, season).await?;
        let (club_info, role) = app::clubs::find_club(app, viewer, season.club).await?;
        let players = app::seasons::list_players(app, viewer, season.key()).await?;
        let account = viewer.map(|actor| actor.account);
        let own = players
            .iter()
            .find(|player| Some(player.account) == account);
        Ok(Self {
            role,
            weeks: app::seasons::list_weeks(app, viewer, season.key()).await?,
            own: own.cloned(),
            players,
            season,
            club_name: club_info.name,
        })
    }

    /// Whether the reader runs the season.
    pub fn can_run(&self) -> bool {
        can_run_seasons(self.role)
    }

    /// Formats instants in the season's zone.
    pub fn times(&self, t: Texts) -> TimeFormatter {
        TimeFormatter {
            t,
            zone: self.season.zone,
        }
    }

    pub fn link(&self) -> String {
        urls::season(self.season.key())
    }

    /// The page of one of its weeks.
    pub fn week_link(&self, week: WeekNo) -> String {
        urls::week(self.season.key().week(week))
    }

    /// One of its weeks.
    ///
    /// # Errors
    /// 404 for a week that the season does not have.
    pub fn week(&self, number: WeekNo) -> Result<&(Week, WeekPhase), Problem> {
        let week = self.weeks.iter().find(|(week, _)| week.week == number);
        week.ok_or_else(|| Problem::http(HttpFault::NotFound))
    }

    /// The weeks that are under way, else the next one, else the last.
    pub fn current_weeks(&self) -> Vec<&(Week, WeekPhase)> {
        let open = |phase: WeekPhase| phase >= WeekPhase::Announced && phase < WeekPhase::Closed;
        let under_way: Vec<_> = self
            .weeks
            .iter()
            .filter(|(_, phase)| open(*phase))
            .collect();
        if !under_way.is_empty() {
            return under_way;
        }
        let next = self
            .weeks
            .iter()
            .find(|(_, phase)| *phase < WeekPhase::Closed);
        next.or(self.weeks.last()).into_iter().collect()
    }

    fn events_url(&self) -> Option<String> {
        let season = &self.season;
        let is_public =
            season.visibility == Visibility::Public && season.state != SeasonState::Draft;
        is_public.then(|| format!("/public{}/events", urls::season(season.key())))
    }

    /// Nobody for who joined after the players were read and before the rest of the page was.
    fn player(&self, id: PlayerId) -> Option<&Player> {
        self.players.iter().find(|player| player.id == id)
    }

    /// The handle of a player.
    pub fn handle(&self, id: PlayerId) -> &str {
        self.player(id).map_or("?", |player| &player.handle)
    }

    /// The name of a player's faction.
    pub fn faction(&self, id: PlayerId) -> String {
        let player = self.player(id);
        player.map_or_else(String::new, |player| faction_name(&player.faction))
    }

    /// The header of a page of this season.
    pub(super) fn header(&self, t: Texts, here: SeasonTab) -> SeasonHeader {
        let link = self.link();
        let mut tabs = vec![
            (SeasonTab::Overview, t.overview(), link.clone()),
            (
                SeasonTab::Standings,
                t.standings(),
                format!("{link}/standings"),
            ),
            (
                SeasonTab::Statistics,
                t.statistics(),
                format!("{link}/statistics"),
            ),
            (
                SeasonTab::Painting,
                t.painting(),
                format!("{link}/painting"),
            ),
        ];
        if self.own.is_some() {
            tabs.push((SeasonTab::Mine, t.my_week(), format!("{link}/mine")));
        }
        if self.can_run() {
            tabs.push((SeasonTab::Board, t.board(), format!("{link}/board")));
        }
        if can_judge(self.role) {
            tabs.push((SeasonTab::Results, t.results(), format!("{link}/results")));
        }
        SeasonHeader {
            name: self.season.name.clone(),
            club_name: self.club_name.clone(),
            club_link: urls::club(self.season.club),
            link,
            tabs: tabs
                .into_iter()
                .map(|(tab, label, link)| TabLink {
                    label,
                    link,
                    here: tab == here,
                })
                .collect(),
            zone: self.season.zone.name().to_owned(),
            events: self.events_url(),
            version: self.season.version,
        }
    }
}
