//! Checking an export with nothing but the file: receipts, draws, proofs, every round drawn again, and
//! the rows of the table added up from their ledger lines. That the lines follow from slips, painting
//! and rules is not computed: the file does not carry the catalogue that painted shares depend on.

use hex::FromHex;
use league::pairing::round::draw::DrawSecret;
use league::pairing::{Draw, propose};
use messages::{Message, verify as said};

use super::repairs::{is_played, is_repair_of};
use super::round_robin::RoundRobinTable;
use super::sums::rows_match_ledger;
use super::{
    FORMAT, ListRecordDocument, RoundRecordDocument, SeasonExportDocument, WeekRecordDocument,
};
use crate::rounds::proposal::ProposalDocument;

/// What became of the checks.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Verification {
    /// What holds.
    pub held: Vec<Message>,
    /// What does not: the file, or the season, was tampered with.
    pub broken: Vec<Message>,
    /// What cannot be checked yet.
    pub open: Vec<Message>,
}

impl Verification {
    fn record(&mut self, holds: bool, message: Message) {
        if holds {
            self.held.push(message)
        } else {
            self.broken.push(message)
        }
    }
}

/// Checks every promise of the season that the file lets one check.
pub fn verify(export: &SeasonExportDocument) -> Verification {
    let mut checked = Verification::default();
    if export.format != FORMAT {
        checked
            .broken
            .push(said::verify_format(export.format, FORMAT));
        return checked;
    }
    let secret = check_seed(export, &mut checked);
    let table = RoundRobinTable::from_export(export).unwrap_or_else(|_| {
        // Else whoever spoils the rules of a round robin would be spared its checks.
        checked.broken.push(said::verify_seats());
        None
    });
    if let (Some(table), Some(secret)) = (&table, &secret) {
        checked.record(table.is_drawn(secret, export), said::verify_seats());
    }
    for week in &export.weeks {
        for list in &week.lists {
            check_receipt(week, list, &mut checked);
        }
        for round in &week.rounds {
            check_round(week, round, secret.as_ref(), &mut checked);
            if let Some(table) = &table {
                checked.record(
                    table.matches_round(round),
                    said::verify_in_round(
                        week.week,
                        round.round.to_string(),
                        said::verify_by_table(),
                    ),
                );
            }
        }
    }
    checked.record(rows_match_ledger(&export.standings), said::verify_table());
    checked
}

fn check_seed(export: &SeasonExportDocument, checked: &mut Verification) -> Option<DrawSecret> {
    let Some(seed) = &export.seed else {
        checked.open.push(said::verify_seed_hidden());
        return None;
    };
    let Ok(seed) = <[u8; _]>::from_hex(seed) else {
        checked.broken.push(said::verify_seed_shape());
        return None;
    };
    let secret = DrawSecret::new(seed);
    let promised = hex::encode(secret.commitment().0);
    checked.record(
        export.seed_commitment.as_deref() == Some(promised.as_str()),
        said::verify_seed(),
    );
    Some(secret)
}

fn check_receipt(week: &WeekRecordDocument, list: &ListRecordDocument, checked: &mut Verification) {
    let same = list
        .contents
        .receipt()
        .is_ok_and(|receipt| receipt == list.receipt);
    checked.record(
        same,
        said::verify_receipt(week.week, list.player.to_string()),
    );
}

fn check_round(
    week: &WeekRecordDocument,
    round: &RoundRecordDocument,
    secret: Option<&DrawSecret>,
    checked: &mut Verification,
) {
    let in_round = |finding| said::verify_in_round(week.week, round.round.to_string(), finding);
    checked.record(is_draw_right(round, secret), in_round(said::verify_draw()));
    checked.record(
        are_lists_locked(week, round),
        in_round(said::verify_lists_locked()),
    );
    check_proposal(in_round, round, checked);
    match versions(week, round).find(|other| other.version + 1 == round.version) {
        Some(before) => {
            checked.record(is_repair_of(before, round), in_round(said::verify_repair()))
        }
        None => checked.record(
            round.version == 1 && round.repair.is_none(),
            in_round(said::verify_first_version()),
        ),
    }
    if versions(week, round).all(|other| other.version <= round.version) {
        checked.record(is_played(week, round), in_round(said::verify_games()));
    }
}

/// Every version of the same round.
fn versions<'w>(
    week: &'w WeekRecordDocument,
    round: &RoundRecordDocument,
) -> impl Iterator<Item = &'w RoundRecordDocument> {
    let number = round.number;
    week.rounds
        .iter()
        .filter(move |other| other.number == number)
}

fn check_proposal(
    in_round: impl Fn(Message) -> Message,
    round: &RoundRecordDocument,
    checked: &mut Verification,
) {
    let draw = <[u8; _]>::from_hex(&round.draw).ok();
    let drawn = draw.and_then(|draw| round.inputs.to_task(Draw(draw)).ok());
    let (Some(task), Ok(proposal)) = (drawn, round.proposal.to_proposal()) else {
        checked.broken.push(in_round(said::verify_unreadable()));
        return;
    };
    checked.record(
        league::pairing::verify(&task, &proposal).is_ok(),
        in_round(said::verify_proof()),
    );
    let again = propose(&task).map(|proposal| ProposalDocument::from(&proposal));
    checked.record(
        again.is_ok_and(|again| {
            again.games == round.proposal.games && again.byes == round.proposal.byes
        }),
        in_round(said::verify_again()),
    );
}

fn is_draw_right(round: &RoundRecordDocument, secret: Option<&DrawSecret>) -> bool {
    let Some(secret) = secret else {
        return <[u8; 32]>::from_hex(&round.draw).is_ok();
    };
    round
        .inputs
        .digest()
        .is_ok_and(|digest| hex::encode(secret.draw(digest).0) == round.draw)
}

fn are_lists_locked(week: &WeekRecordDocument, round: &RoundRecordDocument) -> bool {
    let mut lists = week.lists.iter();
    lists.all(|list| round.inputs.receipts.contains(&list.receipt))
}
