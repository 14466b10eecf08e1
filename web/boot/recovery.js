// What is left to say when the calculator cannot speak for itself. After a panic nothing of the
// wasm may be called again, so this panel is made here, in plain JavaScript.
//
// It appears on `pitchline:panic` (sent by the calculator's own panic hook, with the message as
// detail), on a trap the hook does not see, and on `pitchline:not-loaded`.

const root = document.documentElement;
const TEXT = {
  panic: {
    title: 'Something broke; your set-up is saved',
    body: 'The calculator stopped and cannot go on by itself.',
    again: 'Reload',
  },
  load: {
    title: 'The calculator did not load',
    body: 'It needs the network once; after that it works without. Your set-up is saved.',
    again: 'Try again',
  },
  copy: 'Copy report',
  copied: 'Report copied',
  demo: 'Start with the demo',
  report: 'Report',
};

function make(tag, text, parent) {
  const element = document.createElement(tag);
  element.textContent = text;
  parent.append(element);
  return element;
}

function button(text, parent, action) {
  const element = make('button', text, parent);
  element.type = 'button';
  element.addEventListener('click', action);
  return element;
}

function again() {
  // A newer build may be waiting, and it may be the one that works.
  if (root.dataset.update === 'waiting') window.dispatchEvent(new CustomEvent('pitchline:update-now'));
  else location.reload();
}

function demo() {
  // The page starts from its own defaults when asked this way, and leaves what is saved alone.
  location.replace(`${location.pathname}?demo`);
}

// The address holds the whole set-up, so a report can be repeated. It goes nowhere by itself.
function reportOf(kind, message) {
  const module = document.getElementById('app-module')?.href.split('/').pop();
  return [`Pitchline ${kind}: ${message}`, `build: ${module}`, `page: ${location.href}`, `browser: ${navigator.userAgent}`].join('\n');
}

function show(kind, message) {
  root.dataset.app = 'broken';
  if (document.querySelector('.recovery')) return;
  // Only a page that was alive has controls that would now be dead. One that never started is a
  // plain document and still worth reading. What a message offers can no longer be had.
  if (kind === 'panic') {
    document.getElementById('pitchline-page')?.setAttribute('inert', '');
    document.querySelector('.messages')?.remove();
  }

  const text = TEXT[kind];
  const report = reportOf(kind, message);
  const panel = document.createElement('section');
  panel.className = 'recovery';
  panel.setAttribute('role', 'alert');
  const title = make(kind === 'panic' ? 'h1' : 'h2', text.title, panel);
  title.tabIndex = -1;
  make('p', text.body, panel);
  const actions = make('p', '', panel);
  actions.className = 'recovery-actions';
  button(text.again, actions, again);
  const copy = button(TEXT.copy, actions, async () => {
    try {
      await navigator.clipboard.writeText(report);
      copy.textContent = TEXT.copied;
    } catch {
      // Not allowed here (an embedded page, an old browser): leave it selected for copying by hand.
      details.open = true;
      getSelection().selectAllChildren(source);
    }
  });
  if (kind === 'panic') button(TEXT.demo, actions, demo);
  const details = make('details', '', panel);
  make('summary', TEXT.report, details);
  const source = make('pre', report, details);
  // After a panic nothing else is left to be the page's main part.
  const place = kind === 'panic' ? document.createElement('main') : panel;
  if (place !== panel) place.append(panel);
  document.body.prepend(place);
  // Whatever had the focus is dead now; a page that is still loading keeps its own.
  if (kind === 'panic') title.focus();
}

window.addEventListener('pitchline:panic', (event) => show('panic', event.detail));
window.addEventListener('pitchline:not-loaded', (event) => show('load', event.detail));
// Out of memory and exhausted stacks end a wasm program without a panic.
window.addEventListener('error', (event) => {
  if (event.error instanceof WebAssembly.RuntimeError) show('panic', event.message);
});
