//! From a scenario sheet to JSON.

use league::scenario::{
    Grade, GradeBand, ItemMeasure, JointCap, Marker, ScenarioRoles, ScenarioSheet, ScenarioTable,
    ScoreItem, ScoringSide, Zone,
};
use league::side::GameRole;

use super::{
    GradeBandDocument, GradeDocument, ItemDocument, ItemMeasureDocument, JointCapDocument,
    MarkerDocument, ScenarioRolesDocument, ScenarioSheetDocument, TableDocument, WhoDocument,
    ZoneDocument,
};

impl From<&ScenarioSheet> for ScenarioSheetDocument {
    fn from(sheet: &ScenarioSheet) -> Self {
        let terms = sheet.terms();
        Self {
            title: terms.title.to_string(),
            summary: terms.summary.as_str().to_owned(),
            briefing: terms.briefing.as_str().to_owned(),
            turns: terms.turns,
            roles: terms.roles.into(),
            legs: terms.legs.into(),
            items: terms.items.iter().map(Into::into).collect(),
            joint_caps: terms.joint_caps.iter().map(Into::into).collect(),
            draw_margin: terms.draw_margin,
            table: (&terms.table).into(),
        }
    }
}

impl From<ScenarioRoles> for ScenarioRolesDocument {
    fn from(roles: ScenarioRoles) -> Self {
        match roles {
            ScenarioRoles::Symmetric => Self::Symmetric,
            ScenarioRoles::AttackAndDefence {
                attacker_fields,
                defender_fields,
                attacker,
                harder,
            } => Self::AttackAndDefence {
                attacker_fields: attacker_fields.into(),
                defender_fields: defender_fields.into(),
                attacker: attacker.into(),
                harder: harder.map(Into::into),
            },
        }
    }
}

impl From<&ScoreItem> for ItemDocument {
    fn from(item: &ScoreItem) -> Self {
        Self {
            key: item.key.to_string(),
            label: item.label.to_string(),
            who: match item.who {
                ScoringSide::Either => WhoDocument::Either,
                ScoringSide::Only(GameRole::Attacker) => WhoDocument::Attacker,
                ScoringSide::Only(GameRole::Defender) => WhoDocument::Defender,
            },
            when: item.when.into(),
            measure: (&item.measure).into(),
        }
    }
}

impl From<&ItemMeasure> for ItemMeasureDocument {
    fn from(measure: &ItemMeasure) -> Self {
        match measure {
            ItemMeasure::Count {
                points_each,
                most,
                exclusive,
                cap,
            } => Self::Count {
                points_each: *points_each,
                most: *most,
                exclusive: *exclusive,
                cap: *cap,
            },
            ItemMeasure::ArmyShare {
                army,
                against,
                grade,
            } => Self::ArmyShare {
                army: (*army).into(),
                against: (*against).into(),
                grade: grade.into(),
            },
            ItemMeasure::RestOf { item, out_of } => Self::RestOf {
                item: item.to_string(),
                out_of: *out_of,
            },
        }
    }
}

impl From<&Grade> for GradeDocument {
    fn from(grade: &Grade) -> Self {
        match grade {
            Grade::PerStep {
                step,
                points_each,
                cap,
            } => Self::PerStep {
                step: (*step).into(),
                points_each: *points_each,
                cap: *cap,
            },
            Grade::Bands(bands) => Self::Bands {
                bands: bands.iter().map(|band| (*band).into()).collect(),
            },
        }
    }
}

impl From<GradeBand> for GradeBandDocument {
    fn from(band: GradeBand) -> Self {
        Self {
            from: band.from.into(),
            points: band.points,
        }
    }
}

impl From<&JointCap> for JointCapDocument {
    fn from(joint: &JointCap) -> Self {
        Self {
            items: joint.items.iter().map(ToString::to_string).collect(),
            cap: joint.cap,
        }
    }
}

impl From<&ScenarioTable> for TableDocument {
    fn from(table: &ScenarioTable) -> Self {
        let zone = |zone: &Zone| ZoneDocument {
            label: zone.label.to_string(),
            purpose: zone.purpose.into(),
            left: zone.left,
            top: zone.top,
            width: zone.width,
            depth: zone.depth,
        };
        let marker = |marker: &Marker| MarkerDocument {
            label: marker.label.to_string(),
            left: marker.left,
            top: marker.top,
        };
        Self {
            width: table.width,
            depth: table.depth,
            zones: table.zones.iter().map(zone).collect(),
            markers: table.markers.iter().map(marker).collect(),
        }
    }
}
