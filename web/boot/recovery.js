// What is to be said while the calculator cannot speak for itself: what it waits for, why it cannot
// start, and what is left after it broke. After a panic nothing of the wasm may be called again, so
// all of it is made here, in plain JavaScript.
//
// This is no module: browsers give no module to a page opened from a file, or to a frame without an
// origin of its own, and this has to say so. Its names stay within the function.
//
// The panel appears on `pitchline:panic` (sent by the calculator's own panic hook, with the message
// as detail), on a trap the hook does not see, and on `pitchline:not-loaded`. It calls a build saved
// only where `<html data-kept="yes">` says so.

(() => {
  'use strict';
  const root = document.documentElement;
  // After so many milliseconds it says what is awaited, and then what to do.
  const WHAT_AFTER = 5000;
  const HELP_AFTER = 15000;

  const WAITS = {
    script: 'Still waiting for the script that starts the calculator.',
    program: "Still waiting for the calculator's program.",
    catalogue: "Still waiting for the maker's parts, catalogue.json.",
  };
  const HELP = {
    script: 'Check your connection and reload the page.',
    program: 'Check your connection and reload the page.',
    catalogue: "If they don't arrive soon, the page starts without them.",
  };
  const TEXT = {
    saved: { title: 'Something broke, but your build is saved', body: "The calculator stopped and can't recover by itself." },
    lost: {
      title: 'Something broke, and your last edit may be lost',
      body: "The calculator stopped and can't recover by itself. The link in the address bar holds your build, perhaps without that edit. Copy it before you go on.",
    },
    load: {
      title: "The calculator didn't load",
      body: "A file didn't arrive. The page needs a connection once. After that it works offline. Nothing you saved has changed.",
    },
    script: {
      title: "The calculator didn't load",
      body: "The script that starts it didn't arrive or was blocked. Nothing you saved has changed.",
    },
    program: {
      title: "The calculator can't start here",
      body: "Its program arrived, but this browser can't use it. Update the browser or try another one. If that doesn't help, the file on the host is probably damaged.",
    },
    wasm: {
      title: "The calculator can't start here",
      body: 'This browser has no WebAssembly, or it is switched off, for example by a lockdown mode. Switch it on for this page, or try another browser.',
    },
    file: {
      title: "The calculator can't start from a file",
      body: "Browsers don't run it from a folder on your disk. Put the folder on a web server and open its address.",
    },
    frame: {
      title: "The calculator can't start in this frame",
      body: 'The surrounding page gives this frame no origin of its own. The frame needs sandbox="allow-scripts allow-same-origin", or no sandbox. Or open this address in a tab of its own:',
    },
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

  // Copying is not allowed everywhere (an embedded page, an old browser): then the text is left
  // selected, to be copied by hand.
  async function copy(text, pressed, done, shown) {
    try {
      await navigator.clipboard.writeText(text);
      pressed.textContent = done;
    } catch {
      if (shown.parentElement.localName === 'details') shown.parentElement.open = true;
      shown.hidden = false;
      getSelection().selectAllChildren(shown);
    }
  }

  // The address holds the whole build, so a report can be repeated. It goes nowhere by itself.
  function reportOf(kind, message) {
    const module = document.querySelector('meta[name="app-module"]')?.content.split('/').pop();
    return [`Pitchline ${kind}: ${message}`, `build: ${module}`, `page: ${location.href}`, `browser: ${navigator.userAgent}`].join('\n');
  }

  // `event` is `panic` or the kind of what did not load.
  function show(event, message) {
    root.dataset.app = 'broken';
    delete root.dataset.awaits;
    clearInterval(watch);
    if (document.querySelector('.recovery')) return;
    const panic = event === 'panic';
    const kind = panic ? (root.dataset.kept === 'yes' ? 'saved' : 'lost') : event;
    // Only a page that was alive has controls that would now be dead. One that never started is a
    // plain document and still worth reading. What a message offers can no longer be had.
    if (panic) {
      document.getElementById('pitchline-page')?.setAttribute('inert', '');
      document.querySelector('.messages')?.remove();
    } else {
      document.getElementById('waiting')?.remove();
    }

    const text = TEXT[kind];
    const report = reportOf(event, message);
    const panel = document.createElement('section');
    panel.className = 'recovery';
    panel.setAttribute('role', 'alert');
    const title = make(panic ? 'h1' : 'h2', text.title, panel);
    title.tabIndex = -1;
    make('p', text.body, panel);
    const link = make('p', location.href, panel);
    link.className = 'recovery-link';
    link.hidden = kind !== 'frame';
    const actions = make('p', '', panel);
    actions.className = 'recovery-actions';
    button(panic ? 'Reload' : 'Try again', actions, again);
    if (kind === 'lost' || kind === 'frame') {
      const pressed = button('Copy link', actions, () => copy(location.href, pressed, 'Link copied', link));
    }
    const reported = button('Copy report', actions, () => copy(report, reported, 'Report copied', source));
    if (panic) button('Start with the first kit', actions, demo);
    const details = make('details', '', panel);
    make('summary', 'Report', details);
    const source = make('pre', report, details);
    // After a panic nothing else is left to be the page's main part.
    const place = panic ? document.createElement('main') : panel;
    if (place !== panel) place.append(panel);
    document.body.prepend(place);
    // Whatever had the focus is dead now; a page that is still loading keeps its own.
    if (panic) title.focus();
  }

  // What is awaited stands on the page itself, where the calculator will be.
  const began = Date.now();
  let said = '';
  function look() {
    const place = document.getElementById('waiting');
    if (!place || root.dataset.app === 'running') {
      clearInterval(watch);
      return;
    }
    const waited = Date.now() - began;
    if (waited < WHAT_AFTER) return;
    const what = root.dataset.awaits ?? 'script';
    const help = waited >= HELP_AFTER;
    const text = help ? `${WAITS[what]} ${HELP[what]}` : WAITS[what];
    // Read out once, not each second.
    if (text === said) return;
    said = text;
    place.textContent = `${text} `;
    if (help) button('Reload', place, again);
  }
  const watch = setInterval(look, 500);
  // It is said here from now on.
  document.getElementById('late')?.remove();

  window.addEventListener('pitchline:panic', (event) => show('panic', event.detail));
  window.addEventListener('pitchline:not-loaded', (event) => show(event.detail.kind, event.detail.message));
  // Out of memory and exhausted stacks end a wasm program without a panic.
  window.addEventListener('error', (event) => {
    if (typeof WebAssembly === 'object' && event.error instanceof WebAssembly.RuntimeError) show('panic', event.message);
  });
  // By now the script that starts the calculator has run, if it ever will.
  document.addEventListener('DOMContentLoaded', () => {
    if (root.dataset.app) return;
    if (location.protocol === 'file:') show('file', 'opened from a file');
    else if (self.origin === 'null') show('frame', 'a frame without an origin');
    else show('script', 'boot.js did not run');
  });
})();
