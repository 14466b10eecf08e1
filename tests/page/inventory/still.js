// Whether the page has come to rest: nothing is being worked out, and nothing has changed for a
// moment, since some work begins a little after an edit. False where that takes long.
const said = (look, text) => [...document.querySelectorAll(look)].some((e) => text ? e.textContent === text : e.textContent);
const busy = () => document.querySelector(LOOK.behind) || said(LOOK.busy) || said('[role="status"]', LOOK.loading);
return await new Promise((done) => {
  let quiet;
  const watch = new MutationObserver(() => wait());
  const end = (still) => {
    watch.disconnect();
    clearTimeout(late);
    clearTimeout(quiet);
    done(still);
  };
  const late = setTimeout(() => end(false), 20000);
  const wait = () => {
    clearTimeout(quiet);
    quiet = setTimeout(() => busy() ? wait() : end(true), 250);
  };
  watch.observe(document, { subtree: true, childList: true, characterData: true, attributes: true });
  wait();
});
