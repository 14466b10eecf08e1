//! What TypeScript declarations say of a value: as much of the language as `pitchline.d.ts` uses.

use serde_json::Value;
use std::collections::BTreeMap;

/// A type.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Type {
    Number,
    Text,
    Truth,
    Anything,
    /// The very text or number.
    Literal(Value),
    Named(String),
    List(Box<Type>),
    Tuple(Vec<Type>),
    Object(Vec<Field>),
    Union(Vec<Type>),
}

/// A key of an object.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Field {
    pub(crate) comment: String,
    pub(crate) key: String,
    pub(crate) optional: bool,
    pub(crate) form: Type,
}

/// All types that are declared, by name, each with its comment.
pub(crate) type Declared = BTreeMap<String, (String, Type)>;

/// Reads declarations.
#[track_caller]
pub(crate) fn read(text: &str) -> Declared {
    let mut reader = Reader(text);
    let mut declared = Declared::new();
    loop {
        let comment = reader.comment();
        if reader.0.is_empty() {
            return declared;
        }
        reader.must("export");
        if reader.takes("type") || reader.takes("interface") {
            let name = reader.word();
            reader.takes("=");
            let form = reader.form();
            reader.takes(";");
            assert!(!declared.contains_key(&name), "{name} is there twice");
            declared.insert(name, (comment, form));
        } else {
            let end = reader.0.find(";\n").expect("a function ends");
            reader.0 = &reader.0[end + 1..];
        }
    }
}

struct Reader<'a>(&'a str);

impl Reader<'_> {
    /// The words of the comments here; blanks are passed over.
    fn comment(&mut self) -> String {
        let mut words = Vec::new();
        loop {
            self.0 = self.0.trim_start();
            let (opens, closes) = if self.0.starts_with("/*") {
                ("/*", "*/")
            } else if self.0.starts_with("//") {
                ("//", "\n")
            } else {
                return words.join(" ");
            };
            let end = self.0.find(closes).expect("a comment ends");
            words.extend(
                self.0[opens.len()..end].split_whitespace().filter(|word| !word.starts_with('*')),
            );
            self.0 = &self.0[end + closes.len()..];
        }
    }

    fn takes(&mut self, mark: &str) -> bool {
        self.0 = self.0.trim_start();
        let rest = self.0.strip_prefix(mark);
        self.0 = rest.unwrap_or(self.0);
        rest.is_some()
    }

    #[track_caller]
    fn must(&mut self, mark: &str) {
        assert!(self.takes(mark), "{mark:?} is not at {:.60}", self.0);
    }

    #[track_caller]
    fn word(&mut self) -> String {
        self.0 = self.0.trim_start();
        let ends = |letter: char| !letter.is_alphanumeric() && letter != '_';
        let (word, rest) = self.0.split_at(self.0.find(ends).unwrap_or(self.0.len()));
        assert!(!word.is_empty(), "no word at {:.60}", self.0);
        self.0 = rest;
        word.into()
    }

    #[track_caller]
    fn quoted(&mut self) -> String {
        let (word, rest) = self.0.split_once('"').expect("a text ends");
        self.0 = rest;
        word.into()
    }

    #[track_caller]
    fn form(&mut self) -> Type {
        self.takes("|");
        let mut forms = vec![self.one()];
        while self.takes("|") {
            forms.push(self.one());
        }
        if forms.len() == 1 { forms.remove(0) } else { Type::Union(forms) }
    }

    #[track_caller]
    fn one(&mut self) -> Type {
        if self.takes("\"") {
            return Type::Literal(self.quoted().into());
        }
        if self.takes("[") {
            let mut forms = Vec::new();
            while !self.takes("]") {
                forms.push(self.form());
                self.takes(",");
            }
            return Type::Tuple(forms);
        }
        if self.takes("{") {
            return self.object();
        }
        let word = self.word();
        match word.as_str() {
            "number" => Type::Number,
            "string" => Type::Text,
            "boolean" => Type::Truth,
            "unknown" => Type::Anything,
            "Array" => {
                self.must("<");
                let form = self.form();
                self.must(">");
                Type::List(Box::new(form))
            }
            _ => match word.parse::<u32>() {
                Ok(number) => Type::Literal(number.into()),
                Err(_) => Type::Named(word),
            },
        }
    }

    #[track_caller]
    fn object(&mut self) -> Type {
        let mut fields = Vec::new();
        loop {
            let comment = self.comment();
            if self.takes("}") {
                return Type::Object(fields);
            }
            if self.takes("[comment: `$${string}`]: unknown;") {
                continue;
            }
            let key = if self.takes("\"") { self.quoted() } else { self.word() };
            let optional = self.takes("?");
            self.must(":");
            fields.push(Field { comment, key, optional, form: self.form() });
            let _ = self.takes(",") || self.takes(";");
        }
    }
}

/// Where a value is not of a type.
pub(crate) fn faults(declared: &Declared, form: &Type, value: &Value, path: &str) -> Vec<String> {
    let fault = || vec![format!("{path}: {value:.80} is not {form:.80?}")];
    let deeper = |form, value, key: &str| faults(declared, form, value, &format!("{path}/{key}"));
    match (form, value) {
        (Type::Number, Value::Number(_)) | (Type::Text, Value::String(_)) => Vec::new(),
        (Type::Truth, Value::Bool(_)) | (Type::Anything, _) => Vec::new(),
        (Type::Literal(literal), value) if literal == value => Vec::new(),
        (Type::Named(name), value) => match declared.get(name) {
            Some((_, form)) => faults(declared, form, value, path),
            None => vec![format!("{path}: {name} is not declared")],
        },
        (Type::List(form), Value::Array(list)) => list
            .iter()
            .enumerate()
            .flat_map(|(at, one)| deeper(form, one, &at.to_string()))
            .collect(),
        (Type::Tuple(forms), Value::Array(list)) if forms.len() == list.len() => {
            let pairs = forms.iter().zip(list).enumerate();
            pairs.flat_map(|(at, (form, one))| deeper(form, one, &at.to_string())).collect()
        }
        (Type::Object(fields), Value::Object(map)) => {
            let mut found = Vec::new();
            for key in map.keys().filter(|key| fields.iter().all(|field| field.key != **key)) {
                found.push(format!("{path}/{key} is not declared"));
            }
            for field in fields {
                match map.get(&field.key) {
                    Some(one) => found.extend(deeper(&field.form, one, &field.key)),
                    None if field.optional => {}
                    None => found.push(format!("{path}/{} is missing", field.key)),
                }
            }
            found
        }
        // What is nearest tells most.
        (Type::Union(forms), value) => {
            let each = forms.iter().map(|form| faults(declared, form, value, path));
            each.min_by_key(Vec::len).unwrap_or_else(fault)
        }
        _ => fault(),
    }
}

/// Every key by the path that leads there; one of a variant has the comment of its type.
pub(crate) fn fields(declared: &Declared) -> Vec<(String, Field)> {
    fn walk(path: &str, about: &str, form: &Type, found: &mut Vec<(String, Field)>) {
        match form {
            Type::Object(fields) => {
                // A variant is an object of one key.
                let about = if fields.len() == 1 { about } else { "" };
                for field in fields {
                    let path = format!("{path}.{}", field.key);
                    let comment = if field.comment.is_empty() { about } else { &field.comment };
                    walk(&path, "", &field.form, found);
                    found.push((path, Field { comment: comment.into(), ..field.clone() }));
                }
            }
            Type::Union(forms) | Type::Tuple(forms) => {
                forms.iter().for_each(|form| walk(path, about, form, found));
            }
            Type::List(form) => walk(path, "", form, found),
            _ => {}
        }
    }
    let mut found = Vec::new();
    for (name, (about, form)) in declared {
        walk(name, about, form, &mut found);
    }
    found
}

/// Whether there are numbers in a type itself.
pub(crate) fn has_numbers(form: &Type) -> bool {
    match form {
        Type::Number => true,
        Type::List(form) => has_numbers(form),
        Type::Tuple(forms) | Type::Union(forms) => forms.iter().any(has_numbers),
        _ => false,
    }
}
