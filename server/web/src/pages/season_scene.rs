//! What every page of a season stands on: the season, its weeks and players, and who looks.

use app::Desk;
use app::seasons::{Player, Season, Week};
use league::ids::{ClubId, PlayerId, SeasonId};
use league::role::Role;
use league::season::{Phase, SeasonState, Visibility};
use league::week::WeekNo;

use super::address;
use super::moment::Clock;
use super::roles::{judges, runs_seasons};
use super::texts::{Phrase, Texts};
use super::visit::Visit;
use crate::problem::{Problem, WireFault};

/// A season as one reader meets it.
pub struct SeasonScene {
    /// The season.
    pub season: Season,
    /// What the reader is in the club.
    pub role: Option<Role>,
    /// The weeks in order.
    pub weeks: Vec<(Week, Phase)>,
    /// Everybody who ever joined, by handle.
    pub players: Vec<Player>,
    /// The reader's own place.
    pub own: Option<Player>,
    club_name: String,
}

/// The pages of a season that every one of them leads to.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Tab {
    /// The season's own page.
    Overview,
    /// The standings and what is behind them.
    Standings,
    /// What the games have in common.
    Statistics,
    /// The painting log.
    Painting,
    /// What a player has to do.
    Mine,
    /// Who has handed in.
    Board,
    /// What waits for a report or a ruling.
    Results,
    /// One of the weeks.
    Week,
    /// What was done.
    Trail,
    /// What can be taken home.
    Downloads,
    /// How it ends.
    Ending,
}

/// Above every page of a season.
pub struct SeasonHead {
    /// Name of the season.
    pub name: String,
    /// Its page.
    pub link: String,
    /// Name of the club.
    pub club_name: String,
    /// Its page.
    pub club_link: String,
    /// Pages of the season.
    pub tabs: Vec<TabLink>,
    /// The zone of all times.
    pub zone: String,
    /// Where its events are told, if everybody may hear them.
    pub events: Option<String>,
    /// The version that the page shows.
    pub version: i64,
}

/// A way to a page of the season.
pub struct TabLink {
    /// Its name.
    pub label: Phrase,
    /// Its address.
    pub link: String,
    /// Whether this is it.
    pub here: bool,
}

impl SeasonScene {
    /// # Errors
    /// 404 for a season that the reader may not know of.
    pub async fn load(
        desk: &Desk,
        visit: &Visit,
        club: ClubId,
        id: SeasonId,
    ) -> Result<Self, Problem> {
        let viewer = visit.viewer;
        let season = app::seasons::find_season(desk, viewer, club, id).await?;
        let (club_face, role) = app::clubs::find_club(desk, viewer, club).await?;
        let players = app::seasons::list_players(desk, viewer, club, id).await?;
        let account = viewer.map(|actor| actor.account);
        let own = players
            .iter()
            .find(|player| Some(player.account) == account);
        Ok(Self {
            role,
            weeks: app::seasons::list_weeks(desk, viewer, club, id).await?,
            own: own.cloned(),
            players,
            season,
            club_name: club_face.name,
        })
    }

    /// Whether the reader runs the season.
    pub fn runs(&self) -> bool {
        runs_seasons(self.role)
    }

    /// Writes the season's times.
    pub fn clock(&self, t: &'static Texts) -> Clock {
        Clock {
            t,
            zone: self.season.zone,
        }
    }

    /// The season's page.
    pub fn link(&self) -> String {
        address::season(self.season.club, self.season.id)
    }

    /// The page of one of its weeks.
    pub fn week_link(&self, week: WeekNo) -> String {
        address::week(self.season.club, self.season.id, week)
    }

    /// One of its weeks.
    ///
    /// # Errors
    /// 404 for a week that the season does not have.
    pub fn week(&self, number: WeekNo) -> Result<&(Week, Phase), Problem> {
        let week = self.weeks.iter().find(|(week, _)| week.week == number);
        week.ok_or_else(|| Problem::wire(WireFault::NotFound))
    }

    /// The weeks that are under way, else the next one, else the last.
    pub fn current(&self) -> Vec<&(Week, Phase)> {
        let open = |phase: Phase| phase >= Phase::Announced && phase < Phase::Closed;
        let under_way: Vec<_> = self
            .weeks
            .iter()
            .filter(|(_, phase)| open(*phase))
            .collect();
        if !under_way.is_empty() {
            return under_way;
        }
        let next = self.weeks.iter().find(|(_, phase)| *phase < Phase::Closed);
        next.or(self.weeks.last()).into_iter().collect()
    }

    fn events(&self) -> Option<String> {
        let season = &self.season;
        let told = season.visibility == Visibility::Public && season.state != SeasonState::Draft;
        told.then(|| format!("/public/clubs/{}/seasons/{}/events", season.club, season.id))
    }

    /// The name that a player has here.
    pub fn handle(&self, id: PlayerId) -> &str {
        let player = self.players.iter().find(|player| player.id == id);
        player.map_or("?", |player| &player.handle)
    }

    /// What stands above a page of this season.
    pub fn head(&self, visit: &Visit, here: Tab) -> SeasonHead {
        let link = self.link();
        let t = visit.t;
        let mut tabs = vec![
            (Tab::Overview, t.overview, link.clone()),
            (Tab::Standings, t.standings, format!("{link}/standings")),
            (
                Tab::Statistics,
                t.figures.statistics,
                format!("{link}/statistics"),
            ),
            (Tab::Painting, t.painting, format!("{link}/painting")),
        ];
        if self.own.is_some() {
            tabs.push((Tab::Mine, t.my_week, format!("{link}/mine")));
        }
        if self.runs() {
            tabs.push((Tab::Board, t.board, format!("{link}/board")));
        }
        if judges(self.role) {
            tabs.push((Tab::Results, t.desk.results, format!("{link}/results")));
        }
        SeasonHead {
            name: self.season.name.clone(),
            club_name: self.club_name.clone(),
            club_link: address::club(self.season.club),
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
            events: self.events(),
            version: self.season.version,
        }
    }
}
