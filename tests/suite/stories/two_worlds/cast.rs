use std::thread;

use super::doors::Doors;
use super::seen::Seen;
use crate::harness::{Actor, Browser, Player, Stage, demo_list};
use crate::stories::lists::seal;
use crate::stories::roles::operations;

/// Somebody who may not know of the secret, or whose it is.
pub struct Person {
    pub name: &'static str,
    pub actor: Actor,
    /// The same person at the pages; nobody has signed in where it is missing.
    pub browser: Option<Browser>,
    /// Whoever runs the season learns who has a list.
    pub runs_season: bool,
}

/// A season whose first week is announced, three times over.
pub struct Cast {
    pub worlds: [Stage; 3],
    /// Whose list is the secret.
    pub oskrel: Player,
    pub owner: Person,
    /// Everybody else. Wennable runs the season and plays in it.
    pub people: Vec<Person>,
    doors: Doors,
}

impl Cast {
    pub fn assemble() -> Self {
        let stage = Stage::draft();
        let [oskrel, corvanel, _] = ["Oskrel", "Corvanel", "Wennable"].map(|name| stage.join(name));
        let person = |name, handle: &str, actor: Actor, runs_season| {
            // Signed in before the worlds part, with what holds in all of them.
            actor.get("/api/v1/accounts/me").expect(200);
            let browser = Some(stage.server.browser(handle));
            Person {
                name,
                actor,
                browser,
                runs_season,
            }
        };
        stage.start();
        let visitor = Person {
            name: "visitor",
            actor: stage.server.visitor(),
            browser: None,
            runs_season: false,
        };
        let people = vec![
            visitor,
            person(
                "stranger",
                "Stranger",
                stage.server.register("Stranger"),
                false,
            ),
            person("rival", "Corvanel", corvanel.actor.clone(), false),
            person(
                "referee",
                "Ilkamar",
                stage.appoint("Ilkamar", "referee"),
                false,
            ),
            person(
                "organiser",
                "Kestanby",
                stage.appoint("Kestanby", "organiser"),
                true,
            ),
            person("owner who plays", "Wennable", stage.wennable.clone(), true),
        ];
        let owner = person("whose it is", "Oskrel", oskrel.actor.clone(), false);
        seal(&stage, &corvanel, 1, &demo_list("Corvanel", 1)).expect(201);
        let id = |path: &str| path.rsplit('/').next().unwrap().to_owned();
        let parts = [
            ("club", id(&stage.club)),
            ("season", id(&stage.season)),
            ("week", "1".to_owned()),
            ("player", oskrel.id.clone()),
            ("catalogue", stage.catalogue.clone()),
            ("number", "1".to_owned()),
        ];
        Self {
            doors: Doors::new(operations(), &parts),
            worlds: stage.worlds(),
            oskrel,
            owner,
            people,
        }
    }

    /// What one person sees of each world.
    pub fn look_in_each(&self, person: &Person) -> [Vec<Seen>; 3] {
        thread::scope(|scope| {
            let look = |world| scope.spawn(move || self.doors.look(person, world));
            let looks = self.worlds.each_ref().map(look);
            looks.map(|look| look.join().unwrap())
        })
    }

    /// The player whose list is the secret, in one of the worlds.
    pub fn oskrel_in(&self, world: &Stage) -> Player {
        Player {
            actor: world.server.welcome(&self.oskrel.actor),
            id: self.oskrel.id.clone(),
        }
    }
}
