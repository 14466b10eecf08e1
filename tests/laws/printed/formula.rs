//! Reads a right-hand side as it is printed, and evaluates it.
//!
//! Products are written side by side: `m g C_rr`. A number that touches what
//! follows belongs to it first: `a / 2b` is `a / (2 b)`, while `a / b c` is
//! `(a / b) c`. A function or root without brackets takes the one thing behind
//! it. Lengths and masses among the numbers carry their unit: `2.5 mm`. Angles
//! are in radians throughout.

use std::collections::HashMap;

type Function = fn(f64) -> f64;

/// Values by symbol.
pub(crate) type Values = HashMap<String, f64>;

/// A value, and whether a condition or a bound of the formula had a say in it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Outcome {
    pub(crate) value: f64,
    pub(crate) bound: bool,
}

#[derive(Debug)]
enum Expr {
    Number(f64),
    Symbol(String),
    Of(Function, Box<Expr>),
    Both(fn(f64, f64) -> f64, Box<Expr>, Box<Expr>),
}

impl Expr {
    fn value(&self, values: &Values) -> f64 {
        match self {
            Self::Number(number) => *number,
            // The parser lets known symbols pass alone.
            Self::Symbol(symbol) => values[symbol],
            Self::Of(function, inner) => function(inner.value(values)),
            Self::Both(function, one, other) => function(one.value(values), other.value(values)),
        }
    }
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
    /// `where A = B`: the result makes both alike.
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
        if head.starts_with("where ") {
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
            [only] => match only.strip_prefix("where ") {
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

/// A whole text as one expression.
fn whole(text: &str, names: &[&str]) -> Result<Expr, String> {
    let mut reader = Reader { rest: text, names, bars: false };
    let expr = reader.sum()?;
    if reader.rest.is_empty() { Ok(expr) } else { Err(format!("what is \"{}\"?", reader.rest)) }
}

/// Letters of the alphabets, digits and the underscore go on with a name.
fn goes_on(rest: &str) -> bool {
    rest.chars().next().is_some_and(|c| c.is_alphanumeric() && !"²³½¼¾⅓".contains(c) || c == '_')
}

/// Functions by name, angles in radians.
const FUNCTIONS: [(&str, Function); 7] = [
    ("asin", f64::asin),
    ("acos", f64::acos),
    ("atan", f64::atan),
    ("sin", f64::sin),
    ("cos", f64::cos),
    ("tan", f64::tan),
    ("exp", f64::exp),
];

/// Units that a number may carry, in SI; of time in hours, as charge is in ampere-hours.
const UNITS: [(&str, f64); 4] = [(" mm", 1e-3), (" m", 1.0), (" kg", 1.0), (" h", 1.0)];

const FRACTIONS: [(char, f64); 4] = [('½', 0.5), ('¼', 0.25), ('¾', 0.75), ('⅓', 1.0 / 3.0)];

struct Reader<'a> {
    rest: &'a str,
    /// Known symbols, longest first.
    names: &'a [&'a str],
    /// Whether a bar would close.
    bars: bool,
}

impl Reader<'_> {
    fn eat(&mut self, text: &str) -> bool {
        match self.rest.strip_prefix(text) {
            Some(rest) => {
                self.rest = rest;
                true
            }
            None => false,
        }
    }

    fn need(&mut self, text: &str) -> Result<(), String> {
        if self.eat(text) { Ok(()) } else { Err(format!("no \"{text}\" at \"{}\"", self.rest)) }
    }

    fn sum(&mut self) -> Result<Expr, String> {
        let mut total = if self.eat("−") {
            Expr::Of(|x| -x, Box::new(self.product()?))
        } else {
            self.product()?
        };
        loop {
            let function: fn(f64, f64) -> f64 = if self.eat(" + ") {
                |a, b| a + b
            } else if self.eat(" − ") {
                |a, b| a - b
            } else {
                return Ok(total);
            };
            total = Expr::Both(function, Box::new(total), Box::new(self.product()?));
        }
    }

    fn product(&mut self) -> Result<Expr, String> {
        let mut total = self.factor()?;
        loop {
            let before = self.rest;
            let function: fn(f64, f64) -> f64 = if self.eat(" / ") {
                |a, b| a / b
            } else if self.eat(" · ") || self.eat(" ") {
                |a, b| a * b
            } else {
                return Ok(total);
            };
            if !self.begins() {
                self.rest = before;
                return Ok(total);
            }
            total = Expr::Both(function, Box::new(total), Box::new(self.factor()?));
        }
    }

    /// Whether a factor begins here.
    fn begins(&self) -> bool {
        let Some(first) = self.rest.chars().next() else { return false };
        first.is_ascii_digit()
            || "(√π½¼¾⅓".contains(first)
            || first == '|' && !self.bars
            || ["the greater of ", "the lesser of "].iter().any(|text| self.rest.starts_with(text))
            || self.symbol().is_some()
            || self.function().is_some()
    }

    fn symbol(&self) -> Option<usize> {
        let known =
            |name: &&&str| self.rest.strip_prefix(**name).is_some_and(|rest| !goes_on(rest));
        self.names.iter().find(known).map(|name| name.len())
    }

    fn function(&self) -> Option<(usize, Function)> {
        let called = |(name, _): &&(&str, Function)| {
            self.rest.strip_prefix(*name).is_some_and(|rest| rest.starts_with(['(', ' ']))
        };
        FUNCTIONS.iter().find(called).map(|(name, function)| (name.len(), *function))
    }

    /// A primary with its powers; a number together with what touches it.
    fn factor(&mut self) -> Result<Expr, String> {
        let number = self.rest.starts_with(|c: char| c.is_ascii_digit());
        let mut total = self.primary()?;
        if number && !self.rest.starts_with([' ', '^']) && self.begins() {
            let next = self.factor()?;
            return Ok(Expr::Both(|a, b| a * b, Box::new(total), Box::new(next)));
        }
        loop {
            total = if self.eat("²") {
                Expr::Of(|x| x * x, Box::new(total))
            } else if self.eat("³") {
                Expr::Of(|x| x * x * x, Box::new(total))
            } else if self.eat("^") {
                Expr::Both(f64::powf, Box::new(total), Box::new(self.primary()?))
            } else if self.eat(" rounded down") {
                Expr::Of(f64::floor, Box::new(total))
            } else {
                return Ok(total);
            };
        }
    }

    fn primary(&mut self) -> Result<Expr, String> {
        if let Some(length) = self.symbol() {
            let (name, rest) = self.rest.split_at(length);
            self.rest = rest;
            return Ok(Expr::Symbol(name.to_owned()));
        }
        if let Some((length, function)) = self.function() {
            self.rest = &self.rest[length..];
            self.eat(" ");
            return Ok(Expr::Of(function, Box::new(self.primary()?)));
        }
        if self.eat("√") {
            return Ok(Expr::Of(f64::sqrt, Box::new(self.primary()?)));
        }
        if self.eat("(") {
            let bars = std::mem::take(&mut self.bars);
            let inner = self.sum()?;
            self.bars = bars;
            self.need(")")?;
            return Ok(inner);
        }
        if !self.bars && self.eat("|") {
            self.bars = true;
            let inner = self.sum()?;
            self.bars = false;
            self.need("|")?;
            return Ok(Expr::Of(f64::abs, Box::new(inner)));
        }
        for (words, function) in
            [("the greater of ", f64::max as fn(f64, f64) -> f64), ("the lesser of ", f64::min)]
        {
            if self.eat(words) {
                let one = self.sum()?;
                self.need(" and ")?;
                return Ok(Expr::Both(function, Box::new(one), Box::new(self.sum()?)));
            }
        }
        if self.eat("π") {
            return Ok(Expr::Number(std::f64::consts::PI));
        }
        for (letter, value) in FRACTIONS {
            if self.rest.starts_with(letter) {
                self.rest = &self.rest[letter.len_utf8()..];
                return Ok(Expr::Number(value));
            }
        }
        self.number()
    }

    fn number(&mut self) -> Result<Expr, String> {
        let end = self.rest.find(|c: char| !c.is_ascii_digit() && c != '.');
        let (digits, rest) = self.rest.split_at(end.unwrap_or(self.rest.len()));
        let number: f64 = digits.parse().map_err(|_| format!("what is \"{}\"?", self.rest))?;
        self.rest = rest;
        let symbol = rest
            .strip_prefix(' ')
            .is_some_and(|rest| Reader { rest, names: self.names, bars: false }.symbol().is_some());
        for (unit, scale) in UNITS {
            if !symbol && rest.strip_prefix(unit).is_some_and(|rest| !goes_on(rest)) {
                self.rest = &rest[unit.len()..];
                return Ok(Expr::Number(number * scale));
            }
        }
        Ok(Expr::Number(number))
    }
}
