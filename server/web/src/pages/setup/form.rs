//! The form of the set-up wizard: the fields of its steps with defaults, each step as a struct.

use app::seasons::{CreateSeason, MAX_GRACE_MINUTES, first_day_fault};
use app::{Fault, Reason, Refusal};
use chrono::{Datelike, Days, NaiveDate};
use chrono_tz::Tz;
use document::fault::DocumentFault;
use document::lists::report::SeverityDocument;
use document::lists::rules::{AmountDocument, ListRuleDocument, RuleDocument};
use document::painting::rules::PaintedBonusDocument;
use document::rounds::method::RoundsDocument;
use document::season::calendar::{
    CalendarDocument, CapsDocument, MomentDocument, NightDocument, plan,
};
use document::season::policy::{MAX_CONFIRM_HOURS, PolicyDocument, SeasonSize};
use document::season::scoring::{ByeDocument, GamePointsDocument};
use document::share::ShareDocument;
use league::ids::CatalogueId;
use league::name::Name;
use league::pairing::round::method::MAX_ROUNDS_PER_WEEK;
use league::points::MAX_POINTS;
use league::season::{MAX_DAYS_PER_WEEK, MAX_TABLES_PER_NIGHT, Visibility, WeekPlan};
use league::week::MAX_WEEKS;
use messages::{Texts, refusals, seasons};

use crate::body;
use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_reader::FormReader;

/// Equal scores meet.
pub const BY_SCORE: &str = "by_score";
/// Everybody meets everybody.
pub const ROUND_ROBIN: &str = "round_robin";
/// Everybody meets everybody twice.
pub const ROUND_ROBIN_TWICE: &str = "round_robin_twice";

/// Nights that the form has room for.
pub const NIGHTS_PER_WEEK: u8 = 4;
/// Days that the form offers, from the first day of a week on.
pub const DAYS: u16 = 14;

const WEEKDAYS: [&str; 7] = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];

/// What stands in the fields at first; the first day is the Monday after next.
const DEFAULTS: [(&str, &str); 26] = [
    ("visibility", "public"),
    ("zone", "Europe/Berlin"),
    ("caps_kind", "step"),
    ("caps_first", "250"),
    ("caps_more", "250"),
    ("caps_weeks", "8"),
    ("days_per_week", "7"),
    ("announce_day", "0"),
    ("announce_time", "09:00"),
    ("due_day", "1"),
    ("due_time", "20:00"),
    ("until_day", "6"),
    ("until_time", "22:00"),
    ("night_1_day", "3"),
    ("night_1_time", "19:00"),
    ("night_1_tables", "6"),
    ("grace", "60"),
    ("method", BY_SCORE),
    ("per_week", "1"),
    ("win", "3"),
    ("draw", "1"),
    ("loss", "0"),
    ("bye", "2"),
    ("painted", "1"),
    ("confirm_hours", "48"),
    ("first_day", ""),
];

/// The form, each field as typed or by its default.
pub struct SetupForm {
    fields: FormData,
    today: NaiveDate,
    t: Texts,
}

/// The step of name and catalogue.
pub struct Basics {
    name: String,
    visibility: Visibility,
    zone: String,
    catalogue: CatalogueId,
    places: Option<u16>,
}

/// The step of the caps.
pub struct Growth {
    first_day: NaiveDate,
    days_per_week: u16,
    caps: CapsDocument,
}

/// The step of days and nights.
pub struct Rhythm {
    announce: MomentDocument,
    lists_due: MomentDocument,
    play_until: MomentDocument,
    nights: Vec<Night>,
    grace_minutes: u16,
}

struct Night {
    begins: MomentDocument,
    tables: u16,
}

impl SetupForm {
    /// What was typed so far.
    pub fn new(fields: &FormData, today: NaiveDate, t: Texts) -> Self {
        let defaults = DEFAULTS.map(|(name, default)| match name {
            "first_day" => (name, monday_after_next(today).to_string()),
            _ => (name, default.to_owned()),
        });
        Self {
            fields: fields.clone().with_defaults(defaults),
            today,
            t,
        }
    }

    /// What stands in a field.
    pub fn get(&self, name: &str) -> &str {
        self.fields.typed(name)
    }

    /// What stands in a part of a moment or a night, such as `day` of `due`.
    pub fn part(&self, of: &str, part: &str) -> &str {
        self.get(&format!("{of}_{part}"))
    }

    /// Whether a moment or a night is on this day.
    pub fn falls_on(&self, of: &str, day: &u16) -> bool {
        self.part(of, "day") == day.to_string()
    }

    /// The day from which the days of a week are named; the default where none can be read.
    pub fn first_day(&self) -> NaiveDate {
        let typed = self.fields.text("first_day").parse();
        typed.unwrap_or_else(|_| monday_after_next(self.today))
    }

    /// The zone of the season's civil times, if there is one of this name.
    pub fn zone(&self) -> Option<Tz> {
        self.fields.text("zone").parse().ok()
    }

    /// Checks the fields of one step.
    ///
    /// # Errors
    /// What is wrong with them.
    pub fn check(&self, step: u8) -> Result<(), Refusal> {
        match step {
            1 => self.basics().map(|_| ()),
            2 => self.check_growth(),
            3 => self.check_rhythm(),
            4 => self.check_policy(),
            _ => Ok(()),
        }
    }

    fn basics(&self) -> Result<Basics, Refusal> {
        let (t, mut form) = (self.t, FormReader::new(&self.fields));
        let visibilities = [("public", Visibility::Public), ("club", Visibility::Club)];
        let basics = Basics {
            name: form.text("name"),
            visibility: form.choice("visibility", &t.visibility(), visibilities),
            zone: form.text("zone"),
            catalogue: CatalogueId(form.id("catalogue", &t.catalogue())),
            places: form.optional_number("places", &t.most_players(), 2..=500),
        };
        if let Err(fault) = Name::new(&basics.name) {
            form.fault("name", refusals::name_fault(fault.message()));
        }
        if self.zone().is_none() {
            form.fault("zone", seasons::zone_unknown_in_form());
        }
        form.finish(basics)
    }

    fn growth(&self) -> Result<Growth, Refusal> {
        let (t, mut form) = (self.t, FormReader::new(&self.fields));
        let growth = Growth {
            first_day: form.date("first_day", &t.first_day()),
            days_per_week: form.number("days_per_week", &t.days_per_week(), 1..=MAX_DAYS_PER_WEEK),
            caps: match form.choice(
                "caps_kind",
                &t.caps_kind(),
                [("step", false), ("list", true)],
            ) {
                true => CapsDocument::List {
                    caps: form.numbers("caps_each", &t.caps_each(), 1..=MAX_POINTS),
                },
                false => CapsDocument::Step {
                    first: form.number("caps_first", &t.caps_first(), 1..=MAX_POINTS),
                    step: form.number("caps_more", &t.caps_more(), 0..=MAX_POINTS),
                    weeks: form.number("caps_weeks", &t.caps_weeks(), 1..=MAX_WEEKS),
                },
            },
        };
        form.finish(growth)
    }

    /// Faults of the caps alone: of days and nights the next step speaks.
    fn check_growth(&self) -> Result<(), Refusal> {
        let growth = self.growth()?;
        let mut faults = Vec::from_iter(self.first_day_fault());
        if let Ok(rhythm) = self.rhythm()
            && let Err(of_plan) = self.plan_of(&growth, &rhythm)
        {
            let of_caps = |fault: &DocumentFault| fault.pointer.starts_with("/caps");
            faults.extend(of_plan.into_iter().filter(of_caps).map(Fault::from));
        }
        must_be_none(faults)
    }

    fn check_rhythm(&self) -> Result<(), Refusal> {
        let (growth, rhythm) = (self.growth()?, self.rhythm()?);
        let of_plan = self.plan_of(&growth, &rhythm).err();
        let mut faults = Vec::from_iter(of_plan.into_iter().flatten().map(Fault::from));
        faults.extend(self.first_day_fault());
        must_be_none(faults)
    }

    fn first_day_fault(&self) -> Option<Fault> {
        first_day_fault(self.first_day(), self.today, "/first_day")
    }

    fn rhythm(&self) -> Result<Rhythm, Refusal> {
        let (t, mut form) = (self.t, FormReader::new(&self.fields));
        let rhythm = Rhythm {
            announce: moment(&mut form, "announce", &t.announced_at(), t),
            lists_due: moment(&mut form, "due", &t.lists_due(), t),
            play_until: moment(&mut form, "until", &t.play_until(), t),
            nights: (1..=NIGHTS_PER_WEEK)
                .filter_map(|number| night(&mut form, number, t))
                .collect(),
            grace_minutes: form.number("grace", &t.grace_minutes(), 0..=MAX_GRACE_MINUTES),
        };
        form.finish(rhythm)
    }

    /// Every week as it is planned, `None` while something is wrong with caps or rhythm.
    pub fn plan(&self) -> Option<Vec<WeekPlan>> {
        let (growth, rhythm) = (self.growth().ok()?, self.rhythm().ok()?);
        self.plan_of(&growth, &rhythm).ok()
    }

    fn plan_of(
        &self,
        growth: &Growth,
        rhythm: &Rhythm,
    ) -> Result<Vec<WeekPlan>, Vec<DocumentFault>> {
        // Another step asks for a zone that there is; any will do to find faults of caps.
        let zone = self.zone().unwrap_or(Tz::UTC);
        plan(&growth.caps, &calendar(growth, rhythm), zone)
    }

    /// The rules: from the fields, or as a whole where they were written as data.
    ///
    /// # Errors
    /// What is wrong with the fields or the data.
    pub fn policy(&self) -> Result<PolicyDocument, Refusal> {
        let data = self.fields.text("rules");
        if !data.is_empty() {
            return body::parse(data.as_bytes()).map_err(|problem| {
                let message = problem.detail_or_title();
                match problem.faults() {
                    [] => Refusal::fault(Reason::Validation, "/policy", message),
                    faults => Refusal::faults(Reason::Validation, message, faults.to_vec()),
                }
            });
        }
        let (t, mut form) = (self.t, FormReader::new(&self.fields));
        let mut points = |name, label: &str| form.number(name, label, 0..=100);
        let (win, draw) = (
            points("win", &t.value_win()),
            points("draw", &t.value_draw()),
        );
        let (loss, bye) = (
            points("loss", &t.value_loss()),
            points("bye", &t.value_bye()),
        );
        let painted = points("painted", &t.value_painted());
        let mut policy = PolicyDocument::default();
        policy.scoring.games = GamePointsDocument::WinDrawLoss {
            win,
            draw,
            loss,
            draw_margin: 0,
        };
        policy.scoring.bye = ByeDocument::Fixed { points: bye };
        policy.scoring.concession.winner_at_least = win;
        policy.scoring.concession.loser_at_most = loss;
        policy.scoring.no_show.present = win;
        policy.scoring.best_weeks =
            form.optional_number("best_weeks", &t.limit_best_weeks(), 1..=MAX_WEEKS);
        policy.painting.bonuses = painted_bonus(painted).into_iter().collect();
        let hours = 1..=MAX_CONFIRM_HOURS;
        policy.confirm_within_hours = form.number("confirm_hours", &t.confirm_hours(), hours);
        policy.list_rules = list_rules(&mut form, t);
        policy.rounds = rounds(&mut form, t);
        form.finish(policy)
    }

    /// The rules by themselves, and within the season that they are for.
    fn check_policy(&self) -> Result<(), Refusal> {
        let policy = self.policy()?;
        let mut faults = Vec::from_iter(policy.to_policy().err().into_iter().flatten());
        // Of a season that cannot be planned its own steps speak.
        if let (Ok(basics), Ok(rhythm), Some(weeks)) = (self.basics(), self.rhythm(), self.plan()) {
            faults.extend(policy.faults_beyond(SeasonSize {
                weeks: weeks.len(),
                nights: rhythm.nights.len(),
                places: basics.places,
            }));
        }
        must_be_none(faults.into_iter().map(Fault::from).collect())
    }

    /// The whole, as the season is made from it.
    ///
    /// # Errors
    /// What is wrong with the first step that cannot be read.
    pub fn command(&self) -> Result<CreateSeason, Refusal> {
        let (basics, growth, rhythm) = (self.basics()?, self.growth()?, self.rhythm()?);
        Ok(CreateSeason {
            name: basics.name,
            visibility: basics.visibility,
            zone: basics.zone,
            catalogue: basics.catalogue,
            calendar: calendar(&growth, &rhythm),
            caps: growth.caps,
            grace_minutes: rhythm.grace_minutes,
            places: basics.places,
            policy: self.policy()?,
        })
    }
}

fn must_be_none(faults: Vec<Fault>) -> Result<(), Refusal> {
    if faults.is_empty() {
        return Ok(());
    }
    Err(Refusal::faults(
        Reason::Validation,
        seasons::season_faults(),
        faults,
    ))
}

fn monday_after_next(today: NaiveDate) -> NaiveDate {
    let into_week = u64::from(today.weekday().num_days_from_monday());
    // Only at the end of the calendar is there no such day.
    today
        .checked_add_days(Days::new(14 - into_week))
        .unwrap_or(today)
}

fn moment(form: &mut FormReader<'_>, name: &str, label: &str, t: Texts) -> MomentDocument {
    let (day, time) = (t.day(), t.time());
    MomentDocument {
        day: form.number(
            &format!("{name}_day"),
            &format!("{label}, {day}"),
            0..=DAYS - 1,
        ),
        time: form.time(&format!("{name}_time"), &format!("{label}, {time}")),
    }
}

/// A night without a number of tables is none.
fn night(form: &mut FormReader<'_>, number: u8, t: Texts) -> Option<Night> {
    let (name, label) = (format!("night_{number}"), t.night_n(number));
    let tables = format!("{name}_tables");
    if form.text(&tables).is_empty() {
        return None;
    }
    Some(Night {
        tables: form.number(
            &tables,
            &format!("{label}, {}", t.tables()),
            1..=MAX_TABLES_PER_NIGHT,
        ),
        begins: moment(form, &name, &label, t),
    })
}

fn calendar(growth: &Growth, rhythm: &Rhythm) -> CalendarDocument {
    let mut nights: Vec<NightDocument> = Vec::new();
    for night in &rhythm.nights {
        nights.push(NightDocument {
            key: night_key(growth.first_day, night.begins.day, &nights),
            day: night.begins.day,
            time: night.begins.time,
            tables: night.tables,
        });
    }
    CalendarDocument {
        first_day: growth.first_day,
        days_per_week: growth.days_per_week,
        announce: rhythm.announce,
        lists_due: rhythm.lists_due,
        play_until: rhythm.play_until,
        nights,
    }
}

/// After the day of the week, with a number where there are several.
fn night_key(first_day: NaiveDate, day: u16, nights: &[NightDocument]) -> String {
    let weekday = first_day.weekday().num_days_from_monday() + u32::from(day);
    let name = WEEKDAYS[weekday as usize % WEEKDAYS.len()];
    let same = nights
        .iter()
        .filter(|night| night.key.starts_with(name))
        .count();
    match same {
        0 => name.to_owned(),
        more => format!("{name}-{}", more + 1),
    }
}

fn rounds(form: &mut FormReader<'_>, t: Texts) -> RoundsDocument {
    let per_week = 1..=MAX_ROUNDS_PER_WEEK;
    let per_week = form.number("per_week", &t.rounds_per_week(), per_week);
    let robin = |double| RoundsDocument::RoundRobin { per_week, double };
    let methods = [BY_SCORE, ROUND_ROBIN, ROUND_ROBIN_TWICE].map(|word| (word, word));
    match form.choice("method", &t.pairing_method(), methods) {
        ROUND_ROBIN => robin(false),
        ROUND_ROBIN_TWICE => robin(true),
        _ => RoundsDocument::ByScore { per_week },
    }
}

fn painted_bonus(points: i32) -> Option<PaintedBonusDocument> {
    (points > 0).then_some(PaintedBonusDocument::AtThreshold {
        share: ShareDocument { part: 1, whole: 1 },
        points,
    })
}

fn list_rules(form: &mut FormReader<'_>, t: Texts) -> Vec<ListRuleDocument> {
    let mut percent =
        |name, label: &str| form.optional_number(name, label, 1..=100_u8).map(u64::from);
    let largest = percent("largest", &t.limit_largest_unit());
    let largest = largest.map(|part| RuleDocument::LargestUnit {
        most: AmountDocument::Share { part, whole: 100 },
    });
    let carry = percent("carry", &t.limit_carry_over());
    let carry = carry.map(|part| RuleDocument::CarryOver {
        returning: ShareDocument { part, whole: 100 },
        may_shrink: false,
        may_drop_options: false,
    });
    let lock = form.is_checked("faction_lock");
    let lock = lock.then_some(RuleDocument::FactionLock {});
    let rules = [largest, carry, lock].into_iter().flatten();
    rules
        .map(|rule| ListRuleDocument {
            rule,
            weeks: None,
            severity: SeverityDocument::Breach,
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use messages::Language;

    use super::*;

    fn rounds_of(fields: &[(&str, &str)]) -> RoundsDocument {
        let fields = fields
            .iter()
            .map(|(name, value)| ((*name).to_owned(), (*value).to_owned()));
        let fields = FormData::from_pairs(fields.collect());
        let form = SetupForm::new(&fields, NaiveDate::MIN, Texts::of(Language::English));
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
