//! Lengths of time as people say them.

/// Whole minutes: to a minute within the hour, to five beyond, since no charger's label supports more.
fn minutes(seconds: f64) -> u32 {
    let minutes = seconds / 60.0;
    // Far more than any charge takes; a cast of what is no number gives 0.
    if minutes < 59.5 { minutes.round() as u32 } else { 5 * (minutes / 5.0).round() as u32 }
}

/// A length of time in s as a number and the unit of its last figure: "3 h 25" and "min".
#[must_use]
pub fn duration_parts(seconds: f64) -> (String, &'static str) {
    let minutes = minutes(seconds);
    match (minutes / 60, minutes % 60) {
        (0, minutes) => (minutes.to_string(), "min"),
        (hours, 0) => (hours.to_string(), "h"),
        (hours, minutes) => (format!("{hours}\u{a0}h\u{a0}{minutes}"), "min"),
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
    let back = minutes(seconds);
    let days = (back + DAY - 8 * 60 - 1) / DAY;
    let clock = 8 * 60 + days * DAY - back;
    let when = match days {
        0 => String::new(),
        1 => " the day before".into(),
        days => format!(" {days} days before"),
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
    fn before_eight_in_the_morning() {
        // By hand.
        let hours = [0.0, 3.4166, 8.0, 8.0833, 32.0, 33.0].map(|h| before_eight(h * 3600.0));
        let wanted = [
            "8:00",
            "4:35",
            "0:00",
            "23:55 the day before",
            "0:00 the day before",
            "23:00 2 days before",
        ];
        assert_eq!(hours, wanted);
    }
}
