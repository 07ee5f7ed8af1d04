//! The club, its season and its people, while the demo is being loaded.

use std::collections::BTreeMap;

use chrono::{DateTime, NaiveDate, TimeDelta, Utc};
use serde_json::{Value, json};

use super::client::{Client, LoadError, text};
use super::data::{self, GameCourse, Person, Story};
use super::held_clock::HeldClock;

/// Days from the season's first day to the day of loading: the day after the last night of week 5,
/// with week 6 announced and its lists due in three days.
const DAYS_PLAYED: i64 = 36;

/// The demo season while it is being loaded, and what its story needs.
pub struct DemoLeague<'c> {
    pub clock: &'c HeldClock,
    pub people: BTreeMap<String, DemoMember>,
    pub season: String,
    pub weeks: Vec<DemoWeek>,
    pub lists: BTreeMap<String, Vec<Value>>,
    pub painting: BTreeMap<String, Vec<Vec<Value>>>,
    pub results: Vec<Vec<GameCourse>>,
    pub story: Story,
}

/// Somebody with an account, and with a place in the season once they have joined.
pub struct DemoMember {
    pub person: Person,
    pub client: Client,
    pub player: String,
}

/// The instants of a week.
pub struct DemoWeek {
    pub announce: DateTime<Utc>,
    pub accepted_until: DateTime<Utc>,
    pub play_until: DateTime<Utc>,
    pub nights: Vec<(String, DateTime<Utc>)>,
    pub legs: usize,
}

impl<'c> DemoLeague<'c> {
    /// Creates the club and sets up its season two weeks before the first week.
    pub async fn create(address: &str, clock: &'c HeldClock) -> Result<Self, LoadError> {
        let first_day = clock.today(&data::zone()?).await? - TimeDelta::days(DAYS_PLAYED);
        clock.set(evening(first_day - TimeDelta::days(14))).await?;
        let people = register(address).await?;
        let owner = owner(&people)?;
        let club = create_club(owner).await?;
        invite(&people, owner, &club).await?;
        let season = create_season(owner, &club, first_day).await?;
        let weeks = owner.client.get(&format!("{season}/weeks")).await?;
        let mut league = Self {
            clock,
            people,
            season,
            weeks: weeks
                .as_array()
                .into_iter()
                .flatten()
                .map(week)
                .collect::<Result<_, _>>()?,
            lists: data::lists()?,
            painting: data::painting_log()?,
            results: data::results()?,
            story: data::story()?,
        };
        league.write_scenarios().await?;
        league.join(1).await?;
        let start = format!("{}/start", league.season);
        league.owner()?.client.post(&start, &json!({})).await?;
        Ok(league)
    }

    /// Whoever founded the club.
    pub fn owner(&self) -> Result<&DemoMember, LoadError> {
        owner(&self.people)
    }

    /// Somebody by handle.
    pub fn member(&self, handle: &str) -> Result<&DemoMember, LoadError> {
        self.people
            .get(handle)
            .ok_or(LoadError::Missing("player of that handle"))
    }

    /// Somebody by the id of their place in the season.
    pub fn by_player(&self, id: &str) -> Result<&DemoMember, LoadError> {
        let mut people = self.people.values();
        people
            .find(|member| member.player == id)
            .ok_or(LoadError::Missing("player of that id"))
    }

    /// Who plays in a week.
    pub fn playing(&self, week: u8) -> impl Iterator<Item = &DemoMember> {
        let left = &self.story.withdrawal;
        self.people.values().filter(move |member| {
            let gone = member.person.handle == left.player && week >= left.week;
            member.person.joins_in_week <= week && !gone
        })
    }

    /// The instants of a week.
    pub fn week(&self, week: u8) -> Result<&DemoWeek, LoadError> {
        let found = usize::from(week)
            .checked_sub(1)
            .and_then(|place| self.weeks.get(place));
        found.ok_or(LoadError::Missing("week of that number"))
    }

    /// Everybody whose first week it is takes a place.
    pub async fn join(&mut self, week: u8) -> Result<(), LoadError> {
        let path = format!("{}/players", self.season);
        let newcomers = self
            .people
            .values_mut()
            .filter(|member| member.person.joins_in_week == week);
        for member in newcomers {
            let Person {
                handle,
                faction,
                nights,
                ..
            } = &member.person;
            let body = json!({ "handle": handle, "faction": faction, "nights": nights });
            member.player = text(&member.client.post(&path, &body).await?, "id")?;
        }
        self.note_households(week).await
    }

    async fn note_households(&self, week: u8) -> Result<(), LoadError> {
        for member in self
            .people
            .values()
            .filter(|member| member.person.joins_in_week == week)
        {
            if let Some(household) = &member.person.household {
                let path = format!("{}/players/{}", self.season, member.player);
                let body = json!({ "household": household });
                self.owner()?.client.patch(&path, &body).await?;
            }
        }
        Ok(())
    }

    async fn write_scenarios(&mut self) -> Result<(), LoadError> {
        for (number, scenario) in (1..).zip(data::scenarios()?) {
            let path = format!("{}/weeks/{number}/scenario", self.season);
            self.owner()?.client.put(&path, &scenario).await?;
            let legs = if scenario["sheet"]["legs"] == "one" {
                1
            } else {
                2
            };
            if let Some(week) = self.weeks.get_mut(number - 1) {
                week.legs = legs;
            }
        }
        Ok(())
    }
}

fn owner(people: &BTreeMap<String, DemoMember>) -> Result<&DemoMember, LoadError> {
    let mut people = people.values();
    let owner = people.find(|member| member.person.role.as_deref() == Some("owner"));
    owner.ok_or(LoadError::Missing("owner"))
}

async fn register(address: &str) -> Result<BTreeMap<String, DemoMember>, LoadError> {
    let http = reqwest::Client::builder().no_proxy().build()?;
    let mut people = BTreeMap::new();
    for person in data::people()? {
        let client = Client::register(&http, address, &person).await?;
        let member = DemoMember {
            client,
            player: String::new(),
            person,
        };
        people.insert(member.person.handle.clone(), member);
    }
    Ok(people)
}

async fn create_club(owner: &DemoMember) -> Result<String, LoadError> {
    let body = json!({ "name": "Lamplit Ford gaming circle", "slug": data::CLUB });
    let club = owner.client.post("/api/v1/clubs", &body).await?;
    Ok(format!("/api/v1/clubs/{}", text(&club, "id")?))
}

/// One code for each role that somebody has.
async fn invite(
    people: &BTreeMap<String, DemoMember>,
    owner: &DemoMember,
    club: &str,
) -> Result<(), LoadError> {
    let path = format!("{club}/invitations");
    for role in ["player", "referee"] {
        let body = json!({ "role": role, "uses": 50, "days": 60 });
        let code = text(&owner.client.post(&path, &body).await?, "code")?;
        let invited = people.values();
        for member in
            invited.filter(|member| member.person.role.as_deref().unwrap_or("player") == role)
        {
            let body = json!({ "code": code });
            member
                .client
                .post("/api/v1/invitations/accept", &body)
                .await?;
        }
    }
    Ok(())
}

async fn create_season(
    owner: &DemoMember,
    club: &str,
    first_day: NaiveDate,
) -> Result<String, LoadError> {
    let body = json!({ "name": "Quernlight Reckoning" });
    let catalogue = owner
        .client
        .post(&format!("{club}/catalogues"), &body)
        .await?;
    let catalogue = text(&catalogue, "id")?;
    let versions = format!("{club}/catalogues/{catalogue}/versions");
    owner.client.post(&versions, &data::catalogue()?).await?;
    let body = data::season(&catalogue, first_day)?;
    let season = owner.client.post(&format!("{club}/seasons"), &body).await?;
    Ok(format!("{club}/seasons/{}", text(&season, "id")?))
}

fn week(view: &Value) -> Result<DemoWeek, LoadError> {
    let nights = view["nights"].as_array().into_iter().flatten();
    let night = |night: &Value| Ok((text(night, "key")?, time(night, "begins_at")?));
    Ok(DemoWeek {
        announce: time(view, "announce_at")?,
        accepted_until: time(view, "lists_accepted_until")?,
        play_until: time(view, "play_until_at")?,
        nights: nights.map(night).collect::<Result<_, LoadError>>()?,
        legs: 1,
    })
}

fn time(value: &Value, member: &'static str) -> Result<DateTime<Utc>, LoadError> {
    let time = text(value, member)?.parse();
    time.map_err(|_| LoadError::Missing(member))
}

fn evening(day: NaiveDate) -> DateTime<Utc> {
    day.and_time(chrono::NaiveTime::MIN).and_utc() + TimeDelta::hours(19)
}
