//! The page: asks, draws and explains; computes nothing physical.
