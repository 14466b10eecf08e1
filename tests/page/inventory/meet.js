// What a reader and a screen reader meet on the page as it is now, by name.
// Returns { kind: { place: [names] } }; a number is written as #, so figures do not matter. What is
// taken for what stands in look.js.
// The column whose words are reasons, and the most options that are named one by one.
const REASONS = 'Fits', FEW = 12;
// Of a finding, what follows a colon is what the figures give just then.
const brief = (s) => s.split(/[:.] /)[0];
const sentences = (s) => s.split(/(?<=[.?!]) (?=[\p{Lu}#])/u);
// Short ways are told in metres, long ones in kilometres.
const prose = (s) => s.replace(/# k?m\b(?![/²])/g, '# km');

const squash = (s) => (s ?? '').replace(/\s+/g, ' ').trim();
// Ranges are numbers, and a time may be said in one unit or two.
const mask = (s) => squash(s)
  .replace(/(?<![\p{L}\p{N}_])[−-]?\d+(?:[.,:]\d+)*/gu, '#')
  .replace(/# ?[–-] ?#/g, '#')
  .replace(/# (?:h|min|s)\b(?:(?: –)? # (?:h|min|s)\b)*/g, '# time')
  .replace(/# time – # time/g, '# time');
const words = (e, but = '') => {
  if (!e) return '';
  const copy = e.cloneNode(true);
  for (const gone of copy.querySelectorAll(`[aria-hidden="true"]${but && ', ' + but}`)) gone.remove();
  return squash(copy.textContent);
};
const shown = (e) => e.checkVisibility({ visibilityProperty: true });
const name = (e) => mask(e.computedName);
const told = (ids) => (ids ?? '').split(' ').filter(Boolean).map((id) => document.getElementById(id)).filter(Boolean);

const found = {};
const put = (kind, place, text) => {
  if (!text || /^[#\s.,·|–]*$/.test(text)) return;
  const places = found[kind] ??= {};
  (places[place] ??= new Set()).add(text);
};

const regionName = (region) => {
  if (!region) return 'page';
  const by = told(region.getAttribute('aria-labelledby')).map((e) => words(e)).join(' ');
  const given = by || region.getAttribute('aria-label') || words(region.querySelector('h1, h2'));
  return mask(given) || region.localName;
};
// The region that an element stands in, the folds there, and the headings it stands under in each,
// in the order of reading.
const under = new Map();
const foldName = (fold) => mask(words(fold.querySelector(`:scope > summary ${LOOK.foldTitle}`)));
const wayTo = (e) => {
  const scope = e?.closest(`${REGION}, details`) ?? null;
  const headings = (under.get(scope) ?? []).map((heading) => heading.text);
  if (scope?.localName !== 'details') return [regionName(scope), ...headings];
  return [...wayTo(scope.parentElement), foldName(scope), ...headings];
};
const placeOf = (e) => wayTo(e).filter(Boolean).join(' > ');
const groupOf = (e) => {
  const group = e.closest(LOOK.group);
  if (!group) return '';
  const given = group.getAttribute('aria-label') || words(group.querySelector('legend, label'), LOOK.remark);
  return mask(given).replace(/ ×#$/, '');
};
const within = (group, text) => group && group !== text ? `${group}: ${text}` : text;

const input = (e, place) => {
  const field = e.closest(LOOK.field);
  const labels = [...(e.labels ?? [])];
  const label = (mask(labels.map((l) => words(l, LOOK.remark)).join(' ')) || name(e)).replace(/ ×#$/, '');
  const described = told(e.getAttribute('aria-describedby'));
  const text = within(groupOf(e), label);
  const role = e.type === 'file' ? 'file' : e.computedRole;
  const kind = [role, e.inputMode === 'decimal' && 'number', e.readOnly && 'read only'].filter(Boolean).join(', ');
  const steps = [...(field?.querySelectorAll('button') ?? [])].map((b) => b.computedName)
    .filter((n) => n.startsWith(`${squash(labels[0]?.firstChild?.textContent)}: `))
    .map((n) => n.split(': ').pop());
  const help = described.filter((d) => !d.matches(LOOK.fault)).map((d) => mask(words(d))).join(' ');
  const unit = mask(words(field?.querySelector(LOOK.unit)));
  put('inputs', place, [text, unit, kind, steps.length && `steps: ${steps.join(', ')}`, help].filter(Boolean).join(' | '));
  for (const l of labels) for (const r of l.querySelectorAll(LOOK.remark)) put('remarks', place, mask(words(r)));
  if (e.getAttribute('aria-invalid') === 'true') {
    for (const d of described.filter((d) => d.matches(LOOK.fault))) put('faults', place, mask(words(d)));
  }
  if (e.localName === 'select') {
    const options = [...e.options].map((o) => mask(o.text));
    if (options.length > FEW) put('options', place, `${text}: a long list`);
    else for (const option of options) put('options', place, `${text}: ${option}`);
  }
};

// A figure's fixed name is that of its table; where that is the finding, how the finding begins.
const figureName = (e) => {
  const figure = e.closest('figure');
  const [caption, finding] = ['caption', 'figcaption'].map((part) => mask(words(figure?.querySelector(part))));
  return caption && caption !== finding ? caption : brief(finding);
};

const table = (e, place) => {
  const caption = (e.caption && figureName(e)) || mask(words(e.caption)) || '(no caption)';
  const heads = [...e.querySelectorAll('thead th')].map((th) => mask(words(th)));
  put('tables', place, `${caption} | ${heads.join(' | ')}`);
  const reasons = heads.indexOf(REASONS);
  for (const row of e.tBodies[0]?.rows ?? []) {
    const head = mask(words(row.querySelector('th'), 'button, ' + LOOK.remark));
    if (/\p{L}/u.test(head)) put('rows', place, `${caption}: ${head}`);
    if (reasons >= 0) put('reasons', place, `${caption}: ${mask(words(row.cells[reasons]))}`);
  }
};

const picture = (e, place) => {
  const [told, finding] = [name(e), mask(words(e.closest('figure')?.querySelector('figcaption')))];
  put('pictures', place, figureName(e) + (told === finding ? '' : ` (called: ${told || 'nothing'})`));
  for (const text of e.querySelectorAll('text')) {
    const said = mask(text.textContent);
    if (/\p{L}/u.test(said)) put('words in pictures', place, `${figureName(e)}: ${said}`);
  }
};

const button = (e, place) => {
  // What is undone is the last edit.
  const text = name(e).replace(/^(Undo|Redo) – .*/, '$1 – …');
  const label = e.closest(LOOK.field)?.querySelector('label')?.firstChild?.textContent;
  if (label && text.startsWith(`${mask(label)}: `)) return;
  const toggles = e.hasAttribute('aria-pressed') ? ' (on or off)' : '';
  put('buttons', place, text && within(groupOf(e), text) + toggles);
};

// A way to a view: an answer, a question with its answer in a line, what needs attention, or a name.
const link = (e, place) => {
  const text = mask(words(e.querySelector(`${LOOK.headlineName}, strong`))) || name(e);
  put('links', place, text);
  if (e.querySelector(LOOK.headline)) return true;
  for (const concern of e.querySelectorAll(LOOK.concern)) put('attention', place, mask(words(concern)));
  const line = e.querySelector('strong + span');
  if (line && !line.matches(LOOK.concern)) put('lines', place, `${text}: ${brief(mask(words(line)))}`);
  return false;
};

const fold = (e, place) => {
  const title = foldName(e.parentElement);
  if (!title) return put('folds', place, within(groupOf(e), within(figureName(e), mask(words(e)))));
  if (e.parentElement.querySelector(`:scope > .fold > ${LOOK.steps}`)) return put('workings', place, `${title}: Working`);
  put('folds', place, within(groupOf(e), title));
  const hint = e.parentElement.matches(LOOK.parts) ? '…' : brief(mask(words(e.querySelector(LOOK.foldHint))));
  if (e.querySelector(LOOK.foldHint)?.textContent) put('hints', place, `${title}: ${hint}`);
};

const step = (e, place) => {
  const part = (look) => words(e.querySelector(look));
  put('steps', place, [part(LOOK.stepName).split(' = ')[0], part(LOOK.stepFormula), part(LOOK.stepSource)].join(' | '));
};

const headline = (e, place) => {
  const part = (look) => words(e.querySelector(look));
  put('answers', place, [mask(part(LOOK.headlineName)), mask(`# ${part(LOOK.headlineUnit)}`)].join(' | '));
  // What follows a colon is what binds just then.
  for (const one of sentences(mask(part(LOOK.headlineNote)))) put('notes of answers', place, one.includes(': ') ? `${brief(one)}: …` : one);
  if (part(LOOK.headlineChange)) put('changes', place, mask(part(LOOK.headlineChange)));
};

const heading = (e) => {
  const [level, text] = [Number(e.localName[1]), mask(words(e))];
  if (told(e.closest(REGION)?.getAttribute('aria-labelledby')).includes(e)) return put('headings', 'page', `${level}: ${text}`);
  const scope = e.closest(`${REGION}, details`);
  under.set(scope, (under.get(scope) ?? []).filter((above) => above.level < level));
  put('headings', placeOf(e), `${level}: ${text}`);
  under.get(scope).push({ level, text });
};

const meet = (e) => {
  if (/^h[1-6]$/.test(e.localName)) heading(e);
  // A fold's title stands where the fold does, not in it.
  const place = placeOf(e.localName === 'summary' ? e.parentElement.parentElement : e);
  if (e.matches('nav, main, header, footer, [role="region"]:not(:has(table)), [role="group"], dialog')) {
    put('landmarks', place, [e.computedRole, name(e)].filter(Boolean).join(': '));
  }
  if (e.matches(LOOK.band)) put('bands', place, sentences(mask(words(e)))[0]);
  if (e.matches(LOOK.headline)) headline(e, place);
  if (e.matches('input, textarea, select')) { input(e, place); return false; }
  if (e.matches('button, [role="button"]')) { button(e, place); return true; }
  if (e.matches('a[href]')) return link(e, place);
  if (e.localName === 'summary') { fold(e, place); return true; }
  if (e.localName === 'table') { table(e, place); return true; }
  if (e.localName === 'svg') { if (e.getAttribute('aria-hidden') !== 'true') picture(e, place); return false; }
  if (e.getAttribute('role') === 'application') put('cursors', place, `${figureName(e)}: ${name(e)}`);
  if (e.localName === 'figcaption') {
    for (const one of sentences(prose(mask(words(e))))) put('findings', place, one.includes(': ') ? `${brief(one)}: …` : one);
    return true;
  }
  if (e.matches(LOOK.step)) { step(e, place); return false; }
  if (e.matches(LOOK.notice)) { put('notices', place, prose(mask(words(e)))); return true; }
  if (e.matches(LOOK.caution)) {
    const [short, ...more] = [...e.children].map((part) => mask(words(part, LOOK.cautionMore)));
    put('cautions', placeOf(e.parentElement), [short, ...more].join(' | '));
    return false;
  }
  if (e.matches(LOOK.busy)) return false;
  if (e.matches(LOOK.aloud)) { if (arguments[1]) put('read out', place, mask(words(e))); return false; }
  if (e.matches('[aria-live]') && e.closest('figure')) { put('readouts', place, mask(words(e))); return false; }
  if (e.matches('p, li, dt') && !e.closest('button, table, figcaption')
      && !e.querySelector('p, li, button, input, select') && !(e.querySelector('a') && e.closest('nav'))) {
    const help = e.id && document.querySelector(`[aria-describedby~="${e.id}"]`);
    if (!help) for (const one of sentences(prose(mask(words(e))))) put('texts', place, one);
    return true;
  }
  if (e.localName === 'span' && e.closest('[role="status"]') && !e.closest('p, li, button')) {
    put('messages', place, mask(words(e)));
  }
  return true;
};

const walk = (e) => {
  for (const child of e.children) {
    if (!shown(child) || (!arguments[0] && child.matches(LOOK.beside))) continue;
    if (meet(child)) walk(child);
  }
};
// All of the page but what stands beside every view, or the part of it that the first argument names;
// with a second one also what is read out just then.
const part = [...document.querySelectorAll(REGION)].find((region) => regionName(region) === arguments[0]);
walk(part ?? document.body);
put('document', 'page', `title: ${mask(document.title)}`);
put('document', 'page', `language: ${document.documentElement.lang}`);
put('document', 'page', `description: ${mask(document.querySelector('meta[name="description"]')?.content)}`);
for (const e of document.querySelectorAll('noscript')) put('document', 'page', `without scripts: ${mask(e.textContent.replace(/<[^>]*>/g, ' '))}`);

return Object.fromEntries(Object.entries(found).map(([kind, places]) =>
  [kind, Object.fromEntries(Object.entries(places).map(([place, names]) => [place, [...names]]))]));
