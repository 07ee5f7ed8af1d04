//! Validation of a scenario sheet: from JSON to the value of the league, with every fault.

use league::catalogue::key::ItemKey;
use league::name::{Name, Text};
use league::scenario::{
    Grade, GradeBand, ItemMeasure, JointCap, Marker, ScenarioRoles, ScenarioSheet, ScenarioTable,
    ScoreItem, ScoringSide, SheetFault, SheetTerms, Zone,
};
use league::share::Share;
use league::side::GameRole;

use super::{
    GradeDocument, ItemDocument, ItemMeasureDocument, JointCapDocument, ScenarioRolesDocument,
    ScenarioSheetDocument, TableDocument, WhoDocument,
};
use crate::fault::{DocumentFault, ok_or_note};
use crate::share::ShareDocument;

impl TryFrom<ScenarioSheetDocument> for ScenarioSheet {
    type Error = Vec<DocumentFault>;

    fn try_from(document: ScenarioSheetDocument) -> Result<Self, Vec<DocumentFault>> {
        let mut reader = Reader::default();
        match reader.terms(&document) {
            Some(terms) if reader.faults.is_empty() => {
                Self::build(terms).map_err(|faults| locate_all(&document, &faults))
            }
            _ => Err(reader.faults),
        }
    }
}

#[derive(Default)]
struct Reader {
    faults: Vec<DocumentFault>,
}

impl Reader {
    fn terms(&mut self, document: &ScenarioSheetDocument) -> Option<SheetTerms> {
        let title = self.name("/title", &document.title);
        let summary = self.text("/summary", &document.summary);
        let briefing = self.text("/briefing", &document.briefing);
        let roles = self.roles(document.roles);
        let items = document.items.iter().enumerate();
        let items = items.map(|(i, item)| self.item(&format!("/items/{i}"), item));
        let items: Vec<_> = items.collect();
        let caps = document.joint_caps.iter().enumerate();
        let caps = caps.map(|(i, cap)| self.joint_cap(&format!("/joint_caps/{i}"), cap));
        let joint_caps: Vec<_> = caps.collect();
        let table = self.table(&document.table);
        Some(SheetTerms {
            title: title?,
            summary: summary?,
            briefing: briefing?,
            turns: document.turns,
            roles: roles?,
            legs: document.legs.into(),
            items: items.into_iter().collect::<Option<_>>()?,
            joint_caps: joint_caps.into_iter().collect::<Option<_>>()?,
            draw_margin: document.draw_margin,
            table: table?,
        })
    }

    fn name(&mut self, pointer: &str, text: &str) -> Option<Name> {
        let name = Name::new(text).map_err(|fault| fault.message());
        ok_or_note(&mut self.faults, pointer, "scenario.name", name)
    }

    fn text(&mut self, pointer: &str, text: &str) -> Option<Text> {
        let text = Text::new(text).map_err(|fault| fault.message());
        ok_or_note(&mut self.faults, pointer, "scenario.text", text)
    }

    fn key(&mut self, pointer: String, text: &str) -> Option<ItemKey> {
        let key = ItemKey::new(text).map_err(|fault| fault.message());
        ok_or_note(&mut self.faults, pointer, "scenario.key", key)
    }

    fn share(&mut self, pointer: String, document: ShareDocument) -> Option<Share> {
        let share = Share::try_from(document);
        ok_or_note(&mut self.faults, pointer, "scenario.share", share)
    }

    fn roles(&mut self, document: ScenarioRolesDocument) -> Option<ScenarioRoles> {
        match document {
            ScenarioRolesDocument::Symmetric => Some(ScenarioRoles::Symmetric),
            ScenarioRolesDocument::AttackAndDefence {
                attacker_fields,
                defender_fields,
                attacker,
                harder,
            } => {
                let attacks = self.share("/roles/attacker_fields".into(), attacker_fields);
                let defends = self.share("/roles/defender_fields".into(), defender_fields);
                Some(ScenarioRoles::AttackAndDefence {
                    attacker_fields: attacks?,
                    defender_fields: defends?,
                    attacker: attacker.into(),
                    harder: harder.map(Into::into),
                })
            }
        }
    }

    fn item(&mut self, at: &str, document: &ItemDocument) -> Option<ScoreItem> {
        let key = self.key(format!("{at}/key"), &document.key);
        let label = self.name(&format!("{at}/label"), &document.label);
        let measure = self.measure(&format!("{at}/measure"), &document.measure);
        Some(ScoreItem {
            key: key?,
            label: label?,
            who: match document.who {
                WhoDocument::Either => ScoringSide::Either,
                WhoDocument::Attacker => ScoringSide::Only(GameRole::Attacker),
                WhoDocument::Defender => ScoringSide::Only(GameRole::Defender),
            },
            when: document.when.into(),
            measure: measure?,
        })
    }

    fn measure(&mut self, at: &str, document: &ItemMeasureDocument) -> Option<ItemMeasure> {
        Some(match document {
            ItemMeasureDocument::Count {
                points_each,
                most,
                exclusive,
                cap,
            } => ItemMeasure::Count {
                points_each: *points_each,
                most: *most,
                exclusive: *exclusive,
                cap: *cap,
            },
            ItemMeasureDocument::ArmyShare {
                army,
                against,
                grade,
            } => ItemMeasure::ArmyShare {
                army: (*army).into(),
                against: (*against).into(),
                grade: self.grade(&format!("{at}/grade"), grade)?,
            },
            ItemMeasureDocument::RestOf { item, out_of } => ItemMeasure::RestOf {
                item: self.key(format!("{at}/item"), item)?,
                out_of: *out_of,
            },
        })
    }

    fn grade(&mut self, at: &str, document: &GradeDocument) -> Option<Grade> {
        match document {
            GradeDocument::PerStep {
                step,
                points_each,
                cap,
            } => Some(Grade::PerStep {
                step: self.share(format!("{at}/step"), *step)?,
                points_each: *points_each,
                cap: *cap,
            }),
            GradeDocument::Bands { bands } => {
                let bands = bands.iter().enumerate().map(|(i, band)| {
                    let from = self.share(format!("{at}/bands/{i}/from"), band.from)?;
                    let points = band.points;
                    Some(GradeBand { from, points })
                });
                let bands: Vec<_> = bands.collect();
                Some(Grade::Bands(bands.into_iter().collect::<Option<_>>()?))
            }
        }
    }

    fn joint_cap(&mut self, at: &str, document: &JointCapDocument) -> Option<JointCap> {
        let keys = document.items.iter().enumerate();
        let keys = keys.map(|(i, key)| self.key(format!("{at}/items/{i}"), key));
        let keys: Vec<_> = keys.collect();
        Some(JointCap {
            items: keys.into_iter().collect::<Option<_>>()?,
            cap: document.cap,
        })
    }

    fn table(&mut self, document: &TableDocument) -> Option<ScenarioTable> {
        let zones = document.zones.iter().enumerate().map(|(i, zone)| {
            Some(Zone {
                label: self.name(&format!("/table/zones/{i}/label"), &zone.label)?,
                purpose: zone.purpose.into(),
                left: zone.left,
                top: zone.top,
                width: zone.width,
                depth: zone.depth,
            })
        });
        let zones: Vec<_> = zones.collect();
        let markers = document.markers.iter().enumerate().map(|(i, marker)| {
            Some(Marker {
                label: self.name(&format!("/table/markers/{i}/label"), &marker.label)?,
                left: marker.left,
                top: marker.top,
            })
        });
        let markers: Vec<_> = markers.collect();
        Some(ScenarioTable {
            width: document.width,
            depth: document.depth,
            zones: zones.into_iter().collect::<Option<_>>()?,
            markers: markers.into_iter().collect::<Option<_>>()?,
        })
    }
}

fn locate_all(document: &ScenarioSheetDocument, faults: &[SheetFault]) -> Vec<DocumentFault> {
    let place = |key: &ItemKey| {
        let at = document
            .items
            .iter()
            .rposition(|item| item.key == key.as_str());
        at.map_or_else(|| "/items".to_owned(), |at| format!("/items/{at}"))
    };
    let locate = |fault: &SheetFault| {
        let pointer = match fault {
            SheetFault::ItemCount(_) => "/items".to_owned(),
            SheetFault::Turns(_) => "/turns".to_owned(),
            SheetFault::KeyTwice(key) => place(key) + "/key",
            SheetFault::NoRoles(key) => place(key) + "/who",
            SheetFault::Number { item, .. } | SheetFault::RestTooSmall { item, .. } => {
                place(item) + "/measure"
            }
            SheetFault::Grade(key)
            | SheetFault::ExclusiveForOneRole(key)
            | SheetFault::RestOfNothing(key) => place(key) + "/measure",
            SheetFault::JointCap(_) => "/joint_caps".to_owned(),
            SheetFault::LegsWithoutRoles => "/legs".to_owned(),
            SheetFault::Fields(_) => "/roles".to_owned(),
            SheetFault::TableEdge(_) | SheetFault::OffTable(_) => "/table".to_owned(),
        };
        DocumentFault::new(pointer, fault.code(), fault.message())
    };
    faults.iter().map(locate).collect()
}
