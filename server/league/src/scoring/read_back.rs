//! Scoring as it is read to the players.

use messages::{Message, Value, scoring as said};

use super::{Band, Bye, GamePoints, LateJoiner, MarginUnit, Scoring};

pub(super) fn messages(scoring: &Scoring) -> Vec<Message> {
    let terms = scoring.terms();
    let mut messages = games(&terms.games);
    let concession = &terms.concession;
    messages.push(said::scoring_concession(
        concession.winner_at_least,
        concession.loser_at_most,
    ));
    let no_show = &terms.no_show;
    messages.push(said::scoring_no_show(
        no_show.present,
        no_show.absent_with_notice,
        no_show.absent_without_notice,
    ));
    messages.push(said::scoring_double_loss(terms.double_loss));
    messages.push(match terms.bye {
        Bye::Fixed(value) => said::scoring_bye(value),
        Bye::Win => said::scoring_bye_win(scoring.win()),
        Bye::OwnAverage { floor } => said::scoring_bye_average(floor),
    });
    for step in &terms.late_list {
        let time = duration(step.from_minutes);
        messages.push(said::scoring_late_list(time, step.penalty));
    }
    messages.extend(bonuses(scoring));
    messages.extend(terms.best_weeks.map(said::scoring_best_weeks));
    messages.push(match terms.late_joiner {
        LateJoiner::Nothing => said::scoring_late_joiner_nothing(),
        LateJoiner::Fixed(value) => said::scoring_late_joiner(value),
        LateJoiner::MedianLess(less) => said::scoring_late_joiner_median(less),
    });
    let weights = terms.weights.iter();
    messages.extend(weights.map(|(week, weight)| said::scoring_weight(week, weight)));
    messages
}

fn games(games: &GamePoints) -> Vec<Message> {
    match games {
        GamePoints::WinDrawLoss {
            win,
            draw,
            loss,
            draw_margin,
        } => vec![said::scoring_win_draw_loss(win, draw, loss, draw_margin)],
        GamePoints::Bands { unit, bands, .. } => {
            bands.iter().map(|band| of_band(band, *unit)).collect()
        }
    }
}

fn of_band(band: &Band, unit: MarginUnit) -> Message {
    let (from, winner, loser) = (band.from, band.winner, band.loser);
    match band.to {
        Some(to) if to == from => said::scoring_single_band(to, unit, winner, loser),
        Some(to) => said::scoring_band(from, to, unit, winner, loser),
        None => said::scoring_last_band(from, unit, winner, loser),
    }
}

/// The key of a choice that a text makes.
impl From<MarginUnit> for Value {
    fn from(unit: MarginUnit) -> Self {
        match unit {
            MarginUnit::GamePoints => "points".into(),
            MarginUnit::PercentOfCap => "percent".into(),
        }
    }
}

fn bonuses(scoring: &Scoring) -> impl Iterator<Item = Message> {
    let terms = scoring.terms();
    let attendance =
        (terms.attendance.get() > 0).then(|| said::scoring_attendance(terms.attendance));
    let painting = terms
        .painting_cap
        .map(|share| said::scoring_painting_cap(share, scoring.cap_in_points(share)));
    let together = terms
        .bonus_cap
        .map(|share| said::scoring_bonus_cap(share, scoring.cap_in_points(share)));
    attendance.into_iter().chain(painting).chain(together)
}

fn duration(minutes: u32) -> Message {
    match (minutes / 60, minutes % 60) {
        (0, minutes) => said::scoring_minutes(minutes),
        (hours, 0) => said::scoring_hours(hours),
        (hours, minutes) => said::scoring_hours_minutes(hours, minutes),
    }
}
