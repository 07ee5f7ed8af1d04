//! Tests of scoring: what it refuses, and how games become league points.

use super::{
    Band, Bye, GamePoints, LateJoiner, LateStep, MarginUnit, Scoring, ScoringFault, ScoringTerms,
};
use crate::points::{LeaguePoints, Points};
use crate::result::Outcome;
use crate::share::Share;
use crate::side::Side;
use crate::standings::tests::seasons::{plain_scoring, played, points};
use crate::week::WeekNo;

fn band(from: u32, to: impl Into<Option<u32>>, winner: i32, loser: i32) -> Band {
    Band {
        from,
        to: to.into(),
        winner: points(winner),
        loser: points(loser),
    }
}

fn by_bands(unit: MarginUnit, sum: Option<i32>, bands: Vec<Band>) -> ScoringTerms {
    let mut terms = plain_scoring();
    terms.games = GamePoints::Bands {
        unit,
        sum: sum.map(points),
        bands,
    };
    terms
}

fn codes(terms: ScoringTerms) -> Vec<&'static str> {
    let faults = Scoring::build(terms).unwrap_err();
    faults.iter().map(ScoringFault::code).collect()
}

fn shared(scoring: &Scoring, outcome: &Outcome, cap: u32) -> (i32, i32) {
    let awards = scoring.award(outcome, Points::new(cap)).unwrap();
    (awards.first.amount.get(), awards.second.amount.get())
}

fn said(scoring: &Scoring) -> Vec<String> {
    let messages = scoring.messages();
    messages.iter().map(ToString::to_string).collect()
}

#[test]
fn a_band_table_holds_every_margin_once() {
    let table = |bands| codes(by_bands(MarginUnit::GamePoints, None, bands));
    assert_eq!(
        table(vec![band(0, 1, 5, 5), band(3, None, 6, 4)]),
        ["scoring.gap"]
    );
    assert_eq!(
        table(vec![band(0, 3, 5, 5), band(3, None, 6, 4)]),
        ["scoring.overlap"]
    );
    assert_eq!(
        table(vec![band(0, None, 5, 5), band(3, None, 6, 4)]),
        ["scoring.band-end"]
    );
    assert_eq!(table(vec![band(1, None, 5, 5)]), ["scoring.not-from-zero"]);
    assert_eq!(
        table(vec![band(0, 2, 5, 5), band(3, 20, 6, 4)]),
        ["scoring.last-band-ends"]
    );
    assert_eq!(table(Vec::new())[..1], ["scoring.no-bands"]);
}

#[test]
fn more_margin_never_gives_the_winner_less_and_every_band_shares_out_the_declared_sum() {
    let falls = vec![band(0, 1, 5, 5), band(2, 4, 7, 3), band(5, None, 6, 4)];
    let table = |bands| codes(by_bands(MarginUnit::GamePoints, Some(10), bands));
    assert_eq!(table(falls), ["scoring.not-monotone"]);
    let short = vec![band(0, 1, 5, 5), band(2, None, 7, 2)];
    assert_eq!(table(short), ["scoring.sum"]);
    let upside_down = vec![band(0, 1, 5, 5), band(2, None, 4, 6)];
    assert_eq!(
        table(upside_down)[..2],
        ["scoring.loser-ahead", "scoring.not-monotone"]
    );
    assert_eq!(table(vec![band(0, None, 6, 4)]), ["scoring.uneven-draw"]);
}

#[test]
fn not_playing_never_pays_better_than_playing() {
    let mut terms = plain_scoring();
    terms.no_show.present = points(3);
    terms.no_show.absent_without_notice = points(1);
    terms.concession.loser_at_most = points(4);
    terms.bye = Bye::Fixed(points(5));
    let expected = [
        "scoring.more-than-win",
        "scoring.more-than-win",
        "scoring.fault-pays",
        "scoring.fault-pays",
    ];
    assert_eq!(codes(terms), expected);
}

#[test]
fn other_faults_are_told_together() {
    let mut terms = plain_scoring();
    terms.best_weeks = Some(0);
    terms.bonus_cap = Some(Share::NOTHING);
    terms.attendance = points(-1);
    let step = |from_minutes| LateStep {
        from_minutes,
        penalty: points(1),
    };
    terms.late_list = vec![step(60), step(90)];
    let expected = [
        "scoring.amount",
        "scoring.late-steps",
        "scoring.cap",
        "scoring.best-weeks",
    ];
    assert_eq!(codes(terms), expected);
}

#[test]
fn a_margin_between_two_percents_lies_in_the_lower_band() {
    let bands = vec![band(0, 9, 5, 5), band(10, 19, 7, 3), band(20, None, 9, 1)];
    let scoring = Scoring::build(by_bands(MarginUnit::PercentOfCap, Some(10), bands)).unwrap();
    let by_margin = |margin: u32| shared(&scoring, &played(300 + margin, 300), 613);
    assert_eq!(by_margin(61), (5, 5), "61 of 613 is 9.95 %");
    assert_eq!(by_margin(62), (7, 3));
    assert_eq!(by_margin(122), (7, 3), "122 of 613 is 19.9 %");
    assert_eq!(by_margin(123), (9, 1));
}

#[test]
fn the_draw_margin_of_the_season_makes_draws() {
    let mut terms = plain_scoring();
    terms.games = GamePoints::WinDrawLoss {
        win: points(3),
        draw: points(1),
        loss: points(0),
        draw_margin: 2,
    };
    let scoring = Scoring::build(terms).unwrap();
    assert_eq!(shared(&scoring, &played(10, 8), 0), (1, 1));
    assert_eq!(shared(&scoring, &played(7, 10), 0), (0, 3));
}

#[test]
fn giving_up_far_ahead_or_behind_keeps_to_the_limits() {
    let bands = vec![band(0, 4, 5, 5), band(5, 9, 7, 3), band(10, None, 10, 0)];
    let mut terms = by_bands(MarginUnit::GamePoints, Some(10), bands);
    terms.concession.winner_at_least = points(8);
    terms.concession.loser_at_most = points(2);
    let scoring = Scoring::build(terms).unwrap();
    let given_up = |first, second| {
        let score = played(first, second).score().cloned();
        let by = Side::First;
        shared(&scoring, &Outcome::Conceded { by, score }, 0)
    };
    assert_eq!(given_up(15, 0), (2, 8), "ahead when it gave up");
    assert_eq!(given_up(0, 6), (2, 8));
    assert_eq!(given_up(0, 15), (0, 10));
}

#[test]
fn a_bonus_cap_is_a_share_of_the_best_win_rounded_down() {
    let bands = vec![band(0, 1, 5, 5), band(2, None, 9, 1)];
    let scoring = Scoring::build(by_bands(MarginUnit::GamePoints, Some(10), bands)).unwrap();
    assert_eq!(
        scoring.cap_in_points(Share::percent(25)),
        LeaguePoints::new(2)
    );
    assert_eq!(
        scoring.cap_in_points(Share::percent(34)),
        LeaguePoints::new(3)
    );
}

#[test]
fn every_rule_reads_back_as_a_sentence() {
    let mut terms = by_bands(
        MarginUnit::GamePoints,
        Some(10),
        vec![band(0, 1, 5, 5), band(2, None, 8, 2)],
    );
    terms.bonus_cap = Some(Share::percent(25));
    terms.best_weeks = Some(7);
    let sentences = said(&Scoring::build(terms).unwrap());
    for sentence in [
        "A margin of 0 to 1 gives 5 to 5.",
        "A margin of 2 and more gives 8 to 2.",
        "A bye is worth a win, 8.",
        "Painted bonuses and attendance of a week count up to 25 % of a win, that is 2.",
        "The best 7 weeks of each player count.",
    ] {
        assert!(
            sentences.iter().any(|said| said == sentence),
            "{sentences:#?}"
        );
    }
}

/// The other choices that a season has, each of them read back.
#[test]
fn no_choice_of_the_scoring_is_left_unsaid() {
    let mut terms = by_bands(
        MarginUnit::PercentOfCap,
        None,
        vec![band(0, 9, 5, 5), band(10, None, 8, 2)],
    );
    terms.concession.winner_at_least = points(7);
    terms.concession.loser_at_most = points(2);
    terms.no_show.present = points(7);
    terms.no_show.absent_with_notice = points(1);
    terms.bye = Bye::OwnAverage { floor: points(4) };
    terms.late_list = vec![LateStep {
        from_minutes: 90,
        penalty: points(1),
    }];
    terms.attendance = points(1);
    terms.painting_cap = Some(Share::percent(50));
    terms.late_joiner = LateJoiner::MedianLess(points(1));
    terms.weights = [(WeekNo::new(8).unwrap(), 2)].into();
    let sentences_of = |terms: &ScoringTerms| said(&Scoring::build(terms.clone()).unwrap());
    assert_eq!(
        sentences_of(&terms),
        [
            "A margin of 0 to 9 % of the cap gives 5 to 5.",
            "A margin of 10 % of the cap and more gives 8 to 2.",
            "Giving up during play: the other side gets at least 7, the side that gave up at most 2.",
            "Absence: 7 for the side that came; the other gets 1 with notice and 0 without.",
            "If neither side comes, each gets 0.",
            "A bye is worth the average of the player's own played games, rounded down, at least 4.",
            "A list that comes 1 h 30 min or more after its deadline costs 1.",
            "Coming to the table gives 1 a week.",
            "Painted bonuses of a week count up to 50 % of a win, that is 4.",
            "Each week before joining gives that week's median less 1, never below 0.",
            "Games and byes of week 8 count 2 times.",
        ]
    );
    terms.games = GamePoints::WinDrawLoss {
        win: points(8),
        draw: points(4),
        loss: points(2),
        draw_margin: 3,
    };
    terms.bye = Bye::Fixed(points(5));
    terms.late_joiner = LateJoiner::Fixed(points(3));
    let sentences = sentences_of(&terms);
    for sentence in [
        "A win gives 8, a draw 4, a loss 2; a difference of up to 3 is a draw.",
        "A bye is worth 5.",
        "Each week before joining gives 3.",
    ] {
        assert!(
            sentences.iter().any(|said| said == sentence),
            "{sentences:#?}"
        );
    }
    terms.late_joiner = LateJoiner::Nothing;
    assert!(sentences_of(&terms).contains(&"Weeks before joining give nothing.".to_owned()));
}
