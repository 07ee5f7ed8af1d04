//! A client of a club: members, invitations, catalogues, seasons.

use serde::Deserialize;
use serde_json::json;

use super::catalogue::CatalogueClient;
use super::resource::client;
use super::season::{Season, SeasonState};
use super::season_body::SeasonBody;
use crate::harness::{Actor, Answer};

client! {
    /// A club: its members, catalogues and seasons.
    Club;
}

#[derive(Debug, Deserialize, PartialEq)]
pub struct Invitation {
    pub id: String,
    pub code: String,
}

/// An invitation that can still be accepted, as officers see it.
#[derive(Debug, Deserialize)]
pub struct OpenInvitation {
    pub id: String,
}

#[derive(Debug, Deserialize)]
pub struct ListedCatalogue {
    /// The number of the newest version.
    pub newest: u64,
}

/// Whether everybody may read somebody's record, and where it is then.
#[derive(Debug, Deserialize, PartialEq)]
pub struct RecordConsent {
    pub agreed: bool,
    pub address: Option<String>,
    pub agreed_at: Option<String>,
    pub record: Option<String>,
}

impl Club {
    pub fn invite(&self, role: &str, uses: u32, days: u32) -> Answer<Invitation> {
        let body = json!({ "role": role, "uses": uses, "days": days });
        self.post("invitations", &body)
    }

    pub fn invitations(&self) -> Answer<Vec<OpenInvitation>> {
        self.get("invitations")
    }

    pub fn delete_invitation(&self, id: &str) -> Answer<()> {
        self.delete(format_args!("invitations/{id}"))
    }

    /// Gives a member another role.
    pub fn appoint(&self, member: &Actor, role: &str) -> Answer<()> {
        let account = member.account().id;
        let body = json!({ "role": role });
        self.put(format_args!("members/{account}"), &body)
    }

    pub fn remove(&self, member: &Actor) -> Answer<()> {
        let account = member.account().id;
        self.delete(format_args!("members/{account}"))
    }

    pub fn create_catalogue(&self, name: &str) -> CatalogueClient {
        let body = json!({ "name": name });
        let made = self.post::<ListedCatalogue>("catalogues", &body);
        self.catalogue_at(made.location(201))
    }

    pub fn catalogues(&self) -> Answer<Vec<ListedCatalogue>> {
        self.get("catalogues")
    }

    pub fn catalogue_at(&self, path: String) -> CatalogueClient {
        CatalogueClient::at_path(&self.actor, path)
    }

    pub fn create_season(&self, body: &SeasonBody) -> Answer<SeasonState> {
        self.post("seasons", body)
    }

    /// The same season set up, for whoever sets it up.
    pub fn new_season(&self, body: &SeasonBody) -> Season {
        let made = self.create_season(body);
        self.season_at(made.location(201))
    }

    pub fn seasons(&self) -> Answer<Vec<SeasonState>> {
        self.get("seasons")
    }

    pub fn season(&self, id: &str) -> Season {
        self.season_at(self.at(format_args!("seasons/{id}")))
    }

    pub fn season_at(&self, path: impl Into<String>) -> Season {
        Season::at_path(&self.actor, path)
    }

    pub fn record_consent(&self) -> Answer<RecordConsent> {
        self.get("record-consent")
    }

    /// Lets everybody read one's record.
    pub fn open_record(&self) -> Answer<RecordConsent> {
        self.put("record-consent", &json!({}))
    }

    pub fn close_record(&self) -> Answer<()> {
        self.delete("record-consent")
    }
}
