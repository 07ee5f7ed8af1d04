//! Scoring as English sentences.

use super::{Band, Bye, GamePoints, LateJoiner, MarginUnit, Scoring};

pub(super) fn describe_scoring(scoring: &Scoring) -> Vec<String> {
    let terms = scoring.terms();
    let mut sentences = games(&terms.games);
    sentences.push(format!(
        "Giving up during play: the other side gets at least {}, the side that gave up at most {}.",
        terms.concession.winner_at_least, terms.concession.loser_at_most
    ));
    sentences.push(format!(
        "Absence: {} for the side that came; the other gets {} with notice and {} without.",
        terms.no_show.present,
        terms.no_show.absent_with_notice,
        terms.no_show.absent_without_notice
    ));
    sentences.push(format!(
        "If neither side comes, each gets {}.",
        terms.double_loss
    ));
    sentences.push(match terms.bye {
        Bye::Fixed(value) => format!("A bye is worth {value}."),
        Bye::Win => format!("A bye is worth a win, {}.", scoring.win()),
        Bye::OwnAverage { floor } => format!(
            "A bye is worth the average of the player's own played games, rounded down, at least {floor}."
        ),
    });
    for step in &terms.late_list {
        sentences.push(format!(
            "A list that comes {} or more after its deadline costs {}.",
            duration(step.from_minutes),
            step.penalty
        ));
    }
    sentences.extend(bonuses(scoring));
    if let Some(best) = terms.best_weeks {
        sentences.push(format!("The best {best} weeks of each player count."));
    }
    sentences.push(match terms.late_joiner {
        LateJoiner::Nothing => "Weeks before joining give nothing.".to_owned(),
        LateJoiner::Fixed(value) => format!("Each week before joining gives {value}."),
        LateJoiner::MedianLess(less) => {
            format!("Each week before joining gives that week's median less {less}, never below 0.")
        }
    });
    for (week, weight) in &terms.weights {
        sentences.push(format!(
            "Games and byes of week {week} count {weight} times."
        ));
    }
    sentences
}

fn games(games: &GamePoints) -> Vec<String> {
    match games {
        GamePoints::WinDrawLoss {
            win,
            draw,
            loss,
            draw_margin,
        } => vec![format!(
            "A win gives {win}, a draw {draw}, a loss {loss}; a difference of up to {draw_margin} is a draw."
        )],
        GamePoints::Bands { unit, bands, .. } => bands
            .iter()
            .map(|band| band_sentence(band, *unit))
            .collect(),
    }
}

fn band_sentence(band: &Band, unit: MarginUnit) -> String {
    let unit = match unit {
        MarginUnit::GamePoints => "",
        MarginUnit::PercentOfCap => " % of the cap",
    };
    let range = match band.to {
        Some(to) if to == band.from => format!("{to}{unit}"),
        Some(to) => format!("{} to {to}{unit}", band.from),
        None => format!("{}{unit} and more", band.from),
    };
    format!(
        "A margin of {range} gives {} to {}.",
        band.winner, band.loser
    )
}

fn bonuses(scoring: &Scoring) -> Vec<String> {
    let terms = scoring.terms();
    let attendance = (terms.attendance.get() > 0)
        .then(|| format!("Coming to the table gives {} a week.", terms.attendance));
    let cap = |what: &str, share| {
        format!(
            "{what} of a week count up to {share} of a win, that is {}.",
            scoring.cap_in_points(share)
        )
    };
    let painting = terms
        .painting_cap
        .map(|share| cap("Painted bonuses", share));
    let together = terms
        .bonus_cap
        .map(|share| cap("Painted bonuses and attendance", share));
    attendance
        .into_iter()
        .chain(painting)
        .chain(together)
        .collect()
}

fn duration(minutes: u32) -> String {
    match (minutes / 60, minutes % 60) {
        (0, minutes) => format!("{minutes} min"),
        (hours, 0) => format!("{hours} h"),
        (hours, minutes) => format!("{hours} h {minutes} min"),
    }
}
