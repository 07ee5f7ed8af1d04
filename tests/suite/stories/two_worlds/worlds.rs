use std::thread;

use super::doors::Doors;
use super::seen::Seen;
use crate::harness::{Actor, Browser, List, ListClient, Player, Stage};
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
pub struct Worlds {
    pub stages: [Stage; 3],
    /// Whose list is the secret.
    pub oskrel: Player,
    pub owner: Person,
    /// Everybody else. Wennable runs the season and plays in it.
    pub people: Vec<Person>,
    doors: Doors,
}

impl Worlds {
    pub fn new() -> Self {
        let stage = Stage::draft();
        let [oskrel, corvanel, _] = ["Oskrel", "Corvanel", "Wennable"].map(|name| stage.join(name));
        let person = |name, handle: &str, actor: Actor, runs_season| {
            // Signed in before the worlds part, with what holds in all of them.
            actor.me().expect(200);
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
            person("owner who plays", "Wennable", stage.owner.clone(), true),
        ];
        let owner = person("whose it is", "Oskrel", oskrel.actor.clone(), false);
        let list = List::demo("Corvanel", 1);
        stage.week(1).list_of(&corvanel).seal(&list).expect(201);
        let parts = [
            ("club", stage.club.id().to_owned()),
            ("season", stage.season.id().to_owned()),
            ("week", "1".to_owned()),
            ("player", oskrel.id.clone()),
            ("catalogue", stage.catalogue.id().to_owned()),
            ("number", "1".to_owned()),
        ];
        Self {
            doors: Doors::new(operations(), &parts),
            stages: stage.worlds(),
            oskrel,
            owner,
            people,
        }
    }

    /// What one person sees of each world.
    pub fn look_in_each(&self, person: &Person) -> [Vec<Seen>; 3] {
        thread::scope(|scope| {
            let look = |world| scope.spawn(move || self.doors.look(person, world));
            let looks = self.stages.each_ref().map(look);
            looks.map(|look| look.join().unwrap())
        })
    }

    /// Where the list that is the secret is in one of the worlds, for its player.
    pub fn own_list_in(&self, world: &Stage) -> ListClient {
        let list = world.week(1).list_of(&self.oskrel);
        list.by(world.server.welcome(&self.oskrel.actor))
    }
}
