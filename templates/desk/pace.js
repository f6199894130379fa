// The road at the true pace of the run: one place after another by the clock. Without this script
// all places stand below each other.
'use strict';
(() => {
  const list = document.getElementById('steps');
  if (!list) return;
  const steps = [...list.children];
  // Two at one place, as where a train stops and starts again, have a moment each.
  const at = [];
  for (const step of steps) at.push(at.length ? Math.max(Number(step.dataset.at), at[at.length - 1] + 4) : Number(step.dataset.at));
  const go = document.getElementById('go');
  const clock = document.getElementById('clock');
  const coming = document.getElementById('coming');
  let seconds = at[0], timer = 0, last = 0;

  // A place is shown from the one before it on, so that there is time to think.
  const next = () => Math.min(steps.length - 1, at.findIndex(t => t > seconds) < 0 ? steps.length - 1 : at.findIndex(t => t > seconds));
  let shown = -1;

  function show() {
    const now = next();
    const told = Math.max(0, Math.floor(seconds));
    clock.textContent = Math.floor(told / 60) + ':' + String(told % 60).padStart(2, '0');
    const left = Math.ceil(at[now] - seconds);
    coming.textContent = left > 0 ? 'You are there in ' + left + ' s.' : 'You are there.';
    if (now === shown) return;
    shown = now;
    steps.forEach((step, i) => { step.hidden = i !== now; });
    steps[now].querySelector('details').open = false;
  }

  function stop() {
    clearInterval(timer);
    timer = 0;
    go.textContent = 'Start';
  }

  function tick() {
    const now = performance.now();
    seconds += (now - last) / 1000;
    last = now;
    if (seconds >= at[at.length - 1]) stop();
    show();
  }

  go.onclick = () => {
    if (timer) return stop();
    if (seconds >= at[at.length - 1]) seconds = at[0];
    last = performance.now();
    timer = setInterval(tick, 200);
    go.textContent = 'Stop';
  };
  document.getElementById('on').onclick = () => { seconds = at[next()]; show(); };
  document.getElementById('back').onclick = () => {
    const now = next();
    seconds = now > 1 ? at[now - 2] : at[0] - 1;
    show();
  };
  document.getElementById('pace').hidden = false;
  coming.hidden = false;
  seconds -= 1;
  show();
})();
