//! Everything that checks the whole from outside.
