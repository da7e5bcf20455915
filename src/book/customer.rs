//! Who a customer is: a record of its own, so that it can be removed without breaking an event.

use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// A customer's record. Events refer to it by `id` and repeat nothing of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Customer {
    /// The id that events carry; it must not tell who the customer is.
    pub id: String,
    /// The name said at the bench.
    pub name: String,
    /// Whatever else is kept: `phone`, `mail`, `vehicle`...
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub details: BTreeMap<String, String>,
}
