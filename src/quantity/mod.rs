//! Numbers with units: checked arithmetic, written and spoken figures in, screen and spoken forms out.
