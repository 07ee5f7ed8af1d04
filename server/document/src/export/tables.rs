//! An export as tables for spreadsheet programs, one file each, with names instead of identities.

use std::collections::HashMap;

use uuid::Uuid;

use super::{GameRecordDocument, PlayerRecordDocument, SeasonExportDocument};
use crate::csv::table::{CsvTable, columns, escape_formula, optional_cell, word_cell};
use crate::painting::claim::{ClaimDocument, ClaimStateDocument};
use crate::painting::rules::ModelStagesDocument;
use crate::results::BothDocument;
use crate::results::{OutcomeDocument, SlipDocument};
use crate::table::ledger::LineDocument;
use crate::table::standings::RowDocument;

/// A table of an export.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ExportTable {
    /// Name of its file, without an ending.
    pub name: &'static str,
    head: Vec<String>,
    rows: Vec<Vec<String>>,
}

impl CsvTable for ExportTable {
    fn header(&self) -> Vec<String> {
        self.head.clone()
    }

    fn rows(&self) -> Vec<Vec<String>> {
        self.rows.clone()
    }
}

impl SeasonExportDocument {
    /// Standings, ledger, games, painting, players and awards.
    pub fn tables(&self) -> [ExportTable; 6] {
        let players = self.players.iter().map(|player| (player.id, player));
        let names = Names(players.collect());
        [
            self.standings_table(&names),
            self.ledger_table(&names),
            self.games_table(&names),
            self.painting_table(&names),
            self.players_table(),
            self.awards_table(&names),
        ]
    }

    fn standings_table(&self, names: &Names<'_>) -> ExportTable {
        let as_of = self.standings.as_of;
        let rows = self.standings.rows.iter();
        let rows =
            rows.map(|row| row.cells(names.handle(row.player), names.faction(row.player), as_of));
        ExportTable {
            name: "standings",
            head: RowDocument::columns(as_of),
            rows: rows.collect(),
        }
    }

    fn ledger_table(&self, names: &Names<'_>) -> ExportTable {
        let lines = self.standings.ledger.iter().map(|line| {
            let mut cells = vec![escape_formula(names.handle(line.player))];
            cells.extend(line.cells());
            cells
        });
        let mut head = columns(&["player"]);
        head.extend(LineDocument::columns());
        ExportTable {
            name: "ledger",
            head,
            rows: lines.collect(),
        }
    }

    fn games_table(&self, names: &Names<'_>) -> ExportTable {
        let games = self.weeks.iter().flat_map(|week| {
            let games = week.games.iter();
            games.map(|game| game_cells(week.week, game, names))
        });
        ExportTable {
            name: "games",
            head: columns(&[
                "week",
                "night",
                "table",
                "first",
                "first_faction",
                "second",
                "second_faction",
                "slip",
                "ended",
                "first_score",
                "second_score",
                "version",
                "game",
            ]),
            rows: games.collect(),
        }
    }

    /// What was brought into the season stands before week 1, as week 0.
    fn painting_table(&self, names: &Names<'_>) -> ExportTable {
        let brought = self.players.iter().flat_map(|player| {
            player.brought.iter().filter_map(|unit| {
                let state = word_cell(&ClaimStateDocument::Verified);
                Some(paint_cells(
                    player.id,
                    0,
                    &unit.entry,
                    unit.stages?,
                    state,
                    names,
                ))
            })
        });
        let claims = self.painting.iter().map(|claim: &ClaimDocument| {
            let state = word_cell(&claim.state);
            let mut cells = paint_cells(
                claim.player,
                claim.week,
                &claim.unit,
                claim.stages,
                state,
                names,
            );
            cells.push(optional_cell(claim.checker.as_ref().map(word_cell)));
            cells.push(claim.claimed_at.to_rfc3339());
            cells.push(optional_cell(claim.decided_at.map(|at| at.to_rfc3339())));
            cells.push(optional_cell(claim.reason.as_deref().map(escape_formula)));
            cells
        });
        let head = columns(&[
            "player",
            "week",
            "unit",
            "bare",
            "primed",
            "coloured",
            "finished",
            "state",
            "checker",
            "claimed_at",
            "decided_at",
            "reason",
        ]);
        let all = brought.chain(claims).map(|mut cells| {
            cells.resize(head.len(), String::new());
            cells
        });
        ExportTable {
            name: "painting",
            rows: all.collect(),
            head,
        }
    }

    fn players_table(&self) -> ExportTable {
        let players = self.players.iter().map(|player| {
            vec![
                escape_formula(&player.handle),
                escape_formula(&player.faction),
                player.joined_week.to_string(),
                optional_cell(player.left_after_week),
                player.id.to_string(),
            ]
        });
        ExportTable {
            name: "players",
            head: columns(&["player", "faction", "joined_week", "left_after_week", "id"]),
            rows: players.collect(),
        }
    }

    fn awards_table(&self, names: &Names<'_>) -> ExportTable {
        // Two cells: a spreadsheet program takes 15/4 for a day in April.
        let awards = self.awards.iter().flat_map(|award| {
            award.holders.iter().map(|holder| {
                vec![
                    word_cell(&award.prize),
                    escape_formula(names.handle(*holder)),
                    award.value.numerator.to_string(),
                    award.value.denominator.to_string(),
                ]
            })
        });
        ExportTable {
            name: "awards",
            head: columns(&["prize", "player", "numerator", "denominator"]),
            rows: awards.collect(),
        }
    }
}

struct Names<'e>(HashMap<Uuid, &'e PlayerRecordDocument>);

impl<'e> Names<'e> {
    // A copy that names somebody whom it does not hold is not for a table to judge: the cell stays empty.
    fn handle(&self, player: Uuid) -> &'e str {
        self.0.get(&player).map_or("", |player| &player.handle)
    }

    fn faction(&self, player: Uuid) -> &'e str {
        self.0.get(&player).map_or("", |player| &player.faction)
    }
}

fn game_cells(week: u8, game: &GameRecordDocument, names: &Names<'_>) -> Vec<String> {
    let (slip, outcome) = match (&game.slip, game.second) {
        (_, None) => ("bye", None),
        (SlipDocument::Awaited, _) => ("awaited", None),
        (SlipDocument::Reported { .. }, _) => ("reported", None),
        (SlipDocument::Disputed { .. }, _) => ("disputed", None),
        (SlipDocument::Confirmed { report, .. }, _) => ("confirmed", Some(&report.outcome)),
        (SlipDocument::Ruled { ruling }, _) => ("ruled", Some(&ruling.outcome)),
    };
    let (ended, score) = match outcome {
        None => ("", None),
        Some(outcome) => ended(outcome),
    };
    vec![
        week.to_string(),
        optional_cell(game.night.as_deref().map(escape_formula)),
        optional_cell(game.table),
        escape_formula(names.handle(game.first)),
        escape_formula(names.faction(game.first)),
        optional_cell(
            game.second
                .map(|second| escape_formula(names.handle(second))),
        ),
        optional_cell(
            game.second
                .map(|second| escape_formula(names.faction(second))),
        ),
        slip.to_owned(),
        ended.to_owned(),
        optional_cell(score.map(|score| score.first)),
        optional_cell(score.map(|score| score.second)),
        game.version.to_string(),
        game.game.to_string(),
    ]
}

fn ended(outcome: &OutcomeDocument) -> (&'static str, Option<BothDocument<u32>>) {
    match outcome {
        OutcomeDocument::Played { score } => ("played", Some(score.total)),
        OutcomeDocument::Conceded { score, .. } => {
            ("conceded", score.as_ref().map(|score| score.total))
        }
        OutcomeDocument::NoShow { .. } => ("no_show", None),
        OutcomeDocument::DoubleLoss => ("double_loss", None),
        OutcomeDocument::Void => ("void", None),
    }
}

fn paint_cells(
    player: Uuid,
    week: u8,
    unit: &str,
    stages: ModelStagesDocument,
    state: String,
    names: &Names<'_>,
) -> Vec<String> {
    vec![
        escape_formula(names.handle(player)),
        week.to_string(),
        escape_formula(unit),
        stages.bare.to_string(),
        stages.primed.to_string(),
        stages.coloured.to_string(),
        stages.finished.to_string(),
        state,
    ]
}
