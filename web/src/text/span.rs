//! How long something takes, to the second where that matters.

/// A length of time in s in minutes, for the axis of a chart.
#[must_use]
pub fn minutes(time_s: f64) -> f64 {
    time_s / 60.0
}

/// A length of time in s: "35 s", "4 min 30 s", "12 min", "1 h 5 min".
#[must_use]
pub fn span(time_s: f64) -> String {
    // Held where a whole number holds it.
    let seconds = time_s.clamp(0.0, 1e9).round() as u64;
    let (small, large) = if seconds < 600 { ("s", "min") } else { ("min", "h") };
    let count = if seconds < 600 { seconds } else { (seconds + 30) / 60 };
    match (count / 60, count % 60) {
        (0, rest) => format!("{rest}\u{a0}{small}"),
        (whole, 0) => format!("{whole}\u{a0}{large}"),
        (whole, rest) => format!("{whole}\u{a0}{large}\u{a0}{rest}\u{a0}{small}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_are_written_as_closely_as_they_matter() {
        let spans = [0.0, 35.4, 60.0, 270.0, 599.4, 600.0, 754.0, 3600.0, 3929.0, 86_400.0];
        let wanted = [
            "0 s",
            "35 s",
            "1 min",
            "4 min 30 s",
            "9 min 59 s",
            "10 min",
            "13 min",
            "1 h",
            "1 h 5 min",
            "24 h",
        ];
        for (time, text) in spans.into_iter().zip(wanted) {
            assert_eq!(span(time).replace('\u{a0}', " "), text);
        }
        assert_eq!(span(f64::NAN), "0\u{a0}s");
    }
}
