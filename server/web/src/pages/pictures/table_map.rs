//! The table map: the table of a scenario as SVG, and in words.

use std::borrow::Cow;

use document::season::scenario::{MarkerDocument, TableDocument, ZoneDocument, ZoneUseDocument};

use messages::Texts;

/// A table with its zones and markers, in centimetres.
pub struct TableMap {
    /// From left to right.
    pub width: u16,
    /// From top to bottom.
    pub depth: u16,
    /// Zones, larger ones first, so that none hides another.
    pub zones: Vec<ZoneShape>,
    pub markers: Vec<MarkerShape>,
    /// Height of the letters.
    pub letter: f32,
}

pub struct ZoneShape {
    /// What the map says.
    pub label: String,
    /// What it is for.
    pub purpose: Cow<'static, str>,
    /// The hatching that shows what it is for.
    pub pattern: &'static str,
    /// Its place and size.
    pub left: u16,
    /// Its place and size.
    pub top: u16,
    /// Its place and size.
    pub width: u16,
    /// Its place and size.
    pub depth: u16,
    /// Where its label stands.
    pub label_x: u16,
    /// Where its label stands.
    pub label_y: u16,
}

pub struct MarkerShape {
    /// What the map says.
    pub label: String,
    pub left: u16,
    pub top: u16,
    /// Where its label stands.
    pub label_x: u16,
    /// Where its label stands.
    pub label_y: u16,
    /// How the label is set against that place.
    pub anchor: &'static str,
}

impl TableMap {
    pub fn new(table: &TableDocument, t: Texts) -> Self {
        let mut zones: Vec<&ZoneDocument> = table.zones.iter().collect();
        zones.sort_by_key(|zone| std::cmp::Reverse(u32::from(zone.width) * u32::from(zone.depth)));
        let letter = f32::from(table.width.max(table.depth)) / 28.0;
        Self {
            width: table.width,
            depth: table.depth,
            zones: zones.into_iter().map(|zone| zone_shape(zone, t)).collect(),
            markers: table
                .markers
                .iter()
                .map(|marker| marker_shape(marker, table))
                .collect(),
            letter,
        }
    }
}

fn zone_shape(zone: &ZoneDocument, t: Texts) -> ZoneShape {
    let (purpose, pattern) = match zone.purpose {
        ZoneUseDocument::FirstDeploys => (t.map_first(), "first"),
        ZoneUseDocument::SecondDeploys => (t.map_second(), "second"),
        ZoneUseDocument::Exit => (t.map_exit(), "exit"),
        ZoneUseDocument::Ground => (t.map_ground(), "ground"),
    };
    ZoneShape {
        label: zone.label.clone(),
        purpose,
        pattern,
        left: zone.left,
        top: zone.top,
        width: zone.width,
        depth: zone.depth,
        label_x: zone.left + 2,
        label_y: zone.top + 5,
    }
}

/// The label stands below its marker, and turns inwards at the edges of the table.
fn marker_shape(marker: &MarkerDocument, table: &TableDocument) -> MarkerShape {
    let margin = table.width / 6;
    let anchor = if marker.left < margin {
        "start"
    } else if marker.left > table.width - margin {
        "end"
    } else {
        "middle"
    };
    let step = table.width.max(table.depth) / 16;
    let below = marker.top + step;
    MarkerShape {
        label: marker.label.clone(),
        left: marker.left,
        top: marker.top,
        label_x: marker.left,
        label_y: if below + 2 > table.depth {
            marker.top.saturating_sub(step / 2)
        } else {
            below
        },
        anchor,
    }
}
