//! One week of the demo's life: lists, round, games, paint, table.

use chrono::{DateTime, TimeDelta, Utc};
use serde_json::{Value, json};

use super::client::{LoadError, text};
use super::data::GameCourse;
use super::league::{DemoLeague, DemoMember};

/// The last week that is played.
pub const LAST_PLAYED_WEEK: u8 = 5;

impl DemoLeague<'_> {
    /// Plays a week to its end, or the last one as far as it goes today.
    pub async fn play(&mut self, week: u8) -> Result<(), LoadError> {
        let accepted_until = self.week(week)?.accepted_until;
        self.clock
            .set(accepted_until - TimeDelta::hours(30))
            .await?;
        if week > 1 {
            self.join(week).await?;
        }
        self.withdraw(week).await?;
        let late = |handle: &str| {
            self.story.late_list.week == week && self.story.late_list.player == handle
        };
        let in_time = self
            .playing(week)
            .filter(|member| !late(&member.person.handle));
        for member in in_time {
            self.seal(week, member).await?;
        }
        self.tell_absence(week).await?;
        self.clock.set(accepted_until).await?;
        self.post_as_owner(&format!("weeks/{week}/lists/open"), json!({}))
            .await?;
        self.hand_in_late(week).await?;
        self.publish_round(week).await?;
        self.play_nights(week).await?;
        if week < LAST_PLAYED_WEEK {
            self.clock
                .set(self.week(week)?.play_until + TimeDelta::hours(1))
                .await?;
            self.post_as_owner(&format!("weeks/{week}/close"), json!({}))
                .await?;
        }
        Ok(())
    }

    /// The week after the last one that is played: some have handed in their lists.
    pub async fn begin(&self, week: u8) -> Result<(), LoadError> {
        self.clock
            .set(self.week(week)?.announce + TimeDelta::hours(5))
            .await?;
        let missing = &self.story.without_list;
        for member in self
            .playing(week)
            .filter(|member| !missing.contains(&member.person.handle))
        {
            self.seal(week, member).await?;
        }
        Ok(())
    }

    async fn seal(&self, week: u8, member: &DemoMember) -> Result<(), LoadError> {
        let lists = self.lists.get(&member.person.handle);
        let place = usize::from(week - member.person.joins_in_week);
        let list = lists
            .and_then(|lists| lists.get(place))
            .ok_or(LoadError::Missing("list"))?;
        let path = format!("{}/weeks/{week}/list/seal", self.season);
        member.client.post(&path, list).await.map(drop)
    }

    async fn withdraw(&self, week: u8) -> Result<(), LoadError> {
        if self.story.withdrawal.week != week {
            return Ok(());
        }
        let member = self.member(&self.story.withdrawal.player)?;
        let path = format!("{}/players/{}/withdraw", self.season, member.player);
        member.client.post(&path, &json!({})).await.map(drop)
    }

    async fn tell_absence(&self, week: u8) -> Result<(), LoadError> {
        if self.story.absent.week != week {
            return Ok(());
        }
        let member = self.member(&self.story.absent.player)?;
        let path = format!("{}/weeks/{week}/availability", self.season);
        member
            .client
            .put(&path, &json!({ "nights": [] }))
            .await
            .map(drop)
    }

    async fn hand_in_late(&self, week: u8) -> Result<(), LoadError> {
        let late = &self.story.late_list;
        if late.week != week {
            return Ok(());
        }
        let member = self.member(&late.player)?;
        let leave = json!({ "player": member.player, "reason": late.reason });
        self.post_as_owner(&format!("weeks/{week}/late-leaves"), leave)
            .await?;
        self.seal(week, member).await
    }

    async fn publish_round(&self, week: u8) -> Result<(), LoadError> {
        let round = self
            .post_as_owner(&format!("weeks/{week}/rounds"), json!({}))
            .await?;
        let publish = format!("rounds/{}/publish", text(&round, "id")?);
        self.post_as_owner(&publish, json!({})).await.map(drop)
    }

    async fn post_as_owner(&self, path: &str, body: Value) -> Result<Value, LoadError> {
        self.owner()?
            .client
            .post(&format!("{}/{path}", self.season), &body)
            .await
    }

    async fn play_nights(&self, week: u8) -> Result<(), LoadError> {
        let games = self
            .owner()?
            .client
            .get(&format!("{}/games?week={week}", self.season))
            .await?;
        let games: Vec<Game<'_>> = games
            .as_array()
            .into_iter()
            .flatten()
            .map(|view| self.game(view))
            .collect::<Result<_, _>>()?;
        let (last, _) = self
            .week(week)?
            .nights
            .last()
            .ok_or(LoadError::Missing("night"))?;
        let open = games
            .iter()
            .rev()
            .filter(|game| &game.night == last)
            .map(|game| game.id.as_str())
            .take(2);
        let open: Vec<&str> = if week == LAST_PLAYED_WEEK {
            open.collect()
        } else {
            Vec::new()
        };
        for (night, begins) in &self.week(week)?.nights {
            for game in games.iter().filter(|game| &game.night == night) {
                let course = open.iter().position(|id| *id == game.id);
                self.play_game(week, game, *begins, course).await?;
            }
        }
        self.claim_without_game(week, &games).await
    }

    fn game(&self, view: &Value) -> Result<Game<'_>, LoadError> {
        let second = view["second"]
            .as_str()
            .map(|id| self.by_player(id))
            .transpose()?;
        Ok(Game {
            id: text(view, "id")?,
            night: view["night"].as_str().unwrap_or_default().to_owned(),
            first: self.by_player(&text(view, "first")?)?,
            second,
        })
    }

    /// Of the last week one game is not reported yet, and the report of another waits for an answer.
    async fn play_game(
        &self,
        week: u8,
        game: &Game<'_>,
        begins: DateTime<Utc>,
        open: Option<usize>,
    ) -> Result<(), LoadError> {
        let Some(second) = game.second else {
            return Ok(());
        };
        self.clock.set(begins + TimeDelta::minutes(20)).await?;
        self.claim(week, game.first, Some(second)).await?;
        self.claim(week, second, Some(game.first)).await?;
        self.clock.set(begins + TimeDelta::minutes(150)).await?;
        match open {
            Some(0) => Ok(()),
            Some(_) => self.report(week, game, second, 0).await,
            None => self.settle(week, game, second).await,
        }
    }

    async fn settle(
        &self,
        week: u8,
        game: &Game<'_>,
        second: &DemoMember,
    ) -> Result<(), LoadError> {
        let plays =
            |handle: &str| game.first.person.handle == handle || second.person.handle == handle;
        let (dispute, no_show) = (&self.story.dispute, &self.story.no_show);
        if no_show.week == week && plays(&no_show.player) {
            return self.report_absence(game, second).await;
        }
        if dispute.week == week && plays(&dispute.player) {
            return self.dispute(week, game, second).await;
        }
        self.report(week, game, second, 0).await?;
        let path = format!("{}/games/{}/confirm", self.season, game.id);
        second.client.post(&path, &json!({})).await.map(drop)
    }

    /// Counts as they are typed: the course follows from how well the two play.
    fn counts(
        &self,
        week: u8,
        game: &Game<'_>,
        second: &DemoMember,
        shift: usize,
    ) -> Result<Value, LoadError> {
        let by = game.first.person.form - second.person.form;
        let courses = self
            .results
            .get(usize::from(week - 1))
            .ok_or(LoadError::Missing("results"))?;
        let clearest = courses.len().saturating_sub(1);
        let distance = usize::try_from(by.unsigned_abs()).unwrap_or(clearest);
        let place = if distance >= clearest {
            clearest - shift
        } else {
            distance + shift
        };
        let course = courses.get(place).ok_or(LoadError::Missing("course"))?;
        Ok(
            json!({ "kind": "played", "counts": { "legs": legs(course, by >= 0, self.week(week)?.legs) } }),
        )
    }

    async fn report(
        &self,
        week: u8,
        game: &Game<'_>,
        second: &DemoMember,
        shift: usize,
    ) -> Result<(), LoadError> {
        let path = format!("{}/games/{}/report", self.season, game.id);
        let body = self.counts(week, game, second, shift)?;
        game.first.client.post(&path, &body).await.map(drop)
    }

    async fn report_absence(&self, game: &Game<'_>, second: &DemoMember) -> Result<(), LoadError> {
        let first_is_there = second.person.handle == self.story.no_show.player;
        let (there, absent) = if first_is_there {
            (game.first, "second")
        } else {
            (second, "first")
        };
        let body = json!({ "kind": "no_show", "absent": absent, "notice": "not_given" });
        let path = format!("{}/games/{}/report", self.season, game.id);
        there.client.post(&path, &body).await?;
        let judge = self.judge(&[game.first, second])?;
        let body = json!({ "outcome": body, "reason": "Waited for an hour; nobody came and nobody called" });
        judge
            .client
            .post(&format!("{}/games/{}/rule", self.season, game.id), &body)
            .await
            .map(drop)
    }

    /// The first reports, the other objects, a referee without a stake decides.
    async fn dispute(
        &self,
        week: u8,
        game: &Game<'_>,
        second: &DemoMember,
    ) -> Result<(), LoadError> {
        let dispute = &self.story.dispute;
        let path = format!("{}/games/{}", self.season, game.id);
        let objects = self.member(&dispute.player)?;
        let other = if objects.player == game.first.player {
            second
        } else {
            game.first
        };
        let claimed = self.counts(week, game, second, 1)?;
        other
            .client
            .post(&format!("{path}/report"), &claimed)
            .await?;
        let counter = self.counts(week, game, second, 0)?;
        let body = json!({ "reason": dispute.reason, "counter": counter });
        objects
            .client
            .post(&format!("{path}/dispute"), &body)
            .await?;
        let body = json!({ "outcome": counter, "reason": dispute.ruling });
        let judge = self.judge(&[game.first, second])?;
        judge
            .client
            .post(&format!("{path}/rule"), &body)
            .await
            .map(drop)
    }

    /// A referee or the owner, whoever does not play.
    fn judge(&self, players: &[&DemoMember]) -> Result<&DemoMember, LoadError> {
        let free =
            |member: &&DemoMember| players.iter().all(|player| player.player != member.player);
        let mut judges = self
            .people
            .values()
            .filter(|member| member.person.role.is_some());
        judges.find(free).ok_or(LoadError::Missing("judge"))
    }

    /// Who has no game this week shows the painted models to a referee.
    async fn claim_without_game(&self, week: u8, games: &[Game<'_>]) -> Result<(), LoadError> {
        for member in self.playing(week) {
            let plays = |game: &Game<'_>| {
                let both = game.second.map(|second| [game.first, second]);
                both.is_some_and(|both| both.iter().any(|one| one.player == member.player))
            };
            if !games.iter().any(plays) {
                self.claim(week, member, None).await?;
            }
        }
        Ok(())
    }

    async fn claim(
        &self,
        week: u8,
        member: &DemoMember,
        opponent: Option<&DemoMember>,
    ) -> Result<(), LoadError> {
        let handle = &member.person.handle;
        let log = self
            .painting
            .get(handle)
            .and_then(|weeks| weeks.get(usize::from(week - 1)));
        let refused = &self.story.refused_claim;
        let mut refuse = refused.week == week && &refused.player == handle;
        for body in log.into_iter().flatten() {
            let path = format!("{}/weeks/{week}/painting", self.season);
            let claim = text(&member.client.post(&path, body).await?, "id")?;
            let checker = match opponent {
                Some(opponent) => opponent,
                None => self.judge(&[member])?,
            };
            let path = format!("{}/painting/{claim}", self.season);
            if std::mem::take(&mut refuse) {
                let body = json!({ "reason": refused.reason });
                checker
                    .client
                    .post(&format!("{path}/refuse"), &body)
                    .await?;
            } else {
                checker
                    .client
                    .post(&format!("{path}/verify"), &json!({}))
                    .await?;
            }
        }
        Ok(())
    }
}

/// A game or bye.
struct Game<'l> {
    id: String,
    night: String,
    first: &'l DemoMember,
    second: Option<&'l DemoMember>,
}

/// With two legs, each side's counts belong to the leg in which it attacks.
fn legs(course: &GameCourse, first_is_ahead: bool, legs: usize) -> Value {
    let (first, second) = if first_is_ahead {
        (&course.ahead, &course.behind)
    } else {
        (&course.behind, &course.ahead)
    };
    let leg = |first: &Value, second: &Value| json!({ "first": { "items": first }, "second": { "items": second } });
    if legs == 1 {
        json!([leg(first, second)])
    } else {
        json!([leg(first, &json!({})), leg(&json!({}), second)])
    }
}
