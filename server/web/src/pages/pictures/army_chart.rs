//! The army chart: a player's army over the weeks as two bar charts, points by unit kind and what was painted, below
//! the points cap. Hatching tells the kinds apart, and a table says the same.

use app::lists::{ArmyWeek, Fielded};
use league::catalogue::key::KindKey;

use crate::pages::pictures::axis::Axis;

const WIDTH: u32 = 640;
const HEIGHT: u32 = 260;
const LEFT: u32 = 48;
const RIGHT: u32 = 12;
const TOP: u32 = 20;
const BOTTOM: u32 = 230;
/// Hatchings that the stylesheet knows; further kinds begin again.
const PATTERNS: usize = 6;

/// An army over the weeks.
pub struct ArmyChart {
    /// Size of the pictures.
    pub width: u32,
    /// Size of the pictures.
    pub height: u32,
    /// Where the weeks begin.
    pub left: u32,
    /// Where they end.
    pub right: u32,
    /// Where the numbers of the weeks stand.
    pub foot: u32,
    /// Value and height of the lines across.
    pub ticks: Vec<(u32, u32)>,
    /// Name and hatching of each kind.
    pub kinds: Vec<(String, usize)>,
    pub weeks: Vec<WeekColumn>,
    /// The caps as the path of a stair.
    pub stair: String,
    /// What was painted, as points of a line.
    pub painted: String,
}

/// One week in both pictures and in the table.
pub struct WeekColumn {
    pub number: u8,
    pub cap: u32,
    /// The middle of the column.
    pub middle: u32,
    /// The column of the opened list from the ground up.
    pub bars: Vec<Bar>,
    /// What the table says, once the lists are opened.
    pub fielded: Option<ArmyRow>,
}

/// Points of one kind.
pub struct Bar {
    /// Left edge.
    pub x: u32,
    /// Upper edge.
    pub y: u32,
    pub width: u32,
    pub height: u32,
    pub pattern: usize,
}

/// One opened list in numbers.
pub struct ArmyRow {
    /// Points of the list.
    pub total: u32,
    /// Points of each kind, in the order of the picture's kinds.
    pub kinds: Vec<u32>,
    /// Points newly finished.
    pub newly_finished: u32,
    /// Points finished up to here.
    pub so_far: u32,
    /// The height of those.
    pub y: u32,
}

impl ArmyChart {
    /// `None` before the first list is opened.
    pub fn new(weeks: &[ArmyWeek]) -> Option<Self> {
        let fielded = || weeks.iter().filter_map(|week| week.fielded.as_ref());
        let mut kinds: Vec<&KindKey> = fielded().flat_map(|list| list.kinds.keys()).collect();
        kinds.sort();
        kinds.dedup();
        let painted: u32 = fielded().map(|list| list.newly_finished.get()).sum();
        let caps = weeks.iter().map(|week| week.cap.get());
        let lists = fielded().map(|list| list.total().get());
        let most = caps.chain(lists).max().unwrap_or_default().max(painted);
        fielded().next()?;
        let axis = Axis::new(most, TOP, BOTTOM);
        let columns = columns(weeks, &kinds, &axis);
        let dots = columns
            .iter()
            .filter_map(|week| Some((week.middle, week.fielded.as_ref()?.y)));
        let dots: Vec<String> = dots.map(|(x, y)| format!("{x},{y}")).collect();
        Some(Self {
            width: WIDTH,
            height: HEIGHT,
            left: LEFT,
            right: WIDTH - RIGHT,
            foot: BOTTOM + 20,
            stair: stair(&columns, &axis),
            painted: dots.join(" "),
            ticks: axis.ticks,
            kinds: kinds
                .into_iter()
                .zip(0..)
                .map(|(kind, place)| (kind.words(), place % PATTERNS))
                .collect(),
            weeks: columns,
        })
    }
}

/// The width of one week; a season has at most 52.
fn band(weeks: usize) -> u32 {
    (WIDTH - LEFT - RIGHT) / u32::try_from(weeks).unwrap_or(u32::MAX).max(1)
}

fn columns(weeks: &[ArmyWeek], kinds: &[&KindKey], axis: &Axis) -> Vec<WeekColumn> {
    let band = band(weeks.len());
    let mut so_far = 0;
    let columns = weeks.iter().zip(0..).map(|(week, place)| {
        let x = LEFT + place * band;
        let fielded = week.fielded.as_ref().map(|list| {
            so_far += list.newly_finished.get();
            row(list, kinds, so_far, axis)
        });
        WeekColumn {
            number: week.week.number(),
            cap: week.cap.get(),
            middle: x + band / 2,
            bars: fielded
                .as_ref()
                .map(|row| bars(row, x + band / 5, band - 2 * (band / 5), axis))
                .unwrap_or_default(),
            fielded,
        }
    });
    columns.collect()
}

fn row(list: &Fielded, kinds: &[&KindKey], so_far: u32, axis: &Axis) -> ArmyRow {
    let points = |kind: &&KindKey| list.kinds.get(*kind).map_or(0, |points| points.get());
    ArmyRow {
        total: list.total().get(),
        kinds: kinds.iter().map(points).collect(),
        newly_finished: list.newly_finished.get(),
        so_far,
        y: axis.y(so_far),
    }
}

fn bars(row: &ArmyRow, x: u32, width: u32, axis: &Axis) -> Vec<Bar> {
    let mut below = 0;
    let mut bars = Vec::new();
    for (place, &points) in row
        .kinds
        .iter()
        .enumerate()
        .filter(|(_, points)| **points > 0)
    {
        let (y, ground) = (axis.y(below + points), axis.y(below));
        below += points;
        bars.push(Bar {
            x,
            y,
            width,
            height: ground - y,
            pattern: place % PATTERNS,
        });
    }
    bars
}

/// From the left of the first week to the right of the last, a step at each change.
fn stair(columns: &[WeekColumn], axis: &Axis) -> String {
    let band = band(columns.len());
    let steps = columns.iter().zip(1..).map(|(week, place)| {
        let (y, right) = (axis.y(week.cap), LEFT + place * band);
        format!("V{y}H{right}")
    });
    let first = columns.first().map_or(BOTTOM, |week| axis.y(week.cap));
    format!("M{LEFT} {first}{}", steps.collect::<String>())
}

#[cfg(test)]
mod tests {
    use league::points::Points;
    use league::week::WeekNo;

    use super::*;

    fn week(number: u8, cap: u32, fielded: Option<(u32, u32, u32)>) -> ArmyWeek {
        let key = |name| KindKey::new(name).unwrap();
        ArmyWeek {
            week: WeekNo::new(number).unwrap(),
            cap: Points::new(cap),
            fielded: fielded.map(|(leader, line, new)| Fielded {
                kinds: [(key("leader"), leader), (key("line"), line)]
                    .map(|(kind, points)| (kind, Points::new(points)))
                    .into(),
                newly_finished: Points::new(new),
                entries: Vec::new(),
            }),
        }
    }

    #[test]
    fn bars_stand_on_each_other_and_paint_adds_up() {
        let weeks = [
            week(1, 300, Some((100, 200, 50))),
            week(2, 400, None),
            week(3, 500, Some((100, 380, 150))),
            week(4, 600, None),
        ];
        let picture = ArmyChart::new(&weeks).unwrap();
        let first = &picture.weeks[0];
        assert_eq!(first.bars[0].y, first.bars[1].y + first.bars[1].height);
        assert_eq!(first.bars[0].y + first.bars[0].height, BOTTOM);
        assert!(picture.weeks[1].fielded.is_none() && picture.weeks[1].bars.is_empty());
        let third = picture.weeks[2].fielded.as_ref().unwrap();
        assert_eq!(
            (third.total, third.newly_finished, third.so_far),
            (480, 150, 200)
        );
        assert_eq!(picture.painted.split(' ').count(), 2);
        assert_eq!(picture.stair.matches('V').count(), 4);
    }

    #[test]
    fn there_is_no_picture_before_a_list_is_opened() {
        assert!(ArmyChart::new(&[week(1, 300, None)]).is_none());
    }
}
