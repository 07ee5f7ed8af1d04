//! Result slips: reported, confirmed or disputed, ruled; and the games they belong to.

mod adjust_points;
mod confirm_result;
mod dispute_result;
mod find_game;
mod idempotent;
mod own_game;
mod preview_score;
mod report_result;
mod rule_result;
mod score_result;
mod settle_silent_results;

pub use adjust_points::{AdjustPoints, adjust_points};
pub use confirm_result::confirm_result;
pub use dispute_result::{DisputeResult, dispute_result};
pub use find_game::{find_game, list_games};
pub use preview_score::{ScorePreview, preview_score};
pub use report_result::{ReportResult, report_result};
pub use rule_result::{RuleResult, rule_result};
pub use settle_silent_results::settle_silent_results;
pub use store::games::{GameRow, MeetingRow};
