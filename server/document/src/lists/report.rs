//! The report of a check as JSON.

use league::lists::{CheckReport, Finding, Measure, Severity};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// The answer to a check.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct ReportDocument {
    /// Points of the whole list.
    pub total: u32,
    /// Points left under the cap.
    pub left: u32,
    /// Whether the list may be sealed.
    pub accepted: bool,
    /// Everything found, in a stable order.
    pub findings: Vec<FindingDocument>,
}

/// One finding of a check.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct FindingDocument {
    /// Stable code.
    #[schema(example = "list.over-cap")]
    pub code: String,
    /// Whether it stops the list.
    pub severity: SeverityDocument,
    /// What limit and actual value count.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub measure: Option<MeasureDocument>,
    /// The most or the least allowed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(example = 600)]
    pub limit: Option<u32>,
    /// What the list has.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(example = 612)]
    pub actual: Option<u32>,
    /// How far it is from the limit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(example = 12)]
    pub difference: Option<u32>,
    /// Key of the unit, option, kind, keyword or faction it is about.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub about: Option<String>,
    /// Keys of the entries meant.
    pub entries: Vec<String>,
    /// The finding in plain English.
    pub sentence: String,
}

/// How much a finding weighs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum SeverityDocument {
    /// Stops the list.
    #[default]
    Breach,
    /// Worth knowing.
    Remark,
}

/// What the numbers of a finding count.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum MeasureDocument {
    /// Army points.
    Points,
    /// Models.
    Models,
    /// Entries of the list.
    Units,
    /// Takings of an option.
    Takings,
}

impl From<&CheckReport> for ReportDocument {
    fn from(report: &CheckReport) -> Self {
        Self {
            total: report.total.get(),
            left: report.left.get(),
            accepted: report.is_accepted(),
            findings: report.findings.iter().map(Into::into).collect(),
        }
    }
}

impl From<&Finding> for FindingDocument {
    fn from(finding: &Finding) -> Self {
        let measured = finding.measured;
        Self {
            code: finding.code.into(),
            severity: finding.severity.into(),
            measure: measured.map(|measured| measured.measure.into()),
            limit: measured.map(|measured| measured.limit),
            actual: measured.map(|measured| measured.actual),
            difference: measured.map(|measured| measured.difference()),
            about: finding.about.clone(),
            entries: finding.entries.iter().map(ToString::to_string).collect(),
            sentence: finding.message().to_string(),
        }
    }
}

impl From<Severity> for SeverityDocument {
    fn from(severity: Severity) -> Self {
        match severity {
            Severity::Breach => Self::Breach,
            Severity::Remark => Self::Remark,
        }
    }
}

impl From<SeverityDocument> for Severity {
    fn from(document: SeverityDocument) -> Self {
        match document {
            SeverityDocument::Breach => Self::Breach,
            SeverityDocument::Remark => Self::Remark,
        }
    }
}

impl From<Measure> for MeasureDocument {
    fn from(measure: Measure) -> Self {
        match measure {
            Measure::Points => Self::Points,
            Measure::Models => Self::Models,
            Measure::Units => Self::Units,
            Measure::Takings => Self::Takings,
        }
    }
}
