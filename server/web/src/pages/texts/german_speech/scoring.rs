//! Scoring in German.

use league::scoring::{Band, Bye, GamePoints, LateJoiner, MarginUnit, Scoring};

use super::percent;

/// The scoring as players read it.
pub fn sentences(scoring: &Scoring) -> Vec<String> {
    let terms = scoring.terms();
    let mut sentences = games(&terms.games);
    sentences.push(format!(
        "Aufgabe während der Partie: Die andere Seite erhält mindestens {}, die aufgebende höchstens {}.",
        terms.concession.winner_at_least, terms.concession.loser_at_most
    ));
    sentences.push(format!(
        "Fehlen: {} für die Seite, die kam; die andere erhält abgemeldet {} und unabgemeldet {}.",
        terms.no_show.present,
        terms.no_show.absent_with_notice,
        terms.no_show.absent_without_notice
    ));
    sentences.push(format!(
        "Kommt keine Seite, erhält jede {}.",
        terms.double_loss
    ));
    sentences.push(match terms.bye {
        Bye::Fixed(value) => format!("Ein Freilos zählt {value}."),
        Bye::Win => format!("Ein Freilos zählt wie ein Sieg, {}.", scoring.win()),
        Bye::OwnAverage { floor } => format!(
            "Ein Freilos zählt das Mittel der eigenen gespielten Partien, abgerundet, mindestens {floor}."
        ),
    });
    for step in &terms.late_list {
        sentences.push(format!(
            "Eine Liste, die {} oder mehr nach Abgabeschluss kommt, kostet {}.",
            duration(step.from_minutes),
            step.penalty
        ));
    }
    sentences.extend(bonuses(scoring));
    if let Some(best) = terms.best_weeks {
        sentences.push(format!("Es zählen die besten {best} Wochen."));
    }
    sentences.push(match terms.late_joiner {
        LateJoiner::Nothing => "Wochen vor dem Einstieg geben nichts.".to_owned(),
        LateJoiner::Fixed(value) => format!("Jede Woche vor dem Einstieg gibt {value}."),
        LateJoiner::MedianLess(less) => {
            format!("Jede Woche vor dem Einstieg gibt den Median jener Woche weniger {less}, nie unter 0.")
        }
    });
    for (week, weight) in &terms.weights {
        sentences.push(format!(
            "Partien und Freilose der Woche {week} zählen {weight}-fach."
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
            "Ein Sieg gibt {win}, ein Unentschieden {draw}, eine Niederlage {loss}; bis zu {draw_margin} Unterschied ist es unentschieden."
        )],
        GamePoints::Bands { unit, bands, .. } => {
            bands.iter().map(|band| of_band(band, *unit)).collect()
        }
    }
}

fn of_band(band: &Band, unit: MarginUnit) -> String {
    let unit = match unit {
        MarginUnit::GamePoints => "",
        MarginUnit::PercentOfCap => " % der Punktgrenze",
    };
    let range = match band.to {
        Some(to) if to == band.from => to.to_string(),
        Some(to) => format!("{} bis {to}", band.from),
        None => format!("{} und mehr", band.from),
    };
    let (winner, loser) = (band.winner, band.loser);
    format!("Ein Vorsprung von {range}{unit} gibt {winner} zu {loser}.")
}

fn bonuses(scoring: &Scoring) -> Vec<String> {
    let terms = scoring.terms();
    let attendance = (terms.attendance.get() > 0)
        .then(|| format!("Am Tisch zu sein gibt {} je Woche.", terms.attendance));
    let cap = |what: &str, share| {
        format!(
            "{what} einer Woche zählen bis {} eines Sieges, also {}.",
            percent(share),
            scoring.cap_in_points(share)
        )
    };
    let painting = terms
        .painting_cap
        .map(|share| cap("Boni für Bemalung", share));
    let together = terms
        .bonus_cap
        .map(|share| cap("Boni für Bemalung und Anwesenheit", share));
    [attendance, painting, together]
        .into_iter()
        .flatten()
        .collect()
}

fn duration(minutes: u32) -> String {
    match (minutes / 60, minutes % 60) {
        (0, minutes) => format!("{minutes} min"),
        (hours, 0) => format!("{hours} h"),
        (hours, minutes) => format!("{hours} h {minutes} min"),
    }
}
