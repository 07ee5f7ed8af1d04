//! List rules in German.

use league::catalogue::key::{Keyword, KindKey};
use league::lists::Severity;
use league::lists::amount::{Amount, CountLimit};
use league::lists::kind_filter::KindFilter;
use league::lists::rules::{Counted, ListRule, Rule};
use league::lists::week_set::WeekSet;
use league::share::Share;

use super::percent;

/// A rule with its weeks.
pub fn sentence(rule: &ListRule) -> String {
    let demanded = demanded(&rule.rule);
    let weeks = || {
        let weeks: Vec<String> = rule.weeks.iter().map(|week| week.to_string()).collect();
        format!("in Woche {}", weeks.join(", "))
    };
    match (rule.weeks == WeekSet::EVERY, rule.severity) {
        (true, Severity::Breach) => format!("{demanded}."),
        (true, Severity::Remark) => format!("{demanded} (nur als Hinweis)."),
        (false, Severity::Breach) => format!("{demanded} ({}).", weeks()),
        (false, Severity::Remark) => format!("{demanded} ({}; nur als Hinweis).", weeks()),
    }
}

fn demanded(rule: &Rule) -> String {
    match rule {
        Rule::MinimumSpend(rule) => {
            format!(
                "Eine Liste hat mindestens {}",
                of(rule.least, "der Punktgrenze")
            )
        }
        Rule::LargestUnit(rule) => {
            format!(
                "Keine einzelne Einheit kostet mehr als {}",
                of(rule.most, "der Punktgrenze")
            )
        }
        Rule::KindCount(rule) => format!(
            "Einheiten der Art {}: {}",
            rule.kind.words(),
            bounds(rule.least.map(count), rule.most.map(count))
        ),
        Rule::KindShare(rule) => format!(
            "Punkte der Art {}: {} der Punktgrenze",
            rule.kind.words(),
            bounds(rule.least.map(percent), rule.most.map(percent))
        ),
        Rule::Copies(rule) => format!(
            "Dieselbe Einheit{}: höchstens {} in einer Liste",
            kinds(&rule.of),
            count(rule.most)
        ),
        Rule::BannedKeywords(rule) => {
            let words: Vec<String> = rule.keywords.iter().map(Keyword::words).collect();
            format!("Keine Einheit mit dem Stichwort {}", words.join(" oder "))
        }
        Rule::ArmySize(rule) => format!(
            "{} in der Liste: {}",
            match rule.counted {
                Counted::Units => "Einheiten",
                Counted::Models => "Modelle",
            },
            bounds(
                rule.least.map(|least| least.to_string()),
                rule.most.map(|most| most.to_string())
            )
        ),
        Rule::FactionLock(_) => {
            "Wer spielt, bleibt bei der Fraktion, die für die Saison genannt ist".to_owned()
        }
        Rule::CarryOver(rule) => {
            let returning = if rule.returning == Share::ALL {
                "Alle Punkte der Vorwoche kommen wieder".to_owned()
            } else {
                format!(
                    "Mindestens {} der Punkte der Vorwoche kommen wieder",
                    percent(rule.returning)
                )
            };
            let growing = if rule.may_shrink {
                ""
            } else {
                "; Einheiten dürfen wachsen, nicht schrumpfen"
            };
            let options = if rule.may_drop_options {
                ""
            } else {
                "; Optionen dürfen dazukommen, nicht wegfallen"
            };
            format!("{returning}{growing}{options}")
        }
        Rule::SwapAllowance(rule) => {
            format!(
                "Höchstens {} gehen aus der Liste",
                of(rule.most, "der Punkte der Vorwoche")
            )
        }
        Rule::NewPoints(rule) => {
            format!(
                "Höchstens {} sind neu seit der Vorwoche",
                of(rule.most, "der Punktgrenze")
            )
        }
        Rule::NewUnits(rule) => format!(
            "Mindestens {} der Einheiten sind seit der Vorwoche neu oder gewachsen",
            rule.least
        ),
        Rule::PaintedShare(rule) => {
            format!(
                "Mindestens {} der Punkte einer Liste sind bemalt",
                percent(rule.least)
            )
        }
    }
}

fn of(amount: Amount, whole: &str) -> String {
    match amount {
        Amount::Points(points) => format!("{points} Punkte"),
        Amount::Share(share) => format!("{} {whole}", percent(share)),
    }
}

fn count(count: CountLimit) -> String {
    match count {
        CountLimit::Fixed(count) => count.to_string(),
        CountLimit::Per(points) => format!("1 je {points} Punkte der Punktgrenze"),
    }
}

fn bounds(least: Option<String>, most: Option<String>) -> String {
    match (least, most) {
        (Some(least), Some(most)) if least == most => format!("genau {least}"),
        (Some(least), Some(most)) => format!("mindestens {least} und höchstens {most}"),
        (Some(least), None) => format!("mindestens {least}"),
        (None, Some(most)) => format!("höchstens {most}"),
        (None, None) => "beliebig".to_owned(),
    }
}

fn kinds(kinds: &KindFilter) -> String {
    let names = |kinds: &[KindKey]| {
        let words: Vec<String> = kinds.iter().map(KindKey::words).collect();
        words.join(" oder ")
    };
    match kinds {
        KindFilter::Every => String::new(),
        KindFilter::Only(kinds) => format!(" der Art {}", names(kinds)),
        KindFilter::Except(kinds) => format!(" (außer der Art {})", names(kinds)),
    }
}
