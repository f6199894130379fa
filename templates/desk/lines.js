// The editor of a file of data. The page works without it; with it findings stand beside the lines.
'use strict';
(() => {
  const form = document.getElementById('lines');
  if (!form || !window.CodeMirror) return;
  const field = form.elements;
  const area = field.namedItem('text');
  const found = document.getElementById('found');
  const elsewhere = document.getElementById('elsewhere');
  const strip = document.getElementById('strip');
  const help = document.getElementById('key');
  const begun = area.value;
  let keys = [], places = strip ? JSON.parse(strip.dataset.places) : [];
  let notes = [], round = 0, timer = 0, leaving = false;

  const cm = CodeMirror.fromTextArea(area, {
    mode: 'yaml', inputStyle: 'contenteditable', readOnly: area.readOnly, lineNumbers: true, lineWrapping: true, indentUnit: 2, gutters: ['CodeMirror-linenumbers', 'marks'],
    // The tabulator goes on to the next field, as everywhere on a page.
    extraKeys: {Tab: false, 'Shift-Tab': false, 'Ctrl-Space': 'autocomplete'}
  });
  const name = document.querySelector('label[for=text]').textContent;
  const input = cm.getInputField();
  input.setAttribute('role', 'textbox');
  input.setAttribute('aria-multiline', 'true');
  input.setAttribute('aria-label', name + '. Control and space: the keys that fit here.');
  help.hidden = false;

  const make = (tag, text, className) => {
    const made = document.createElement(tag);
    made.textContent = text;
    if (className) made.className = className;
    return made;
  };
  const says = one => one.severity + ': ' + one.says + (one.maybe ? '. Maybe ' + one.maybe : '');

  // What is found, at its line and in a list from which one goes to the line.
  function show(answer) {
    notes.forEach(note => note.clear());
    notes = [];
    cm.clearGutter('marks');
    const list = make('ul', '', 'found');
    for (const one of answer.here) {
      const line = Math.min(one.line, cm.lineCount()) - 1;
      const sign = make('span', {error: '✕', warning: '!'}[one.severity] || '·', 'sign');
      sign.title = says(one);
      const there = cm.lineInfo(line).gutterMarkers;
      if (!there || !there.marks) cm.setGutterMarker(line, 'marks', sign);
      if (one.severity !== 'note') notes.push(cm.addLineWidget(line, make('div', says(one), 'finding')));
      const item = make('li', '');
      const go = make('button', 'line ' + one.line);
      go.type = 'button';
      go.onclick = () => { cm.setCursor(line, one.column - 1); cm.focus(); };
      item.append(make('b', one.severity), ' ', go, ' ' + one.says + (one.maybe ? '. Maybe ' + one.maybe : ''));
      list.append(item);
    }
    found.replaceChildren(answer.here.length ? list : make('p', 'Nothing is found in it.'));
    const others = make('ul', '', 'found');
    answer.elsewhere.forEach(one => others.append(make('li', one.file + ', line ' + one.line + ': ' + says(one))));
    elsewhere.replaceChildren();
    if (answer.elsewhere.length) elsewhere.append(make('p', 'In packs that use it, as they would be:'), others);
    const of = document.getElementById('stripof');
    if (strip && answer.strip) {
      // Our own drawing: every text in it is escaped where it is made.
      strip.firstElementChild.innerHTML = answer.strip.svg;
      places = answer.strip.places;
      of.textContent = 'The line: ' + answer.strip.of;
    } else if (strip) {
      of.textContent = 'The line, as it was before the fault';
    }
    here();
  }

  async function check() {
    const mine = ++round;
    const body = new URLSearchParams({name: field.namedItem('name').value, text: cm.getValue()});
    try {
      const answer = await fetch('/lines/typed', {method: 'POST', body, headers: {'X-Form-Token': field.namedItem('token').value}});
      if (!answer.ok) throw new Error(answer.status);
      const read = await answer.json();
      if (mine === round) show(read);
    } catch (e) {
      if (mine === round) found.replaceChildren(make('p', 'Not checked: the desk does not answer, or the text is too long. Your text is still here.'));
    }
  }

  // The place that the line of the cursor names, or the nearest line above it, marked on the strip.
  function here() {
    if (!strip) return;
    const line = cm.getCursor().line + 1;
    const at = places.filter(p => p.line <= line && p.line > line - 12).pop();
    let mark = strip.querySelector('.here');
    if (!at) { if (mark) mark.remove(); return; }
    if (!mark) { mark = make('div', '', 'here'); strip.firstElementChild.append(mark); }
    const high = strip.firstElementChild.offsetHeight;
    mark.style.top = at.from * high + 'px';
    mark.style.height = (at.to - at.from) * high + 'px';
    strip.scrollTop = (at.from + at.to) / 2 * high - strip.clientHeight / 2;
  }

  // The keys within which a place of the text lies, and whether a key or its value is typed there.
  function where(pos) {
    const open = [];
    let flows = 0, folded = -1;
    const value = (text, indent) => {
      if (!flows && /^\s*[|>][-+\d]*\s*$/.test(text)) { folded = indent; return; }
      let word = '', quote = '';
      for (const c of text) {
        const top = open[open.length - 1];
        if (quote) { if (c === quote) quote = ''; continue; }
        if (c === '#' && /(^|\s)$/.test(word)) break;
        if ((c === '"' || c === "'") && !word.trim()) { quote = c; continue; }
        if (c === '{' || c === '[') { open.push({flow: c, indent, key: null}); flows++; word = ''; }
        else if ((c === '}' || c === ']') && flows) { open.pop(); flows--; word = ''; }
        else if (c === ',' && flows) { if (top.flow === '{') top.key = null; word = ''; }
        else if (c === ':' && flows && top.flow === '{' && !top.key) { top.key = word.trim(); word = ''; }
        else word += c;
      }
    };
    for (let i = 0; i <= pos.line; i++) {
      const text = i < pos.line ? cm.getLine(i) : cm.getLine(i).slice(0, pos.ch);
      if (flows) { value(text, 0); continue; }
      let at = text.search(/\S/);
      if (at < 0 || text[at] === '#') { if (i === pos.line) while (open.length && open[open.length - 1].indent >= text.length) open.pop(); continue; }
      if (folded >= 0 && at > folded) continue;
      folded = -1;
      while (/^-(\s|$)/.test(text.slice(at))) {
        while (open.length && (open[open.length - 1].indent > at || (open[open.length - 1].indent === at && !open[open.length - 1].key))) open.pop();
        open.push({indent: at, key: null});
        at += 1 + Math.max(1, text.slice(at + 1).search(/\S|$/));
      }
      while (open.length && open[open.length - 1].indent >= at) open.pop();
      const key = /^([\w-]+):(\s|$)/.exec(text.slice(at));
      if (key) { open.push({indent: at, key: key[1]}); value(text.slice(at + key[0].length), at); }
      else value(text.slice(at), at);
    }
    const names = open.filter(o => o.key).map(o => o.key);
    const top = open[open.length - 1];
    const key = top && top.key && (top.flow || /:\s/.test(cm.getLine(pos.line).slice(0, pos.ch))) ? names.pop() : null;
    return {in: names.join('.'), key};
  }

  function explain() {
    const pos = cm.getCursor();
    // The whole word at the cursor counts, and what stands behind it.
    const rest = /^[\w-]*:?\s?/.exec(cm.getLine(pos.line).slice(pos.ch))[0];
    const at = where({line: pos.line, ch: pos.ch + rest.length});
    const row = keys.find(k => k.in === at.in && k.key === at.key);
    help.replaceChildren();
    if (row) help.append(make('b', (row.in ? row.in.replaceAll('.', ' › ') + ' › ' : '') + row.key), ' ' + row.says);
  }

  function hints() {
    const pos = cm.getCursor();
    const typed = /[\w-]*$/.exec(cm.getLine(pos.line).slice(0, pos.ch))[0];
    const from = {line: pos.line, ch: pos.ch - typed.length};
    const at = where(from);
    const value = at.key && keys.find(k => k.in === at.in && k.key === at.key);
    const render = (li, all, one) => li.append(make('b', one.shown), ' ' + (one.says || ''));
    const list = value ? value.words.map(w => ({text: w, shown: w, render}))
      : keys.filter(k => k.in === at.in).map(k => ({text: k.key + ': ', shown: k.key, says: k.says.slice(0, 90), render}));
    return {from, to: pos, list: list.filter(one => one.shown.startsWith(typed))};
  }
  CodeMirror.registerHelper('hint', 'yaml', hints);

  cm.on('changes', () => { clearTimeout(timer); timer = setTimeout(check, 250); });
  cm.on('inputRead', (_, change) => { if (/^[a-z]$/.test(change.text[0]) && !cm.state.completionActive) cm.showHint({completeSingle: false}); });
  cm.on('cursorActivity', () => { here(); explain(); });
  form.addEventListener('submit', () => { leaving = true; });
  window.addEventListener('beforeunload', e => { if (!leaving && cm.getValue() !== begun) e.preventDefault(); });
  window.addEventListener('pageshow', () => { leaving = false; });
  fetch('/lines/keys.json?kind=' + encodeURIComponent(form.dataset.kind)).then(r => r.json()).then(read => { keys = read; explain(); });
  if (!area.readOnly) check();
})();
