//! Which model the figures are of.

/// Version of the model, a whole number.
///
/// A figure that was written down, such as one sent with a link, can be told from today's by it.
/// It goes up by one with any change of the model (laws, parameters, typical values, how an answer
/// is defined) that moves a headline of the demo's kits by more than 1 %: top speed, hill at
/// 10 km/h or distance. `CHANGELOG.md` then lists old and new figures. A change of the demo alone
/// does not raise it.
///
/// Version 1 is what answered before the number was written anywhere.
///
/// ```
/// assert!(pitchline_core::MODEL > 1);
/// ```
pub const MODEL: u32 = 2;
