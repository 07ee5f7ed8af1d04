//! The acts of the trail with their facts: one enum for whoever writes an entry and whoever shows it.

use chrono::{DateTime, Utc};
use league::club_role::ClubRole;
use league::season::Visibility;
use serde::{Deserialize, Serialize};
use serde_json::{Value, json};
use uuid::Uuid;

use crate::mirror_enum::mirror_enum;
use crate::results::SlipDocument;

/// What was done, by the name of its operation, and what it was about: identities and plain values, never
/// a secret. Digests chain the facts: a name, a fact or its form that changes makes old entries unreadable.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "act", content = "facts", rename_all = "snake_case")]
pub enum TrailAct {
    CreateClub {
        name: String,
    },
    CreateRecordConsent {},
    DeleteRecordConsent {},
    CreateInvitation {
        invitation: Uuid,
        role: ClubRoleDocument,
        uses: u16,
    },
    DeleteInvitation {
        invitation: Uuid,
    },
    AcceptInvitation {
        role: ClubRoleDocument,
    },
    UpdateMember {
        account: Uuid,
        role: ClubRoleDocument,
    },
    DeleteMember {
        account: Uuid,
    },
    CreateCatalogue {
        catalogue: Uuid,
    },
    CreateCatalogueVersion {
        catalogue: Uuid,
        number: i32,
    },
    CreateSeason {
        name: String,
    },
    CreateSeasonFrom {
        name: String,
        from: Uuid,
        /// Who came along, and with what.
        carry: String,
        /// How many came along.
        players: usize,
    },
    UpdateSeason {
        name: String,
        places: Option<u16>,
        visibility: VisibilityDocument,
    },
    StartSeason {
        /// SHA-256 in hexadecimal.
        seed_commitment: String,
    },
    EndSeason {},
    UpdateWeek(WeekChanges),
    UpdateScenario {
        week: u8,
    },
    Reveal {
        weeks: Vec<WeekReveals>,
    },
    JoinSeason {
        player: Uuid,
        handle: String,
        week: u8,
    },
    UpdatePlayer {
        player: Uuid,
    },
    WithdrawPlayer {
        player: Uuid,
        handle: String,
    },
    TellAvailability {
        player: Uuid,
        week: u8,
        nights: Vec<String>,
    },
    SealList {
        player: Uuid,
        week: u8,
        late_minutes: Option<u32>,
        receipt: String,
    },
    OpenLists {
        week: u8,
        receipts: Vec<OpenedReceipt>,
    },
    OpenListsTooEarly {
        week: u8,
    },
    GrantLateLeave {
        player: Uuid,
        week: u8,
        reason: String,
    },
    #[serde(alias = "nudge_players")]
    SendReminders {
        week: u8,
        about: String,
    },
    ProposeRound {
        week: u8,
        number: u8,
        /// In hexadecimal.
        draw: String,
        pins: Vec<[Uuid; 2]>,
        forbidden: Vec<[Uuid; 2]>,
    },
    PublishRound(PublishedRound),
    RepairRound {
        week: u8,
        /// The round that the repair is of.
        repairs: Uuid,
        reason: String,
    },
    PublishRepair {
        #[serde(flatten)]
        round: PublishedRound,
        version: u8,
        repairs: Uuid,
        reason: String,
    },
    ReportResult {
        game: Uuid,
        slip: Box<SlipDocument>,
    },
    ConfirmResult {
        game: Uuid,
    },
    DisputeResult {
        game: Uuid,
        slip: Box<SlipDocument>,
    },
    RuleResult {
        game: Uuid,
        version: u32,
        slip: Box<SlipDocument>,
    },
    AdjustPoints {
        player: Uuid,
        week: u8,
        amount: i32,
        reason: String,
    },
    ClaimPainting {
        claim: Uuid,
        player: Uuid,
        week: u8,
        /// Claims of others whose photos look like this one's; only told to officers.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        looks_like: Option<Vec<Uuid>>,
    },
    VerifyClaim {
        claim: Uuid,
        player: Uuid,
    },
    RefuseClaim {
        claim: Uuid,
        player: Uuid,
    },
    CreatePhoto {
        player: Uuid,
    },
    DeletePhoto {
        /// Digest in hexadecimal.
        photo: String,
    },
    CloseWeek {
        week: u8,
        table: Vec<TablePlace>,
    },
}

mirror_enum! {
    /// A role in a club.
    ClubRoleDocument is ClubRole {
        Owner,
        Organiser,
        Referee,
        Player,
    }
}

mirror_enum! {
    /// Who may look at a season.
    VisibilityDocument is Visibility {
        Club,
        Public,
    }
}

/// The new value of whatever is another now.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct WeekChanges {
    pub week: u8,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cap: Option<u32>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub announce: Option<DateTime<Utc>>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lists_due: Option<DateTime<Utc>>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub play_until: Option<DateTime<Utc>>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub nights: Option<Vec<ChangedNight>>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub catalogue_number: Option<i32>,
}

#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct ChangedNight {
    pub key: String,
    pub begins: DateTime<Utc>,
    pub tables: u16,
}

/// What of a week is revealed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct WeekReveals {
    pub week: u8,
    /// `announcement`, `title`, `scenario`.
    pub moments: Vec<String>,
}

/// Proof that a list that is opened was sealed before.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct OpenedReceipt {
    pub player: Uuid,
    pub receipt: String,
    pub sealed_at: DateTime<Utc>,
    pub stands_in: bool,
}

#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct PublishedRound {
    pub week: u8,
    pub number: u8,
    pub round: Uuid,
    pub pins: Vec<[Uuid; 2]>,
    pub forbidden: Vec<[Uuid; 2]>,
}

/// A player's place in the table of a week that is closed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct TablePlace {
    pub rank: u32,
    pub player: Uuid,
    pub total: i32,
}

impl TrailAct {
    /// Its name, and its facts as JSON.
    ///
    /// # Errors
    /// None for any act there is.
    pub fn to_parts(&self) -> Result<(String, Value), serde_json::Error> {
        #[derive(Deserialize)]
        struct Parts {
            act: String,
            facts: Value,
        }
        let Parts { act, facts } = serde_json::from_value(serde_json::to_value(self)?)?;
        Ok((act, facts))
    }

    /// The act of a stored entry.
    ///
    /// # Errors
    /// The act is unknown here, or its facts have another form.
    pub fn parse(act: &str, facts: &Value) -> Result<Self, serde_json::Error> {
        serde_json::from_value(json!({ "act": act, "facts": facts }))
    }
}
