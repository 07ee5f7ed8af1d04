//! Pictures as SVG: table map, rank chart, army chart, QR code.

pub mod army_chart;
pub mod axis;
pub mod qr_code;
pub mod rank_chart;
pub mod table_map;
