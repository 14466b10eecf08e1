// What the inventory takes for what: all that has no role or name of its own in HTML, and nothing
// else may rest on how the page is made. A page that is made otherwise changes these lines alone.
const LOOK = {
  // What is being worked out just now, what is said of that, and of what is on its way.
  behind: '[aria-busy="true"]', busy: '.busy', loading: 'Loading…',
  // The build, where it stands beside every view.
  beside: 'aside',
  // An answer in large figures, its name, its unit, what the last edit changed, and what is said under it.
  headline: '.headline', headlineName: '.headline-name', headlineUnit: '.headline-figure > span',
  headlineChange: '.headline-change .aloud', headlineNote: '.headline-limit',
  // One input with its label, its unit, its steps, a remark in its label, and what is wrong with it.
  field: '.field', unit: '.unit', remark: '.remark', fault: '.fault',
  // Inputs that belong to one part, named by their first label.
  group: '.card, fieldset, [role="group"]',
  // A fold's name, and what it says that it holds; one that names parts of the build.
  foldTitle: '.fold-title', foldHint: '.fold-hint', parts: '.group',
  // What must be mended; cautions, and what opens the rest of one.
  notice: '.notice, [role="alert"] :is(h1, h2), .told > p:first-child',
  caution: '.caution', cautionMore: '.caution-more',
  // What needs attention, of one view or of all.
  concern: '.concern',
  // The steps of a working; one of them: its name with the result, its formula, its source.
  steps: '.steps', step: '.steps > li',
  stepName: '.step-result', stepFormula: '.step-formula', stepSource: '.step-source',
  // The answers as they are read out, a while after an edit.
  aloud: 'p.aloud',
  // An answer with what scripts read of its band.
  band: '[data-band]',
};
const REGION = 'section[aria-labelledby], section[aria-label], nav[aria-label], aside[aria-label], header, [role="alert"]';
