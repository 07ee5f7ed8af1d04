//! The table of a scenario as map data. Lengths are whole centimetres from the upper left corner.

use crate::name::Name;

/// Longest edge of a table in centimetres.
pub const MAX_TABLE_EDGE: u16 = 600;

/// A table with its zones and markers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ScenarioTable {
    /// From left to right.
    pub width: u16,
    /// From top to bottom.
    pub depth: u16,
    /// Areas with a use.
    pub zones: Vec<Zone>,
    pub markers: Vec<Marker>,
}

/// A rectangle with a use.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Zone {
    /// What the map says.
    pub label: Name,
    /// What it is for.
    pub purpose: ZoneUse,
    /// Distance of its left edge.
    pub left: u16,
    /// Distance of its upper edge.
    pub top: u16,
    /// From left to right.
    pub width: u16,
    /// From top to bottom.
    pub depth: u16,
}

/// What a zone is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ZoneUse {
    /// The side named first, or the attacker, starts here.
    FirstDeploys,
    /// The side named second, or the defender, starts here.
    SecondDeploys,
    /// Units leave the table here.
    Exit,
    /// Ground with rules of its own.
    Ground,
}

/// A place to hold.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Marker {
    /// What the map says.
    pub label: Name,
    /// Distance from the left edge.
    pub left: u16,
    /// Distance from the upper edge.
    pub top: u16,
}

impl ScenarioTable {
    /// Names of the zones and markers that lie partly or wholly off the table.
    pub fn labels_off_table(&self) -> impl Iterator<Item = &Name> {
        let ends_beyond =
            |start: u16, length: u16, edge: u16| u32::from(start) + u32::from(length) > edge.into();
        let zones = self.zones.iter().filter(move |zone| {
            ends_beyond(zone.left, zone.width, self.width)
                || ends_beyond(zone.top, zone.depth, self.depth)
        });
        let markers = self
            .markers
            .iter()
            .filter(|marker| marker.left > self.width || marker.top > self.depth);
        zones
            .map(|zone| &zone.label)
            .chain(markers.map(|marker| &marker.label))
    }
}
