// What the inventory takes for what: all that has no role or name of its own in HTML, and nothing
// else may rest on how the page is made. A page that is made otherwise changes these lines alone.
const LOOK = {
  // What is being worked out just now, what is said of that, and of what is on its way.
  behind: '[aria-busy="true"]', busy: '.busy', loading: 'Loading…',
  // An answer in large figures, its name, its unit, and what is said under it; it with its working.
  headline: '.headline', headlineName: '.headline-name',
  headlineUnit: '.headline-figure > span', headlineNote: '.headline-limit', answer: '.answer',
  // One input with its label, its unit, its steps, a remark in its label, and what is wrong with it.
  field: '.field', unit: '.unit', remark: '.remark', fault: '.fault',
  // Inputs that belong to one part, named by their first label.
  group: '.card, fieldset, [role="group"]',
  // What must be mended, and cautions.
  notice: '.notice, [role="alert"] :is(h1, h2), .told > p:first-child', caution: '.caution',
  // A step of a working: its name with the result, its formula, its source.
  step: '.steps > li', stepName: '.step-result', stepFormula: '.step-formula', stepSource: '.step-source',
  // The answers as they are read out, a while after an edit.
  aloud: '.aloud',
  // An answer with what scripts read of its band.
  band: '[data-band]',
};
const REGION = 'section[aria-labelledby], section[aria-label], nav[aria-label], header, [role="alert"]';
