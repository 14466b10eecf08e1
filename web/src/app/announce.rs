//! The answers for who does not see them, once an edit and its bands have settled.

use super::store::App;
use super::sure::Banded;
use crate::text::answer;
use leptos::prelude::*;
use std::time::Duration;

/// After the last change, until the answers are read out.
const SETTLED: Duration = Duration::from_millis(1000);

impl App {
    /// Begins to read answers out, and goes on for as long as the page lives. Those at the start
    /// are no edit: they are only kept.
    pub fn begin_announcing(self) {
        let timer = StoredValue::new(None::<TimeoutHandle>);
        // What was said last, and of which answers.
        let last = StoredValue::new((None::<u32>, String::new()));
        Effect::new(move |_| {
            // A later change has its own turn, as have the end of a fault and a band.
            let now = self.found().map(|found| found.count);
            self.style.track();
            let settled = !self.waits() && !self.unsure();
            if let Some(timer) = timer.try_update_value(Option::take).flatten() {
                timer.clear();
            }
            if !settled {
                return;
            }
            let say = move || {
                let sentence = untrack(|| self.sentence());
                let (before, said) = last.get_value();
                last.set_value((now, sentence.clone()));
                if before.is_some() && said != sentence {
                    self.heard.set(sentence);
                }
            };
            timer.set_value(set_timeout_with_handle(say, SETTLED).ok());
        });
    }

    fn sentence(self) -> String {
        let Some(found) = self.found() else { return String::new() };
        let (answers, style) = (&found.answers, self.style());
        let band = |of, now| self.sure(of).about(now);
        let speed = band(Banded::Speed, answers.speed.flat_full.speed_m_s);
        let hill = band(Banded::Hill, answers.climb.slow.grade);
        let far = band(Banded::Distance, answers.distance.cruise.distance_m);
        answer::aloud(
            &answer::top_speed(answers, speed, style),
            &answer::slow_hill(answers, hill, style),
            &answer::cruise_distance(answers, far, style),
        )
    }
}
