//! The pairing wishes of a season and the locked inputs of a round as JSON.

use league::ids::PlayerId;
use league::name::Name;
use league::pairing::{
    Contender, Draw, FixedGame, Float, Household, Meeting, Night, NightKey, NightSet, Pair,
    RoleHistory, TableNo, Task, Wish, Wishes,
};
use league::points::LeaguePoints;
use league::side::GameRole;
use league::week::WeekNo;
use messages::{Message, pairing_faults};
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use utoipa::ToSchema;
use uuid::Uuid;

use crate::fault::{DocumentFault, ok_or_note};
use crate::rounds::proposal::GameDocument;

/// What a season wants of its pairings, most important first.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct WishesDocument {
    /// Each wish at most once; one that is left out plays no part.
    pub order: Vec<WishDocument>,
    /// Clubs and factions are kept apart up to this week.
    #[schema(example = 2)]
    pub early_weeks: u8,
}

/// One wish of the pairing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum WishDocument {
    /// Who has met does not meet again; where that cannot be helped, those meet who met least often.
    NoRematch,
    /// Nobody sits out twice.
    NoSecondBye,
    /// Who offered to sit out does so first.
    SpareSitsOut,
    /// The bye goes to the fewest points.
    ByeToFewestPoints,
    /// Equal scores meet.
    CloseScores,
    /// Players of one club do not meet early.
    ClubsApart,
    /// Players of one faction do not meet early.
    FactionsApart,
    /// Nobody floats the same way again within two rounds.
    NoRepeatedFloat,
    /// Roles differ by at most two and are never three times the same.
    RolesInBounds,
    /// The role had less often.
    RolesEven,
}

/// The locked inputs of a round: all that its pairing depends on, but for the season's secret.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TaskDocument {
    /// Week of the round, from 1.
    #[schema(example = 3)]
    pub week: u8,
    /// Players who want a game.
    pub contenders: Vec<ContenderDocument>,
    /// Games that count as having met.
    pub history: Vec<MeetingDocument>,
    /// Nights with their free tables.
    pub nights: Vec<NightTablesDocument>,
    /// The season's wishes.
    pub wishes: WishesDocument,
    /// Games the organiser has fixed.
    pub pins: Vec<[Uuid; 2]>,
    /// Games that must not be: ruled out by the organiser, or because the two live together.
    pub forbidden: Vec<[Uuid; 2]>,
    /// Games that must be, attacker first: by the round robin's table, or reported before a repair.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub fixed: Vec<[Uuid; 2]>,
    /// Who may meet at all, where the round robin's table says so.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub allowed: Option<Vec<[Uuid; 2]>>,
    /// Games already published that stay where they can: the published round when it is repaired.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub published: Vec<GameDocument>,
    /// Rounds still to come after this one.
    #[schema(example = 5)]
    pub rounds_left: u8,
    /// Receipts of the sealed lists, so that the draw depends on them too.
    pub receipts: Vec<String>,
}

/// One player as the pairing sees them.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ContenderDocument {
    /// Who.
    pub player: Uuid,
    /// Score that counts for pairing.
    pub score: i32,
    /// Nights they can come, by number.
    pub nights: Vec<u8>,
    /// Members of one household share a number and are never paired.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub household: Option<u32>,
    /// Home club.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub club: Option<String>,
    /// Faction they field.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub faction: Option<String>,
    /// Rounds scored as a win without playing.
    pub byes: u8,
    /// They offered to sit out.
    pub spare: bool,
    /// Float in the round before, and in the one before that.
    pub floats: [Option<FloatDocument>; 2],
    /// Roles so far.
    pub roles: RolesDocument,
    /// Tables they have played on.
    pub tables: Vec<u16>,
}

/// Having met an unequal score.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum FloatDocument {
    /// Met a lower score or had a bye.
    Down,
    /// Met a higher score.
    Up,
}

/// Roles a player has had.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct RolesDocument {
    /// Games as attacker.
    pub attacker: u16,
    /// Games as defender.
    pub defender: u16,
    /// The latest role and how often in a row.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub streak: Option<StreakDocument>,
}

/// The latest role and how often in a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct StreakDocument {
    /// As attacker?
    pub attacker: bool,
    /// How often in a row.
    pub times: u8,
}

/// Two players met.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct MeetingDocument {
    /// Who.
    pub players: [Uuid; 2],
    /// In which week.
    pub week: u8,
}

/// One night and its free tables.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct NightTablesDocument {
    /// Number of the night, 0 to 7.
    pub night: u8,
    /// Free tables.
    pub tables: Vec<u16>,
}

impl TaskDocument {
    /// The locked inputs of a task, every list in a fixed order, so that equal tasks give equal
    /// bytes.
    pub fn from_task(task: &Task, receipts: Vec<String>) -> Self {
        let mut document = Self {
            week: task.week.number(),
            contenders: task
                .contenders
                .iter()
                .map(ContenderDocument::from)
                .collect(),
            history: task.history.iter().map(MeetingDocument::from).collect(),
            nights: task.nights.iter().map(NightTablesDocument::from).collect(),
            wishes: WishesDocument::from(&task.wishes),
            pins: task.pins.iter().map(|pair| uuids(*pair)).collect(),
            forbidden: task.forbidden.iter().map(|pair| uuids(*pair)).collect(),
            fixed: task.fixed.iter().map(fixed).collect(),
            allowed: task
                .allowed
                .as_ref()
                .map(|pairs| pairs.iter().map(|pair| uuids(*pair)).collect()),
            published: task.published.iter().map(GameDocument::from).collect(),
            rounds_left: task.rounds_left,
            receipts,
        };
        document
            .contenders
            .sort_by_key(|contender| contender.player);
        document
            .history
            .sort_by_key(|meeting| (meeting.week, meeting.players));
        document.nights.sort_by_key(|night| night.night);
        document
            .published
            .sort_by_key(|game| (game.night, game.table));
        document.pins.sort();
        document.forbidden.sort();
        document.fixed.sort();
        document.allowed.iter_mut().for_each(|pairs| pairs.sort());
        document.receipts.sort();
        document
    }

    /// SHA-256 of the canonical JSON (RFC 8785): what the round's draw is keyed on.
    ///
    /// # Errors
    /// Only what serialising itself can refuse; no value of this type makes it do so.
    pub fn digest(&self) -> Result<[u8; 32], serde_json::Error> {
        serde_json_canonicalizer::to_vec(self).map(|bytes| Sha256::digest(bytes).into())
    }

    /// The task with its draw.
    ///
    /// # Errors
    /// Every member that is out of range, with its place.
    pub fn to_task(&self, draw: Draw) -> Result<Task, Vec<DocumentFault>> {
        let mut faults = Vec::new();
        let week = ok_or_note(&mut faults, "/week", "pairing.week", week(self.week));
        let wishes = ok_or_note(
            &mut faults,
            "/wishes/order",
            "pairing.wishes",
            self.wishes.to_wishes().map_err(|fault| fault.message()),
        );
        let contenders = each(&mut faults, "contenders", &self.contenders, contender);
        let history = each(&mut faults, "history", &self.history, meeting);
        let nights = each(&mut faults, "nights", &self.nights, night);
        let pins = each(&mut faults, "pins", &self.pins, |&players| pair(players));
        let forbidden = each(&mut faults, "forbidden", &self.forbidden, |&players| {
            pair(players)
        });
        let fixed = each(&mut faults, "fixed", &self.fixed, |&players| {
            fixture(players)
        });
        let allowed = self
            .allowed
            .as_ref()
            .map(|pairs| each(&mut faults, "allowed", pairs, |&players| pair(players)));
        let published = each(
            &mut faults,
            "published",
            &self.published,
            GameDocument::to_game,
        );
        match (week, wishes) {
            (Some(week), Some(wishes)) if faults.is_empty() => Ok(Task {
                week,
                contenders,
                history,
                nights,
                wishes,
                pins,
                forbidden,
                fixed,
                allowed,
                published,
                rounds_left: self.rounds_left,
                draw,
            }),
            _ => Err(faults),
        }
    }
}

impl WishesDocument {
    /// The wishes.
    ///
    /// # Errors
    /// [`league::pairing::WishFault`] when one stands twice.
    pub fn to_wishes(&self) -> Result<Wishes, league::pairing::WishFault> {
        Wishes::new(
            self.order.iter().map(|&wish| wish.into()).collect(),
            self.early_weeks,
        )
    }
}

impl From<&Wishes> for WishesDocument {
    fn from(wishes: &Wishes) -> Self {
        Self {
            order: wishes.order().iter().map(|&wish| wish.into()).collect(),
            early_weeks: wishes.early_weeks(),
        }
    }
}

macro_rules! same_words {
    ($document:ident, $value:ident: $($word:ident),+) => {
        impl From<$value> for $document {
            fn from(value: $value) -> Self {
                match value { $($value::$word => Self::$word),+ }
            }
        }
        impl From<$document> for $value {
            fn from(document: $document) -> Self {
                match document { $($document::$word => Self::$word),+ }
            }
        }
    };
}

same_words!(WishDocument, Wish: NoRematch, NoSecondBye, SpareSitsOut, ByeToFewestPoints, CloseScores,
    ClubsApart, FactionsApart, NoRepeatedFloat, RolesInBounds, RolesEven);
same_words!(FloatDocument, Float: Down, Up);

impl From<&Contender> for ContenderDocument {
    fn from(contender: &Contender) -> Self {
        let mut tables: Vec<u16> = contender.tables.iter().map(|table| table.0).collect();
        tables.sort_unstable();
        let streak = contender.roles.streak.map(|(role, times)| StreakDocument {
            attacker: role == GameRole::Attacker,
            times,
        });
        Self {
            player: contender.player.0,
            score: contender.score.get(),
            nights: contender.nights.iter().map(NightKey::number).collect(),
            household: contender.household.map(|household| household.0),
            club: contender.club.as_ref().map(Name::to_string),
            faction: contender.faction.as_ref().map(Name::to_string),
            byes: contender.byes,
            spare: contender.spare,
            floats: contender.floats.map(|float| float.map(FloatDocument::from)),
            roles: RolesDocument {
                attacker: contender.roles.attacker,
                defender: contender.roles.defender,
                streak,
            },
            tables,
        }
    }
}

impl From<&Meeting> for MeetingDocument {
    fn from(meeting: &Meeting) -> Self {
        Self {
            players: uuids(meeting.pair),
            week: meeting.week.number(),
        }
    }
}

impl From<&Night> for NightTablesDocument {
    fn from(night: &Night) -> Self {
        let mut tables: Vec<u16> = night.tables.iter().map(|table| table.0).collect();
        tables.sort_unstable();
        Self {
            night: night.key.number(),
            tables,
        }
    }
}

/// A pair's players, smaller identity first.
pub(crate) fn uuids(pair: Pair) -> [Uuid; 2] {
    pair.players().map(|player| player.0)
}

/// A pair of two different players.
pub(crate) fn pair([a, b]: [Uuid; 2]) -> Result<Pair, Message> {
    Pair::new(PlayerId(a), PlayerId(b)).ok_or_else(|| pairing_faults::round_fault_self(PlayerId(a)))
}

fn fixed(fixture: &FixedGame) -> [Uuid; 2] {
    [fixture.attacker.0, fixture.defender.0]
}

fn fixture([attacker, defender]: [Uuid; 2]) -> Result<FixedGame, Message> {
    pair([attacker, defender])?;
    Ok(FixedGame {
        attacker: PlayerId(attacker),
        defender: PlayerId(defender),
    })
}

fn week(number: u8) -> Result<WeekNo, Message> {
    WeekNo::new(number).ok_or_else(|| pairing_faults::round_fault_no_week(number))
}

/// A night of that number.
pub(crate) fn night_key(number: u8) -> Result<NightKey, Message> {
    NightKey::new(number).ok_or_else(|| pairing_faults::round_fault_no_night(number))
}

fn meeting(document: &MeetingDocument) -> Result<Meeting, Message> {
    Ok(Meeting {
        pair: pair(document.players)?,
        week: week(document.week)?,
    })
}

fn night(document: &NightTablesDocument) -> Result<Night, Message> {
    let tables = document
        .tables
        .iter()
        .map(|&table| TableNo(table))
        .collect();
    Ok(Night {
        key: night_key(document.night)?,
        tables,
    })
}

fn contender(document: &ContenderDocument) -> Result<Contender, Message> {
    let name = |text: &Option<String>| -> Result<Option<Name>, Message> {
        text.as_deref()
            .map(Name::new)
            .transpose()
            .map_err(|fault| fault.message())
    };
    let role = |streak: StreakDocument| {
        let role = if streak.attacker {
            GameRole::Attacker
        } else {
            GameRole::Defender
        };
        (role, streak.times)
    };
    Ok(Contender {
        player: PlayerId(document.player),
        score: LeaguePoints::new(document.score),
        nights: document
            .nights
            .iter()
            .map(|&n| night_key(n))
            .collect::<Result<NightSet, _>>()?,
        household: document.household.map(Household),
        club: name(&document.club)?,
        faction: name(&document.faction)?,
        byes: document.byes,
        spare: document.spare,
        floats: document.floats.map(|float| float.map(Float::from)),
        roles: RoleHistory {
            attacker: document.roles.attacker,
            defender: document.roles.defender,
            streak: document.roles.streak.map(role),
        },
        tables: document
            .tables
            .iter()
            .map(|&table| TableNo(table))
            .collect(),
    })
}

fn each<D, T>(
    faults: &mut Vec<DocumentFault>,
    list: &str,
    documents: &[D],
    value: impl Fn(&D) -> Result<T, Message>,
) -> Vec<T> {
    let code = format!("pairing.{list}");
    let noted = documents.iter().enumerate().filter_map(|(at, document)| {
        ok_or_note(faults, format!("/{list}/{at}"), &code, value(document))
    });
    noted.collect()
}
