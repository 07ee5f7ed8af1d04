//! The form of the set-up wizard: its fields with defaults, converted to what a season needs.

use app::seasons::CreateSeason;
use app::{Fault, Reason};
use chrono::{Datelike, Days, NaiveDate, NaiveTime};
use chrono_tz::Tz;
use document::lists::rules::{AmountDocument, ListRuleDocument, RuleDocument};
use document::painting::rules::PaintedBonusDocument;
use document::rounds::method::RoundsDocument;
use document::season::calendar::{
    CalendarDocument, CapsDocument, MomentDocument, NightDocument, plan,
};
use document::season::policy::{PolicyDocument, SeasonSize};
use document::season::scoring::{ByeDocument, GamePointsDocument};
use document::share::ShareDocument;
use league::ids::CatalogueId;
use league::season::{Visibility, WeekPlan};

use crate::body;
use crate::pages::frame::form_data::FormData;

/// Equal scores meet.
pub const BY_SCORE: &str = "by_score";
/// Everybody meets everybody.
pub const ROUND_ROBIN: &str = "round_robin";
/// Everybody meets everybody twice.
pub const ROUND_ROBIN_TWICE: &str = "round_robin_twice";

/// Nights that the form has room for.
pub const NIGHTS_PER_WEEK: u8 = 4;

const WEEKDAYS: [&str; 7] = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];

/// The form, each field as typed or by its default.
pub struct SetupForm<'f> {
    fields: &'f FormData,
    today: NaiveDate,
}

impl<'f> SetupForm<'f> {
    /// What was typed so far; the season begins on the Monday after next unless told otherwise.
    pub fn new(fields: &'f FormData, today: NaiveDate) -> Self {
        Self { fields, today }
    }

    /// What stands in a field.
    pub fn get(&self, name: &str) -> String {
        match self.fields.raw(name) {
            Some(typed) => typed.trim().to_owned(),
            None => self.default(name),
        }
    }

    /// What stands in a part of a moment or a night, such as `day` of `due`.
    pub fn part(&self, of: &str, part: &str) -> String {
        self.get(&format!("{of}_{part}"))
    }

    /// Whether a moment or a night is on this day.
    pub fn falls_on(&self, of: &str, day: &u16) -> bool {
        self.part(of, "day") == day.to_string()
    }

    fn default(&self, name: &str) -> String {
        let default = match name {
            "visibility" => "public",
            "zone" => "Europe/Berlin",
            "caps_kind" => "step",
            "caps_first" | "caps_more" => "250",
            "caps_weeks" => "8",
            "first_day" => return self.monday_after_next().to_string(),
            "days_per_week" => "7",
            "announce_day" => "0",
            "announce_time" => "09:00",
            "due_day" => "1",
            "due_time" => "20:00",
            "until_day" => "6",
            "until_time" => "22:00",
            "night_1_day" => "3",
            "night_1_time" => "19:00",
            "night_1_tables" => "6",
            "grace" => "60",
            "method" => BY_SCORE,
            "per_week" => "1",
            "win" => "3",
            "draw" | "painted" => "1",
            "loss" => "0",
            "bye" => "2",
            "confirm_hours" => "48",
            _ => "",
        };
        default.to_owned()
    }

    fn monday_after_next(&self) -> NaiveDate {
        let into_week = u64::from(self.today.weekday().num_days_from_monday());
        self.today
            .checked_add_days(Days::new(14 - into_week))
            .unwrap_or(self.today)
    }

    /// The day on which it is filled in.
    pub fn today(&self) -> NaiveDate {
        self.today
    }

    /// First day of week 1.
    pub fn first_day(&self) -> NaiveDate {
        self.value("first_day")
            .unwrap_or_else(|| self.monday_after_next())
    }

    fn value<T: std::str::FromStr>(&self, name: &str) -> Option<T> {
        self.get(name).parse().ok()
    }

    pub fn caps(&self) -> CapsDocument {
        if self.get("caps_kind") == "list" {
            let typed = self.get("caps_each");
            let numbers = typed.split(|c: char| !c.is_ascii_digit());
            return CapsDocument::List {
                caps: numbers.filter_map(|number| number.parse().ok()).collect(),
            };
        }
        CapsDocument::Step {
            first: self.value("caps_first").unwrap_or_default(),
            step: self.value("caps_more").unwrap_or_default(),
            weeks: self.value("caps_weeks").unwrap_or_default(),
        }
    }

    /// The rhythm. A night without tables is none.
    pub fn calendar(&self) -> CalendarDocument {
        let mut nights: Vec<NightDocument> = Vec::new();
        for number in 1..=NIGHTS_PER_WEEK {
            let Some(tables) = self.value(&format!("night_{number}_tables")) else {
                continue;
            };
            let day = self
                .value(&format!("night_{number}_day"))
                .unwrap_or_default();
            nights.push(NightDocument {
                key: self.night_key(day, &nights),
                day,
                time: self.time(&format!("night_{number}_time")),
                tables,
            });
        }
        CalendarDocument {
            first_day: self.first_day(),
            days_per_week: self.value("days_per_week").unwrap_or_default(),
            announce: self.moment("announce"),
            lists_due: self.moment("due"),
            play_until: self.moment("until"),
            nights,
        }
    }

    /// The zone of the season's civil times, if there is one of this name.
    pub fn zone(&self) -> Option<Tz> {
        self.value("zone")
    }

    /// Every week as it is planned.
    ///
    /// # Errors
    /// What is wrong with caps and rhythm.
    pub fn plan(&self) -> Result<Vec<WeekPlan>, Vec<document::fault::DocumentFault>> {
        let zone = self.zone().unwrap_or(Tz::UTC);
        plan(&self.caps(), &self.calendar(), zone)
    }

    /// What the rules have to fit into.
    pub fn frame(&self) -> SeasonSize {
        SeasonSize {
            weeks: self.plan().unwrap_or_default().len(),
            nights: self.calendar().nights.len(),
            places: self.value("places"),
        }
    }

    /// After the day of the week, with a number where there are several.
    fn night_key(&self, day: u16, nights: &[NightDocument]) -> String {
        let weekday = self.first_day().weekday().num_days_from_monday() + u32::from(day);
        let name = WEEKDAYS.get(weekday as usize % 7).copied().unwrap_or("day");
        let same = nights
            .iter()
            .filter(|night| night.key.starts_with(name))
            .count();
        match same {
            0 => name.to_owned(),
            more => format!("{name}-{}", more + 1),
        }
    }

    fn moment(&self, name: &str) -> MomentDocument {
        MomentDocument {
            day: self.value(&format!("{name}_day")).unwrap_or_default(),
            time: self.time(&format!("{name}_time")),
        }
    }

    fn time(&self, name: &str) -> NaiveTime {
        NaiveTime::parse_from_str(&self.get(name), "%H:%M").unwrap_or_default()
    }

    /// The rules: from the fields, or as a whole where they were written as data.
    ///
    /// # Errors
    /// What is wrong with the data.
    pub fn policy(&self) -> Result<PolicyDocument, Vec<Fault>> {
        let data = self.get("rules");
        if !data.is_empty() {
            return body::parse(data.as_bytes()).map_err(|problem| {
                let message = problem.detail_or_title();
                let whole = Fault::new(Reason::Validation.code(), "/policy", message);
                if problem.faults().is_empty() {
                    vec![whole]
                } else {
                    problem.faults().to_vec()
                }
            });
        }
        let mut policy = PolicyDocument::default();
        policy.scoring.games = GamePointsDocument::WinDrawLoss {
            win: self.value("win").unwrap_or_default(),
            draw: self.value("draw").unwrap_or_default(),
            loss: self.value("loss").unwrap_or_default(),
            draw_margin: 0,
        };
        policy.scoring.bye = ByeDocument::Fixed {
            points: self.value("bye").unwrap_or_default(),
        };
        policy.scoring.concession.winner_at_least = self.value("win").unwrap_or_default();
        policy.scoring.concession.loser_at_most = self.value("loss").unwrap_or_default();
        policy.scoring.no_show.present = self.value("win").unwrap_or_default();
        policy.scoring.best_weeks = self.value("best_weeks");
        policy.painting.bonuses = self.painted_bonus().into_iter().collect();
        policy.confirm_within_hours = self.value("confirm_hours").unwrap_or_default();
        policy.list_rules = self.list_rules();
        policy.rounds = self.rounds();
        Ok(policy)
    }

    fn rounds(&self) -> RoundsDocument {
        let per_week = self.value("per_week").unwrap_or_default();
        match self.get("method").as_str() {
            ROUND_ROBIN => RoundsDocument::RoundRobin {
                per_week,
                double: false,
            },
            ROUND_ROBIN_TWICE => RoundsDocument::RoundRobin {
                per_week,
                double: true,
            },
            _ => RoundsDocument::ByScore { per_week },
        }
    }

    fn painted_bonus(&self) -> Option<PaintedBonusDocument> {
        let points = self.value("painted").filter(|points| *points > 0)?;
        Some(PaintedBonusDocument::AtThreshold {
            share: ShareDocument { part: 1, whole: 1 },
            points,
        })
    }

    fn list_rules(&self) -> Vec<ListRuleDocument> {
        let largest = self.value("largest").map(|part| RuleDocument::LargestUnit {
            most: AmountDocument::Share { part, whole: 100 },
        });
        let carry = self.value("carry").map(|part| RuleDocument::CarryOver {
            returning: ShareDocument { part, whole: 100 },
            may_shrink: false,
            may_drop_options: false,
        });
        let lock = (self.get("faction_lock") == "yes").then_some(RuleDocument::FactionLock {});
        let rules = [largest, carry, lock].into_iter().flatten();
        rules
            .map(|rule| ListRuleDocument {
                rule,
                weeks: None,
                severity: document::lists::report::SeverityDocument::Breach,
            })
            .collect()
    }

    /// The whole, as the season is made from it.
    ///
    /// # Errors
    /// What is wrong with rules written as data.
    pub fn command(&self) -> Result<CreateSeason, Vec<Fault>> {
        Ok(CreateSeason {
            name: self.get("name"),
            visibility: match self.get("visibility").as_str() {
                "club" => Visibility::Club,
                _ => Visibility::Public,
            },
            zone: self.get("zone"),
            catalogue: CatalogueId(self.value("catalogue").unwrap_or_default()),
            caps: self.caps(),
            calendar: self.calendar(),
            grace_minutes: self.value("grace").unwrap_or_default(),
            places: self.value("places"),
            policy: self.policy()?,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rounds_of(fields: &[(&str, &str)]) -> RoundsDocument {
        let fields = fields
            .iter()
            .map(|(name, value)| ((*name).to_owned(), (*value).to_owned()));
        let fields = FormData::from_pairs(fields.collect());
        let form = SetupForm::new(&fields, NaiveDate::MIN);
        form.policy().unwrap().rounds
    }

    #[test]
    fn rounds_are_paired_by_score_unless_another_way_is_chosen() {
        assert_eq!(rounds_of(&[]), RoundsDocument::default());
        let twice = RoundsDocument::RoundRobin {
            per_week: 2,
            double: true,
        };
        assert_eq!(
            rounds_of(&[("method", ROUND_ROBIN_TWICE), ("per_week", "2")]),
            twice
        );
    }
}
