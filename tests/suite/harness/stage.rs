//! The fixture of most stories: a club with a season, over a server and a database of their own.

use tallyhost::demo::data;

use super::actor::Actor;
use super::clock::Clock;
use super::database::Database;
use super::league::{Catalogue, CatalogueClient, Club, Player, Season, SeasonBody, Week};
use super::server::Server;

/// The demo's club and season, set up over HTTP as its owner Wennable does it. Week 1 begins on
/// Thursday, 8 January 2026 in Berlin: announced at 18:00, lists due on Monday the 12th at 20:00 with
/// an hour of grace, games on Tuesday and Thursday.
pub struct Stage {
    pub server: Server,
    pub database: Database,
    /// Wennable, who owns the club.
    pub owner: Actor,
    /// Both as the owner acts in them.
    pub club: Club,
    pub season: Season,
    pub catalogue: CatalogueClient,
    code: String,
}

/// A stage without a server, which is copied whenever it is opened.
pub struct ClosedStage {
    database: Database,
    club: Club,
    season: Season,
    catalogue: CatalogueClient,
    code: String,
}

impl ClosedStage {
    pub fn open(&self) -> Stage {
        let database = self.database.copy();
        let server = Server::launch(|command| {
            command
                .env("DATABASE_URL", database.url())
                .env("TALLYHOST_PUBLIC_URL", "https://league.example/")
        });
        let owner = server.welcome(&self.club.actor);
        Stage {
            club: self.club.by(&owner),
            season: self.season.by(&owner),
            catalogue: self.catalogue.by(&owner),
            code: self.code.clone(),
            owner,
            server,
            database,
        }
    }
}

/// Who plays in seasons that are about one player or none.
const BYSTANDERS: [&str; 2] = ["Juddeth", "Noorwin"];

impl Stage {
    /// With the season as a draft.
    pub fn draft() -> Self {
        Self::with(|_| {})
    }

    /// With another season than the demo's, as a draft.
    pub fn with(change: impl FnOnce(&mut SeasonBody)) -> Self {
        let database = Database::create();
        let server = Server::start(&database);
        Self::over(database, server, change)
    }

    /// Over a database and a server that there are.
    pub fn over(database: Database, server: Server, change: impl FnOnce(&mut SeasonBody)) -> Self {
        let owner = server.register("Wennable");
        let made = owner.found_club("Lamplit Ford gaming circle", "lamplit-ford");
        let club = owner.club_at(made.location(201));
        let catalogue = club.create_catalogue("Quernlight Reckoning");
        catalogue.import(&Catalogue::of_the_demo()).expect(201);
        let mut body = season_body(&catalogue);
        change(&mut body);
        body.keep_to_its_weeks();
        let season = club.new_season(&body);
        let code = club.invite("player", 100, 90).expect(200).code;
        Self {
            server,
            database,
            owner,
            club,
            season,
            catalogue,
            code,
        }
    }

    /// So many worlds that are this one until somebody acts in one of them, all reached under one
    /// name. Actors of this stage are led to each by its server.
    pub fn worlds<const N: usize>(self) -> [Self; N] {
        let original = self.close();
        std::array::from_fn(|_| original.open())
    }

    /// Stops the server, so that the stage can be opened again and again as it is.
    pub fn close(self) -> ClosedStage {
        let Self {
            server,
            database,
            club,
            season,
            catalogue,
            code,
            ..
        } = self;
        drop(server);
        ClosedStage {
            database,
            club,
            season,
            catalogue,
            code,
        }
    }

    /// What the demo's season is created from.
    pub fn season_body(&self) -> SeasonBody {
        season_body(&self.catalogue)
    }

    pub fn clock(&self) -> Clock<'_> {
        self.database.clock()
    }

    pub fn week(&self, week: u8) -> Week {
        self.season.week(week)
    }

    /// Somebody who has not signed in.
    pub fn visitor(&self) -> Actor {
        self.server.visitor()
    }

    /// Somebody new in the club, who does not play yet.
    pub fn welcome(&self, handle: &str) -> Actor {
        let actor = self.server.register(handle);
        actor.accept(&self.code).expect(200);
        actor
    }

    /// Somebody new in the club, with a role in it.
    pub fn appoint(&self, handle: &str, role: &str) -> Actor {
        let actor = self.welcome(handle);
        self.club.appoint(&actor, role).expect(204);
        actor
    }

    /// A person of the demo takes part in the season.
    pub fn join(&self, handle: &str) -> Player {
        let people = data::people().unwrap();
        let person = people.iter().find(|person| person.handle == handle);
        let person = person.unwrap();
        self.join_with(handle, &person.faction, &person.nights)
    }

    /// Somebody takes part with a faction, on the nights of a week when they can come.
    pub fn join_with(&self, handle: &str, faction: &str, nights: &[impl AsRef<str>]) -> Player {
        let actor = if handle == "Wennable" {
            self.owner.clone()
        } else {
            self.welcome(handle)
        };
        let joined = self.season.by(&actor).join(handle, faction, nights);
        let id = joined.expect(201).id;
        Player { actor, id }
    }

    /// Somebody is a minor from now on, whose guardian agrees.
    pub fn make_a_minor(&self, person: impl AsRef<Actor>) {
        let account = person.as_ref().account().id;
        self.database.run(&format!(
            "UPDATE accounts SET minor = true, guardian_consent = true
            WHERE account_id = '{account}'"
        ));
    }

    /// Starts the season, made up to the two players that it takes; week 1 is announced, and the clock
    /// has made its version of that.
    pub fn start(&self) {
        let there = self.season.players().expect(200).len();
        for bystander in BYSTANDERS.iter().skip(there) {
            self.join(bystander);
        }
        self.season.start().expect(200);
        self.clock().show("2026-01-08T18:00:00+01:00");
        self.until_reveals_are_published();
    }

    /// Waits until everything that is to be revealed by now has made its version.
    pub fn until_reveals_are_published(&self) {
        let id = self.season.id();
        let told = format!(
            "SELECT 'told' FROM seasons WHERE season_id = '{id}'
            AND coalesce(moments_told_at, started_at) >= coalesce(
                (SELECT max(announce_at) FROM weeks JOIN test_clock ON announce_at <= now
                WHERE weeks.season_id = seasons.season_id), '-infinity')"
        );
        self.database
            .wait_for("the announcement has made a version", &told);
    }
}

fn season_body(catalogue: &CatalogueClient) -> SeasonBody {
    let first_day = "2026-01-08".parse().unwrap();
    SeasonBody::new(data::season(catalogue.id(), first_day).unwrap())
}
