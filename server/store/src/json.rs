//! A `jsonb` column read straight into its document.

use std::io::Write;

use diesel::deserialize::{self, FromSql, FromSqlRow};
use diesel::expression::AsExpression;
use diesel::pg::{Pg, PgValue};
use diesel::serialize::{self, IsNull, Output, ToSql};
use diesel::sql_types::Jsonb;
use serde::Serialize;
use serde::de::DeserializeOwned;

/// What the text is preceded by on the wire (PostgreSQL's source, `jsonb_recv`; from memory).
const VERSION: u8 = 1;

/// The document in a `jsonb` column.
#[derive(Clone, Debug, FromSqlRow, AsExpression)]
#[diesel(sql_type = Jsonb)]
pub(crate) struct JsonColumn<T: std::fmt::Debug>(pub T);

impl<T: DeserializeOwned + std::fmt::Debug> FromSql<Jsonb, Pg> for JsonColumn<T> {
    fn from_sql(value: PgValue<'_>) -> deserialize::Result<Self> {
        match value.as_bytes() {
            [VERSION, text @ ..] => Ok(Self(serde_json::from_slice(text)?)),
            _ => Err("jsonb of an unknown version".into()),
        }
    }
}

impl<T: Serialize + std::fmt::Debug> ToSql<Jsonb, Pg> for JsonColumn<T> {
    fn to_sql<'b>(&'b self, out: &mut Output<'b, '_, Pg>) -> serialize::Result {
        out.write_all(&[VERSION])?;
        serde_json::to_writer(out, &self.0)?;
        Ok(IsNull::No)
    }
}
