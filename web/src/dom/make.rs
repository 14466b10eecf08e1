//! From the description to the DOM.

use super::event::Event;
use super::node::{Node, Parts};
use reactive_graph::effect::RenderEffect;
use reactive_graph::graph::untrack;
use reactive_graph::owner::Owner;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Document, HtmlInputElement, HtmlSelectElement};

const SVG: &str = "http://www.w3.org/2000/svg";

/// Shows a text, or that there is none.
type Show = Box<dyn Fn(Option<&str>)>;
type Effects = Vec<RenderEffect<Made>>;
type Listener = Closure<dyn FnMut(web_sys::Event)>;

/// What a living part holds: its last text or key, what it made, and what
/// keeps that alive. Dropping it stops it.
#[derive(Default)]
#[allow(dead_code, reason = "`alive` is held, not read")]
struct Made {
    said: Option<String>,
    nodes: Vec<web_sys::Node>,
    alive: Alive,
}

#[derive(Default)]
struct Alive {
    effects: Effects,
    listeners: Vec<Listener>,
    /// Of the signals made with it; goes after what follows them.
    owner: Option<Owner>,
}

/// Keeps what was mounted alive.
pub struct Handle(#[allow(dead_code, reason = "held, not read")] Alive);

/// Puts a node at the end of an element.
pub fn mount(place: &web_sys::Element, node: Node) -> Handle {
    let mut alive = Alive::default();
    if let Some(document) = place.owner_document() {
        for made in build(&document, node, &mut alive) {
            let _ = place.append_child(&made);
        }
    }
    Handle(alive)
}

/// Makes the nodes of a description.
fn build(document: &Document, node: Node, alive: &mut Alive) -> Vec<web_sys::Node> {
    match node {
        Node::None => Vec::new(),
        Node::Text(text) => vec![document.create_text_node(&text).into()],
        Node::Said(text) => {
            let place = document.create_text_node("");
            let shown = place.clone();
            follow(
                alive,
                Box::new(move || Some(text())),
                Box::new(move |text| {
                    shown.set_data(text.unwrap_or_default());
                }),
            );
            vec![place.into()]
        }
        Node::List(list) => list.into_iter().flat_map(|n| build(document, n, alive)).collect(),
        Node::Element(element) => element_of(document, *element.0, alive).into_iter().collect(),
        Node::Live(key, view) => living(document, key, view, alive),
    }
}

/// An effect that hands over a text whenever it has changed.
fn follow(alive: &mut Alive, text: Box<dyn Fn() -> Option<String>>, show: Show) {
    run(
        alive,
        Box::new(move |before| {
            let said = text();
            if before.as_ref().is_none_or(|before| before.said != said) {
                show(said.as_deref());
            }
            Made { said, ..Made::default() }
        }),
    );
}

/// All effects are of one type, so that the reactive core is compiled once.
fn run(alive: &mut Alive, effect: Box<dyn Fn(Option<Made>) -> Made>) {
    alive.effects.push(RenderEffect::new(effect));
}

fn living(
    document: &Document,
    key: Box<dyn Fn() -> String>,
    view: Box<dyn Fn() -> Node>,
    alive: &mut Alive,
) -> Vec<web_sys::Node> {
    // Stands behind what is made, and says where the next goes.
    let end: web_sys::Node = document.create_text_node("").into();
    let first = std::rc::Rc::new(std::cell::RefCell::new(Vec::new()));
    // What the view makes lives until it is made anew. The effect's own would go with each run of
    // it, also with those that find the same key.
    let outer = Owner::current().unwrap_or_default();
    let (handed, at, document) = (first.clone(), end.clone(), document.clone());
    run(
        alive,
        Box::new(move |before| {
            let key = key();
            let before = match before {
                Some(before) if before.said.as_ref() == Some(&key) => return before,
                before => before.unwrap_or_default(),
            };
            for node in &before.nodes {
                if let Some(parent) = node.parent_node() {
                    let _ = parent.remove_child(node);
                }
            }
            drop(before);
            let owner = outer.child();
            let mut alive = Alive::default();
            let nodes = untrack(|| owner.with(|| build(&document, view(), &mut alive)));
            alive.owner = Some(owner);
            match at.parent_node() {
                Some(parent) => {
                    for node in &nodes {
                        let _ = parent.insert_before(node, Some(&at));
                    }
                }
                // The first time nothing stands on the page yet.
                None => handed.borrow_mut().extend(nodes.iter().cloned()),
            }
            Made { said: Some(key), nodes, alive }
        }),
    );
    let mut nodes = first.take();
    nodes.push(end);
    nodes
}

fn element_of(document: &Document, element: Parts, alive: &mut Alive) -> Option<web_sys::Node> {
    let made = if element.svg {
        document.create_element_ns(Some(SVG), element.tag).ok()?
    } else {
        document.create_element(element.tag).ok()?
    };
    for (name, value) in &element.fixed {
        let _ = made.set_attribute(name, value);
    }
    for (name, value) in element.following {
        let target = made.clone();
        follow(
            alive,
            value,
            Box::new(move |value| {
                let _ = match value {
                    Some(value) => target.set_attribute(name, value),
                    None => target.remove_attribute(name),
                };
            }),
        );
    }
    for node in element.inside.into_iter().flat_map(|n| build(document, n, alive)) {
        let _ = made.append_child(&node);
    }
    // After the options of a list are there.
    if let Some(value) = element.value {
        let target = made.clone();
        follow(alive, value, Box::new(move |value| set_value(&target, value.unwrap_or_default())));
    }
    for (name, handler) in element.handlers {
        let told: Listener = Closure::new(move |event| handler(&Event(event)));
        let _ = made.add_event_listener_with_callback(name, told.as_ref().unchecked_ref());
        alive.listeners.push(told);
    }
    if let Some(then) = element.made {
        then(&made);
    }
    Some(made.into())
}

fn set_value(target: &web_sys::Element, value: &str) {
    if let Some(input) = target.dyn_ref::<HtmlInputElement>() {
        // Setting the same text would move the caret.
        if input.value() != value {
            input.set_value(value);
        }
    } else if let Some(list) = target.dyn_ref::<HtmlSelectElement>() {
        list.set_value(value);
    }
}
