//! The cut, on a small program that the real compiler made.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;
use std::process::Command;

use pitchline_site::{Pieces, split};
use wasmparser::{
    ElementItems, ElementKind, ExternalKind, FuncType, Operator, Parser, Payload, TypeRef,
};

use crate::folder::Folder;

/// `later::door` is the way to what comes later: a text, a function that only it calls, one that
/// it finds through a table of data, and one that is needed at once as well.
const PROGRAM: &str = r#"
use std::hint::black_box;

mod later {
    #[inline(never)]
    pub fn door(number: u32, weight: f64) -> f64 {
        let text = std::hint::black_box("only later text");
        let turn = super::TURNS[number as usize % 2];
        super::only_later(text.len() as u32, weight) + turn(number) + super::both(number)
    }
}

static TURNS: [fn(u32) -> f64; 2] = [by_table, by_table_too];

#[inline(never)]
fn by_table(number: u32) -> f64 { f64::from(black_box(number)) * 11.0 }
#[inline(never)]
fn by_table_too(number: u32) -> f64 { f64::from(black_box(number)) * 13.0 }

#[inline(never)]
fn only_later(number: u32, weight: f64) -> f64 { black_box(f64::from(number)) * weight + 17.0 }

#[inline(never)]
fn both(number: u32) -> f64 {
    let text = black_box("text of both");
    f64::from(number) * 19.0 + f64::from(text.as_bytes()[number as usize % text.len()])
}

#[unsafe(no_mangle)]
pub extern "C" fn at_once(number: u32) -> f64 {
    both(number) + black_box("only first text").len() as f64
}

#[unsafe(no_mangle)]
pub extern "C" fn in_time(number: u32) -> f64 { later::door(number, 2.5) }
"#;

/// The program as the linker leaves it; the room behind its door is called so.
fn linked(test: &str, room: &str, flags: &[&str]) -> Vec<u8> {
    let folder = Folder::new(test);
    folder.write(
        "program.rs",
        PROGRAM
            .replace("later::", room)
            .replace("mod later", &format!("mod {}", room.trim_end_matches("::"))),
    );
    let output = folder.path().join("program.wasm");
    let status = Command::new("rustc")
        .args(["--edition=2024", "--crate-name=pitchline_web", "--crate-type=cdylib"])
        .args(["--target=wasm32-unknown-unknown", "-Copt-level=2", "-Cpanic=abort", "-Clto=fat"])
        .args(flags)
        .arg("-o")
        .arg(&output)
        .arg(folder.path().join("program.rs"))
        // Where the compiler of this repository is named.
        .current_dir(Path::new(env!("CARGO_MANIFEST_DIR")))
        .status();
    assert!(status.expect("the compiler runs").success(), "the program is compiled");
    fs::read(output).expect("the program is there")
}

const RELOCATIONS: &str = "-Clink-arg=--emit-relocs";

fn cut(test: &str) -> Pieces {
    let module = linked(test, "later::", &[RELOCATIONS]);
    split(&module, &module).expect("it can be cut")
}

fn holds(piece: &[u8], text: &str) -> bool {
    piece.windows(text.len()).any(|part| part == text.as_bytes())
}

/// What a piece shows to the other one.
#[derive(Default)]
struct Outside {
    types: Vec<FuncType>,
    functions: Vec<u32>,
    exports: BTreeMap<String, (ExternalKind, u32)>,
    imports: Vec<(String, String, TypeRef)>,
    /// The least length of the table, and which of its places are filled.
    table: u64,
    filled: BTreeSet<u32>,
    bodies: usize,
}

impl Outside {
    fn of(piece: &[u8]) -> Self {
        let mut found = Outside::default();
        for payload in Parser::new(0).parse_all(piece) {
            match payload.expect("a piece can be read") {
                Payload::TypeSection(types) => {
                    found.types = types.into_iter_err_on_gc_types().map(Result::unwrap).collect();
                }
                Payload::ImportSection(imports) => {
                    for import in imports.into_imports().map(Result::unwrap) {
                        if let TypeRef::Func(kind) = import.ty {
                            found.functions.push(kind);
                        }
                        if let TypeRef::Table(table) = import.ty {
                            found.table = table.initial;
                        }
                        found.imports.push((import.module.into(), import.name.into(), import.ty));
                    }
                }
                Payload::FunctionSection(kinds) => {
                    found.functions.extend(kinds.into_iter().map(Result::unwrap));
                }
                Payload::TableSection(tables) => {
                    found.table = tables.into_iter().next().expect("a table").unwrap().ty.initial;
                }
                Payload::ExportSection(exports) => {
                    for export in exports.into_iter().map(Result::unwrap) {
                        found.exports.insert(export.name.into(), (export.kind, export.index));
                    }
                }
                Payload::ElementSection(elements) => {
                    for element in elements.into_iter().map(Result::unwrap) {
                        let ElementKind::Active { offset_expr, .. } = element.kind else {
                            panic!()
                        };
                        let Ok(Operator::I32Const { value }) =
                            offset_expr.get_operators_reader().read()
                        else {
                            panic!()
                        };
                        let ElementItems::Functions(items) = element.items else { panic!() };
                        found.filled.extend((value as u32..).take(items.count() as usize));
                    }
                }
                Payload::CodeSectionEntry(_) => found.bodies += 1,
                _ => {}
            }
        }
        found
    }

    fn kind(&self, function: u32) -> &FuncType {
        &self.types[self.functions[function as usize] as usize]
    }
}

#[test]
fn what_only_the_door_leads_to_is_later() {
    let Pieces { first, later } = cut("split-where");
    for (text, in_first, in_later) in [
        ("only first text", true, false),
        ("text of both", true, false),
        ("only later text", false, true),
    ] {
        assert_eq!(holds(&first, text), in_first, "{text:?} in the first piece");
        assert_eq!(holds(&later, text), in_later, "{text:?} in the later piece");
    }
    // The factors of the functions, as the bytes of their constants.
    for (factor, is_late) in [(11.0_f64, true), (13.0, true), (17.0, true), (19.0, false)] {
        let bytes = factor.to_le_bytes();
        let has = |piece: &[u8]| piece.windows(8).any(|part| part == bytes);
        assert_eq!((has(&first), has(&later)), (!is_late, is_late), "the function with {factor}");
    }
    for piece in [&first, &later] {
        for left in ["linking", "reloc.CODE", "only_later"] {
            assert!(!holds(piece, left), "{left} is of no use to a reader");
        }
    }
}

#[test]
fn the_pieces_fit_together() {
    let pieces = cut("split-fit");
    let (first, later) = (Outside::of(&pieces.first), Outside::of(&pieces.later));
    assert!(!later.imports.is_empty());
    for (module, name, ty) in &later.imports {
        assert_eq!(module, "p");
        let (kind, index) = first.exports.get(name).expect("the first piece exports it");
        match ty {
            TypeRef::Func(of) => {
                assert_eq!(*kind, ExternalKind::Func);
                assert_eq!(first.kind(*index), &later.types[*of as usize], "{name}");
            }
            TypeRef::Table(_) => assert_eq!(*kind, ExternalKind::Table),
            TypeRef::Memory(_) => assert_eq!(*kind, ExternalKind::Memory),
            TypeRef::Global(_) => assert_eq!(*kind, ExternalKind::Global),
            other => panic!("{other:?}"),
        }
    }
    // Each has places in the table of its own; the last is for the door, which was in none.
    assert_eq!(first.table, later.table);
    assert!(first.filled.is_disjoint(&later.filled));
    assert_eq!(later.filled.len(), 3, "two functions by table, and the door");
    assert_eq!(later.filled.last(), Some(&(first.table as u32 - 1)));
    // The door is there twice: as itself, and as what stands for it.
    let whole = Outside::of(&linked("split-fit-whole", "later::", &[RELOCATIONS]));
    assert_eq!(first.bodies + later.bodies, whole.bodies + 1);
    for name in ["at_once", "in_time", "memory"] {
        assert!(first.exports.contains_key(name), "{name}");
    }
}

#[test]
fn the_same_program_is_cut_alike() {
    let module = linked("split-alike", "later::", &[RELOCATIONS]);
    let cut = || split(&module, &module).expect("it can be cut");
    let (one, other) = (cut(), cut());
    assert!(one.first == other.first && one.later == other.later);
}

#[test]
fn what_cannot_be_cut_is_refused() {
    let refused =
        |linked: &[u8], bound: &[u8]| split(linked, bound).expect_err("it is refused").to_string();
    let open = linked("split-open", "sooner::", &[RELOCATIONS]);
    let fault = refused(&open, &open);
    assert!(fault.contains("pitchline_web::later::"), "{fault}");
    let plain = linked("split-plain", "later::", &[]);
    let fault = refused(&plain, &plain);
    assert!(fault.contains("does not say what refers to what"), "{fault}");
    assert!(refused(b"text", &open).contains("linker"));
    assert!(refused(&open, b"text").contains("module"));
}
