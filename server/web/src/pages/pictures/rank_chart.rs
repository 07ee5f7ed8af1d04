//! The rank chart: rank over the weeks, a line for each player, the reader's own highlighted.

use league::ids::PlayerId;
use league::standings::RankHistory;

const WIDTH: u32 = 440;
const ROW: u32 = 22;
const LEFT: u32 = 16;
const RIGHT: u32 = 134;
const TOP: u32 = 24;

/// Ranks of every player after every week; the standings themselves say the same in words.
pub struct RankChart {
    /// Size of the picture.
    pub width: u32,
    /// Size of the picture.
    pub height: u32,
    /// Number and place of each week.
    pub weeks: Vec<(u32, u32)>,
    /// One line for each player.
    pub lines: Vec<RankLine>,
}

/// One player's way through the season.
pub struct RankLine {
    pub handle: String,
    /// Whether it is the reader.
    pub mine: bool,
    /// Points of the line as SVG wants them.
    pub points: String,
    /// Where the name stands.
    pub label_x: u32,
    /// Where the name stands.
    pub label_y: u32,
    pub last: String,
    /// The ranks in words.
    pub ranks: Vec<String>,
}

impl RankChart {
    /// A chart from two weeks on; the names stand in the order of the ranks at the end.
    pub fn new(
        mut histories: Vec<RankHistory>,
        own: Option<PlayerId>,
        handle: impl Fn(PlayerId) -> String,
    ) -> Option<Self> {
        let weeks = histories.first()?.ranks.len();
        let steps = u32::try_from(weeks.checked_sub(1)?)
            .ok()
            .filter(|steps| *steps > 0)?;
        let x = |index: u32| LEFT + index * (WIDTH - LEFT - RIGHT) / steps;
        histories.sort_by_key(|history| history.ranks.last().copied().flatten());
        let rows = u32::try_from(histories.len()).ok()?;
        let lines = histories.iter().zip(0..).map(|(history, place)| {
            let known = history.ranks.iter().zip(0..);
            let known = known.filter_map(|(rank, index)| Some((index, (*rank)?)));
            let points = known.map(|(index, rank)| format!("{},{}", x(index), y(rank - 1)));
            let ranks = in_words(history);
            RankLine {
                handle: handle(history.player),
                mine: own == Some(history.player),
                points: points.collect::<Vec<_>>().join(" "),
                label_x: x(steps) + 10,
                label_y: y(place) + 4,
                last: ranks.last().cloned().unwrap_or_default(),
                ranks,
            }
        });
        Some(Self {
            width: WIDTH,
            height: TOP + rows * ROW,
            lines: lines.collect(),
            weeks: (0..=steps).map(|index| (index + 1, x(index))).collect(),
        })
    }
}

fn in_words(history: &RankHistory) -> Vec<String> {
    let ranks = history.ranks.iter().map(|rank| match rank {
        Some(rank) => rank.to_string(),
        None => "–".to_owned(),
    });
    ranks.collect()
}

fn y(place: u32) -> u32 {
    TOP + place * ROW + ROW / 2
}
