//! Console, pipe, replay and one-shot commands; no rule of the trade.

pub mod hear;
