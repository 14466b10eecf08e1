//! Lengths of time as people say them.

/// Symbol of a minute.
pub const MINUTE: &str = "min";

/// Whole minutes: to a minute within the hour, to five beyond, since no charger's label supports more.
fn rough_minutes(seconds: f64) -> u32 {
    let minutes = minutes(seconds);
    // Far more than any charge takes; a cast of what is no number gives 0.
    if minutes < 59.5 { minutes.round() as u32 } else { 5 * (minutes / 5.0).round() as u32 }
}

/// So many of a small unit, sixty of which are a large one, as a number and the unit of its last
/// figure.
fn parts(count: u32, [small, large]: [&'static str; 2]) -> (String, &'static str) {
    match (count / 60, count % 60) {
        (0, rest) => (rest.to_string(), small),
        (whole, 0) => (whole.to_string(), large),
        (whole, rest) => (format!("{whole}\u{a0}{large}\u{a0}{rest}"), small),
    }
}

/// A length of time in s in minutes, for the axis of a chart.
#[must_use]
pub fn minutes(seconds: f64) -> f64 {
    seconds / 60.0
}

/// A length of time in s to the second where that matters: "35 s", "4 min 30 s", "12 min".
#[must_use]
pub fn span(seconds: f64) -> String {
    // A cast of what is no number gives 0.
    let seconds = seconds.round() as u32;
    let (figure, unit) = if seconds < 600 {
        parts(seconds, ["s", MINUTE])
    } else {
        parts((seconds + 30) / 60, [MINUTE, "h"])
    };
    format!("{figure}\u{a0}{unit}")
}

/// A length of time in s as a number and the unit of its last figure: "3 h 25" and "min".
fn duration_parts(seconds: f64) -> (String, &'static str) {
    parts(rough_minutes(seconds), [MINUTE, "h"])
}

/// Two lengths of time as a band: "3 h 20 – 3 h 55" and "min"; one where they read alike. It
/// may be parted at the dash.
#[must_use]
pub fn duration_span([low, high]: [f64; 2]) -> (String, &'static str) {
    let (figure, unit) = duration_parts(high);
    let (from, its) = duration_parts(low);
    if (from.as_str(), its) == (figure.as_str(), unit) {
        (figure, unit)
    } else if its == unit {
        (format!("{from} – {figure}"), unit)
    } else {
        (format!("{from}\u{a0}{its} – {figure}"), unit)
    }
}

/// The same in one: "3 h 25 min".
#[must_use]
pub fn duration(seconds: f64) -> String {
    let (figure, unit) = duration_parts(seconds);
    format!("{figure}\u{a0}{unit}")
}

/// What the clock shows so long, s, before eight in the morning: "4:35", "22:10 the day before".
#[must_use]
pub fn before_eight(seconds: f64) -> String {
    const DAY: u32 = 24 * 60;
    let back = rough_minutes(seconds);
    let days = (back + DAY - 8 * 60 - 1) / DAY;
    let clock = 8 * 60 + days * DAY - back;
    let when = match days {
        0 => String::new(),
        1 => " the day before".into(),
        days => format!(", {days} days before"),
    };
    format!("{}:{:02}{when}", clock / 60, clock % 60)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn as_people_say_it() {
        // By hand.
        let said = [0.0, 95.0, 3569.0, 3571.0, 5400.0, 12_400.0, 172_800.0].map(duration);
        let wanted = ["0 min", "2 min", "59 min", "1 h", "1 h 30 min", "3 h 25 min", "48 h"];
        assert_eq!(said.map(|text| text.replace('\u{a0}', " ")), wanted);
        assert_eq!(duration(f64::NAN), "0\u{a0}min");
    }

    #[test]
    fn bands_of_time() {
        // By hand.
        let said = |low: f64, high: f64| {
            let (figure, unit) = duration_span([low * 60.0, high * 60.0]);
            format!("{figure} {unit}").replace('\u{a0}', " ")
        };
        assert_eq!(said(200.0, 235.0), "3 h 20 – 3 h 55 min");
        assert_eq!(said(120.0, 135.0), "2 h – 2 h 15 min");
        assert_eq!(said(115.0, 120.0), "1 h 55 min – 2 h");
        assert_eq!(said(41.0, 48.0), "41 – 48 min");
        assert_eq!(said(201.0, 202.0), "3 h 20 min");
    }

    #[test]
    fn before_eight_in_the_morning() {
        // By hand.
        let hours = [0.0, 3.4166, 8.0, 8.0833, 32.0, 33.0].map(|h| before_eight(h * 3600.0));
        let wanted = [
            "8:00",
            "4:35",
            "0:00",
            "23:55 the day before",
            "0:00 the day before",
            "23:00, 2 days before",
        ];
        assert_eq!(hours, wanted);
    }

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
