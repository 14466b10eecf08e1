//! What an element is, before it exists.

use super::event::Event;
use std::borrow::Cow;

/// Text, most of it known beforehand.
pub type Text = Cow<'static, str>;

/// Anything that can stand on the page.
#[derive(Default)]
pub enum Node {
    /// Nothing.
    #[default]
    None,
    /// Fixed text.
    Text(Text),
    /// Text that follows signals.
    Said(Box<dyn Fn() -> String>),
    /// An element.
    Element(Element),
    /// Several, one after the other.
    List(Vec<Node>),
    /// Something made anew whenever its key changes.
    Live(Box<dyn Fn() -> String>, Box<dyn Fn() -> Node>),
}

/// A handler of an event.
pub(super) type Handler = Box<dyn Fn(&Event)>;
/// A value that follows signals; without it the attribute is absent.
pub(super) type Follow = Box<dyn Fn() -> Option<String>>;

/// Told of the element once it exists.
pub(super) type Made = Box<dyn FnOnce(&web_sys::Element)>;

/// An element, its attributes, its handlers and what it holds.
///
/// Its methods are kept out of line: they are called a thousand times.
pub struct Element(pub(super) Box<Parts>);

/// What an element is made of.
pub(super) struct Parts {
    pub(super) tag: &'static str,
    pub(super) svg: bool,
    pub(super) fixed: Vec<(&'static str, Text)>,
    pub(super) following: Vec<(&'static str, Follow)>,
    pub(super) value: Option<Follow>,
    pub(super) handlers: Vec<(&'static str, Handler)>,
    pub(super) made: Option<Made>,
    pub(super) inside: Vec<Node>,
}

/// An HTML element.
#[must_use]
#[inline(never)]
pub fn el(tag: &'static str) -> Element {
    Element(Box::new(Parts {
        tag,
        svg: false,
        fixed: Vec::new(),
        following: Vec::new(),
        value: None,
        handlers: Vec::new(),
        made: None,
        inside: Vec::new(),
    }))
}

/// An SVG element.
#[must_use]
pub fn svg(tag: &'static str) -> Element {
    let mut element = el(tag);
    element.0.svg = true;
    element
}

/// Text that follows signals.
pub fn said(text: impl Fn() -> String + 'static) -> Node {
    Node::Said(Box::new(text))
}

/// Something made anew when `key` changes, and only then. Signals read in
/// `view` are not followed: what it depends on belongs into the key.
pub fn live(key: impl Fn() -> String + 'static, view: impl Fn() -> Node + 'static) -> Node {
    Node::Live(Box::new(key), Box::new(view))
}

impl Element {
    /// A fixed attribute.
    #[must_use]
    pub fn attr(self, name: &'static str, value: impl Into<Text>) -> Self {
        self.put(name, value.into())
    }

    #[inline(never)]
    fn put(mut self, name: &'static str, value: Text) -> Self {
        self.0.fixed.push((name, value));
        self
    }

    /// The class.
    #[must_use]
    pub fn class(self, class: &'static str) -> Self {
        self.put("class", Cow::Borrowed(class))
    }

    /// An attribute that follows signals.
    #[must_use]
    pub fn follow(self, name: &'static str, value: impl Fn() -> Option<String> + 'static) -> Self {
        self.put_follow(name, Box::new(value))
    }

    #[inline(never)]
    fn put_follow(mut self, name: &'static str, value: Follow) -> Self {
        self.0.following.push((name, value));
        self
    }

    /// An attribute that is there or not.
    #[must_use]
    pub fn flag(self, name: &'static str, on: impl Fn() -> bool + 'static) -> Self {
        self.follow(name, move || on().then(String::new))
    }

    /// `aria-pressed`.
    #[must_use]
    pub fn pressed(self, on: impl Fn() -> bool + 'static) -> Self {
        self.follow("aria-pressed", move || Some(if on() { "true" } else { "false" }.into()))
    }

    /// The live value of an input or a list. What someone types is not touched
    /// while it already says the same.
    #[must_use]
    pub fn value(mut self, value: impl Fn() -> String + 'static) -> Self {
        self.0.value = Some(Box::new(move || Some(value())));
        self
    }

    /// A handler.
    #[must_use]
    pub fn on(self, event: &'static str, handler: impl Fn(&Event) + 'static) -> Self {
        self.put_handler(event, Box::new(handler))
    }

    #[inline(never)]
    fn put_handler(mut self, event: &'static str, handler: Handler) -> Self {
        self.0.handlers.push((event, handler));
        self
    }

    /// Called with the element once it exists.
    #[must_use]
    pub fn made(mut self, then: impl FnOnce(&web_sys::Element) + 'static) -> Self {
        self.0.made = Some(Box::new(then));
        self
    }

    /// Something inside, after what is already there.
    #[must_use]
    pub fn with(self, node: impl Into<Node>) -> Self {
        self.put_inside(node.into())
    }

    #[inline(never)]
    fn put_inside(mut self, node: Node) -> Self {
        self.0.inside.push(node);
        self
    }
}

impl From<Element> for Node {
    fn from(element: Element) -> Self {
        Self::Element(element)
    }
}

impl From<&'static str> for Node {
    fn from(text: &'static str) -> Self {
        Self::Text(Cow::Borrowed(text))
    }
}

impl From<String> for Node {
    fn from(text: String) -> Self {
        Self::Text(Cow::Owned(text))
    }
}

impl From<Text> for Node {
    fn from(text: Text) -> Self {
        Self::Text(text)
    }
}

impl From<Vec<Self>> for Node {
    fn from(list: Vec<Self>) -> Self {
        Self::List(list)
    }
}

impl<T: Into<Self>> From<Option<T>> for Node {
    fn from(node: Option<T>) -> Self {
        node.map_or(Self::None, Into::into)
    }
}

impl FromIterator<Self> for Node {
    fn from_iter<I: IntoIterator<Item = Self>>(nodes: I) -> Self {
        Self::List(nodes.into_iter().collect())
    }
}
