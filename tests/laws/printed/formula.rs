//! Reads a right-hand side as it is printed: an expression or two, their
//! bounds, and the short names in them.

use super::expression::{Expr, Values, whole};

/// What leads an equation of which the result is the root.
const SUCH: &str = "the C at which ";

/// A value, and whether a condition or a bound of the formula had a say in it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Outcome {
    pub(crate) value: f64,
    pub(crate) bound: bool,
}

/// `one < other`, or the other way round.
#[derive(Debug)]
struct Test {
    less: Expr,
    more: Expr,
}

#[derive(Debug)]
enum Body {
    Plain(Expr),
    /// `A; B where X < Y`.
    Choice(Expr, Expr, Test),
    /// `the C at which A = B`: the result makes both alike.
    Equation(Expr, Expr),
}

#[derive(Debug)]
pub(crate) struct Formula {
    body: Body,
    /// `not below A`, `not above A`, `from A to B`.
    least: Option<Expr>,
    most: Option<Expr>,
    /// `B = k_T ω`, in the order in which they may need each other.
    given: Vec<(String, Expr)>,
}

impl Formula {
    /// Reads a text in which these symbols may stand; the result's own may in an equation.
    pub(crate) fn read(text: &str, inputs: &[&str], result: &str) -> Result<Self, String> {
        let mut parts = split(text, ", ");
        let head = parts.remove(0);
        let definition = |part: &str| match part.split_once(" = ") {
            Some((symbol, right)) if symbol.chars().count() == 1 => {
                Some((symbol.to_owned(), right.to_owned()))
            }
            _ => None,
        };
        let defined: Vec<_> = parts.iter().filter_map(|part| definition(part)).collect();
        let mut names: Vec<&str> = defined.iter().map(|(symbol, _)| symbol.as_str()).collect();
        names.extend(inputs);
        names.push("g");
        if head.starts_with(SUCH) {
            names.push(result);
        }
        names.sort_by_key(|name| std::cmp::Reverse(name.len()));
        let read = |text: &str| whole(text, &names);

        let (mut least, mut most, mut unlimited) = (None, None, false);
        for part in &parts {
            if let Some(bound) = part.strip_prefix("not below ") {
                least = Some(read(bound)?);
            } else if let Some(bound) = part.strip_prefix("not above ") {
                most = Some(read(bound)?);
            } else if let Some((low, high)) =
                part.strip_prefix("from ").and_then(|range| range.split_once(" to "))
            {
                (least, most) = (Some(read(low)?), Some(read(high)?));
            } else if *part == "else no limit" {
                unlimited = true;
            } else if part.strip_prefix("both at ").is_some_and(|at| inputs.contains(&at)) {
                // Says where two of the inputs come from.
            } else if definition(part).is_none() {
                return Err(format!("what is \"{part}\"?"));
            }
        }
        let body = match split(&head, "; ").as_slice() {
            [only] => match only.strip_prefix(SUCH) {
                Some(equation) => {
                    let (left, right) = equation.split_once(" = ").ok_or("no equation")?;
                    Body::Equation(read(left)?, read(right)?)
                }
                None if unlimited => {
                    let (value, test) = alternative(only, &read)?;
                    Body::Choice(Expr::Number(f64::INFINITY), value, test)
                }
                None => Body::Plain(read(only)?),
            },
            [first, second] => {
                let (value, test) = alternative(second, &read)?;
                Body::Choice(read(first)?, value, test)
            }
            _ => return Err("more than two alternatives".to_owned()),
        };
        // The last one needs nothing of the others.
        let given = defined.iter().rev().map(|(s, text)| Ok((s.clone(), read(text)?)));
        let given = given.collect::<Result<_, String>>()?;
        Ok(Self { body, least, most, given })
    }

    /// Whether there is a condition or a bound in it.
    pub(crate) fn is_conditional(&self) -> bool {
        matches!(self.body, Body::Choice(..)) || self.least.is_some() || self.most.is_some()
    }

    /// Its value; for an equation, the result that was asked about if it makes
    /// both sides alike within 1e-9, or is at the bound that is in the way.
    pub(crate) fn value(&self, inputs: &Values, result: (&str, f64)) -> Outcome {
        let mut values = inputs.clone();
        values.insert("g".to_owned(), 9.806_65);
        for (symbol, expr) in &self.given {
            let value = expr.value(&values);
            values.insert(symbol.clone(), value);
        }
        let least = self.least.as_ref().map_or(f64::NEG_INFINITY, |expr| expr.value(&values));
        let most = self.most.as_ref().map_or(f64::INFINITY, |expr| expr.value(&values));
        let (value, chosen) = match &self.body {
            Body::Plain(expr) => (expr.value(&values), false),
            Body::Choice(first, second, test) => {
                let holds = test.less.value(&values) < test.more.value(&values);
                ((if holds { second } else { first }).value(&values), holds)
            }
            Body::Equation(left, right) => {
                values.insert(result.0.to_owned(), result.1);
                let (left, right) = (left.value(&values), right.value(&values));
                let met = (left - right).abs() <= 1e-9 * right.abs();
                let stopped = result.1 == least && left > right || result.1 == most && left < right;
                return Outcome {
                    value: if met || stopped { result.1 } else { f64::INFINITY },
                    bound: stopped,
                };
            }
        };
        if value.is_nan() {
            return Outcome { value, bound: chosen };
        }
        let held = value.max(least).min(most);
        Outcome { value: held, bound: chosen || held != value }
    }
}

/// At a separator outside of brackets.
fn split(text: &str, separator: &str) -> Vec<String> {
    let (mut parts, mut depth, mut from) = (Vec::new(), 0, 0);
    for (at, letter) in text.char_indices() {
        match letter {
            '(' => depth += 1,
            ')' => depth -= 1,
            _ if depth == 0 && at >= from && text[at..].starts_with(separator) => {
                parts.push(text[from..at].to_owned());
                from = at + separator.len();
            }
            _ => {}
        }
    }
    parts.push(text[from..].to_owned());
    parts
}

/// `A where X < Y`.
fn alternative(
    text: &str,
    read: &dyn Fn(&str) -> Result<Expr, String>,
) -> Result<(Expr, Test), String> {
    let (value, test) = text.split_once(" where ").ok_or(format!("when is \"{text}\"?"))?;
    let (less, more) = match (test.split_once(" < "), test.split_once(" > ")) {
        (Some((less, more)), None) | (None, Some((more, less))) => (less, more),
        _ => return Err(format!("what is \"{test}\"?")),
    };
    Ok((read(value)?, Test { less: read(less)?, more: read(more)? }))
}
