// Finds elements by what a screen reader would call them.
// arguments: kind ("label" | "role" | "text" | "css"), wanted text, role
// Returns { found: [elements], seen: [names], } where `seen` helps whoever
// reads a failure; or { kin: [elements] }, those that may have the role, where
// a script cannot know what a screen reader would call them.
const [kind, wanted, role] = arguments;
const squash = (s) => (s || "").replace(/\s+/g, " ").trim();
const want = squash(wanted);
function* all(root) {
  for (const e of root.querySelectorAll("*")) {
    yield e;
    if (e.shadowRoot) yield* all(e.shadowRoot);
  }
}
const shown = (e) => e.checkVisibility({ visibilityProperty: true });
const fields = new Set(["textbox", "searchbox", "spinbutton", "combobox", "listbox", "checkbox",
  "radio", "switch", "slider", "ColorWell", "Date", "InputTime"]);
const field = (e) => fields.has(e.computedRole) || e.matches("input, select, textarea");

if (kind === "css") {
  const found = [...all(document)].filter((e) => e.matches(wanted) && shown(e));
  return { found, seen: [] };
}

if (kind === "text") {
  const has = (e) => squash(e.innerText ?? e.textContent).includes(want);
  const hits = [...all(document)].filter((e) => shown(e) && has(e));
  const within = new Set(hits.map((e) => e.parentElement || e.getRootNode().host));
  return { found: hits.filter((e) => !within.has(e)), seen: [squash(document.body.innerText).slice(0, 600)] };
}

// To ask for a role takes 20 ms in the frame of another site, so only what can have it is asked.
const given = "[role], [contenteditable]";
const can = kind === "label" ? `input, select, textarea, ${given}`
  : role === "button" ? `button, input, select, summary, ${given}`
  : ":not(svg *)";
const may = [...all(document)].filter((e) => e.matches(can) && shown(e));
if (!("computedRole" in Element.prototype)) {
  return { kin: may.filter((e) => kind === "role" || e.matches("input, select, textarea")) };
}
const kin = may.filter((e) => kind === "label" ? field(e) : e.computedRole === role);
const named = kin.map((e) => [e, squash(e.computedName)]);
const exact = named.filter(([, name]) => name === want);
const loose = named.filter(([, name]) => name.includes(want));
const found = (exact.length ? exact : loose).map(([e]) => e);
return { found, seen: named.map(([, name]) => name) };
