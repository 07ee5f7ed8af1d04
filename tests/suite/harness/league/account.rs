//! Accounts and sessions: registering, signing in, refresh tokens.

use reqwest::Method;
use serde::Deserialize;
use serde_json::{Value, json};

use super::club::Club;
use super::resource::Resource;
use super::season::Season;
use crate::harness::{Actor, Answer};

const SESSIONS: &str = "/api/v1/sessions";

/// Who somebody is, as the server knows them.
#[derive(Debug, Deserialize)]
pub struct Account {
    pub id: String,
    pub name: String,
    pub clubs: Vec<Membership>,
}

#[derive(Debug, Deserialize)]
pub struct Membership {
    pub id: String,
    pub slug: String,
}

/// What a client program keeps of a session.
#[derive(Clone, Debug, Deserialize)]
pub struct Tokens {
    #[serde(rename = "access_token")]
    pub access: String,
    #[serde(rename = "refresh_token")]
    pub refresh: String,
}

impl Actor {
    pub fn me(&self) -> Answer<Account> {
        self.get("/api/v1/accounts/me").of()
    }

    pub fn account(&self) -> Account {
        self.me().expect(200)
    }

    /// Asks for an account; the answer tells nobody whether there was one.
    pub fn register_as(&self, email: &str, name: &str, password: &str) -> Answer {
        let body = json!({ "email": email, "name": name, "password": password });
        self.post("/api/v1/accounts", &body)
    }

    pub fn sign_in_with(&self, email: &str, password: &str) -> Answer<Tokens> {
        let body = json!({ "email": email, "password": password });
        self.post(SESSIONS, &body).of()
    }

    pub fn refresh(&self, token: &str) -> Answer<Tokens> {
        let body = json!({ "refresh_token": token });
        self.post(&format!("{SESSIONS}/refresh"), &body).of()
    }

    pub fn sign_out(&self) -> Answer<()> {
        let current = format!("{SESSIONS}/current");
        self.ask(Method::DELETE, &current, |request| request).of()
    }

    /// Somebody who founds a club owns it.
    pub fn found_club(&self, name: &str, slug: &str) -> Answer<Membership> {
        let body = json!({ "name": name, "slug": slug });
        self.post("/api/v1/clubs", &body).of()
    }

    /// Comes into a club by the code of an invitation.
    pub fn accept(&self, code: &str) -> Answer<Value> {
        let body = json!({ "code": code });
        self.post("/api/v1/invitations/accept", &body)
    }

    /// A club by the path at which it was founded.
    pub fn club_at(&self, path: impl Into<String>) -> Club {
        Club(Resource::new(self, path))
    }

    /// The season whose page is at this path.
    pub fn season_of_page(&self, page: &str) -> Season {
        Season::at_path(self, format!("/api/v1{page}"))
    }

    /// The season of whoever is in one club with one season.
    #[track_caller]
    pub fn only_season(&self) -> Season {
        let [club] = &self.account().clubs[..] else {
            panic!("not one club");
        };
        let club = self.club(&club.id);
        let [season] = &club.seasons().expect(200)[..] else {
            panic!("not one season");
        };
        club.season(&season.id)
    }

    /// A club by its id.
    pub fn club(&self, id: &str) -> Club {
        self.club_at(format!("/api/v1/clubs/{id}"))
    }
}
