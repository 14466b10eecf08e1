//! Reads an expression as it is printed, and evaluates it.
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

#[derive(Debug)]
pub(super) enum Expr {
    Number(f64),
    Symbol(String),
    Of(Function, Box<Expr>),
    Both(fn(f64, f64) -> f64, Box<Expr>, Box<Expr>),
}

impl Expr {
    pub(super) fn value(&self, values: &Values) -> f64 {
        match self {
            Self::Number(number) => *number,
            // The parser lets known symbols pass alone.
            Self::Symbol(symbol) => values[symbol],
            Self::Of(function, inner) => function(inner.value(values)),
            Self::Both(function, one, other) => function(one.value(values), other.value(values)),
        }
    }
}

/// A whole text as one expression.
pub(super) fn whole(text: &str, names: &[&str]) -> Result<Expr, String> {
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
