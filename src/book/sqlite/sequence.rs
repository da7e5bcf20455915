//! A sequence as SQLite keeps it: its integers have a sign.

use rusqlite::ToSql;
use rusqlite::types::{FromSql, FromSqlError, FromSqlResult, ToSqlOutput, ValueRef};

/// A number of an event within its job.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Sequence(pub u64);

impl ToSql for Sequence {
    fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
        Ok(i64::try_from(self.0).unwrap_or(i64::MAX).into())
    }
}

impl FromSql for Sequence {
    fn column_result(value: ValueRef<'_>) -> FromSqlResult<Self> {
        let number = value.as_i64()?;
        u64::try_from(number).map(Self).map_err(|_| FromSqlError::OutOfRange(number))
    }
}
